package anchor_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

var bases = []basis.Basis{basis.Eurocode, basis.USLRFD}

// group is four rods in the middle of a block.
func group(b basis.Basis) anchor.Input {
	in := anchor.Input{
		Design:    basis.Design{Basis: b, EC: basis.Recommended()},
		Thread:    material.Thread{Diameter: 24, StressArea: 353},
		Steel:     material.RodSteel{Fy: 640, Fu: 800},
		At:        []geom.Point{{X: -100, Y: -80}, {X: 100, Y: -80}, {X: -100, Y: 80}, {X: 100, Y: 80}},
		Embedment: 300,
		Head:      anchor.Head{Diameter: 60, Thickness: 20},
		Block:     anchor.Block{Concrete: material.Concrete{Strength: 30}, SizeX: 900, SizeY: 800, Height: 700},
	}
	for range in.At {
		in.Each = append(in.Each, anchor.Force{Tension: 20e3, ShearX: 3e3, ShearY: -2e3})
	}
	return in
}

// random is a group whose rods, block and forces are drawn.
func random(t *rapid.T) anchor.Input {
	in := group(rapid.SampledFrom(bases).Draw(t, "basis"))
	n := rapid.IntRange(1, 6).Draw(t, "rods")
	in.At, in.Each = nil, nil
	in.Block.SizeX, in.Block.SizeY = rapid.Float64Range(300, 2500).Draw(t, "x"), rapid.Float64Range(300, 2500).Draw(t, "y")
	in.Block.Height = rapid.Float64Range(270, 1500).Draw(t, "h")
	in.Embedment = rapid.Float64Range(60, 240).Draw(t, "h_ef")
	in.Uncracked = rapid.Bool().Draw(t, "uncracked")
	in.Under = anchor.Under{GroutThick: rapid.Float64Range(0, 60).Draw(t, "grout"), GroutStrength: rapid.Float64Range(20, 60).Draw(t, "mortar"),
		Plate: 30, Level: rapid.Bool().Draw(t, "level"), HoldsRotation: rapid.Bool().Draw(t, "held"),
		Gap: rapid.SampledFrom([]float64{0, 0, 40}).Draw(t, "gap"), Washer: rapid.SampledFrom([]float64{0, 0, 12}).Draw(t, "washer")}
	// Forces of either sign for shear; of some newtons at least, or none.
	force := func(name string, signs ...float64) float64 {
		return rapid.SampledFrom(append(signs, 0)).Draw(t, "sign "+name) * rapid.Float64Range(10, 40e3).Draw(t, name)
	}
	for range n {
		in.At = append(in.At, geom.Point{
			X: rapid.Float64Range(-0.45, 0.45).Draw(t, "at x") * in.Block.SizeX,
			Y: rapid.Float64Range(-0.45, 0.45).Draw(t, "at y") * in.Block.SizeY,
		})
		in.Each = append(in.Each, anchor.Force{Tension: force("tension", 1), ShearX: force("shear x", 1, -1), ShearY: force("shear y", 1, -1)})
	}
	return in
}

func check(t require.TestingT, in anchor.Input) (*anchor.Result, map[string]limit.State) {
	r, err := anchor.Check(&in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return r, out
}

func use(s limit.State) float64 {
	if s.Verdict == limit.Fail && !s.Rated {
		return math.Inf(1)
	}
	return s.Utilization
}

func TestEveryAnswerIsFiniteAndCanBeFollowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, states := check(t, in)
		for id, s := range states {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), id)
			}
			if s.Verdict == limit.NotApplicable || s.Verdict == limit.OutOfScope {
				assert.NotEmpty(t, s.Reason, id)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		var l limit.Notices
		r.Notices(&l)
		assert.NotEmpty(t, l.All())
	})
}

// TestConesOfRodsFarApartAddUp compares a group whose cones do not meet with its
// rods alone.
func TestConesOfRodsFarApartAddUp(t *testing.T) {
	for _, b := range bases {
		in := group(b)
		in.Block.SizeX, in.Block.SizeY = 6000, 6000
		in.At = []geom.Point{{X: -1000}, {X: 1000}}
		in.Each = []anchor.Force{{Tension: 20e3}, {Tension: 20e3}}
		two, _ := check(t, in)
		in.At, in.Each = in.At[:1], in.Each[:1]
		one, _ := check(t, in)
		assert.InEpsilon(t, 2*one.Cone.NRd, two.Cone.NRd, 1e-12)
	}
}

// TestAreaOfConesIsTheirUnion compares it with a count of points.
func TestAreaOfConesIsTheirUnion(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		// So near that all are one group, each with the same force.
		x, y := min(in.Block.SizeX, 600), min(in.Block.SizeY, 600)
		for i := range in.Each {
			in.Each[i].Tension = 1e3
			in.At[i].X, in.At[i].Y = in.At[i].X*x/in.Block.SizeX, in.At[i].Y*y/in.Block.SizeY
		}
		in.Block.SizeX, in.Block.SizeY, in.Embedment = x, y, max(in.Embedment, 200)
		r, _ := check(t, in)
		const n = 300
		inside, reach := 0, 1.5*r.Cone.H
		for i := range n {
			for k := range n {
				x, y := (float64(i)+0.5)/n*in.Block.SizeX-in.Block.SizeX/2, (float64(k)+0.5)/n*in.Block.SizeY-in.Block.SizeY/2
				for _, p := range in.At {
					if math.Abs(p.X-x) <= reach && math.Abs(p.Y-y) <= reach {
						inside++
						break
					}
				}
			}
		}
		counted := float64(inside) / (n * n) * in.Block.SizeX * in.Block.SizeY
		// Every edge of a square may pass by one row of points.
		slack := 4 * float64(len(in.At)) * reach * math.Max(in.Block.SizeX, in.Block.SizeY) / n
		assert.InDelta(t, counted, r.Cone.A, slack)
	})
}

