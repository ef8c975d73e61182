package pin_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pin"
)

func random(t *rapid.T) *pin.Input {
	in := foot(rapid.SampledFrom(bases).Draw(t, "basis"))
	d := rapid.Float64Range(7, 29).Draw(t, "d")
	in.Pin.Diameter = d
	in.Pin.Kind = rapid.SampledFrom([]pin.Kind{pin.Bolt, pin.Dowel}).Draw(t, "kind")
	in.Pin.Nuts = in.Pin.Kind == pin.Bolt && rapid.Bool().Draw(t, "nuts")
	in.Pin.Washer = 3 * d
	in.Plates.Hole = d + rapid.Float64Range(0.2, 2).Draw(t, "play")
	in.Plates.Arrangement = rapid.SampledFrom([]pin.Arrangement{pin.Outside, pin.Inside}).Draw(t, "arrangement")
	if in.Plates.Arrangement == pin.Outside {
		in.Plates.Eccentricity = rapid.SampledFrom([]float64{0, 0, 10}).Draw(t, "e")
	}
	in.Plates.Thickness = rapid.Float64Range(3, 30).Draw(t, "t")
	in.Plates.Held = rapid.Bool().Draw(t, "held")
	in.Design.EC.GammaM0 = rapid.SampledFrom([]float64{1, 1, 1.05}).Draw(t, "gamma_M0")
	in.Design.EC.GammaM1 = rapid.SampledFrom([]float64{1, 1, 1.1}).Draw(t, "gamma_M1")
	in.Plates.Corrosion = rapid.SampledFrom([]float64{0, 1}).Draw(t, "loss")
	in.Plates.Gap = rapid.SampledFrom([]float64{0, 0, 2, 15}).Draw(t, "gap")
	l := &in.Layout
	l.Rows, l.InRow = rapid.IntRange(1, 3).Draw(t, "rows"), rapid.IntRange(1, 4).Draw(t, "in row")
	l.SpacingAlong = rapid.Float64Range(3, 7).Draw(t, "a1") * d
	l.SpacingAcross = rapid.Float64Range(3, 6).Draw(t, "a2") * d
	l.EndDistance = rapid.Float64Range(3, 9).Draw(t, "a3") * d
	l.EdgeDistance = rapid.Float64Range(1.5, 4).Draw(t, "a4") * d
	across := float64(l.Rows-1) * l.SpacingAcross
	in.Timber.AlongPin = rapid.Float64Range(70, 300).Draw(t, "b")
	in.Timber.AcrossPin = across + rapid.Float64Range(2, 4).Draw(t, "h")*l.EdgeDistance
	in.Timber.Kind = rapid.SampledFrom([]material.TimberKind{material.SolidSoftwood, material.GluedLaminated, material.SolidHardwood}).Draw(t, "timber")
	in.Timber.ServiceClass = rapid.IntRange(1, 3).Draw(t, "class")
	in.Plates.Width = across + rapid.Float64Range(3, 6).Draw(t, "w")*d
	in.Plates.EndDistance = rapid.Float64Range(1, 4).Draw(t, "e1") * d
	in.Plates.Arm = float64(l.InRow)*l.SpacingAlong/2 + rapid.Float64Range(10, 200).Draw(t, "arm")
	in.Actions = pin.Actions{
		N: rapid.Float64Range(-50e3, 50e3).Draw(t, "N"), V: rapid.Float64Range(-20e3, 20e3).Draw(t, "V"),
		M: rapid.Float64Range(-5e6, 5e6).Draw(t, "M"),
	}
	if l.Rows*l.InRow == 1 {
		in.Actions.M = 0
	}
	in.EndBears = rapid.Bool().Draw(t, "stands")
	return in
}

func finite(t require.TestingT, states map[string]limit.State) {
	for id, s := range states {
		for _, v := range []float64{s.Demand, s.Resistance, s.Utilization, s.Required} {
			assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), id)
		}
		if !s.Rated && s.Verdict != limit.Pass {
			assert.NotEmpty(t, s.Reason, id)
		}
	}
}

func TestEveryAnswerIsFiniteAndCanBeFollowed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, states := check(t, in)
		var want int
		for _, k := range pin.Kinds() {
			if k.Clause[in.Design.Basis] != "" {
				want++
				assert.Contains(t, states, k.ID)
			}
		}
		assert.Len(t, states, want)
		finite(t, states)
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
		var n limit.Notices
		r.Notices(&n)
		for _, v := range n.All() {
			assert.Contains(t, pin.Remarks(), v)
		}
	})
}

func TestStrongerIsNeverUsedMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		only   []string // empty: every state
		change func(*pin.Input)
	}{
		// Across a gap a thicker plate lengthens the pin's lever arm.
		{"thicker side plate", []string{"pin_lateral", "pin_row", "pin_spacing", "pin_steel_shear", "column_splitting",
			"column_block_shear", "column_net_section", "bracket_net_section", "bracket_compression", "bracket_bending",
			"bracket_hole_bearing", "bracket_tear_out"}, func(in *pin.Input) { in.Plates.Thickness *= 1.15 }},
		{"denser timber", []string{"pin_lateral", "pin_row", "pin_gap_bending"}, func(in *pin.Input) {
			in.Timber.Density *= 1.1
			in.Timber.Gravity *= 1.1
		}},
		{"shorter load", nil, func(in *pin.Input) {
			in.Timber.Duration, in.Timber.LoadDuration, in.Timber.TimeEffect = pin.ShortTerm, 1.25, 0.8
		}},
		{"less gap", []string{"pin_lateral", "pin_row", "pin_gap_bending"}, func(in *pin.Input) {
			// At the same share of the nearer plate.
			half := in.Timber.AlongPin / 2
			in.Plates.Eccentricity *= (half + in.Plates.Gap/2) / (half + in.Plates.Gap)
			in.Plates.Gap /= 2
		}},
		{"harder pin", []string{"pin_lateral", "pin_row", "pin_steel_shear", "pin_gap_bending"}, func(in *pin.Input) {
			in.Pin.Fu, in.Pin.Fy, in.Pin.Fyb = 500, 300, 400
		}},
		{"longer end", []string{"pin_lateral", "pin_row", "pin_spacing", "column_block_shear"}, func(in *pin.Input) { in.Layout.EndDistance *= 1.2 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				in := random(t)
				in.Plates.Arrangement = pin.Outside
				in.Layout.GroupFactor = 0.9 // stiffer plates may share less evenly
				_, before := check(t, in)
				c.change(in)
				_, after := check(t, in)
				for id, s := range before {
					if s.Rated && (len(c.only) == 0 || contains(c.only, id)) && after[id].Verdict != limit.NotApplicable {
						assert.LessOrEqual(t, after[id].Utilization, s.Utilization*(1+1e-9), id)
					}
				}
			})
		})
	}
}

func contains(all []string, id string) bool {
	for _, v := range all {
		if v == id {
			return true
		}
	}
	return false
}

// TestMirrorImageIsTheSame: V and M turned about the column's axis.
func TestMirrorImageIsTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		_, one := check(t, in)
		in.Actions.V, in.Actions.M = -in.Actions.V, -in.Actions.M
		_, other := check(t, in)
		for id, s := range one {
			assert.InDelta(t, s.Utilization, other[id].Utilization, 1e-9*(1+s.Utilization), id)
			assert.Equal(t, s.Verdict, other[id].Verdict, id)
		}
	})
}

// TestEmbedmentLiesBetweenItsEnds sweeps the angle from along to across.
func TestEmbedmentLiesBetweenItsEnds(t *testing.T) {
	for _, b := range bases {
		last := math.Inf(1)
		for deg := 0; deg <= 90; deg += 5 {
			in := single(b)
			sin, cos := math.Sincos(float64(deg) * math.Pi / 180)
			in.Actions = pin.Actions{N: 1e3 * cos, V: 1e3 * sin}
			r, _ := check(t, in)
			f, low, high := r.US.Fe, r.US.FeAcross, r.US.FeAlong
			if b == basis.Eurocode {
				f, low, high = r.EC.Fh, r.EC.Fh0/r.EC.K90, r.EC.Fh0
			}
			assert.True(t, f >= low*(1-1e-12) && f <= high*(1+1e-12))
			assert.LessOrEqual(t, f, last)
			last = f
		}
	}
}

