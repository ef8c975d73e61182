package base_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/weld"
)

// column is the base of input with a weld, under one case.
func column(b basis.Basis, a geom.Actions) *base.ColumnInput {
	in := input(b)
	in.Stretch = 600
	part := weld.Part{Thickness: 30, Steel: material.Steel{Fy: 235, Fu: 360, BetaW: 0.8}}
	return &base.ColumnInput{
		Base: *in, HasWeld: true, Mu: 0.4,
		Weld:  weld.Spec{Type: weld.Fillet, Throat: 6, Parts: [2]weld.Part{part, part}, Filler: material.WeldMetal{Strength: 480}},
		Cases: []base.Case{{Name: "only", Actions: a}},
	}
}

func states(t require.TestingT, r interface{ States(*limit.List) }) map[string]limit.State {
	var l limit.List
	r.States(&l)
	out := map[string]limit.State{}
	for _, s := range l.All() {
		out[s.Kind.ID] = s
	}
	return out
}

func check(t require.TestingT, in *base.ColumnInput) (*base.ColumnResult, map[string]limit.State) {
	r, err := base.CheckColumn(in)
	require.NoError(t, err)
	return r, states(t, r)
}

// lowered adds the moments of shear at a depth by amounts, in the sense of the sum.
func lowered(a geom.Actions, h float64) geom.Actions {
	amounts := func(m, by float64) float64 {
		if m+by < 0 {
			return -math.Abs(m) - math.Abs(by)
		}
		return math.Abs(m) + math.Abs(by)
	}
	a.Mx, a.My = amounts(a.Mx, -a.Vy*h), amounts(a.My, a.Vx*h)
	return a
}

// onPlate has compression or uplift alone grow by what the lever of shear adds at the
// worst of the square footprint or of the rods of column.
func onPlate(foot, a geom.Actions, in *base.PlateInput) geom.Actions {
	if foot.Mx != 0 || foot.My != 0 {
		return a
	}
	if a.N < 0 {
		f := &in.Plate.Footprint
		a.N -= 6 * (math.Abs(a.My)/f.SizeX + math.Abs(a.Mx)/f.SizeY)
	} else {
		a.N += math.Abs(a.My)/math.Abs(in.At[0].X) + math.Abs(a.Mx)/math.Abs(in.At[0].Y)
	}
	a.Mx, a.My = 0, 0
	return a
}

