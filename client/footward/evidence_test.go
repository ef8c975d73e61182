package main

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestEvidencePrintsEveryHeldFigure(t *testing.T) {
	r := footward(t, "", "evidence")
	assert.Equal(t, allPass, r.code, r.err)
	assert.Regexp(t, `(?m)^[0-9]{3,} printed figures and [0-9]+ worked by hand; 0 are not met\.$`, r.out)
	assert.Contains(t, r.out, "Printed: AISC Design Examples")
	assert.NotContains(t, r.out, "NOT MET")

	one := footward(t, "", "evidence", "--state", "weld_metal")
	assert.Equal(t, allPass, one.code, one.err)
	assert.Contains(t, one.out, "aisc-v16-j1-lrfd: Example J.1")
	assert.Regexp(t, `(?m)^    weld_metal +l_w +144\.0 +144\.0 +- +0\.00 %$`, one.out)
	assert.NotContains(t, one.out, "plate_cantilever")
	assert.Less(t, strings.Count(one.out, "\n"), strings.Count(r.out, "\n")/2)

	assert.Equal(t, one, footward(t, "", "evidence", "--state", "Weld-Metal"))
	assert.Equal(t, noAnswer, footward(t, "", "evidence", "--state", "no_such_state").code)
	assert.Contains(t, footward(t, "", "evidence", "--state", "weld_mettal").err, "nearest is weld_metal;")
	assert.Equal(t, noAnswer, footward(t, "", "evidence", "a file").code)
}

// TestEveryCheckHasAnExample for each choice of CheckItem, under its own name.
func TestEveryCheckHasAnExample(t *testing.T) {
	choices := (&footwardv1.CheckItem{}).ProtoReflect().Descriptor().Oneofs().ByName("check").Fields()
	for i := range choices.Len() {
		name := string(choices.Get(i).Name())
		assert.Contains(t, exampleFiles, name)
		assert.Contains(t, checkHelp, string(choices.Get(i).Name()))
	}
}
