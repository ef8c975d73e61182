package settle_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/settle"
)

var bases = []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}

// pad is a rigid rectangle on two layers of sand over clay, in two stages.
func pad(b basis.Basis) settle.Input {
	return settle.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Shape:  settle.Rectangle, SizeX: 1500, SizeY: 1000, Diameter: 1200, Rigid: true,
		Depth: 800, Above: 18e-6, Water: 1500, Years: 10,
		Layers: []settle.Layer{
			{Thickness: 1200, Modulus: 20, Poisson: 0.3, Weight: 18e-6, N60: 14, Cone: 6},
			{Thickness: 2500, Modulus: 30, Poisson: 0.3, Weight: 19e-6, N60: 20, Cone: 9},
			{
				Thickness: 3000, Modulus: 6, Poisson: 0.4, Weight: 17e-6, N60: 22, Cone: 10,
				Oedometer: settle.Oedometer{Compression: 0.3, Recompression: 0.05, Void: 0.9, Preconsolidation: 0.08},
			},
		},
		Stages:     []settle.Stage{{Name: "frame", N: 90e3}, {Name: "service", N: 180e3, Mx: 5e6, My: 9e6}},
		Limits:     settle.Limits{Tilt: 0.005},
		Neighbours: []settle.Neighbour{{Distance: 5000, Settlement: 6}, {Distance: 3000, Settlement: 1}},
	}
}

func random(t *rapid.T) settle.Input {
	in := pad(rapid.SampledFrom(bases).Draw(t, "basis"))
	in.Shape = rapid.SampledFrom([]settle.Shape{settle.Rectangle, settle.Circle}).Draw(t, "shape")
	in.SizeX = rapid.Float64Range(300, 9000).Draw(t, "x")
	in.SizeY = rapid.Float64Range(300, 4000).Draw(t, "y")
	in.Diameter = rapid.Float64Range(300, 5000).Draw(t, "D")
	in.Rigid, in.HalfSpace = rapid.Bool().Draw(t, "rigid"), rapid.Bool().Draw(t, "half space")
	in.Dry, in.Simpson = rapid.Bool().Draw(t, "dry"), rapid.Bool().Draw(t, "simpson")
	in.Spread = rapid.SampledFrom([]settle.Spread{settle.Boussinesq, settle.TwoToOne}).Draw(t, "spread")
	in.Depth, in.Water = rapid.Float64Range(0, 3000).Draw(t, "depth"), rapid.Float64Range(0, 6000).Draw(t, "water")
	in.Preloaded = rapid.SampledFrom([]float64{0, 0.05, 0.3}).Draw(t, "preloaded")
	in.Years = rapid.SampledFrom([]float64{0, 0.05, 1, 30}).Draw(t, "years")
	for i := range in.Layers {
		l := &in.Layers[i]
		l.Thickness = rapid.Float64Range(10, 9000).Draw(t, "h")
		l.Modulus = rapid.Float64Range(1, 200).Draw(t, "E")
		l.Poisson = rapid.Float64Range(0, 0.5).Draw(t, "nu")
		l.N60 = rapid.Float64Range(2, 60).Draw(t, "N60")
		l.Cone = rapid.Float64Range(0.5, 40).Draw(t, "q_c")
	}
	for i := range in.Stages {
		in.Stages[i].N = rapid.Float64Range(0, 3e6).Draw(t, "N")
		in.Stages[i].Mx = rapid.Float64Range(-9e7, 9e7).Draw(t, "M")
	}
	return in
}

func check(t require.TestingT, in settle.Input) (*settle.Result, map[string]limit.State) {
	r, err := settle.Check(&in)
	require.NoError(t, err)
	var l limit.List
	r.States(&l)
	require.Len(t, l.All(), len(settle.Kinds()))
	out := map[string]limit.State{}
	for i, s := range l.All() {
		require.Equal(t, settle.Kinds()[i], s.Kind)
		out[s.Kind.ID] = s
	}
	return r, out
}

func last(r *settle.Result) *settle.Settled { return &r.Stages[len(r.Stages)-1] }

func figures(s *settle.Settled) []float64 {
	return []float64{s.Centre, s.Elastic, s.Schmertmann, s.Burland, s.BlowCount, s.Consolidation, s.TiltX, s.TiltY, s.Tilt}
}

func codes(r *settle.Result) []string {
	var l limit.Notices
	r.Notices(&l)
	var out []string
	for _, n := range l.All() {
		out = append(out, n.Code)
	}
	return out
}