// TestColumnBaseEqualsItsParts calls the parts one by one.
func TestColumnBaseEqualsItsParts(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for _, a := range []geom.Actions{
			{N: -500e3, Vx: 20e3, Vy: -10e3, T: 2e6}, {N: -500e3, Mx: 10e6, Vy: 15e3}, {N: -300e3, Mx: 90e6, Vy: 40e3}, {N: 60e3, Vx: 10e3},
		} {
			in := column(b, a)
			r, got := check(t, in)
			foot := a
			a = lowered(a, in.Base.Plate.Plate.Thickness+in.Base.Support.Block.GroutThick)
			for _, k := range []float64{0, 0.05, 5} {
				soft := *in
				soft.Modulus = k
				if k > 0 {
					r, _ = check(t, &soft)
				}
				var sheet derive.Sheet
				r.Derive(&sheet)
				assert.NoError(t, derive.Verify(sheet.Steps), "%v %v k %g", b, a, k)
			}

			bed := contact.Input{Outline: contact.Rectangle(420, 420), Actions: a}
			support := in.Base.Support
			available, err := bearing.Available(&support)
			require.NoError(t, err)
			bed.Bed.Strength = available.Pressure
			e := 210000.0
			if b.US() {
				e = 199948
			}
			for _, at := range in.Base.At {
				bed.Rods = append(bed.Rods, contact.Rod{At: at, Stiffness: e * in.Base.Rod.Thread.NetArea(in.Base.Rod.Corrosion) / 600})
			}
			var s contact.Solver
			shared, err := s.Solve(&bed)
			require.NoError(t, err)
			require.True(t, shared.Found)

			want := map[string]limit.State{}
			add := func(p interface{ States(*limit.List) }) {
				for id, s := range states(t, p) {
					want[id] = s
				}
			}
			plateIn := in.Base
			plateIn.Plate.Actions, plateIn.Support.Actions = onPlate(foot, a, &plateIn), a
			plateIn.Plate.Shared = plate.Shared{Known: true, Peak: shared.Peak, Tensions: shared.Rods}
			p, err := base.CheckPlate(&plateIn)
			require.NoError(t, err)
			add(p)
			pulled := false
			share := geom.PointGroup(in.Base.At).Share(&geom.Actions{Vx: a.Vx, Vy: a.Vy, T: a.T})
			rods := rod.Input{Design: in.Base.Plate.Design, Plate: in.Base.Plate.Plate, Rod: in.Base.Rod, At: in.Base.At, Holes: in.Base.Holes}
			for i, at := range in.Base.At {
				f := rod.Force{Tension: max(shared.Rods[i], p.Plate.RodPull(i))}
				f.ShearX, f.ShearY = share.Shear(at)
				rods.Each = append(rods.Each, f)
				pulled = pulled || shared.Rods[i] > 0
			}
			rr, err := rod.Check(&rods)
			require.NoError(t, err)
			add(&rr)
			if !pulled {
				support.Actions = a
				br, err := bearing.Check(&support)
				require.NoError(t, err)
				add(&br)
			}
			for id, w := range want {
				g := got[id]
				assert.Equal(t, w.Verdict, g.Verdict, "%v %v %s", b, a, id)
				assert.InEpsilon(t, 1+w.Utilization, 1+g.Utilization, 1e-9, "%v %v %s", b, a, id)
				assert.InDelta(t, w.Required, g.Required, 3e-3*w.Required+1e-6, "%v %v %s", b, a, id)
			}
			for _, id := range []string{"resultant_on_base", "concrete_bearing", "concrete_partially_loaded"} {
				if s, has := got[id]; has && pulled {
					assert.Equal(t, limit.NotApplicable, s.Verdict, id)
					assert.NotEmpty(t, s.Reason)
				}
			}
			assert.Contains(t, got, "resultant_on_base")
			assert.Contains(t, got, "base_equilibrium")
		}
	}
}

// TestWorstCombinationIsNamed and every row is that of its case alone.
func TestWorstCombinationIsNamed(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{})
	in.Cases = []base.Case{
		{Name: "light", Stage: 1, Actions: geom.Actions{N: -100e3}},
		{Name: "heavy", Stage: 2, Actions: geom.Actions{N: -900e3, Vx: 5e3}},
		{Name: "tilted", Stage: 2, Actions: geom.Actions{N: -200e3, Mx: 70e6}},
		{Name: "pulled", Stage: 1, Actions: geom.Actions{N: 80e3, Vy: 30e3}},
	}
	r, got := check(t, in)
	for id, want := range map[string]string{
		"plate_compression": "heavy", "plate_compression_flange": "tilted", "rod_shear": "pulled", "concrete_partially_loaded": "heavy",
	} {
		assert.Equal(t, want, got[id].Combination, id)
	}
	assert.Equal(t, 2, got["plate_compression"].Stage)
	for i := range in.Cases {
		alone := *in
		alone.Cases = in.Cases[i : i+1]
		one, own := check(t, &alone)
		assert.Equal(t, one.Rows[0], r.Rows[i])
		for id, s := range own {
			if s.Rated && got[id].Rated {
				assert.GreaterOrEqual(t, got[id].Utilization, s.Utilization*(1-1e-12), id)
			}
		}
	}
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.NotEmpty(t, sheet.Steps)
	assert.NoError(t, derive.Verify(sheet.Steps))
}

