package main

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

const (
	demo     = "../../testdata/demo"
	demoMore = "../../testdata/demo-more" // of the other commands
)

var made = regexp.MustCompile(`(?m)^Footward .*, calculation kernel`)

// unversioned leaves the version of the build out of a report.
func unversioned(report string) string {
	return made.ReplaceAllString(report, "Footward VERSION, calculation kernel")
}

func TestDemoReport(t *testing.T) {
	r := footward(t, "", "check", demo)
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-demo.txt", unversioned(r.out))
}

func TestDemoDerivation(t *testing.T) {
	r := footward(t, "", "check", "--derivation", demo)
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-demo-derivation.txt", unversioned(r.out))
}

// TestDemoIsRealistic: a demo that only just holds, or is ten times too strong,
// teaches the wrong thing.
func TestDemoIsRealistic(t *testing.T) {
	r := footward(t, "", "check", "--json", demo)
	require.Equal(t, 0, r.code, r.err)
	var m footwardv1.CheckManyResponse
	require.NoError(t, protojson.Unmarshal([]byte(r.out), &m))
	require.Len(t, m.GetOutcomes(), 6)
	for _, o := range m.GetOutcomes() {
		u := o.GetResult().GetGoverningUtilization()
		assert.True(t, u >= 0.4 && u <= 0.9, "%s: %g", o.GetResult().GetLabel(), u)
	}
}

func TestEveryRequiredSizeHasAName(t *testing.T) {
	for n := range footwardv1.SizeKind_name {
		if k := footwardv1.SizeKind(n); k != footwardv1.SizeKind_SIZE_KIND_UNSPECIFIED {
			assert.NotEmpty(t, sizes[k], k)
		}
	}
	for n := range footwardv1.SizeDimension_name {
		if d := footwardv1.SizeDimension(n); d != footwardv1.SizeDimension_SIZE_DIMENSION_UNSPECIFIED {
			assert.NotEmpty(t, dimensions[d], d)
		}
	}
}

// heading divides a request from the comments above it.
func heading(text []byte) (head, request string) {
	lines := strings.SplitAfter(string(text), "\n")
	i := slices.IndexFunc(lines, func(line string) bool { return !strings.HasPrefix(line, "#") })
	return strings.Join(lines[:i], ""), strings.Join(lines[i:], "")
}

// TestExamplesAreTheDemo: each under a heading of its own, which speaks of no other
// file.
func TestExamplesAreTheDemo(t *testing.T) {
	for kind, file := range exampleFiles {
		folder, command := demoMore, "check"
		if slices.Contains([]string{"combine", "size", "compare", "tests", "reading"}, kind) {
			command = kind
		}
		if name := filepath.Base(file); name[0] >= '1' && name[0] <= '6' {
			folder = demo
		}
		demo, err := os.ReadFile(filepath.Join(folder, filepath.Base(file)))
		require.NoError(t, err)
		_, want := heading(demo)
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		head, request := heading(text)
		if *update {
			require.NoError(t, os.WriteFile(file, []byte(head+want), 0o644))
		}
		assert.Equal(t, want, request, "run the tests with -update to copy the demo")
		assert.NotContains(t, head, "demo")
		assert.NotRegexp(t, `[0-9]-\w+\.yaml`, string(text), "%s speaks of another file", kind)
		assert.Contains(t, head, "#   footward "+command+" "+kind+".yaml\n")

		got := footward(t, "", "example", kind)
		assert.Equal(t, 0, got.code)
		assert.True(t, strings.HasSuffix(got.out, request), kind)
		assert.Equal(t, got, footward(t, "", "example", strings.ReplaceAll(kind, "_", "-")))
		assert.Equal(t, 0, footward(t, got.out, command, "-").code, "%s can be used as it is", kind)
	}
	assert.Equal(t, footward(t, "", "example", "combine"), footward(t, "", "example", "actions"))
	assert.Equal(t, footward(t, "", "example", "size"), footward(t, "", "example", "sizes"))
}

