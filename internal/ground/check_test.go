package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
)

const degree = math.Pi / 180

var (
	bases   = []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}
	authors = []ground.Author{ground.Terzaghi, ground.Meyerhof, ground.Hansen, ground.Vesic}
)

// pad is a footing on clayey sand, under a column with wind.
func pad(b basis.Basis) ground.Input {
	return ground.Input{
		Design: basis.Design{Basis: b, EC: basis.Recommended()},
		Shape:  ground.Rectangle, SizeX: 2000, SizeY: 1500, Diameter: 1800, Depth: 800, Height: 900,
		Permanent: geom.Actions{N: -200e3, Vx: 2e3}, Variable: geom.Actions{N: -100e3, Vx: 8e3, My: 9e6},
		Weight: 60e3,
		Soil: ground.Soil{
			Friction: 30 * degree, Cohesion: 0.005, Undrained: 0.09, Above: 17e-6, Below: 19e-6, Water: 2000,
		},
		Interface: ground.Interface{Share: 1}, Author: ground.Vesic, Resistance: 0.45,
	}
}

func random(t *rapid.T) ground.Input {
	in := pad(rapid.SampledFrom(bases).Draw(t, "basis"))
	number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in.Shape = rapid.SampledFrom([]ground.Shape{ground.Rectangle, ground.Circle}).Draw(t, "shape")
	in.SizeX, in.SizeY, in.Diameter = number("x", 300, 4000), number("y", 300, 4000), number("D", 300, 4000)
	in.Depth, in.Height = number("depth", 0, 2000), number("height", 0, 2000)
	action := func(name string) geom.Actions {
		return geom.Actions{
			N: number(name+"N", -900e3, 90e3), Vx: number(name+"Vx", -20e3, 20e3), Vy: number(name+"Vy", -20e3, 20e3),
			Mx: number(name+"Mx", -30e6, 30e6), My: number(name+"My", -30e6, 30e6),
		}
	}
	in.Permanent = action("G")
	if rapid.Bool().Draw(t, "variable") {
		in.Variable = action("Q")
	} else {
		in.Variable = geom.Actions{}
		in.Permanent.Vx, in.Permanent.Vy = 0, 0
	}
	in.Linked = rapid.Bool().Draw(t, "linked")
	in.Apart = rapid.Bool().Draw(t, "apart")
	if rapid.Bool().Draw(t, "lifts") {
		in.Lift = max(0, in.Permanent.N) + number("lift", 0, 100e3)
	}
	in.Weight = number("weight", 0, 300e3)
	in.Soil.Friction = number("phi", 1, 44) * degree
	in.Soil.Cohesion = rapid.SampledFrom([]float64{0, 0.004, 0.03}).Draw(t, "c")
	in.Soil.Undrained = rapid.SampledFrom([]float64{0, 0.03, 0.2}).Draw(t, "c_u")
	in.Soil.Water, in.Soil.Dry = number("water", 0, 6000), rapid.Bool().Draw(t, "dry")
	in.Interface = ground.Interface{Share: rapid.SampledFrom([]float64{1, 2.0 / 3, 0.3}).Draw(t, "share"), Sealed: rapid.Bool().Draw(t, "sealed")}
	in.Author = rapid.SampledFrom(authors).Draw(t, "author")
	switch rapid.IntRange(0, 3).Draw(t, "kind") {
	case 0:
		in.Presumptive = ground.Presumptive{Pressure: 0.15, Source: "a table"}
	case 1:
		in.Soil.Undrained, in.Soil.Cohesion = 0, 0
		in.Layer = ground.Layer{Thickness: number("layer", 10, 2000), Clay: 0.03, Punching: 2}
	case 2:
		in.Soil.Friction, in.Soil.Cohesion, in.Soil.Undrained = 0, 0, 0.05
	}
	return in
}

func check(t require.TestingT, in ground.Input) (*ground.Result, map[string]limit.State) {
	r, err := ground.Check(&in)
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
		in := random(t)
		r, states := check(t, in)
		for _, k := range ground.Kinds() {
			if k.Clause[in.Design.Basis] != "" {
				assert.Contains(t, states, k.ID)
			} else {
				assert.NotContains(t, states, k.ID)
			}
		}
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
		only := derive.Sheet{FactorsOnly: true}
		r.Derive(&only)
		assert.Equal(t, sheet.Factors, only.Factors)
		assert.Empty(t, only.Steps)
		var notices limit.Notices
		r.Notices(&notices)
		for _, n := range notices.All() {
			assert.Contains(t, ground.Remarks(), n)
		}
	})
}