func TestEveryMethodGivesItsOwnState(t *testing.T) {
	for _, b := range bases {
		r, states := check(t, pad(b))
		for id, want := range map[string]float64{
			"settle_elastic": last(r).Elastic, "settle_schmertmann": last(r).Schmertmann,
			"settle_burland_burbidge": last(r).Burland, "settle_consolidation": last(r).Consolidation,
		} {
			assert.Equal(t, want, states[id].Demand, id)
			assert.Positive(t, want, id)
			assert.Equal(t, 50., states[id].Resistance, id)
			assert.Equal(t, 2, states[id].Stage, id)
		}
		assert.Equal(t, 0.002, states["settle_differential"].Resistance)
		assert.Equal(t, last(r).Tilt, states["settle_tilt"].Demand)
		assert.Contains(t, codes(r), "settle_routine_only")
	}
}

func TestMissingDataLeavesOutOnlyItsMethod(t *testing.T) {
	for id, change := range map[string]func(*settle.Input){
		"settle_elastic":          func(in *settle.Input) { in.Layers[2].Modulus = 0 },
		"settle_schmertmann":      func(in *settle.Input) { in.Layers[0].Cone = 0 },
		"settle_burland_burbidge": func(in *settle.Input) { in.Layers[0].N60 = 0 },
		"settle_consolidation":    func(in *settle.Input) { in.Layers[2].Oedometer = settle.Oedometer{} },
	} {
		in := pad(basis.Eurocode)
		change(&in)
		_, states := check(t, in)
		for other, s := range states {
			if other == id || other == "settle_total" && id == "settle_consolidation" {
				assert.Equal(t, limit.NotApplicable, s.Verdict, "%s without data of %s", other, id)
				assert.NotEmpty(t, s.Reason, other)
			} else {
				assert.NotEqual(t, limit.NotApplicable, s.Verdict, "%s without data of %s", other, id)
			}
		}
	}
	in := pad(basis.Eurocode)
	in.Above = 0
	_, states := check(t, in)
	for _, id := range []string{"settle_schmertmann", "settle_burland_burbidge", "settle_consolidation"} {
		assert.Contains(t, states[id].Reason, "unit weight", id)
	}
}

func TestSpreadOfTheSandMethodsIsShown(t *testing.T) {
	in := pad(basis.Eurocode)
	for i := range in.Layers {
		in.Layers[i].Cone = 1
	}
	r, _ := check(t, in)
	assert.Greater(t, last(r).Schmertmann, 2*last(r).Burland)
	assert.Contains(t, codes(r), "settle_methods_differ")
}

func TestLighterStageHeavesNothing(t *testing.T) {
	in := pad(basis.Eurocode)
	in.Stages[1].N = 10e3
	r, states := check(t, in)
	assert.Equal(t, 1, states["settle_elastic"].Stage)
	assert.Equal(t, r.Stages[0].Elastic, states["settle_elastic"].Demand)
	assert.Contains(t, codes(r), "settle_unloading")
}

func TestStifferGroundNeverSettlesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		soft, _ := check(t, in)
		stiff := in
		stiff.Layers = append([]settle.Layer(nil), in.Layers...)
		l := &stiff.Layers[rapid.IntRange(0, 2).Draw(t, "layer")]
		l.Modulus *= 1.5
		l.Cone *= 1.5
		l.Oedometer.Compression /= 1.5
		r, _ := check(t, stiff)
		for i, v := range figures(last(r)) {
			assert.LessOrEqual(t, v, figures(last(soft))[i]*(1+1e-9), "figure %d", i)
		}
	})
}

func TestMoreLoadNeverSettlesLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Stages[1].N = in.Stages[0].N * rapid.Float64Range(1, 3).Draw(t, "more")
		in.Stages[1].Mx = in.Stages[0].Mx
		in.Stages[0].My = in.Stages[1].My
		r, _ := check(t, in)
		for i, v := range figures(&r.Stages[0]) {
			assert.GreaterOrEqual(t, figures(&r.Stages[1])[i], v*(1-1e-9), "figure %d", i)
		}
	})
}

func TestFlexibleCentreNeverSettlesLessThanRigid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Rigid = true
		r, _ := check(t, in)
		in.Rigid = false
		f, _ := check(t, in)
		assert.LessOrEqual(t, last(r).Elastic, last(f).Elastic)
		assert.Equal(t, last(f).Centre, last(f).Elastic)
	})
}

func TestEqualLayersAreOneLayer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		for i := range in.Layers {
			h := in.Layers[i].Thickness
			in.Layers[i] = in.Layers[0]
			in.Layers[i].Thickness = h
		}
		r, _ := check(t, in)
		one := in
		one.Layers = []settle.Layer{in.Layers[0]}
		one.Layers[0].Thickness = in.Layers[0].Thickness + in.Layers[1].Thickness + in.Layers[2].Thickness
		s, _ := check(t, one)
		for _, v := range [][2]float64{
			{last(r).Elastic, last(s).Elastic},
			{last(r).Schmertmann, last(s).Schmertmann},
			{last(r).Burland, last(s).Burland},
		} {
			assert.InDelta(t, v[1], v[0], 1e-9*(1+v[1]))
		}
	})
}

