package weld_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/weld"
)

func TestBoundariesOfEurocode(t *testing.T) {
	start := func() weld.Input {
		in := fillet(basis.Eurocode, 0, 5, 235, 360, 0.8)
		in.Weld.Filler.Strength = 0
		in.Run = weld.Run{Length: 200, Count: 2, Normal: 150e3}
		return in
	}
	in := start()
	_, s := check(t, &in)
	assert.InDelta(t, 0.295, s["weld_directional"].Utilization, 0.0005, "constructed: EN 1993-1-8 4.5.3.2")
	assert.InDelta(t, 0.205, s["weld_normal_stress"].Utilization, 0.0005, "constructed: EN 1993-1-8 (4.1)")
	assert.InDelta(t, 0.361, s["weld_simplified"].Utilization, 0.0005, "constructed: EN 1993-1-8 4.5.3.3")
	assert.Equal(t, limit.NotApplicable, s["weld_simplified"].Verdict)

	for _, c := range []struct {
		name, id string
		change   func(*weld.Input)
		want     limit.Verdict
	}{
		{"filler as strong as the part", "weld_directional", func(in *weld.Input) { in.Weld.Filler.Strength = 360 }, limit.Pass},
		{"filler weaker than the part", "weld_directional", func(in *weld.Input) { in.Weld.Filler.Strength = 359 }, limit.OutOfScope},
		{"part of 4 mm", "weld_directional", func(in *weld.Input) { in.Weld.Parts[1].Thickness = 4 }, limit.Pass},
		{"part below 4 mm", "weld_directional", func(in *weld.Input) { in.Weld.Parts[0].Thickness = 3.9 }, limit.OutOfScope},
		{"S460", "weld_directional", func(in *weld.Input) { in.Weld.Parts[0].Steel = material.Steel{Fy: 460, Fu: 550, BetaW: 1} }, limit.Pass},
		{"above S460", "weld_directional", func(in *weld.Input) { in.Weld.Parts[0].Steel = material.Steel{Fy: 461, Fu: 550, BetaW: 1} }, limit.OutOfScope},
		{"throat of 3 mm", "weld_throat_minimum", func(in *weld.Input) { in.Weld.Throat = 3 }, limit.Pass},
		{"throat below 3 mm", "weld_throat_minimum", func(in *weld.Input) { in.Weld.Throat = 2.9 }, limit.Fail},
		{"corrosion does not count for the least throat", "weld_throat_minimum", func(in *weld.Input) { in.Weld.Throat, in.Weld.Corrosion = 3, 1 }, limit.Pass},
		{"30 mm effective", "weld_length_minimum", func(in *weld.Input) { in.Run.Length, in.Weld.FullSize = 40, false }, limit.Pass},
		{"below 30 mm effective", "weld_length_minimum", func(in *weld.Input) { in.Run.Length, in.Weld.FullSize = 39, false }, limit.Fail},
		{"six throats", "weld_length_minimum", func(in *weld.Input) { in.Weld.Throat, in.Run.Length = 10, 59 }, limit.Fail},
		{"nothing left between the ends", "weld_directional", func(in *weld.Input) { in.Run.Length, in.Weld.FullSize = 9, false }, limit.Fail},
		{"instantaneous centre", "weld_directional", func(in *weld.Input) { in.Group = cShape(200, 0.5, 1) }, limit.OutOfScope},
	} {
		in := start()
		c.change(&in)
		_, s := check(t, &in)
		assert.Equal(t, c.want, s[c.id].Verdict, c.name)
	}

	in = start()
	in.Run.EndLoaded, in.Run.Length, in.Weld.Corrosion = true, 1000, 0
	r, _ := check(t, &in)
	assert.InDelta(t, 0.933, r.EC.BetaLw, 0.0005, "constructed: EN 1993-1-8 (4.9)")
	assert.InDelta(t, 0.9333333*0.9*360/1.25, r.EC.NRd, 1e-4, "a long lap is weaker by every criterion")
	in = start()
	in.Weld.Parts[0].Steel = material.Steel{Fy: 355, Fu: 470, BetaW: 0.9}
	in.Weld.Parts[1].Steel = material.Steel{Fy: 460, Fu: 500, BetaW: 1}
	r, _ = check(t, &in)
	assert.InDelta(t, 470, r.EC.Fu, 0, "least f_u")
	assert.InDelta(t, 500, r.EC.FuBeta, 0, "least f_u/beta_w, of the other part")
	in = start()
	in.Weld.Type, in.Weld.Throat, in.Weld.Corrosion = weld.CompletePenetration, 0, 2
	in.Run = weld.Run{Length: 100, Normal: 18 * 100 * 235}
	_, s = check(t, &in)
	assert.InDelta(t, 1, s["weld_full_penetration"].Utilization, 1e-12, "corrosion off the thickness")
}

