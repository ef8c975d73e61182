package weld_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/weld"
)

const (
	inch = 25.4
	ksi  = 6.894757293168361
	kip  = 4448.2216152605
)

func fillet(b basis.Basis, leg, throat, fy, fu, beta float64) weld.Input {
	p := weld.Part{Thickness: 20, Steel: material.Steel{Fy: fy, Fu: fu, BetaW: beta}}
	return weld.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Weld: weld.Spec{Type: weld.Fillet, Leg: leg, Throat: throat, Parts: [2]weld.Part{p, p},
			Filler: material.WeldMetal{Strength: 70 * ksi}, FullSize: true},
	}
}

func check(t require.TestingT, in *weld.Input) (weld.Result, map[string]limit.State) {
	r, err := weld.Check(in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return r, out
}

// TestFilletTables holds SCI P363 (2013), fillet welds, kN/mm, a = 0.7 leg
// (from memory).
func TestFilletTables(t *testing.T) {
	for _, c := range []struct{ leg, fu, beta, along, across float64 }{
		{6, 410, 0.85, 0.94, 1.15}, {8, 410, 0.85, 1.25, 1.53}, {10, 410, 0.85, 1.56, 1.91}, {12, 410, 0.85, 1.87, 2.29},
		{6, 470, 0.90, 1.01, 1.24}, {8, 470, 0.90, 1.35, 1.65}, {10, 470, 0.90, 1.69, 2.07}, {12, 470, 0.90, 2.03, 2.48},
	} {
		in := fillet(basis.Eurocode, 0, 0.7*c.leg, 300, c.fu, c.beta)
		in.Weld.Filler.Strength = 0
		in.Run = weld.Run{Length: 1000, Along: 1e6}
		_, s := check(t, &in)
		assert.InDelta(t, c.along, 1/s["weld_directional"].Utilization, 0.0055)
		assert.InDelta(t, c.along, s["weld_simplified"].Resistance/1e3, 0.0055)
		in.Run = weld.Run{Length: 1000, Normal: 1e6}
		_, s = check(t, &in)
		assert.InDelta(t, c.across, 1/s["weld_directional"].Utilization, 0.0055)
	}
}

// TestFullStrengthFillets holds the throat over plate thickness at which two
// fillets carry the plate's yield load: ECCS design manual on joints (from
// memory), 0.46 for S235, 0.48 for S275.
func TestFullStrengthFillets(t *testing.T) {
	for _, c := range []struct{ fy, fu, beta, share float64 }{{235, 360, 0.80, 0.46}, {275, 430, 0.85, 0.48}} {
		in := fillet(basis.Eurocode, 0, 3, c.fy, c.fu, c.beta)
		in.Weld.Filler.Strength = 0
		in.Run = weld.Run{Length: 1000, Count: 2, Normal: 10 * 1000 * c.fy}
		_, s := check(t, &in)
		assert.InDelta(t, c.share, s["weld_directional"].Required/10, 0.005)
	}
}

// TestAISCExamples holds AISC Design Examples v16.0, J.1, J.2A, J.2B, and the
// unit strength of the AISC Manual part 8 (from memory).
func TestAISCExamples(t *testing.T) {
	for _, c := range []struct {
		b                           basis.Basis
		unit, j1, shear, tension    float64
		load, lengthFillet, lengthG float64
		base                        float64 // 0: not printed
	}{
		{basis.USLRFD, 1.392, 206, 15.8, 16.8, 300, 15.4, 18.1, 395},
		{basis.USASD, 0.928, 137, 10.5, 11.2, 200, 15.4, 18.2, 0},
	} {
		in := fillet(c.b, inch/16, 0, 50*ksi, 65*ksi, 0)
		in.Run = weld.Run{Length: 10 * inch, Along: kip}
		r, _ := check(t, &in)
		assert.InDelta(t, c.unit, r.US.Metal*inch/kip, 0.0006, "Manual (8-2)")

		in = fillet(c.b, 3./16*inch, 0, 50*ksi, 65*ksi, 0)
		for i := range in.Weld.Parts {
			in.Weld.Parts[i].Thickness, in.Weld.Parts[i].AlongEdge = inch/4, true
		}
		in.Weld.OwnSection = true
		in.Run = weld.Run{Length: 27 * inch, Count: 2, Along: 200 * kip, EndLoaded: true}
		r, s := check(t, &in)
		assert.InDelta(t, 0.912, r.US.Beta, 0.0005, "J.1")
		assert.InDelta(t, c.j1, r.US.Metal*54*inch/kip, 0.5, "J.1")
		assert.InDelta(t, 274, r.US.Metal/r.US.Factor*54*inch/kip, 0.5, "J.1")
		assert.InDelta(t, 3./16*inch, s["weld_size_maximum"].Resistance, 1e-9, "J.1: w_max 3/16 in")
		assert.InDelta(t, 1./8*inch, s["weld_size_minimum"].Demand, 1e-9, "J.1: w_min 1/8 in")
		if c.base > 0 {
			assert.InDelta(t, c.base, r.US.BaseShear*54*inch/kip, 0.5, "J.1, rupture of the base metal")
		}

		in = fillet(c.b, 5./16*inch, 0, 50*ksi, 65*ksi, 0)
		in.Run = weld.Run{Length: c.lengthFillet * inch, Count: 2, Along: c.load / 2 * kip, Across: c.load * kip * math.Sin(math.Pi/3)}
		r, s = check(t, &in)
		assert.InDelta(t, 1.40, r.US.Kds, 0.005, "J.2A")
		assert.InDelta(t, 1, s["weld_metal"].Utilization, 0.004, "J.2A")
		assert.InDelta(t, 13.0, r.US.Metal/r.US.Factor*inch/kip, 0.05, "J.2A, for one of two welds")

		in.Weld = weld.Spec{Type: weld.PartialPenetration, Throat: inch / 4, Parts: in.Weld.Parts, Filler: in.Weld.Filler}
		in.Run = weld.Run{Length: c.lengthG * inch, Count: 2, Along: c.load / 2 * kip, Normal: c.load * kip * math.Sin(math.Pi/3)}
		r, s = check(t, &in)
		assert.InDelta(t, c.shear/2, r.US.GrooveShear*inch/kip, 0.03, "J.2B")
		assert.InDelta(t, c.tension/2, r.US.GrooveTension*inch/kip, 0.03, "J.2B")
		assert.InDelta(t, 1, s["weld_groove"].Utilization, 0.004, "J.2B")
	}
}

// cShape is a C of back l, legs k l, open towards +x, loaded downwards at arm
// a l from its centroid.
func cShape(l, k, a float64) weld.Group {
	x := k * k * l / (1 + 2*k)
	return weld.Group{
		Segments: []geom.Segment{
			{A: geom.Point{X: k * l, Y: l / 2}, B: geom.Point{Y: l / 2}},
			{A: geom.Point{Y: l / 2}, B: geom.Point{Y: -l / 2}},
			{A: geom.Point{Y: -l / 2}, B: geom.Point{X: k * l, Y: -l / 2}},
		},
		Actions: geom.Actions{Vy: -1}, AtX: x + a*l, Method: weld.InstantaneousCentre,
	}
}

// TestElasticGroups holds AISC Design Examples v16.0, II.A-27 (r_u = 0.177 P),
// Shigley, Mechanical Engineering Design, Example 9-1 (from memory), and a box
// under all six actions (derived in closed form).
func TestElasticGroups(t *testing.T) {
	in := fillet(basis.USLRFD, 3./8*inch, 0, 345, 450, 0)
	in.Group = cShape(10*inch, 0.5, 0)
	in.Group.Method, in.Group.AtX = weld.Elastic, 10*inch
	for b, most := range map[basis.Basis][2]float64{basis.USLRFD: {47.2, 0.2}, basis.USASD: {31.5, 0.15}} {
		in.Design.Basis = b
		r, _ := check(t, &in)
		assert.InDelta(t, 1.25, r.Group.X/inch, 0.001)
		assert.InDelta(t, 333, r.Group.Ix/inch/inch/inch, 0.5)
		assert.InDelta(t, 52.1, r.Group.Iy/inch/inch/inch, 0.05)
		assert.InDelta(t, 0.177, r.US.Demand*inch, 0.0006)
		assert.InDelta(t, most[0], r.US.Metal/r.US.Demand/kip, most[1])
	}

	in = fillet(basis.USLRFD, 6, 0, 345, 450, 0)
	in.Group = cShape(190, 56./190, 0)
	in.Group.Method, in.Group.AtX, in.Group.Actions.Vy = weld.Elastic, -100, -25e3
	r, _ := check(t, &in)
	throat := 0.707 * 6
	assert.InEpsilon(t, 10.4, r.Group.X, 0.005)
	assert.InEpsilon(t, 7.07e6, (r.Group.Ix+r.Group.Iy)*throat, 0.005)
	assert.InEpsilon(t, 43.9, r.US.Demand/throat, 0.005, "back corners")
	x, y := r.Share.Shear(geom.Point{X: 56, Y: 95})
	assert.InEpsilon(t, 37.0, math.Hypot(x, y)/throat, 0.005, "tips")

	p := func(x, y float64) geom.Point { return geom.Point{X: x, Y: y} }
	in.Group = weld.Group{Segments: []geom.Segment{{A: p(-1, -1.5), B: p(1, -1.5)}, {A: p(1, -1.5), B: p(1, 1.5)},
		{A: p(1, 1.5), B: p(-1, 1.5)}, {A: p(-1, 1.5), B: p(-1, -1.5)}},
		Actions: geom.Actions{Vx: 1, Vy: 2, N: 3, Mx: 4, My: 5, T: 6}}
	in.Weld.Leg = 0.1
	r, _ = check(t, &in)
	assert.InDelta(t, 1.467035, r.US.Demand, 5e-7, "box 2 by 3 under 1, 2, 3 and 4, 5, 6")
}

func TestFaultsNameEveryField(t *testing.T) {
	in := fillet(basis.USLRFD, 5, 5, 235, 360, 0)
	in.Weld.Filler.Strength = 0
	in.Weld.Parts[1].Steel = material.Steel{Grade: &material.SteelGrade{Name: "S", Bands: []material.SteelBand{{UpTo: 10, Fy: 235, Fu: 360}}}}
	in.Group = weld.Group{Segments: []geom.Segment{{}, {B: geom.Point{X: 50}}}, Actions: geom.Actions{N: 1}, AtZ: 5, Method: weld.InstantaneousCentre}
	in.Weld.Corrosion = 9
	fields := func() (out []string) {
		var f limit.Faults
		weld.Validate(&in, &f)
		for _, v := range f {
			out = append(out, v.Field)
		}
		return out
	}
	assert.ElementsMatch(t, []string{"weld.leg_mm", "weld.filler", "weld.parts[1].steel", "group.segments[0]", "group.forces.n_kn",
		"group.at_z_mm", "weld.corrosion_allowance_mm"}, fields())
	in = fillet(basis.Eurocode, 0, 0, 235, 360, 0.7)
	in.Weld.Parts[0].Thickness = -1
	in.Run = weld.Run{Count: 101, Along: math.NaN()}
	assert.ElementsMatch(t, []string{"weld.throat_mm", "weld.parts[0].thickness_mm", "weld.parts[1].steel.properties.beta_w",
		"run.length_mm", "run.count", "run.along_kn"}, fields())
	in = fillet(basis.Eurocode, 3, 21, 235, 360, 0.8)
	in.Weld.Type, in.Run.Length = weld.PartialPenetration, 100
	assert.ElementsMatch(t, []string{"weld.leg_mm", "weld.throat_mm"}, fields())
	in.Weld.Type = weld.CompletePenetration
	assert.ElementsMatch(t, []string{"weld.leg_mm", "weld.throat_mm"}, fields())
	in.Weld.Type = 4
	assert.ElementsMatch(t, []string{"weld.kind"}, fields())
	in = fillet(basis.Eurocode, 0, 5, 235, 360, 0.8)
	in.Weld.Corrosion, in.Run.Length = 5, 100
	assert.ElementsMatch(t, []string{"weld.corrosion_allowance_mm"}, fields(), "the whole throat")
}