func TestTurnedGroupIsUsedAlike(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, before := check(t, in)
		turned := in
		turned.Block.SizeX, turned.Block.SizeY = in.Block.SizeY, in.Block.SizeX
		turned.At, turned.Each = nil, nil
		for i, p := range in.At {
			turned.At = append(turned.At, geom.Point{X: -p.Y, Y: p.X})
			f := in.Each[i]
			turned.Each = append(turned.Each, anchor.Force{Tension: f.Tension, ShearX: -f.ShearY, ShearY: f.ShearX})
		}
		_, after := check(t, turned)
		for id, s := range before {
			assert.Equal(t, s.Verdict, after[id].Verdict, id)
			assert.InDelta(t, s.Utilization, after[id].Utilization, 1e-9*(1+s.Utilization), id)
		}
	})
}

// TestStrongerGroupIsNeverUsedMore changes one thing for the better. A wider block
// is none: beside three near edges the standards count a shorter embedment, which
// gives more than the full one does beside two.
func TestStrongerGroupIsNeverUsedMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*anchor.Input)
	}{
		{"smaller forces", func(in *anchor.Input) {
			in.Each = append([]anchor.Force(nil), in.Each...)
			for i := range in.Each {
				in.Each[i].Tension *= 0.8
				in.Each[i].ShearX *= 0.8
				in.Each[i].ShearY *= 0.8
			}
		}},
		{"stronger concrete", func(in *anchor.Input) { in.Block.Concrete.Strength *= 1.3 }},
		{"uncracked", func(in *anchor.Input) { in.Uncracked = true }},
		{"larger head", func(in *anchor.Input) { in.Head.Diameter *= 1.2 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				in := random(t)
				in.Under.GroutStrength = 200 // never weaker than the concrete
				_, before := check(t, in)
				better := in
				c.change(&better)
				_, after := check(t, better)
				for id, s := range before {
					if s.Verdict == limit.Pass || s.Verdict == limit.Fail {
						assert.LessOrEqual(t, use(after[id]), use(s)*(1+1e-9), id)
					}
				}
			})
		})
	}
}

func TestTorsionIsCarriedByMagnitude(t *testing.T) {
	in := group(basis.Eurocode)
	for i, p := range in.At {
		in.Each[i] = anchor.Force{ShearX: -30 * p.Y, ShearY: 30 * p.X}
	}
	r, states := check(t, in)
	assert.InEpsilon(t, 4*30*math.Hypot(100, 80), r.V, 1e-12)
	assert.Positive(t, states["anchor_edge"].Utilization)
	assert.Equal(t, limit.NotApplicable, states["anchor_cone"].Verdict)
}

func TestWhatTheBasisDoesNotCover(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*anchor.Input)
		state  string
	}{
		{"allowable stress", func(in *anchor.Input) { in.Design.Basis = basis.USASD }, "anchor_cone"},
		{"weak concrete", func(in *anchor.Input) { in.Block.Concrete.Strength = 8 }, "anchor_cone"},
		{"light concrete", func(in *anchor.Input) { in.LightFactor = 0.85 }, "anchor_edge"},
		{"shallow", func(in *anchor.Input) { in.Embedment = 35 }, "anchor_cone"},
		{"thick rod", func(in *anchor.Input) {
			in.Thread, in.Head = material.Thread{Diameter: 64, StressArea: 2676}, anchor.Head{Area: 5000}
		}, "anchor_pull_out"},
		{"loose holes", func(in *anchor.Input) { in.Under.Loose = true }, "anchor_rod_shear"},
		{"hard steel", func(in *anchor.Input) { in.Steel = material.RodSteel{Fy: 1080, Fu: 1200} }, "anchor_rod_combined"},
		{"forces unknown", func(in *anchor.Input) { in.Each, in.ShareReason = nil, "the plate presses" }, "anchor_combined"},
		{"US, strong concrete", func(in *anchor.Input) { in.Design.Basis = basis.USLRFD; in.Block.Concrete.Strength = 90 }, "anchor_edge"},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := group(basis.Eurocode)
			c.change(&in)
			_, states := check(t, in)
			assert.Equal(t, limit.OutOfScope, states[c.state].Verdict)
			assert.NotEmpty(t, states[c.state].Reason)
		})
	}
}

func TestEveryFaultIsNamed(t *testing.T) {
	in := group(basis.Eurocode)
	in.Embedment = 800
	in.Head = anchor.Head{Diameter: 20, Thickness: 10}
	in.At[0].X = -445
	in.PryFactor, in.LightFactor = 3, 0.5
	in.Each[1].Tension = math.NaN()
	_, err := anchor.Check(&in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.ElementsMatch(t, []string{
		"anchorage.headed.embedment_mm", "anchorage.headed.head.diameter_mm", "rods.positions[0]",
		"anchorage.headed.pry_out_factor", "anchorage.headed.lightweight_factor", "rod_forces[1].tension_kn",
	}, fields)
}

func BenchmarkCheck(b *testing.B) {
	for _, d := range bases {
		in := group(d)
		b.Run(map[basis.Basis]string{basis.Eurocode: "EC", basis.USLRFD: "LRFD"}[d], func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if r, err := anchor.Check(&in); err != nil || r.V == 0 {
					b.Fatal(err)
				}
			}
		})
	}
}