func TestBoundariesOfAISC(t *testing.T) {
	start := func() weld.Input {
		in := fillet(basis.USLRFD, 8, 0, 345, 450, 0)
		in.Run = weld.Run{Length: 200, Count: 2, Normal: 150e3}
		return in
	}
	for _, c := range []struct {
		name, id string
		change   func(*weld.Input)
		want     limit.Verdict
	}{
		{"4 legs long", "weld_length_minimum", func(in *weld.Input) { in.Run.Length = 32 }, limit.Pass},
		{"shorter than 4 legs", "weld_length_minimum", func(in *weld.Input) { in.Run.Length = 31 }, limit.NotApplicable},
		{"3/16 in on 1/2 in", "weld_size_minimum", func(in *weld.Input) { in.Weld.Leg, in.Weld.Parts[1].Thickness = 3./16*inch, inch/2 }, limit.Pass},
		{"3/16 in above 1/2 in", "weld_size_minimum", func(in *weld.Input) { in.Weld.Leg, in.Weld.Parts[1].Thickness = 3./16*inch, 13 }, limit.Fail},
		{"thickness less 1/16 in along an edge", "weld_size_maximum", func(in *weld.Input) {
			in.Weld.Parts[1] = weld.Part{Thickness: 10, Steel: in.Weld.Parts[1].Steel, AlongEdge: true}
			in.Weld.Leg = 10 - inch/16
		}, limit.Pass},
		{"more than that", "weld_size_maximum", func(in *weld.Input) {
			in.Weld.Parts[1] = weld.Part{Thickness: 10, Steel: in.Weld.Parts[1].Steel, AlongEdge: true}
			in.Weld.Leg = 8.5
		}, limit.Fail},
		{"the same where no edge is", "weld_size_maximum", func(in *weld.Input) { in.Weld.Leg = 30 }, limit.NotApplicable},
		{"matching filler", "weld_base_metal", func(in *weld.Input) { in.Weld.Type, in.Weld.Leg = weld.CompletePenetration, 0 }, limit.Pass},
		{"filler that does not match", "weld_base_metal", func(in *weld.Input) {
			in.Weld.Type, in.Weld.Leg, in.Weld.Filler.Strength = weld.CompletePenetration, 0, 440
		}, limit.OutOfScope},
		{"groove about its centre", "weld_group_instantaneous_centre", func(in *weld.Input) {
			in.Group = cShape(200, 0.5, 1)
			in.Weld.Type, in.Weld.Leg, in.Weld.Throat = weld.PartialPenetration, 0, 8
		}, limit.OutOfScope},
		{"one line about itself", "weld_metal", func(in *weld.Input) {
			in.Group = weld.Group{Segments: []geom.Segment{{B: geom.Point{X: 100}}}, Actions: geom.Actions{Mx: 1e3}}
		}, limit.OutOfScope},
		{"one line in its plane", "weld_metal", func(in *weld.Input) {
			in.Group = weld.Group{Segments: []geom.Segment{{B: geom.Point{X: 100}}}, Actions: geom.Actions{N: 1, My: -50}}
		}, limit.Pass},
	} {
		in := start()
		c.change(&in)
		_, s := check(t, &in)
		assert.Equal(t, c.want, s[c.id].Verdict, c.name)
	}

	in := start()
	r, _ := check(t, &in)
	assert.InDelta(t, 1.5, r.US.Kds, 1e-12, "AISC 360-22 (J2-5) across")
	in.Weld.OwnSection = true
	r, _ = check(t, &in)
	assert.InDelta(t, 1, r.US.Kds, 0, "end of a hollow section")
	in = start()
	in.Weld.Parts[1].Thickness = 10
	r, s := check(t, &in)
	assert.Equal(t, 1, r.US.Part, "the part that stands on the plate")
	assert.InDelta(t, 0.9*345*10/2, r.US.BaseNormal, 1e-9, "yield in tension, half of 10 mm each")
	assert.Equal(t, 2, s["weld_base_metal"].Member)
	in = start()
	in.Run.Length = 20
	r, _ = check(t, &in)
	assert.InDelta(t, 5, r.US.Legs, 0, "a quarter of 20 mm")
	in = start()
	in.Run.EndLoaded = true
	in.Run.Length = 8 * 400
	r, _ = check(t, &in)
	assert.InDelta(t, 180./400, r.US.Beta, 1e-12, "180 w from 300 w: J2.2b")
	in = start()
	in.Weld.Type, in.Weld.Leg, in.Weld.Corrosion = weld.CompletePenetration, 0, 2
	in.Run = weld.Run{Length: 100, Normal: 0.75 * 0.6 * 450 * 18 * 100}
	_, s = check(t, &in)
	assert.InDelta(t, 1, s["weld_base_metal"].Utilization, 1e-12, "through the plate, corrosion off")
}

