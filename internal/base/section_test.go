package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
)

func held(t require.TestingT, in *base.PlateInput) (*base.PlateResult, *limit.List) {
	in.Support.Actions = in.Plate.Actions
	r, err := base.CheckPlate(in)
	require.NoError(t, err)
	l := &limit.List{NoSizes: true}
	r.States(l)
	return r, l
}

func of(l *limit.List, id string) *limit.State {
	for i := range l.All() {
		if s := &l.All()[i]; s.Kind.ID == id {
			return s
		}
	}
	return nil
}

// drawn draws a plate on a block of concrete with four rods about a stiff footprint.
func drawn(t *rapid.T) *base.PlateInput {
	f := func(low, high float64, name string) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	in := input(rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"))
	p := &in.Plate
	p.Plate.SizeX, p.Plate.SizeY, p.Plate.Thickness = f(300, 700, "x"), f(300, 700, "y"), f(10, 60, "t")
	in.Support.SizeX, in.Support.SizeY = p.Plate.SizeX, p.Plate.SizeY
	shape := rapid.SampledFrom([]plate.Shape{plate.ISection, plate.Tube, plate.Pipe, plate.Rectangle, plate.TwoPlates}).Draw(t, "shape")
	p.Footprint.Shape, p.Footprint.SizeX, p.Footprint.SizeY = shape, f(80, 160, "b"), f(80, 160, "h")
	if shape == plate.Pipe {
		p.Footprint.SizeX = p.Footprint.SizeY
	}
	p.Footprint.Thick, p.Footprint.Web = f(5, 20, "t_f"), f(4, 12, "t_w")
	p.WeldThroat = f(0, 8, "weld")
	x, y := p.Plate.SizeX/2-f(25, 60, "edge x"), p.Plate.SizeY/2-f(25, 60, "edge y")
	if rapid.Bool().Draw(t, "within the flange") {
		x = p.Footprint.SizeX / 2 * f(0.5, 1, "gauge")
	}
	in.At = []geom.Point{{X: -x, Y: y}, {X: x, Y: y}, {X: -x, Y: -y}, {X: x, Y: -y}}
	p.Actions = geom.Actions{N: f(-800e3, 200e3, "N"), Mx: f(-60e6, 60e6, "Mx"), My: f(-60e6, 60e6, "My")}
	if math.Abs(p.Actions.N)+(math.Abs(p.Actions.Mx)+math.Abs(p.Actions.My))/100 < 1e3 {
		t.Skip("nearly no action")
	}
	var faults limit.Faults
	if base.ValidatePlate(in, &faults); len(faults) > 0 {
		t.Skip("rods pass through the footprint")
	}
	return in
}

// greatest returns the greatest utilization, or infinity where something fails
// without one.
func greatest(l *limit.List) float64 {
	g := l.Governing()
	switch {
	case g == nil:
		return 0
	case !g.Rated:
		return math.Inf(1)
	}
	return g.Utilization
}

// TestSecondMomentThatVanishesChangesNothing adds 1e-6 kNm about the other axis.
func TestSecondMomentThatVanishesChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		a := &in.Plate.Actions
		if rapid.Bool().Draw(t, "about x") {
			a.My = 0
		} else {
			a.Mx = 0
		}
		if math.Abs(a.Mx)+math.Abs(a.My) < 1e4 {
			t.Skip("nearly no moment")
		}
		_, one := held(t, in)
		verdict, used := one.Verdict(), greatest(one)
		if a.Mx == 0 {
			a.Mx = 1
		} else {
			a.My = 1
		}
		_, two := held(t, in)
		near := math.Abs(used-1) < 2e-3
		assert.True(t, near || two.Verdict() == verdict, "%v %v: %v", verdict, two.Verdict(), two.Governing())
		// Where nothing balances under one moment the plate is not looked at; under two,
		// its pressed side tells the same excess and its pulled side one of its own.
		if unbalanced := of(one, "plate_equilibrium"); used < 1.5 && unbalanced.Verdict != limit.Fail {
			assert.InDelta(t, used, greatest(two), 2e-3*max(1, used), "%+v\n%+v", one.Governing(), two.Governing())
		}
	})
}