func TestFigureIsTheRigidCircleOnAHalfSpace(t *testing.T) {
	in := pad(basis.Eurocode)
	in.Shape, in.Diameter, in.HalfSpace = settle.Circle, 800, true
	in.Layers = []settle.Layer{{Thickness: 100, Modulus: 20, Poisson: 0.3}}
	in.Stages = []settle.Stage{{N: 50e3, My: 5e6}}
	r, _ := check(t, in)
	assert.InDelta(t, settle.RigidCircle(50e3, 400, 20, 0.3), last(r).Elastic, 1e-9)
	assert.InDelta(t, settle.FlexibleCircle(last(r).Pressure, 400, 20, 0.3), last(r).Centre, 1e-9)
	assert.InDelta(t, settle.TiltOfCircle(5e6, 400, 20, 0.3), last(r).Tilt, 1e-12)
}

func TestDerivationVerifiesAndAllIsFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r, states := check(t, random(t))
		var s derive.Sheet
		r.Derive(&s)
		assert.NotEmpty(t, s.Steps)
		assert.NoError(t, derive.Verify(s.Steps))
		for _, v := range append(figures(&r.Stages[0]), figures(last(r))...) {
			assert.True(t, v >= 0 && v <= math.MaxFloat64, "%g", v)
		}
		for id, v := range states {
			assert.True(t, v.Demand >= 0 && v.Utilization <= math.MaxFloat64, id)
		}
	})
}

func TestFaultsNameTheirFields(t *testing.T) {
	nan := math.NaN()
	for field, change := range map[string]func(*settle.Input){
		"basis.family":                            func(in *settle.Input) { in.Design.Basis = 0 },
		"footing.plan":                            func(in *settle.Input) { in.Shape = 0 },
		"footing.rectangle.size_x_mm":             func(in *settle.Input) { in.SizeX = nan },
		"footing.circle.diameter_mm":              func(in *settle.Input) { in.Shape, in.Diameter = settle.Circle, 0 },
		"footing.depth_mm":                        func(in *settle.Input) { in.Depth = -1 },
		"stress_spread":                           func(in *settle.Input) { in.Spread = 9 },
		"water_depth_mm":                          func(in *settle.Input) { in.Water = math.Inf(1) },
		"creep_years":                             func(in *settle.Input) { in.Years = nan },
		"limits.total_mm":                         func(in *settle.Input) { in.Limits.Total = -1 },
		"layers":                                  func(in *settle.Input) { in.Layers = nil },
		"stages":                                  func(in *settle.Input) { in.Stages = nil },
		"layers[0].thickness_mm":                  func(in *settle.Input) { in.Layers[0].Thickness = 0 },
		"layers[0].modulus_mpa":                   func(in *settle.Input) { in.Layers[0].Modulus = nan },
		"layers[1].poisson":                       func(in *settle.Input) { in.Layers[1].Poisson = 0.6 },
		"layers[2].oedometer.void_ratio":          func(in *settle.Input) { in.Layers[2].Oedometer.Void = 0 },
		"stages[0]":                               func(in *settle.Input) { in.Stages[0].Net = 0.1 },
		"stages[1].compression_kn":                func(in *settle.Input) { in.Stages[1].N = nan },
		"stages[1].m_x_knm":                       func(in *settle.Input) { in.Stages[1].Mx = nan },
		"neighbours[1].distance_mm":               func(in *settle.Input) { in.Neighbours[1].Distance = 0 },
		"layers[2].oedometer.recompression_index": func(in *settle.Input) { in.Layers[2].Oedometer.Recompression = 0.5 },
		"layers[2].oedometer.compression_index":   func(in *settle.Input) { in.Layers[2].Oedometer.Compression = 0 },
	} {
		t.Run(field, func(t *testing.T) {
			in := pad(basis.Eurocode)
			change(&in)
			_, err := settle.Check(&in)
			var faults limit.Faults
			require.ErrorAs(t, err, &faults)
			require.Len(t, faults, 1)
			assert.Equal(t, field, faults[0].Field)
		})
	}
	_, err := settle.Check(&settle.Input{})
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	assert.Greater(t, len(faults), 3)
}

func TestRemarksHaveTheirOwnCodes(t *testing.T) {
	seen := map[string]bool{}
	for _, n := range settle.Remarks() {
		assert.False(t, seen[n.Code], n.Code)
		assert.NotEmpty(t, n.Text, n.Code)
		seen[n.Code] = true
	}
}
