package weld_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/weld"
)

// magnitude draws a number evenly over its orders of magnitude.
func magnitude(t *rapid.T, low, high float64, label string) float64 {
	return math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(t, label))
}

// wide draws from all that the contract allows.
func wide(t *rapid.T) weld.Input {
	in := weld.Input{Design: basis.Design{Basis: rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"), EC: basis.Recommended()}}
	in.Design.EC.GammaM0 = rapid.SampledFrom([]float64{1, 1.1}).Draw(t, "gamma_M0")
	w := &in.Weld
	w.Type = weld.Type(rapid.IntRange(1, 3).Draw(t, "type"))
	size := magnitude(t, 0.01, 100, "size")
	switch {
	case w.Type == weld.CompletePenetration:
	case w.Type == weld.Fillet && rapid.Bool().Draw(t, "leg"):
		w.Leg = size
	default:
		w.Throat = size
	}
	for i := range w.Parts {
		fy := magnitude(t, 100, 1000, "f_y")
		w.Parts[i] = weld.Part{Thickness: magnitude(t, 0.5, 300, "t"), Steel: material.Steel{Fy: fy, Fu: fy * rapid.Float64Range(1, 2).Draw(t, "f_u")},
			AlongEdge: rapid.IntRange(0, 3).Draw(t, "edge") == 0}
		w.Parts[i].Corrosion = w.Parts[i].Thickness * rapid.SampledFrom([]float64{0, 0, 0.5, 0.999}).Draw(t, "loss")
	}
	w.Filler.Strength = rapid.SampledFrom([]float64{0, 300, 482, 1000}).Draw(t, "filler")
	w.Corrosion = rapid.SampledFrom([]float64{0, 0, 0.5, 0.99}).Draw(t, "weld loss") * size
	w.FullSize, w.OwnSection = rapid.Bool().Draw(t, "full"), rapid.Bool().Draw(t, "own")
	force := func(label string) float64 {
		return rapid.SampledFrom([]float64{-1, 0, 1}).Draw(t, label) * magnitude(t, 1, 1e8, label)
	}
	if rapid.Bool().Draw(t, "run") {
		in.Run = weld.Run{Length: magnitude(t, 0.1, 50000, "l"), Count: rapid.IntRange(0, 100).Draw(t, "n"),
			Along: force("along"), Across: force("across"), Normal: force("normal"), EndLoaded: rapid.Bool().Draw(t, "end")}
		return in
	}
	g := &in.Group
	place := rapid.SampledFrom([]float64{-5000, -100, -99, 0, 100, 103, 5000})
	at := func() geom.Point { return geom.Point{X: place.Draw(t, "x"), Y: place.Draw(t, "y")} }
	first := at()
	from := first
	g.Continuous = rapid.Bool().Draw(t, "closed")
	for range rapid.IntRange(1, 12).Draw(t, "segments") {
		to := at()
		if !g.Continuous {
			from = at()
		}
		if to != from {
			g.Segments = append(g.Segments, geom.Segment{A: from, B: to})
			from = to
		}
	}
	if g.Continuous && from != first {
		g.Segments = append(g.Segments, geom.Segment{A: from, B: first})
	}
	g.EndLoaded = rapid.Bool().Draw(t, "lap")
	g.Actions.Vx, g.Actions.Vy, g.Actions.T = force("Vx"), force("Vy"), 1e3*force("T")
	g.AtX, g.AtY = place.Draw(t, "at x"), place.Draw(t, "at y")
	if g.Method = weld.Method(rapid.IntRange(0, 2).Draw(t, "method")); g.Method != weld.InstantaneousCentre {
		g.Actions.N, g.Actions.Mx, g.Actions.My, g.AtZ = force("N"), 1e3*force("Mx"), 1e3*force("My"), place.Draw(t, "at z")
	}
	if len(g.Segments) == 0 {
		in.Run.Length = 100
	}
	return in
}

// TestAllThatTheContractAllowsIsAnsweredOrRefused: what Validate lets pass has an
// answer of finite numbers that can be followed, and the sizes that it asks for fit.
func TestAllThatTheContractAllowsIsAnsweredOrRefused(t *testing.T) {
	answered := 0
	rapid.Check(t, func(t *rapid.T) {
		in := wide(t)
		var faults limit.Faults
		weld.Validate(&in, &faults)
		r, err := weld.Check(&in)
		var refused limit.Faults
		if errors.As(err, &refused) {
			assert.NotEmpty(t, faults, "refused, but not by Validate")
			return
		}
		assert.NoError(t, err)
		assert.Empty(t, faults)
		answered++
		var states limit.List
		r.States(&states)
		for _, s := range states.All() {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				assert.LessOrEqual(t, math.Abs(v), math.MaxFloat64, s.Kind.ID)
			}
			if s.Size == limit.WeldThroat || s.Size == limit.WeldLeg {
				put(t, in, s)
			}
			assert.True(t, s.Rated || s.Reason != "" || s.Verdict == limit.Pass, s.Kind.ID)
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		codes(&r)
	})
	assert.Positive(t, answered)
}

// put puts a required size of the weld back: the weld can be made so, and holds.
func put(t *rapid.T, in weld.Input, s limit.State) {
	in.Weld.Throat, in.Weld.Leg = s.Required, 0
	if s.Size == limit.WeldLeg {
		in.Weld.Throat, in.Weld.Leg = 0, s.Required
	}
	var faults limit.Faults
	if weld.Validate(&in, &faults); len(faults) > 0 {
		assert.LessOrEqual(t, s.Required, 1.5*in.Weld.Corrosion+0.01, "%s of %g: %v", s.Kind.ID, s.Required, faults)
		return
	}
	_, states := check(t, &in)
	assert.LessOrEqual(t, used(states[s.Kind.ID]), 1+1e-9, "%s: %g", s.Kind.ID, s.Required)
}