// TestStepsOfUsualFootingsHaveExpressions: only values that lose their digits are
// written without one.
func TestStepsOfUsualFootingsHaveExpressions(t *testing.T) {
	strict := map[string]bool{}
	for _, symbol := range []string{
		"V", "H", "M_y", "e_x", "N_gamma", "s_c", "s_q", "s_gamma", "d_c", "d_q", "i_c", "i_gamma", "p_c", "p_q", "p_gamma", "q_ult",
		"A'", "B'", "R_d", "V_d", "R_h", "eta_e", "M_stb,x", "M_dst,y", "M_stb", "M_dst",
	} {
		strict[symbol] = true
	}
	for _, b := range bases {
		for _, a := range authors {
			for _, shape := range []ground.Shape{ground.Rectangle, ground.Circle} {
				for _, pushed := range []bool{false, true} {
					in := pad(b)
					in.Author, in.Shape = a, shape
					if !pushed {
						in.Permanent.Vx, in.Variable.Vx = 0, 0
					}
					r, _ := check(t, in)
					var sheet derive.Sheet
					r.Derive(&sheet)
					for _, s := range sheet.Steps {
						table := a == ground.Terzaghi && s.Symbol == "N_gamma" || !pushed && s.Symbol == "i_gamma"
						if strict[s.Symbol] && !table {
							assert.NotEmpty(t, s.Expression, "%s %v %v %v", s.Symbol, b, a, shape)
						}
					}
				}
			}
		}
	}
}

// TestFavourableActionsAreTakenBothWays: weight that presses holds against
// sliding with 1.0, and a variable force that presses is also left out.
func TestFavourableActionsAreTakenBothWays(t *testing.T) {
	in := pad(basis.Eurocode)
	r, _ := check(t, in)
	assert.Equal(t, 1.0, r.Sliding.GammaG)
	assert.Zero(t, r.Sliding.GammaP)
	assert.Positive(t, r.Sliding.GammaQ)
	in.Linked = true
	linked, _ := check(t, in)
	assert.Greater(t, linked.Sliding.Resistance, r.Sliding.Resistance)
}

func TestWaterWithinOneWidthBelowTheBaseMakesTheGroundLight(t *testing.T) {
	in := pad(basis.Eurocode)
	in.Soil.Water = in.Depth + in.SizeY
	far, _ := check(t, in)
	assert.Equal(t, in.Soil.Below, far.Weight)
	in.Soil.Water--
	near, _ := check(t, in)
	assert.InDelta(t, in.Soil.Below-9.81e-6, near.Weight, 1e-12)
}

