package api

import (
	_ "embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// ruling is the value of a nationally determined parameter in an annex.
type ruling struct {
	name   string // path of the field that Eurocode has for it, "steel.gamma_m0"
	value  float64
	source string
}

// annex is a national annex to the Eurocodes.
type annex struct {
	name    string
	rulings []ruling
}

// annexTable holds the annexes whose text was read for this service.
//
//go:embed annex.tsv
var annexTable string

// annexes are those of the table, which a test holds to be readable.
var annexes, errAnnexes = readAnnexes(annexTable)

// readAnnexes reads a table of annexes: a line for each value, with the name of the
// annex, the parameter, the value and the clause, parted by tabs; # begins a remark.
func readAnnexes(text string) ([]annex, error) {
	var out []annex
	for i, line := range strings.Split(text, "\n") {
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		cells := strings.Split(line, "\t")
		if len(cells) != 4 || cells[0] == "" || cells[3] == "" {
			return nil, fmt.Errorf("annexes, line %d: want name, parameter, value and clause, parted by tabs", i+1)
		}
		value, err := strconv.ParseFloat(cells[2], 64)
		if err != nil {
			return nil, fmt.Errorf("annexes, line %d: %w", i+1, err)
		}
		if !slices.ContainsFunc(parameters, func(p parameter) bool { return p.name == cells[1] }) {
			return nil, fmt.Errorf("annexes, line %d: %q is no parameter", i+1, cells[1])
		}
		at := slices.IndexFunc(out, func(a annex) bool { return a.name == cells[0] })
		if at < 0 {
			at = len(out)
			out = append(out, annex{name: cells[0]})
		}
		a := &out[at]
		if slices.ContainsFunc(a.rulings, func(r ruling) bool { return r.name == cells[1] }) {
			return nil, fmt.Errorf("annexes, line %d: %s has %s already", i+1, cells[0], cells[1])
		}
		a.rulings = append(a.rulings, ruling{name: cells[1], value: value, source: cells[3]})
	}
	return out, nil
}