// TestLeastSizesByTheThinnerPart holds AISC 360 Tables J2.3 and J2.4, in
// sixteenths of an inch (from memory).
func TestLeastSizesByTheThinnerPart(t *testing.T) {
	for _, c := range []struct{ upTo, leg, throat float64 }{
		{0.25, 2, 2}, {0.5, 3, 3}, {0.75, 4, 4}, {1.5, 5, 5}, {2.25, 5, 6}, {6, 5, 8}, {8, 5, 10},
	} {
		in := fillet(basis.USASD, 1, 0, 345, 450, 0)
		in.Run.Length = 200
		in.Weld.Parts[0].Thickness, in.Weld.Parts[1].Thickness = c.upTo*inch, 10*inch
		_, s := check(t, &in)
		assert.InDelta(t, c.leg/16*inch, s["weld_size_minimum"].Demand, 1e-9, "J2.4 to %g in", c.upTo)
		in.Weld.Type, in.Weld.Leg, in.Weld.Throat = weld.PartialPenetration, 0, 1
		_, s = check(t, &in)
		assert.InDelta(t, c.throat/16*inch, s["weld_size_minimum"].Demand, 1e-9, "J2.3 to %g in", c.upTo)
	}
}

// TestGrooveThroatMayLieAlongTheForce: under a force across a partial-
// penetration weld the worst throat takes it all in shear, or all in tension.
func TestGrooveThroatMayLieAlongTheForce(t *testing.T) {
	in := fillet(basis.Eurocode, 0, 5, 235, 360, 0.8)
	in.Weld.Type, in.Weld.Filler.Strength = weld.PartialPenetration, 0
	for _, run := range []weld.Run{{Length: 100, Normal: 50e3}, {Length: 100, Across: 50e3}} {
		in.Run = run
		_, s := check(t, &in)
		assert.InDelta(t, math.Sqrt(3)*100, s["weld_directional"].Demand, 1e-9)
		assert.InDelta(t, 100, s["weld_normal_stress"].Demand, 1e-9)
	}
}
