package main

import (
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

const demo = "../../testdata/demo"

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
	require.Len(t, m.GetOutcomes(), 5)
	for _, o := range m.GetOutcomes() {
		u := o.GetResult().GetGoverningUtilization()
		assert.True(t, u >= 0.4 && u <= 0.9, "%s: %g", o.GetResult().GetLabel(), u)
	}
}

func TestExamplesAreTheDemo(t *testing.T) {
	for kind, file := range exampleFiles {
		want, err := os.ReadFile(filepath.Join(demo, filepath.Base(file)))
		require.NoError(t, err)
		if *update {
			require.NoError(t, os.WriteFile(file, want, 0o644))
		}
		got := footward(t, "", "example", kind)
		assert.Equal(t, 0, got.code)
		assert.Equal(t, string(want), got.out, "run the tests with -update to copy the demo")
		assert.Equal(t, 0, footward(t, got.out, "check", "-").code, "%s can be checked as it is", kind)
	}
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
	printed := footward(t, "", "check", demo).out + footward(t, "", "check", "--derivation", demo).out
	for _, b := range blocks {
		assert.True(t, strings.Contains(printed, string(b[1])), "the demo does not print\n%s", b[1])
	}
}