func TestWhatIsOutOfScopeIsNeverAPass(t *testing.T) {
	for _, c := range []struct {
		name, id string
		want     limit.Verdict
		basis    basis.Basis
		change   func(*ground.Input)
	}{
		{"Terzaghi inclined", "ground_bearing", limit.OutOfScope, basis.USASD, func(in *ground.Input) { in.Author = ground.Terzaghi }},
		{"smooth base", "ground_bearing_da1_1", limit.OutOfScope, basis.Eurocode, func(in *ground.Input) { in.Interface.Share = 0.4 }},
		{"thin layer", "ground_punching", limit.OutOfScope, basis.Eurocode, func(in *ground.Input) {
			in.Soil.Undrained, in.Soil.Cohesion = 0, 0
			in.Layer = ground.Layer{Thickness: 370, Clay: 0.05, Punching: 2}
		}},
		{"on a thin layer", "ground_bearing_da3", limit.OutOfScope, basis.Eurocode, func(in *ground.Input) {
			in.Soil.Undrained, in.Soil.Cohesion = 0, 0
			in.Layer = ground.Layer{Thickness: 370, Clay: 0.05, Punching: 2}
		}},
		{"torsion", "ground_sliding", limit.OutOfScope, basis.Eurocode, func(in *ground.Input) { in.Variable.T = 1e6 }},
		{"far out", "ground_eccentricity", limit.OutOfScope, basis.USASD, func(in *ground.Input) { in.Variable.My = 0.35*2000*360e3 - 9e6 }},
		{"outside", "ground_eccentricity", limit.Fail, basis.USASD, func(in *ground.Input) { in.Variable.My = 1100 * 360e3 }},
		{"outside bears nothing", "ground_bearing", limit.Fail, basis.USASD, func(in *ground.Input) { in.Variable.My = 1100 * 360e3 }},
		{"lifted", "ground_uplift", limit.Fail, basis.Eurocode, func(in *ground.Input) { in.Permanent.N, in.Variable.N = 0, 50e3 }},
		{"presumptive by LRFD", "ground_presumptive", limit.OutOfScope, basis.USLRFD, func(in *ground.Input) {
			in.Presumptive = ground.Presumptive{Pressure: 1, Source: "a table"}
		}},
		{"presumptive outside the kern", "ground_presumptive", limit.OutOfScope, basis.USASD, func(in *ground.Input) {
			in.Presumptive = ground.Presumptive{Pressure: 1, Source: "a table"}
			in.Variable.My = 130e6
		}},
		{"not chosen", "ground_bearing_da3", limit.NotApplicable, basis.Eurocode, func(in *ground.Input) {
			in.Approaches = []ground.Approach{ground.DA1Part1}
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := pad(c.basis)
			c.change(&in)
			_, states := check(t, in)
			assert.Equal(t, c.want, states[c.id].Verdict, states[c.id].Reason)
			if c.want != limit.Fail {
				assert.NotEmpty(t, states[c.id].Reason)
			}
		})
	}
}

func TestEveryFaultIsNamed(t *testing.T) {
	in := pad(basis.USLRFD)
	in.SizeX, in.Depth, in.Weight = math.NaN(), -1, math.Inf(1)
	in.Soil.Friction, in.Soil.Cohesion, in.Soil.Undrained = 60*degree, math.NaN(), -1
	in.Soil.Water, in.Soil.Below = math.NaN(), math.NaN()
	in.Permanent.N, in.Variable.T = math.NaN(), math.Inf(-1)
	in.Interface.Share, in.Author, in.Resistance, in.Safety, in.Stability = 0, 0, 0, 0.5, math.NaN()
	in.Presumptive.Pressure = 0.1
	in.Layer = ground.Layer{Thickness: 500}
	in.Approaches = []ground.Approach{9}
	_, err := ground.Check(&in)
	var faults limit.Faults
	require.ErrorAs(t, err, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.ElementsMatch(t, []string{
		"footing.rectangle.size_x_mm", "footing.depth_mm", "weight_kn", "soil.friction_angle_deg", "soil.cohesion_kpa",
		"soil.undrained_strength_kpa", "soil.unit_weight_kn_m3", "soil.water_depth_mm", "permanent.n_kn", "variable.t_knm",
		"base_contact.friction_share", "presumptive.source", "layer.undrained_strength_kpa", "layer.punching_coefficient",
		"design_approaches[0]", "bearing_author", "basis.us_asd.bearing_safety_factor", "basis.us_lrfd.stability_safety_factor", "basis.us_lrfd.bearing_resistance_factor",
	}, fields)
	_, err = ground.Check(&ground.Input{})
	require.ErrorAs(t, err, &faults)
}

func TestGroundWithoutDataNeedsAPresumptiveValue(t *testing.T) {
	in := pad(basis.USASD)
	in.Soil, in.Author = ground.Soil{Dry: true}, ground.NoAuthor
	_, err := ground.Check(&in)
	require.ErrorContains(t, err, "presumptive")
	in.Presumptive = ground.Presumptive{Pressure: 0.2, Source: "a table"}
	_, states := check(t, in)
	assert.Equal(t, limit.NotApplicable, states["ground_bearing"].Verdict)
	assert.True(t, states["ground_presumptive"].Rated)
	assert.Equal(t, limit.OutOfScope, states["ground_sliding"].Verdict)
}

func BenchmarkCheck(b *testing.B) {
	in := pad(basis.Eurocode)
	b.ReportAllocs()
	for b.Loop() {
		if r, err := ground.Check(&in); err != nil || len(r.Bearing) != 4 {
			b.Fatal(err)
		}
	}
}
