package base_test

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// random draws a base on concrete or on a stack, held or not, under one combination.
func random(t *rapid.T) *base.ColumnInput {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
	a := geom.Actions{N: number("N", -300e3, 40e3), Vx: number("V_x", -20e3, 20e3)}
	if rapid.Bool().Draw(t, "bent") {
		a.My = number("M_y", -30e6, 30e6)
	}
	if rapid.Bool().Draw(t, "turned") {
		a.Vx, a.Vy, a.Mx, a.My = 0, a.Vx, a.My, 0
	}
	return randomOn(t, b, a)
}

func randomOn(t *rapid.T, b basis.Basis, a geom.Actions) *base.ColumnInput {
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in := column(b, a)
	switch rapid.SampledFrom([]string{"concrete", "soft concrete", "stack", "stack to the ground"}).Draw(t, "on") {
	case "soft concrete":
		in.Modulus = number("k", 0.5, 50)
	case "stack":
		in = onRings(b, a)
		in.Below.Settlement.Limits.Tilt = 0.003
	case "stack to the ground":
		in = through(b, 760, 20)
		in.Cases[0].Actions, in.Below.Service[0].Actions, in.Below.Pairs[0].Permanent = a, a, a
		in.Below.Sustained[0].Actions = geom.Actions{N: a.N / 2}
		in.Anchorage.Through.Preload = rapid.SampledFrom([]float64{0, 5e3, 40e3}).Draw(t, "tightened")
	}
	in.Below.Stack.Settlement = 15
	in.Base.Plate.Plate.Thickness = number("t", 15, 60)
	in.Weld.Parts[0].Thickness = in.Base.Plate.Plate.Thickness
	in.Base.Rod.Corrosion = rapid.SampledFrom([]float64{0, 2}).Draw(t, "loss")
	if !in.Below.HasStack {
		if rapid.Bool().Draw(t, "headed") {
			in.Anchorage = anchorages()["headed"]
		}
		in.Preload = rapid.SampledFrom([]float64{0, 10e3}).Draw(t, "preload")
	}
	in.NoSizes = true
	return in
}

// TestReceiversTakeWhatGiversShow walks the table of what the parts hand on.
func TestReceiversTakeWhatGiversShow(t *testing.T) {
	seen := map[base.Handover]int{}
	walk := func(t *rapid.T) {
		in := random(t)
		r, err := base.CheckColumn(in)
		if err != nil {
			return
		}
		got := states(t, r)
		for _, h := range base.Handovers() {
			g, t1 := got[h.Gives], got[h.Takes]
			if g.Kind == nil || t1.Kind == nil || !(g.Demand > 0) || !(t1.Demand > 0) || g.Verdict == limit.NotApplicable {
				continue
			}
			seen[h]++
			given := g.Demand
			if h.Row {
				given /= 2
			}
			if !(t1.Demand >= given*(1-1e-9)) {
				t.Fatalf("%s to %s: %s, %g of %s given, %g of %s taken", h.From, h.To, h.What, given, h.Gives, t1.Demand, h.Takes)
			}
		}
		for _, tension := range r.Rows[0].Tensions {
			if least := max(in.Preload, in.Anchorage.Through.Preload); got["base_equilibrium"].Verdict != limit.Fail && !(tension >= least) {
				t.Fatalf("a rod has %g of the %g to which it is tightened", tension, least)
			}
		}
	}
	rapid.Check(t, walk)
	// What a hundred draws may miss, examples that are always the same do not.
	again := rapid.Custom(func(t *rapid.T) bool { walk(t); return true })
	missed := func(h base.Handover) bool { return seen[h] == 0 }
	for i := 0; i < 600 && slices.ContainsFunc(base.Handovers(), missed); i++ {
		again.Example(i)
	}
	for _, h := range base.Handovers() {
		assert.Positive(t, seen[h], "%+v", h)
	}
}

// TestHeightOfABaseIsThatOfItsParts from the plate's upper face, where the actions act.
func TestHeightOfABaseIsThatOfItsParts(t *testing.T) {
	assert.InDelta(t, 30+2*300+20+100, base.Height(through(basis.Eurocode, 760, 20)), 1e-9)
	in := column(basis.Eurocode, geom.Actions{N: -100e3})
	assert.InDelta(t, 30+30+1000, base.Height(in), 1e-9)
}

// TestMirrorAndQuarterTurnOfABaseAnswerTheSame for bases with all that lies below.
func TestMirrorAndQuarterTurnOfABaseAnswerTheSame(t *testing.T) {
	same := func(t *rapid.T, a, b map[string]limit.State) {
		require.Equal(t, len(a), len(b))
		for id, s := range a {
			o := b[id]
			if max(s.Utilization, o.Utilization) < 5e-3 && s.Verdict != limit.Fail && o.Verdict != limit.Fail && (s.Rated || o.Rated) {
				continue // next to nothing, or just nothing
			}
			if s.Verdict != o.Verdict || !(math.Abs(s.Utilization-o.Utilization) <= 5e-5*(1+s.Utilization)) { // searches end within 1e-5
				t.Fatalf("%s: %v %g, then %v %g (%s / %s)", id, s.Verdict, s.Utilization, o.Verdict, o.Utilization, s.Reason, o.Reason)
			}
		}
	}
	each := func(in *base.ColumnInput, f func(*geom.Actions)) *base.ColumnInput {
		out := *in
		for _, list := range []*[]base.Case{&out.Cases, &out.Below.Service, &out.Below.Sustained} {
			*list = append([]base.Case(nil), *list...)
			for i := range *list {
				f(&(*list)[i].Actions)
			}
		}
		out.Below.Pairs = append([]base.Pair(nil), out.Below.Pairs...)
		for i := range out.Below.Pairs {
			f(&out.Below.Pairs[i].Permanent)
			f(&out.Below.Pairs[i].Variable)
		}
		return &out
	}
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		// A footprint and rods that are the same both ways.
		f := &in.Base.Plate.Footprint
		f.Shape, f.SizeX, f.SizeY, f.Thick, f.Web = 2, 200, 200, 10, 0
		in.Base.At = []geom.Point{{X: -150, Y: -150}, {X: 150, Y: -150}, {X: 150, Y: 150}, {X: -150, Y: 150}}
		r, err := base.CheckColumn(in)
		if err != nil {
			return
		}
		got := states(t, r)
		for name, turn := range map[string]func(*geom.Actions){
			"mirrored":      func(a *geom.Actions) { a.Vx, a.My = -a.Vx, -a.My },
			"mirrored in y": func(a *geom.Actions) { a.Vy, a.Mx = -a.Vy, -a.Mx },
			"turned":        func(a *geom.Actions) { a.Vx, a.Vy, a.Mx, a.My = -a.Vy, a.Vx, -a.My, a.Mx },
		} {
			o, err := base.CheckColumn(each(in, turn))
			require.NoError(t, err, name)
			same(t, got, states(t, o))
		}
	})
}