// TestOneAxisIsTheCantileverOfTheClauses holds the sections of a tube under a moment
// about one axis, and next to none about the other, to the clauses' own figures: the
// block of Design Guide 1 within 1 %, and by Eurocode never more than Table 6.7 asks.
func TestOneAxisIsTheCantileverOfTheClauses(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, a := range []geom.Actions{{N: -900e3, Mx: 20e6}, {N: -900e3, Mx: 90e6}, {N: -200e3, Mx: 60e6}, {N: -20e3, Mx: 50e6}, {N: 30e3, Mx: 40e6}} {
			in := input(b)
			in.Plate.Plate.SizeX, in.Support.SizeX, in.Plate.Plate.SizeY, in.Support.SizeY = 300, 300, 560, 560
			in.Plate.Footprint.Shape = plate.Tube
			in.Plate.Footprint.SizeX = 160
			in.At = []geom.Point{{X: -70, Y: 200}, {X: 70, Y: 200}} // rods of the other side would rise beside a short block
			a.My = 1
			in.Plate.Actions = a
			r, l := held(t, in)
			if f := of(l, "plate_compression_flange"); f != nil && f.Utilization > 1 {
				continue // where the flange alone does not bear it, the walls beside it do, with a shorter lever arm
			}
			for _, pair := range [][2]string{{"plate_cantilever", "plate_section_pressed"}, {"plate_tension_cantilever", "plate_section_pulled"},
				{"plate_compression_flange", "plate_section_pressed"}, {"plate_tension_tstub", "plate_section_pulled"}} {
				clause, section := of(l, pair[0]), of(l, pair[1])
				if clause == nil || !clause.Rated {
					continue
				}
				require.True(t, section.Rated || clause.Utilization < 0.02, "%v %v %s", b, a, section.Reason)
				if b.US() {
					assert.False(t, !(section.Utilization <= clause.Utilization*1.01), "%v %v %v %v", b, a, clause, section)
				} else {
					assert.False(t, !(section.Utilization <= clause.Utilization*(1+1e-3)), "%v %v %v %v", b, a, clause, section)
				}
				if pair[0] == "plate_cantilever" && r.Plate.US.Mu == r.Plate.US.Along {
					assert.InEpsilon(t, clause.Utilization, section.Utilization, 0.01, "%v %v", b, a)
				}
				if pair[0] == "plate_tension_cantilever" {
					assert.InEpsilon(t, clause.Utilization, section.Utilization, 0.01, "%v %v", b, a)
				}
			}
		}
	}
}

// TestEveryCombinationGetsAnAnswer holds that no stiff footprint with four rods
// outside it is out of scope, and that every number is finite.
func TestEveryCombinationGetsAnAnswer(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, l := held(t, in)
		for _, s := range l.All() {
			assert.NotEqual(t, limit.OutOfScope, s.Verdict, "%s: %s", s.Kind.ID, s.Reason)
			for _, v := range []float64{s.Demand, s.Resistance, s.Utilization} {
				assert.False(t, math.IsNaN(v) || math.IsInf(v, 0), s.Kind.ID)
			}
		}
	})
}

func TestSectionsCanBeFollowed(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, a := range []geom.Actions{{N: -500e3, Mx: 60e6, My: 20e6}, {N: 100e3, Mx: 1e6, My: 1e6}, {N: -50e3, My: 30e6, Mx: 10e6}, {My: 20e6}} {
			in := input(b)
			in.Plate.Actions = a
			r, _ := held(t, in)
			var sheet derive.Sheet
			r.Derive(&sheet)
			require.NoError(t, derive.Verify(sheet.Steps), "%v %v", b, a)
			require.True(t, r.Plate.NeedsSections())
		}
	}
}

// TestNamesOfTheAxesDoNotMatter turns a base by 90 degrees: x becomes y.
func TestNamesOfTheAxesDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		if s := in.Plate.Footprint.Shape; s == plate.ISection || s == plate.TwoPlates {
			in.Plate.Footprint.Shape = plate.Tube
		}
		_, a := held(t, in)
		turned := *in
		p := &turned.Plate
		p.Plate.SizeX, p.Plate.SizeY = p.Plate.SizeY, p.Plate.SizeX
		turned.Support.SizeX, turned.Support.SizeY = p.Plate.SizeX, p.Plate.SizeY
		p.Footprint.SizeX, p.Footprint.SizeY = p.Footprint.SizeY, p.Footprint.SizeX
		p.Actions.Mx, p.Actions.My = p.Actions.My, -p.Actions.Mx
		turned.At = nil
		for _, q := range in.At {
			turned.At = append(turned.At, geom.Point{X: -q.Y, Y: q.X})
		}
		_, b := held(t, &turned)
		assert.Equal(t, a.Verdict(), b.Verdict())
		if u := greatest(a); u < 1.5 {
			assert.InDelta(t, u, greatest(b), 1e-2*max(1, u), "%+v\n%+v", a.Governing(), b.Governing())
		}
	})
}