// TestPinsBalanceTheActions: the sums of the pins' forces give N, V and M back.
func TestPinsBalanceTheActions(t *testing.T) {
	in := foot(basis.Eurocode)
	in.Actions = pin.Actions{M: 1e6}
	r, _ := check(t, in)
	// Four pins at 40, 45 mm: F = M/(4 r) with r = sqrt(40^2 + 45^2).
	assert.InDelta(t, 1e6/4/math.Hypot(40, 45), r.Most, 1e-6)
	assert.InDelta(t, 2*1e6*45/(4*(40*40+45*45)), r.Shear, 1e-6, "the level pulls one way")
	assert.InDelta(t, 2*1e6*40/(4*(40*40+45*45)), r.Timber.Pull, 1e-6, "one row pulls, the other presses")
	assert.Equal(t, 1, r.Timber.Out)
}

func TestStandingColumnLoadsNoPins(t *testing.T) {
	for _, b := range bases {
		in := foot(b)
		in.EndBears, in.Actions = true, pin.Actions{N: -80e3}
		_, s := check(t, in)
		assert.Equal(t, limit.NotApplicable, s["pin_lateral"].Verdict)
		assert.True(t, s["column_end_grain"].Rated)
		assert.InDelta(t, 80e3, s["column_end_grain"].Demand, 1e-9)
		assert.Equal(t, limit.NotApplicable, s["bracket_compression"].Verdict)
		in.EndBears = false
		_, s = check(t, in)
		assert.True(t, s["pin_lateral"].Rated)
		assert.True(t, s["bracket_compression"].Rated)
		assert.Equal(t, limit.NotApplicable, s["column_end_grain"].Verdict)
	}
}

// TestHandFigures works steel and end grain by hand: plates 2 of 8 by 140 S235.
func TestHandFigures(t *testing.T) {
	in := foot(basis.Eurocode)
	r, s := check(t, in)
	assert.InDelta(t, min(2*8*140*235, 0.9*2*8*(140-26)*360/1.25), s["bracket_net_section"].Resistance, 1e-6)
	// Along: alpha_b min(30/39, 90/39 - 1/4, 400/360, 1) = 0.7692, k_1 min(2.8 30/13 - 1.7, 1.4 80/13 - 1.7, 2.5) = 2.5.
	assert.InDelta(t, 2.5*30/39*360*12*8/1.25, r.Steel.Hole, 1e-6)
	assert.InDelta(t, 0.5*0.72*math.Pi/4*144*400/1.25, r.Steel.Cut, 1e-6)
	assert.InDelta(t, 2e5+2e3*200, r.Steel.M, 1e-9)
	in.Actions, in.EndBears = pin.Actions{N: -1e3}, true
	_, s = check(t, in)
	assert.InDelta(t, 0.8*21/1.3*100*200, s["column_end_grain"].Resistance, 1e-6)
	// Lambda 200 sqrt(12)/8/93.91 = 0.922, curve c: chi about 0.585.
	in.EndBears, in.Plates.Held = false, true
	r, _ = check(t, in)
	assert.InDelta(t, 0.922, r.Steel.Lambda, 0.001)
	assert.InDelta(t, 0.585, r.Steel.Chi, 0.002)
}

func TestBeyondTheBasis(t *testing.T) {
	for _, c := range []struct {
		name, id string
		b        basis.Basis
		change   func(*pin.Input)
		want     limit.Verdict
	}{
		{"thick bolt", "pin_lateral", basis.Eurocode, func(in *pin.Input) { in.Pin.Diameter, in.Plates.Hole = 33, 35 }, limit.OutOfScope},
		{"thin dowel", "pin_lateral", basis.Eurocode, func(in *pin.Input) { in.Pin.Kind, in.Pin.Diameter, in.Plates.Hole = pin.Dowel, 6, 6.1 }, limit.OutOfScope},
		{"loose hole", "pin_row", basis.Eurocode, func(in *pin.Input) { in.Plates.Hole = 15 }, limit.OutOfScope},
		{"hardwood", "column_splitting", basis.Eurocode, func(in *pin.Input) { in.Timber.Kind = material.SolidHardwood }, limit.OutOfScope},
		{"thick bolt", "pin_lateral", basis.USASD, func(in *pin.Input) { in.Pin.Diameter, in.Plates.Hole = 27, 28 }, limit.OutOfScope},
		{"no C_g", "pin_lateral", basis.USLRFD, func(in *pin.Input) { in.Timber.Modulus = 0 }, limit.OutOfScope},
		{"shear of the plates", "bracket_bending", basis.USASD, func(in *pin.Input) { in.Actions.V = 1e6 }, limit.OutOfScope},
		{"rows apart", "pin_row_spread", basis.USASD, func(in *pin.Input) {
			in.Layout.SpacingAcross, in.Layout.EdgeDistance, in.Plates.Width = 130, 30, 190
		}, limit.Fail},
		{"hinge", "pin_lateral", basis.Eurocode, func(in *pin.Input) {
			*in = *single(basis.Eurocode)
			in.Actions.M = 1e5
		}, limit.Fail},
	} {
		t.Run(c.name, func(t *testing.T) {
			in := foot(c.b)
			c.change(in)
			r, s := check(t, in)
			assert.Equal(t, c.want, s[c.id].Verdict)
			finite(t, s)
			var sheet derive.Sheet
			r.Derive(&sheet)
			assert.NoError(t, derive.Verify(sheet.Steps))
		})
	}
}

