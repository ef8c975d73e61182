package weld_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/weld"
)

func TestDerivationAddsUp(t *testing.T) {
	seen := map[string]bool{}
	law := func(t *rapid.T) {
		in := drawn(t)
		if rapid.Bool().Draw(t, "centre") {
			in = drawnCentre(t)
		} else if n := len(in.Group.Segments); n > 0 && rapid.Bool().Draw(t, "one line") {
			in.Group.Segments, in.Group.Continuous = in.Group.Segments[1:2], false
		}
		r, states := check(t, &in)
		var s derive.Sheet
		r.Derive(&s)
		require.NoError(t, derive.Verify(s.Steps))
		values := map[string]float64{}
		for _, step := range s.Steps {
			assert.NotContains(t, values, step.Symbol, "noted twice")
			values[step.Symbol] = step.Value
			if !(math.Abs(step.Value) <= math.MaxFloat64) {
				t.Fatalf("%s is %g", step.Symbol, step.Value)
			}
		}
		for id, symbol := range map[string]string{"weld_throat_minimum": "u_a", "weld_size_minimum": "u_size", "weld_size_maximum": "u_edge",
			"weld_length_minimum": "u_l", "weld_directional": "u_d", "weld_normal_stress": "u_n", "weld_simplified": "u_s",
			"weld_full_penetration": "u", "weld_metal": "u_w", "weld_groove": "u_g", aboutCentre: "u_ic", "weld_base_metal": "u_b"} {
			if state := states[id]; state.Rated && state.Utilization > 0 {
				seen[id] = true
				assert.Contains(t, values, symbol, id)
				assert.InEpsilon(t, state.Utilization, values[symbol], 1e-9, id)
			}
		}
	}
	// A short run draws too few welds to meet every limit state at once.
	for round := 0; round < 50 && len(seen) < len(weld.Kinds()); round++ {
		rapid.Check(t, law)
	}
	assert.Len(t, seen, len(weld.Kinds()))
}

func TestWildNumbersNeverLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		wild := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300,
			1e-300, 1e9, 1e-3, 2e-3, 1e5}))
		fields := []*float64{&in.Weld.Leg, &in.Weld.Throat, &in.Weld.Corrosion, &in.Run.Length, &in.Run.Along, &in.Group.AtX,
			&in.Group.AtZ, &in.Group.Actions.Mx, &in.Group.Actions.T, &in.Weld.Parts[0].Thickness, &in.Weld.Parts[1].Steel.Fu,
			&in.Weld.Parts[1].Steel.BetaW, &in.Weld.Filler.Strength, &in.Design.EC.GammaM2}
		if len(in.Group.Segments) > 0 {
			fields = append(fields, &in.Group.Segments[0].A.X, &in.Group.Segments[1].B.Y)
		}
		for range rapid.IntRange(1, 3).Draw(t, "n") {
			*rapid.SampledFrom(fields).Draw(t, "field") = wild.Draw(t, "v")
		}
		in.Group.Method = weld.Method(rapid.IntRange(0, 3).Draw(t, "method"))
		r, err := weld.Check(&in)
		if err != nil {
			return
		}
		var l limit.List
		r.States(&l)
		for _, s := range l.All() {
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
				if !(math.Abs(v) <= math.MaxFloat64) {
					t.Fatalf("%s holds %g", s.Kind.ID, v)
				}
			}
		}
		var s derive.Sheet
		r.Derive(&s)
		for _, step := range s.Steps {
			if !(math.Abs(step.Value) <= math.MaxFloat64) {
				t.Fatalf("%s is %g", step.Symbol, step.Value)
			}
		}
	})
}

func TestStatesAndNoticesComeInTheOrderOfTheCatalogue(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		r, err := weld.Check(&in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		var want, got []string
		for _, k := range weld.Kinds() {
			if k.Clause[in.Design.Basis] != "" {
				want = append(want, k.ID)
			}
		}
		for _, s := range l.All() {
			got = append(got, s.Kind.ID)
			if s.Verdict == limit.NotApplicable || s.Verdict == limit.OutOfScope {
				assert.NotEmpty(t, s.Reason)
			}
		}
		assert.Equal(t, want, got)
		var n limit.Notices
		r.Notices(&n)
		at := -1
		for _, notice := range n.All() {
			for i, all := range weld.Remarks() {
				if all == notice {
					assert.Greater(t, i, at)
					at = i
				}
			}
		}
	})
}

var sink weld.Result

func TestCheckAllocatesNothing(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD} {
		in := fillet(b, 0, 5, 235, 360, 0.8)
		in.Run = weld.Run{Length: 200, Count: 2, Normal: 150e3, EndLoaded: true}
		assert.Zero(t, testing.AllocsPerRun(100, func() { sink, _ = weld.Check(&in) }))
		in.Group = cShape(200, 0.5, 1)
		in.Group.Method = weld.Elastic
		assert.Zero(t, testing.AllocsPerRun(100, func() { sink, _ = weld.Check(&in) }))
	}
}

func BenchmarkCheck(b *testing.B) {
	for name, design := range map[string]basis.Basis{"Eurocode": basis.Eurocode, "US": basis.USLRFD} {
		in := fillet(design, 0, 5, 235, 360, 0.8)
		in.Run = weld.Run{Length: 200, Count: 2, Normal: 150e3, Along: 1e4}
		group := in
		group.Group = cShape(200, 0.5, 1)
		group.Group.Method = weld.Elastic
		measure := func(in *weld.Input) func(b *testing.B) {
			return func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					sink, _ = weld.Check(in)
				}
			}
		}
		b.Run(name+"/run", measure(&in))
		b.Run(name+"/elastic group", measure(&group))
		b.Run(name+"/run with states", measureStates(&in))
		b.Run(name+"/elastic group with states", measureStates(&group))
		if design == basis.USLRFD {
			centre := group
			centre.Group.Method = weld.InstantaneousCentre
			b.Run(name+"/instantaneous centre", measure(&centre))
		}
	}
}

// measureStates adds the limit states, without full size at the ends.
func measureStates(in *weld.Input) func(b *testing.B) {
	return func(b *testing.B) {
		in := *in
		in.Weld.FullSize = false
		var l limit.List
		b.ReportAllocs()
		for b.Loop() {
			sink, _ = weld.Check(&in)
			l.Reset()
			sink.States(&l)
		}
	}
}