// TestThickerPlateIsNeverWorse and more of all actions never better.
func TestThickerPlateIsNeverWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, thin := held(t, in)
		in.Plate.Plate.Thickness *= 1.1
		in.Plate.Rods.Stretch = 0
		_, thick := held(t, in)
		if u := greatest(thin); !math.IsInf(u, 0) {
			assert.False(t, !(greatest(thick) <= u*1.005+1e-3), "%v %v", thin.Governing(), thick.Governing())
		}
	})
}

func TestMoreOfAllActionsIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		_, less := held(t, in)
		a := &in.Plate.Actions
		a.N, a.Mx, a.My = 1.1*a.N, 1.1*a.Mx, 1.1*a.My
		_, more := held(t, in)
		assert.False(t, !(greatest(more) >= greatest(less)*0.995-1e-3) && !math.IsInf(greatest(more), 0), "%v %v", less.Governing(), more.Governing())
	})
}

// TestThicknessAskedForIsEnough puts the required thickness of the sections back.
func TestThicknessAskedForIsEnough(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Support.Actions = in.Plate.Actions
		r, err := base.CheckPlate(in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		for _, id := range []string{"plate_section_pressed", "plate_section_pulled"} {
			s := *of(&l, id)
			if !(s.Required > 0.1 && s.Required < 200) {
				continue
			}
			again := *in
			again.Plate.Plate.Thickness = s.Required * (1 + 1e-6)
			_, m := held(t, &again)
			after := of(m, id)
			assert.NotEqual(t, limit.Fail, after.Verdict, "%+v\n%+v", s, after)
		}
	})
}

func BenchmarkSections(b *testing.B) {
	for _, of := range []basis.Basis{basis.Eurocode, basis.USLRFD} {
		for name, a := range map[string]geom.Actions{"pressed": {N: -500e3, Mx: 20e6, My: 10e6}, "pulled": {N: -100e3, Mx: 40e6, My: 10e6}, "uplift": {N: 100e3, Mx: 1e6, My: 1e6}} {
			b.Run(map[basis.Basis]string{basis.Eurocode: "Eurocode/", basis.USLRFD: "LRFD/"}[of]+name, func(b *testing.B) {
				in := input(of)
				in.Plate.Actions = a
				for b.Loop() {
					held(b, in)
				}
			})
		}
	}
}

func BenchmarkThicknessOfSections(b *testing.B) {
	in := input(basis.Eurocode)
	in.Plate.Actions = geom.Actions{N: -100e3, Mx: 40e6, My: 10e6}
	in.Support.Actions = in.Plate.Actions
	for b.Loop() {
		r, err := base.CheckPlate(in)
		require.NoError(b, err)
		var l limit.List
		r.States(&l)
	}
}

// TestSecondMomentThatVanishesChangesNoColumnBase holds that with an elastic bed and
// with preload too.
func TestSecondMomentThatVanishesChangesNoColumnBase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawn(t)
		a := p.Plate.Actions
		a.My = 0
		a.Mx = math.Copysign(max(math.Abs(a.Mx), 1e5), a.Mx) // less is nearly no moment
		in := &base.ColumnInput{Base: *p, Cases: []base.Case{{Name: "one", Actions: a}}, NoSizes: true}
		if rapid.Bool().Draw(t, "elastic") {
			in.Modulus = rapid.Float64Range(0.1, 20).Draw(t, "k")
			in.Preload = rapid.SampledFrom([]float64{0, 20e3}).Draw(t, "preload")
		}
		answer := func() *limit.List {
			r, err := base.CheckColumn(in)
			require.NoError(t, err)
			l := &limit.List{}
			for _, s := range func() []limit.State { var l limit.List; r.States(&l); return append([]limit.State(nil), l.All()...) }() {
				l.Add(s)
			}
			return l
		}
		one := answer()
		in.Cases[0].Actions.My = 1
		two := answer()
		if u := greatest(one); u < 1.5 {
			assert.InDelta(t, u, greatest(two), 5e-3*max(1, u), "%+v\n%+v", one.Governing(), two.Governing())
			assert.True(t, math.Abs(u-1) < 1e-2 || one.Verdict() == two.Verdict(), "%v %v", one.Governing(), two.Governing())
		}
	})
}
