package main

import (
	"context"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/spelling"
)

// listed are the lists by the call that answers them.
var listed = map[string]string{
	"ListSteels": "steels", "ListRodSteels": "rod-steels", "ListThreads": "threads",
	"ListWeldMetals": "fillers", "ListConcretes": "concretes", "ListTimbers": "timbers",
}

var (
	byCall  = regexp.MustCompile(`CatalogService\.(List\w+)`)
	unknown = regexp.MustCompile(`^"(.+)" is not in the catalogue`)
)

// atAPrompt puts what is wrong with fields into words for somebody at a prompt: the
// catalogue is printed by a command, and of a name that is not in it the nearest one
// is told.
func atAPrompt(ctx context.Context, c *client.Client, violations []*footwardv1.FieldViolation) {
	for _, v := range violations {
		call := byCall.FindStringSubmatch(v.GetDescription())
		if call == nil || listed[call[1]] == "" {
			continue
		}
		name := listed[call[1]]
		v.Description = strings.ReplaceAll(v.GetDescription(), call[0], "footward catalog "+name)
		if m := unknown.FindStringSubmatch(v.GetDescription()); m != nil && !strings.Contains(v.GetDescription(), "nearest") {
			if near := nearestOf(ctx, c, name, m[1]); near != "" {
				v.Description = m[0] + ", nearest is " + near + v.GetDescription()[len(m[0]):]
			}
		}
	}
}

// nearestOf is the name in a list of the catalogue that was most likely meant; empty
// where none is near. Names begin with their standard, which people leave out.
func nearestOf(ctx context.Context, c *client.Client, list, name string) string {
	i := slices.Index(listNames(), list)
	_, rows, err := lists[i].fetch(ctx, c)
	if err != nil {
		return ""
	}
	if near := nearestSize(name, rows); near != "" {
		return near
	}
	var known []string
	whole := map[string]string{}
	for _, row := range rows {
		full := row[0]
		for rest := full; rest != ""; {
			if whole[rest] == "" {
				whole[rest] = full
				known = append(known, rest)
			}
			_, rest, _ = strings.Cut(rest, " ")
		}
	}
	return whole[spelling.Nearest(name, known)]
}

var sized = regexp.MustCompile(`^([A-Z]+)(\d+)$`)

// nearestSize is, for a name of a letter and a size, such as M21, that of the nearest
// size in a list; empty where names are of another form.
func nearestSize(name string, rows [][]string) string {
	asked := sized.FindStringSubmatch(strings.ToUpper(name))
	if asked == nil {
		return ""
	}
	size, _ := strconv.ParseFloat(asked[2], 64)
	near, least := "", math.Inf(1)
	for _, row := range rows {
		m := sized.FindStringSubmatch(row[0])
		if m == nil || m[1] != asked[1] {
			continue
		}
		if of, _ := strconv.ParseFloat(m[2], 64); math.Abs(of-size) < least {
			near, least = row[0], math.Abs(of-size)
		}
	}
	return near
}