func TestEveryFaultIsNamed(t *testing.T) {
	in := foot(basis.Eurocode)
	in.Design.EC.GammaM0 = math.NaN()
	in.Timber.Density, in.Timber.Kind, in.Timber.ServiceClass, in.Timber.Shear = math.NaN(), 0, 0, -1
	in.Pin.Diameter, in.Pin.Kind, in.Pin.Fy = math.Inf(1), 9, 500
	in.Plates.Thickness, in.Plates.Arm, in.Plates.Arrangement = 0, 10, 0
	in.Layout.Rows, in.Layout.SpacingAlong = 0, math.NaN()
	in.Actions.N = math.Inf(-1)
	var f limit.Faults
	pin.Validate(in, &f)
	var fields []string
	for _, v := range f {
		fields = append(fields, v.Field)
	}
	assert.Subset(t, fields, []string{
		"basis.family", "timber.density_kg_m3", "timber.kind", "timber.service_class", "timber.shear_strength_mpa",
		"pin.diameter_mm", "pin.kind", "pin.fy_mpa", "plates.thickness_mm", "plates.arrangement",
		"plates.hole_diameter_mm", "layout.rows", "forces.n_kn",
	})
	in = foot(basis.USASD)
	in.Timber.Gravity, in.Pin.Fyb, in.Plates.Arrangement, in.Plates.Gap = 0, 0, pin.Inside, 60
	in.Layout.SpacingAlong, in.Layout.EdgeDistance, in.Plates.Width, in.Plates.Arm = math.NaN(), 70, 90, 1
	f = nil
	pin.Validate(in, &f)
	fields = nil
	for _, v := range f {
		fields = append(fields, v.Field)
	}
	assert.ElementsMatch(t, []string{
		"timber.specific_gravity", "pin.fy_bending_mpa", "plates.gap_mm", "layout.spacing_along_mm", "layout.edge_distance_mm",
		"plates.width_mm", "plates.arm_mm",
	}, fields)
	_, err := pin.Check(in)
	assert.ErrorAs(t, err, &f)
}

func TestWildNumbersNeverLeave(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		wild := rapid.OneOf(rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 1e-300}))
		for _, f := range []*float64{&in.Timber.Density, &in.Timber.AlongPin, &in.Timber.AcrossPin, &in.Pin.Diameter, &in.Pin.Fu,
			&in.Plates.Thickness, &in.Plates.Hole, &in.Plates.Gap, &in.Plates.Arm, &in.Layout.SpacingAlong, &in.Layout.EdgeDistance,
			&in.Layout.EndDistance, &in.Actions.N, &in.Actions.M, &in.Timber.Modulus, &in.Timber.Kmod, &in.GammaConnection, &in.Pin.Washer} {
			if rapid.IntRange(0, 4).Draw(t, "wild") == 0 {
				*f = wild.Draw(t, "v")
			}
		}
		if r, err := pin.Check(in); err == nil {
			var l limit.List
			r.States(&l)
			for _, s := range l.All() {
				finite(t, map[string]limit.State{s.Kind.ID: s})
			}
		}
	})
}

func BenchmarkCheck(b *testing.B) {
	in := foot(basis.Eurocode)
	b.ReportAllocs()
	for b.Loop() {
		if r, err := pin.Check(in); err != nil || r.F == 0 {
			b.Fatal(err)
		}
	}
}
