package tie_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/tie"
)

var bases = []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}

// stack is four rods through a stack, each with 10 kN.
func stack(b basis.Basis) tie.Input {
	return tie.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Plate:  geom.Plate{SizeX: 600, SizeY: 600, Thickness: 20, Steel: material.Steel{Fy: 235, Fu: 360}},
		At:     []geom.Point{{X: -200, Y: -150}, {X: 200, Y: -150}, {X: -200, Y: 150}, {X: 200, Y: 150}},
		Each:   []float64{10e3, 10e3, 10e3, 10e3},
		Hole:   26, Nut: 36, RodArea: 353, Modulus: 210000, Length: 1000,
		PressX: 600, PressY: 600, Height: 1100, Clamped: 30e3,
		Soil:    tie.Soil{Depth: 900, Weight: 18e-6, Angle: 0.4},
		Actions: geom.Actions{N: 40e3, Vx: 2e3, My: 1e6}, Preload: 20e3, Settlement: 0.05, Needed: 1e3,
	}
}

func random(t *rapid.T) tie.Input {
	in := stack(rapid.SampledFrom(bases).Draw(t, "basis"))
	// Forces of whole newtons, places of tenths of a millimetre: less is not known of any.
	number := func(name string, low, high int) float64 { return float64(rapid.IntRange(low, high).Draw(t, name)) }
	n := rapid.IntRange(1, 6).Draw(t, "rods")
	in.At, in.Each = nil, nil
	for range n {
		at := geom.Point{X: number("x", -2800, 2800) / 10, Y: number("y", -2800, 2800) / 10}
		if slices.ContainsFunc(in.At, func(p geom.Point) bool { return math.Hypot(p.X-at.X, p.Y-at.Y) < 2.2*in.Hole }) {
			continue // no plate has holes in one another
		}
		in.At = append(in.At, at)
		in.Each = append(in.Each, max(0, number("tension", -20000, 50000)))
	}
	in.PressX, in.PressY = number("press x", 200, 600), number("press y", 200, 600)
	in.Actions = geom.Actions{
		N: number("N", -80000, 80000), Vy: number("V", -9000, 9000),
		Mx: number("M", -9000000, 9000000),
	}
	in.Stack = rapid.SampledFrom([]float64{0, 50e3, 1e6}).Draw(t, "stack")
	in.Clamped = number("weight", 0, 90000)
	return in
}

func check(t require.TestingT, in tie.Input) (*tie.Result, map[string]limit.State) {
	r, err := tie.Check(&in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return r, out
}

func TestEveryAnswerIsFiniteAndCanBeFollowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, states := check(t, random(t))
		assert.Len(t, states, len(tie.Kinds()))
		for id, s := range states {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), id)
			}
			if !s.Rated && s.Verdict != limit.Pass {
				assert.NotEmpty(t, s.Reason, id)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
	})
}

// TestPlateIsInBalance: moments at both ends of the block of pressure vanish, so
// the rods and the fill balance, and a rod above the resultant bends nothing.
func TestPlateIsInBalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Preload, in.Needed = 0, 0
		r, _ := check(t, in)
		for _, b := range r.Bend {
			if r.Pull > 0 && b.Reason == "" {
				assert.InEpsilon(t, r.Pull, b.Load*2*b.Half, 1e-12)
			}
		}
	})
	in := stack(basis.Eurocode)
	in.At, in.Each, in.Preload, in.Needed = []geom.Point{{}}, []float64{40e3}, 0, 0
	r, _ := check(t, in)
	// One rod in the middle: the fill bends both halves as cantilevers.
	assert.InEpsilon(t, -40e3*600/8, r.Bend[0].M, 1e-9)
}

// TestRequiredThicknessJustHolds puts the thickness asked for into the plate.
func TestRequiredThicknessJustHolds(t *testing.T) {
	for _, b := range bases {
		in := stack(b)
		_, states := check(t, in)
		for _, id := range []string{"tie_plate_bending", "tie_plate_punching"} {
			s := states[id]
			require.Equal(t, limit.PlateThickness, s.Size, id)
			just := in
			just.Plate.Thickness = s.Required
			_, after := check(t, just)
			assert.InDelta(t, 1, after[id].Utilization, 1e-6, id)
		}
	}
}

func TestStrongerTieIsNeverUsedMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*tie.Input)
	}{
		{"thicker plate", func(in *tie.Input) { in.Plate.Thickness *= 1.2 }},
		{"more weight", func(in *tie.Input) { in.Clamped += 10e3 }},
		{"less settlement", func(in *tie.Input) { in.Settlement /= 2 }},
		{"wider wedge", func(in *tie.Input) { in.Soil.Angle += 0.1 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				in := random(t)
				_, before := check(t, in)
				c.change(&in)
				_, after := check(t, in)
				for id, s := range before {
					if s.Rated {
						assert.LessOrEqual(t, after[id].Utilization, s.Utilization*(1+1e-9), id)
						assert.True(t, after[id].Rated, id)
					}
				}
			})
		})
	}
}

// TestPreloadOfFourM20 is the figure of the mechanics: rods of 0.9 m are 229 kN/mm
// stiff together, and 0.17 mm of shortening takes about 40 kN of preload.
func TestPreloadOfFourM20(t *testing.T) {
	in := stack(basis.Eurocode)
	in.RodArea, in.Length, in.Settlement = 245, 900, 0.17
	r, _ := check(t, in)
	assert.InDelta(t, 229e3, r.Springs.Rods, 500)
	assert.InDelta(t, 40e3, 4*r.Springs.Settled, 1500)
}

func TestRodsBeyondTheFillFail(t *testing.T) {
	in := stack(basis.Eurocode)
	in.PressX, in.Each = 300, []float64{0, 10e3, 0, 10e3}
	_, states := check(t, in)
	assert.Equal(t, limit.Fail, states["tie_plate_bending"].Verdict)
	assert.Contains(t, states["tie_plate_bending"].Reason, "beyond the edge")
}

func TestNothingHoldsWithoutWeight(t *testing.T) {
	in := stack(basis.USASD)
	in.Clamped, in.Soil = 0, tie.Soil{}
	_, states := check(t, in)
	for _, id := range []string{"tie_uplift", "tie_overturning"} {
		assert.Equal(t, limit.Fail, states[id].Verdict, id)
		assert.False(t, states[id].Rated, id)
	}
}

func TestEveryFaultIsNamed(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Plate.Thickness, in.PressX, in.Length, in.Nut = -1, 700, 0, 20
	in.Height, in.Soil.Angle = math.NaN(), 2
	in.At[0].X = -295
	_, err := tie.Check(&in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.ElementsMatch(t, []string{
		"anchorage.through.bottom_plate.thickness_mm", "anchorage.through.height_mm", "anchorage.through.ground.angle_deg",
		"anchorage.through.pressed_x_mm", "rods.rod.stretch_length_mm", "rods.holes.diameter_mm", "rods.positions[0]",
	}, fields)
}

func BenchmarkCheck(b *testing.B) {
	in := stack(basis.Eurocode)
	b.ReportAllocs()
	for b.Loop() {
		if r, err := tie.Check(&in); err != nil || r.Pull == 0 {
			b.Fatal(err)
		}
	}
}

// TestGroundBesideThePlateCountsWithinLimits: 38 kN need more than 0.9 of the 30 kN
// clamped, 20 kN do not.
func TestGroundBesideThePlateCountsWithinLimits(t *testing.T) {
	for _, c := range []struct {
		name         string
		angle, depth float64
		lift         float64
		want         limit.Verdict
	}{
		{"usual", 0.5, 900, 38e3, limit.Pass},
		{"wide", 0.6, 900, 38e3, limit.OutOfScope},
		{"deep", 0.5, 1501, 38e3, limit.OutOfScope},
		{"at the limits", math.Pi / 6, 1500, 38e3, limit.Pass},
		{"deep, not needed", 0.5, 1501, 20e3, limit.Pass},
		{"wide, too little all the same", 0.6, 900, 400e3, limit.Fail},
	} {
		in := stack(basis.Eurocode)
		in.Soil.Angle, in.Soil.Depth, in.Actions = c.angle, c.depth, geom.Actions{N: c.lift}
		_, s := check(t, in)
		assert.Equal(t, c.want, s["tie_uplift"].Verdict, c.name)
	}
}

// TestNobodyCountsOnPreload, even where none is lost.
func TestNobodyCountsOnPreload(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Settlement = 0
	in.Needed = in.Preload
	_, s := check(t, in)
	assert.Equal(t, limit.OutOfScope, s["tie_preload"].Verdict)
	in.Needed++
	_, s = check(t, in)
	assert.Equal(t, limit.Fail, s["tie_preload"].Verdict)
}