func TestColumnBaseThatCannotStand(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*base.ColumnInput)
		state  string
		want   limit.Verdict
	}{
		"uplift without rods":      {func(in *base.ColumnInput) { in.Cases[0].Actions.N = 1e3 }, "base_equilibrium", limit.Fail},
		"resultant off the plate":  {func(in *base.ColumnInput) { in.Cases[0].Actions.Mx = 250e6 }, "base_equilibrium", limit.Fail},
		"pressed too hard":         {func(in *base.ColumnInput) { in.Cases[0].Actions.N = -50e6 }, "base_equilibrium", limit.Fail},
		"shear without friction":   {func(in *base.ColumnInput) { in.Cases[0].Actions.Vx = 1 }, "base_shear_path", limit.Fail},
		"shear within friction":    {func(in *base.ColumnInput) { in.Cases[0].Actions.Vx, in.Friction = 99e3, true }, "base_shear_path", limit.Pass},
		"shear above friction":     {func(in *base.ColumnInput) { in.Cases[0].Actions.Vx, in.Friction = 101e3, true }, "base_shear_path", limit.Fail},
		"torsion":                  {func(in *base.ColumnInput) { in.Cases[0].Actions.T, in.Friction = 1, true }, "base_shear_path", limit.Fail},
		"both axes":                {func(in *base.ColumnInput) { in.Cases[0].Actions.Mx, in.Cases[0].Actions.My = 1e6, 1e6 }, "plate_section_pressed", limit.Pass},
		"both axes, off the plate": {func(in *base.ColumnInput) { in.Cases[0].Actions.Mx, in.Cases[0].Actions.My = 80e6, 80e6 }, "plate_equilibrium", limit.Fail},
	} {
		t.Run(name, func(t *testing.T) {
			in := column(basis.Eurocode, geom.Actions{N: -500e3})
			in.Base.HasRods, in.Base.At = false, nil
			c.change(in)
			_, got := check(t, in)
			assert.Equal(t, c.want, got[c.state].Verdict, got[c.state].Reason)
		})
	}
}

func TestColumnFaultsAreNamed(t *testing.T) {
	in := column(basis.Eurocode, geom.Actions{})
	in.Base.Support.Medium, in.Base.Support.Given = bearing.Given, bearing.GivenPressure{Pressure: 0.6, Granular: true, Source: "x"}
	in.Base.Plate.Plate.Thickness = -1
	in.Weld.Throat = 0
	in.Preload = -1
	in.Cases = nil
	var faults limit.Faults
	base.ValidateColumn(in, &faults)
	var fields []string
	for _, f := range faults {
		fields = append(fields, f.Field)
	}
	assert.ElementsMatch(t, []string{"base.plate.thickness_mm", "base.weld.throat_mm", "base.sharing.subgrade_modulus_n_mm3",
		"base.sharing.preload_kn", "load_cases.cases"}, fields)
}

// TestSofterBedGivesTheRodsMore: the reason why fill needs its modulus.
func TestSofterBedGivesTheRodsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := column(basis.Eurocode, geom.Actions{N: -200e3, Mx: rapid.Float64Range(35e6, 90e6).Draw(t, "M")})
		stiff := rapid.Float64Range(1, 50).Draw(t, "k")
		in.Modulus = stiff
		a, _ := check(t, in)
		in.Modulus = stiff * rapid.Float64Range(0.02, 1).Draw(t, "softer")
		b, _ := check(t, in)
		// The plate is held for the tension of the soft bed.
		_, states := check(t, in)
		bed := contact.Input{Outline: contact.Rectangle(420, 420), Actions: in.Cases[0].Actions, Bed: contact.Bed{Modulus: in.Modulus}}
		for _, at := range in.Base.At {
			bed.Rods = append(bed.Rods, contact.Rod{At: at, Stiffness: 210000 * in.Base.Rod.Thread.NetArea(in.Base.Rod.Corrosion) / 600})
		}
		var solver contact.Solver
		solved, err := solver.Solve(&bed)
		require.NoError(t, err)
		if !solved.Found {
			return // it turns over
		}
		row := solved.Rods[0] + solved.Rods[1]
		assert.GreaterOrEqual(t, b.Rows[0].Tensions[0], solved.Rods[0])
		if s := states["plate_tension_tstub"]; row > 0 && s.Demand < row*(1-1e-9) {
			t.Fatalf("the plate's tension side is held for %g of %g", s.Demand, row)
		}
		sum := func(r *base.ColumnResult) (s float64) {
			for _, v := range r.Rows[0].Tensions {
				s += v
			}
			return s
		}
		if sum(b) < sum(a)*(1-1e-9) || math.IsNaN(sum(a)) {
			t.Fatalf("%g on the softer bed, %g on the stiffer", sum(b), sum(a))
		}
	})
}

func BenchmarkColumn(b *testing.B) {
	in := column(basis.Eurocode, geom.Actions{N: -300e3, Mx: 60e6, Vy: 20e3})
	for range 99 {
		in.Cases = append(in.Cases, in.Cases[0])
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := base.CheckColumn(in); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/100, "ns/combination")
}