func TestCatalogue(t *testing.T) {
	r := footward(t, "", "catalog", "threads", "rod-steels")
	assert.Equal(t, 0, r.code, r.err)
	assert.Regexp(t, `(?m)^  M20 +20 +2.5 +245 `, r.out)
	assert.Regexp(t, `(?m)^  ISO 898-1 8.8 +any +640 +800 `, r.out)
	assert.NotContains(t, r.out, "Timbers")

	r = footward(t, "", "catalog")
	assert.Equal(t, 0, r.code, r.err)
	for _, l := range lists {
		assert.Contains(t, r.out, l.title+"\n")
	}
	assert.Equal(t, footward(t, "", "catalog", "rod-steels"), footward(t, "", "catalog", "ROD_STEELS"))
	r = footward(t, "", "catalog", "--json", "concretes")
	var m footwardv1.ListConcretesResponse
	require.NoError(t, protojson.Unmarshal([]byte(r.out), &m))
	assert.NotEmpty(t, m.GetConcretes())
}

// TestReadmeShowsRealOutput finds each block of output of the README in what the
// demo prints.
func TestReadmeShowsRealOutput(t *testing.T) {
	text, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	blocks := regexp.MustCompile("(?s)```text\n(.*?)```").FindAllSubmatch(text, -1)
	require.NotEmpty(t, blocks)
	printed := footward(t, "", "check", demo).out + footward(t, "", "check", "--derivation", demo).out +
		footward(t, "", "compare", demoMore+"/compare.yaml").out
	for _, b := range blocks {
		assert.True(t, strings.Contains(printed, string(b[1])), "the demo does not print\n%s", b[1])
	}
}

func TestCompare(t *testing.T) {
	r := footward(t, "", "compare", demoMore+"/compare.yaml")
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-compare.txt", unversioned(r.out))
	var m footwardv1.CompareFootingsResponse
	require.NoError(t, protojson.Unmarshal([]byte(footward(t, "", "compare", "--json", demoMore+"/compare.yaml").out), &m))
	assert.Len(t, m.GetFootings(), 2)
	text, err := os.ReadFile(demoMore + "/compare.yaml")
	require.NoError(t, err)
	small := strings.Replace(string(text), "max_utilization: 0.9", "plan: {min_mm: 500, step_mm: 50, max_mm: 600}", 1)
	r = footward(t, small, "compare", "-")
	assert.Equal(t, 1, r.code, r.err)
	assert.Contains(t, r.out, "no pad that was offered holds")
	lacking := strings.Replace(string(text), "value: 3, per: RATE_MEASURE_KG", "value: 3, per: RATE_MEASURE_M2", 1)
	r = footward(t, lacking, "compare", "-")
	assert.Equal(t, 0, r.code, r.err)
	assert.Contains(t, r.out, "lacks shoe plate")
	assert.Equal(t, 2, footward(t, "label: x", "compare", "-").code)
}

func TestCombineAndSize(t *testing.T) {
	r := footward(t, "", "combine", demoMore+"/actions.yaml")
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-combine.txt", unversioned(r.out))
	all := footward(t, "", "combine", "--all", demoMore+"/actions.yaml")
	assert.Greater(t, len(all.out), len(r.out))
	var m footwardv1.CombineActionsResponse
	require.NoError(t, protojson.Unmarshal([]byte(footward(t, "", "combine", "--json", demoMore+"/actions.yaml").out), &m))
	assert.NotEmpty(t, m.GetCombinations())

	r = footward(t, "", "size", demoMore+"/sizes.yaml")
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-size.txt", unversioned(r.out))
	text, err := os.ReadFile(demoMore + "/sizes.yaml")
	require.NoError(t, err)
	hopeless := strings.Replace(string(text), "max_utilization: 0.9", "max_utilization: 0.01", 1)
	r = footward(t, hopeless, "size", "-")
	assert.Equal(t, 1, r.code, r.err)
	assert.Contains(t, r.out, "NO CHOICE PASSES")

	for input, want := range map[string]string{
		strings.Replace(string(text), "thickness_mm: [10,", "thickness_mm: [-10,", 1): "offer.thickness_mm[0]: is -10",
		strings.Replace(string(text), "offer:", "ofer:", 1):                           "ofer",
		"a: 1\n---\nb: 2\n": "2 documents",
	} {
		r := footward(t, input, "size", "-")
		assert.Equal(t, 2, r.code)
		assert.Contains(t, r.err, want)
	}
	assert.Equal(t, 2, footward(t, "", "size").code)
	assert.Equal(t, 2, footward(t, "", "combine", "no such file").code)
}
