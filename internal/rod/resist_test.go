package rod_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/rod"
)

// followed demands that the derivation adds up and returns its values by symbol.
func followed(t require.TestingT, r *rod.Result) map[string]float64 {
	var s derive.Sheet
	r.Derive(&s)
	require.NoError(t, derive.Verify(s.Steps))
	out := map[string]float64{}
	for _, step := range s.Steps {
		out[step.Symbol] = step.Value
	}
	return out
}

func noticed(r *rod.Result, code string) bool {
	var l limit.Notices
	r.Notices(&l)
	for _, n := range l.All() {
		if n.Code == code {
			return true
		}
	}
	return false
}

// TestPlateBearsTheWholeShearOfARod: AISC 360-22 (J3-6a), 2.4 d t F_u has no
// direction: 0.75 2.4 19.05 3.5 400 = 48.0 kN against 63.6 kN, whether that comes
// along x or as 45 and 45 kN.
func TestPlateBearsTheWholeShearOfARod(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 105", 21, 150)
	in.Plate.Thickness, in.Plate.Steel = 3.5, material.Steel{Fy: 248, Fu: 400}
	for _, v := range [][2]float64{{254.558e3, 0}, {180e3, 180e3}, {0, 254.558e3}, {-180e3, 180e3}} {
		in.Actions = geom.Actions{Vx: v[0], Vy: v[1]}
		_, s := check(t, in)
		assert.Equal(t, limit.Fail, s["plate_bearing"].Verdict)
		assert.InDelta(t, 63.64/48.006, s["plate_bearing"].Utilization, 1e-3)
	}
	in.Actions = geom.Actions{Vx: 135e3, Vy: 135e3}
	_, s := check(t, in)
	assert.Equal(t, limit.Pass, s["plate_bearing"].Verdict)
}

// TestTurnedLoadIsHeldByItsResultant turns load and rods by any angle on a plate so
// wide that edges do not matter.
func TestTurnedLoadIsHeldByItsResultant(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Friction, in.StandOff = rod.Friction{}, rod.StandOff{}
		in.Plate.SizeX, in.Plate.SizeY = 4000, 4000
		in.Actions.Mx, in.Actions.My = 0, 0
		a := rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")
		sin, cos := math.Sincos(a)
		turned := *in
		turned.At = make([]geom.Point, len(in.At))
		for i, p := range in.At {
			turned.At[i] = geom.Point{X: p.X*cos - p.Y*sin, Y: p.X*sin + p.Y*cos}
		}
		f := in.Actions
		turned.Actions.Vx, turned.Actions.Vy = f.Vx*cos-f.Vy*sin, f.Vx*sin+f.Vy*cos
		r, s := check(t, in)
		_, q := check(t, &turned)
		same := []string{"rod_tension", "rod_shear", "rod_combined", "rod_anchor_shear"}
		if in.Design.Basis.US() {
			same = append(same, "plate_bearing")
			for i := range in.At {
				f := r.Force(i)
				whole := math.Hypot(f.ShearX, f.ShearY)
				if whole > 1 {
					assert.GreaterOrEqual(t, s["plate_bearing"].Demand, whole*(1-1e-9), "no component stands for the whole")
				}
			}
		}
		for _, id := range same {
			assert.InDelta(t, s[id].Utilization, q[id].Utilization, 1e-9*(1+s[id].Utilization), id)
		}
	})
}

// TestNoRodHidesBehindTheOthers raises the shear of one rod.
func TestNoRodHidesBehindTheOthers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Friction, in.StandOff = rod.Friction{}, rod.StandOff{}
		in.Each = make([]rod.Force, 4)
		f := rapid.Float64Range(-1e5, 1e5)
		for i := range in.Each {
			in.Each[i] = rod.Force{ShearX: f.Draw(t, "x"), ShearY: f.Draw(t, "y")}
		}
		_, s := check(t, in)
		i := rapid.IntRange(0, 3).Draw(t, "rod")
		more := *in
		more.Each = append([]rod.Force(nil), in.Each...)
		more.Each[i].ShearX *= 1.5
		more.Each[i].ShearY *= 1.5
		_, q := check(t, &more)
		for _, id := range []string{"rod_shear", "rod_anchor_shear", "plate_bearing", "plate_tear_out"} {
			assert.GreaterOrEqual(t, q[id].Utilization, s[id].Utilization*(1-1e-12), id)
		}
	})
}

// TestAnchorBoltIsHeldRodByRod: EN 1993-1-8 6.2.2(7), M20 8.8: (0.44 - 0.0003 640)
// 800 245/1.25 = 38.89 kN. Torsion of 60 kNm on four rods at 212.1 mm: 70.7 kN each.
func TestAnchorBoltIsHeldRodByRod(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 150)
	in.Plate.SizeX, in.Plate.SizeY, in.Plate.Thickness = 500, 500, 30
	fails := func(u float64) {
		t.Helper()
		r, s := check(t, in)
		assert.Equal(t, limit.Fail, s["rod_anchor_shear"].Verdict)
		assert.InDelta(t, u, s["rod_anchor_shear"].Utilization, 1e-3)
		assert.InDelta(t, u, followed(t, &r)["u_2"], 1e-3)
	}
	in.Actions = geom.Actions{T: 60e6}
	fails(70.71 / 38.893)
	in.Actions = geom.Actions{}
	in.Each = []rod.Force{{ShearX: 70e3}, {}, {}, {}}
	fails(70 / 38.893)
	in.Each = []rod.Force{{ShearY: 70e3}, {ShearY: -70e3}, {}, {}}
	fails(70 / 38.893)
	in.Each = []rod.Force{{ShearX: 35e3, ShearY: -10e3}, {}, {}, {}}
	_, s := check(t, in)
	assert.Equal(t, limit.Pass, s["rod_anchor_shear"].Verdict)
	// The size that it asks for holds it.
	in.Each = []rod.Force{{ShearX: 70e3}, {}, {}, {}}
	_, s = check(t, in)
	scale := s["rod_anchor_shear"].Required / 20
	in.Rod.Thread.Diameter, in.Rod.Thread.StressArea = 20*scale, 245*scale*scale
	in.Holes.Diameter = in.Rod.Thread.Diameter + 2
	_, s = check(t, in)
	assert.InDelta(t, 1, s["rod_anchor_shear"].Utilization, 1e-9)
	assert.Equal(t, limit.Pass, s["rod_anchor_shear"].Verdict)
}

// TestLiftedFootHasNoFriction: EN 1993-1-8 6.2.2(6); US by statics.
func TestLiftedFootHasNoFriction(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := four(b, "M24", "ISO 898-1 8.8", 26, 120)
		in.Actions = geom.Actions{N: 100e3, Vy: 150e3}
		_, none := check(t, in)
		in.Friction = rod.Friction{Counted: true, Compression: 800e3, Coefficient: 0.4}
		r, s := check(t, in)
		assert.Zero(t, r.Friction)
		assert.Equal(t, none["rod_shear"], s["rod_shear"])
		assert.Equal(t, none["base_shear"], s["base_shear"])
		assert.True(t, noticed(&r, "rods_friction_limited"))
		in.Actions = geom.Actions{}
		in.Each = []rod.Force{{Tension: 1e3, ShearX: 40e3}, {Tension: 1e3}, {Tension: 1e3}, {Tension: 1e3}}
		r, _ = check(t, in)
		assert.Zero(t, r.Friction, "every rod pulls")
		in.Each[3].Tension = 0
		r, _ = check(t, in)
		assert.Positive(t, r.Friction)
		// Pressed by 10 kN, no more than that counts.
		in.Each, in.Actions = nil, geom.Actions{N: -10e3, Vx: 150e3}
		r, _ = check(t, in)
		mu := map[basis.Basis]float64{basis.Eurocode: 0.2, basis.USLRFD: 0.65 * 0.4, basis.USASD: 0.4 / 2.31}[b]
		assert.InDelta(t, mu*10e3, r.Friction, 1e-6)
		assert.True(t, noticed(&r, "rods_friction_limited"))
		in.Friction.Compression = 10e3
		r, _ = check(t, in)
		assert.InDelta(t, mu*10e3, r.Friction, 1e-6)
		assert.False(t, noticed(&r, "rods_friction_limited"))
	}
}

// TestFrictionLeavesTheRestToTheRods: 320 kN; Eurocode 0.2 100 = 20 kN: 75 kN a rod;
// US 0.65 0.4 100 = 26 kN: 73.5 kN.
func TestFrictionLeavesTheRestToTheRods(t *testing.T) {
	for b, rest := range map[basis.Basis]float64{basis.Eurocode: 75e3, basis.USLRFD: 73.5e3, basis.USASD: (320e3 - 0.4*100e3/2.31) / 4} {
		in := four(b, "M30", "ISO 898-1 8.8", 33, 120)
		in.Friction = rod.Friction{Counted: true, Compression: 100e3, Coefficient: 0.4}
		for _, a := range []geom.Actions{{N: -100e3, Vx: 320e3}, {N: -100e3, Vy: -320e3}} {
			in.Actions = a
			r, s := check(t, in)
			assert.InDelta(t, rest, s["rod_shear"].Demand, 1e-6)
			assert.InDelta(t, rest/320e3*4, followed(t, &r)["k_V"], 1e-6)
		}
	}
}

// TestWornRodHoldsNoMoreThanItsNetArea: 3/4-10 Gr 36 less 4 mm: d_s 16.58 - 4, A_s
// 124.3 mm2, 0.75 400 124.3 = 37.3 kN in tension, 0.563 of it in shear. A thread of
// 20 mm and 150 mm2 likewise.
func TestWornRodHoldsNoMoreThanItsNetArea(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 36", 21, 150)
	r, _ := check(t, in)
	assert.InDelta(t, 0.75*0.75*58*ksi*math.Pi/4*19.05*19.05, r.FtRd, 1e-6, "as printed where it is whole")
	in.Rod.Corrosion = 4
	in.Actions = geom.Actions{N: 150e3}
	r, s := check(t, in)
	net := in.Rod.Thread.NetArea(4)
	assert.InDelta(t, 0.75*58*ksi*net, r.FtRd, 1e-6)
	assert.Equal(t, limit.Fail, s["rod_tension"].Verdict)
	assert.InDelta(t, 0.75*0.563*58*ksi*net, r.FvRd, 1e-6)
	followed(t, &r)
	in.Actions.N = 145e3
	_, s = check(t, in)
	assert.Equal(t, limit.Pass, s["rod_tension"].Verdict)

	in.Rod.Corrosion = 0
	in.Rod.Thread = material.Thread{Diameter: 20, StressArea: 150}
	in.Holes.Diameter = 22
	for b, f := range map[basis.Basis]float64{basis.USLRFD: 0.75, basis.USASD: 0.5} {
		in.Design.Basis = b
		r, _ = check(t, in)
		assert.InDelta(t, f*58*ksi*150, r.FtRd, 1e-6)
		assert.InDelta(t, f*0.563*58*ksi*150, r.FvRd, 1e-6)
		in.Rod.ShankInPlane = true
		r, _ = check(t, in)
		assert.InDelta(t, f*0.563*58*ksi*100*math.Pi, r.FvRd, 1e-6)
		in.Rod.ShankInPlane = false
	}
}

// TestRequiredDiameterOfAWornRodHolds feeds the size back, with the same loss.
func TestRequiredDiameterOfAWornRodHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := drawn(t)
		in.Design.Basis = rapid.SampledFrom([]basis.Basis{basis.USLRFD, basis.USASD}).Draw(t, "US")
		in.Rod.Corrosion = rapid.Float64Range(0.1, 6).Draw(t, "loss")
		_, s := check(t, in)
		for _, id := range []string{"rod_tension", "rod_shear"} {
			if s[id].Size == limit.NoSize || s[id].Demand < 100 {
				continue
			}
			fed := *in
			scale := s[id].Required / in.Rod.Thread.Diameter
			fed.Rod.Thread.Diameter *= scale
			fed.Rod.Thread.StressArea *= scale * scale
			fed.Holes.Diameter = fed.Rod.Thread.Diameter + 1
			if len(faultsOf(&fed)) > 0 {
				continue
			}
			_, q := check(t, &fed)
			assert.InDelta(t, 1, q[id].Utilization, 1e-6, id)
		}
	})
}

func faultsOf(in *rod.Input) limit.Faults {
	var f limit.Faults
	rod.Validate(in, &f)
	return f
}

// TestShearThatLeavesNothingHasNoUtilization: four 3/4 in Gr 36, 100 kN each.
func TestShearThatLeavesNothingHasNoUtilization(t *testing.T) {
	in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 36", 21, 150)
	in.Actions = geom.Actions{N: 100e3, Vx: 400e3}
	_, s := check(t, in)
	assert.Equal(t, limit.Fail, s["rod_combined"].Verdict)
	assert.False(t, s["rod_combined"].Rated)
	assert.Zero(t, s["rod_combined"].Utilization)
	assert.NotEmpty(t, s["rod_combined"].Reason)
}

// TestStrengthsOfTable34 works EN 1993-1-8 Table 3.4 by hand, M20 8.8, plate 20 mm
// of f_u 470.
func TestStrengthsOfTable34(t *testing.T) {
	in := four(basis.Eurocode, "M20", "ISO 898-1 8.8", 22, 120)
	in.Actions = geom.Actions{N: 40e3, Vx: 40e3}
	r, s := check(t, in)
	// d_m = 1.5 20 = 30: 0.6 pi 30 20 470/1.25
	assert.InDelta(t, 0.6*math.Pi*30*20*470/1.25, s["plate_punching"].Resistance, 1e-6)
	assert.InDelta(t, 0.9*800*245/1.25, r.FtRd, 1e-6)
	common := s["plate_bearing"].Resistance
	// e_1 80, d_0 22: alpha_b 1; k_1 2.5: 2.5 470 20 20/1.25
	assert.InDelta(t, 2.5*470*20*20/1.25, common, 1e-6)
	in.Rod.Countersunk = true
	r, _ = check(t, in)
	assert.InDelta(t, 0.63*800*245/1.25, r.FtRd, 1e-6)
	in.Rod.Countersunk = false
	in.Holes.Diameter, in.Holes.WeldedWashers = 25, true // e_1/(3 d_0) = 80/75 > 1 still
	_, s = check(t, in)
	assert.InDelta(t, 0.8*common, s["plate_bearing"].Resistance, 1e-6)
}

// TestHardRodAcrossAGapTakesTheGreaterFactor: EN 1992-4 Table 4.1: gamma_Ms 1.5 in
// shear where f_uk > 800 MPa or f_yk/f_uk > 0.8, else f_uk/f_yk.
func TestHardRodAcrossAGapTakesTheGreaterFactor(t *testing.T) {
	for class, gamma := range map[string]float64{"ISO 898-1 10.9": 1.5, "ISO 898-1 8.8": 1.25, "ISO 898-1 4.6": 400.0 / 240} {
		in := four(basis.Eurocode, "M24", class, 26, 120)
		in.StandOff = rod.StandOff{Gap: 40}
		in.Actions = geom.Actions{Vy: 1e3}
		r, _ := check(t, in)
		assert.InDelta(t, gamma, r.Bend.GammaV, 1e-12, class)
		// l_a = 12 + 40 + 10
		w := math.Pi * math.Pow(math.Sqrt(4*353/math.Pi), 3) / 32
		assert.InDelta(t, 1.2*w*in.Rod.Steel.Fu/(62*gamma), r.Bend.VRd, 1e-6, class)
	}
	in := four(basis.Eurocode, "M24", "", 26, 120)
	in.Rod.Steel = material.RodSteel{Fy: 700, Fu: 800} // 0.875
	in.StandOff = rod.StandOff{Gap: 40}
	in.Actions = geom.Actions{Vx: 1e3}
	r, _ := check(t, in)
	assert.InDelta(t, 1.5, r.Bend.GammaV, 1e-12)
}

// TestLeastEdgeDistances holds every row of AISC 360-22 Table J3.4 (from memory):
// diameter and least edge distance in inches.
func TestLeastEdgeDistances(t *testing.T) {
	for _, row := range [][2]float64{{0.5, 0.75}, {0.625, 0.875}, {0.75, 1}, {0.875, 1.125}, {1, 1.25}, {1.125, 1.5}, {1.25, 1.625},
		{1.5, 1.5 * 1.25}, {2, 2.5}} {
		in := four(basis.USLRFD, "3/4-10 UNC", "ASTM F1554 Gr 36", 0, 100)
		d := row[0] * inch
		in.Rod.Thread = material.Thread{Diameter: d, StressArea: 0.75 * math.Pi / 4 * d * d}
		in.Holes.Diameter = d + 1.5
		for _, along := range []bool{false, true} {
			in.Plate.SizeX, in.Plate.SizeY = 900, 900
			size := 2 * (100 + row[1]*inch)
			for edge, passes := range map[float64]bool{size * 1.001: true, size * 0.99: false} {
				if along {
					in.Plate.SizeY = edge
				} else {
					in.Plate.SizeX = edge
				}
				r, s := check(t, in)
				assert.InDelta(t, row[1]*inch, r.Edge.EdgeNeed, 1e-9)
				assert.Equal(t, passes, s["hole_pattern_minimum"].Verdict == limit.Pass, "%v %v", row, edge)
			}
		}
	}
}

func TestNoticesOfRodsThatTheirStandardsDoNotReach(t *testing.T) {
	in := four(basis.Eurocode, "M42", "ISO 898-1 8.8", 45, 120)
	r, _ := check(t, in)
	assert.True(t, noticed(&r, "rods_class_beyond_m39"))
	in = four(basis.Eurocode, "M12", "ISO 898-1 8.8", 14, 120)
	in.Actions = geom.Actions{Vx: 1e3}
	r, _ = check(t, in)
	assert.True(t, noticed(&r, "rods_small_in_wide_hole"))
	in.Holes.Diameter = 13
	r, _ = check(t, in)
	assert.False(t, noticed(&r, "rods_small_in_wide_hole"))
}

// TestWhatIsLeftOfCancellingMomentsPressesNoRod shears four rods under a compression:
// moments of a rounding error change nothing, such as of 0.001 kNm do.
func TestWhatIsLeftOfCancellingMomentsPressesNoRod(t *testing.T) {
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := four(b, "M20", "ISO 898-1 8.8", 22, 150)
		in.Actions = geom.Actions{N: -100e3, Vx: 20e3, Vy: 5e3}
		_, want := check(t, in)
		require.Equal(t, limit.Pass, want["rod_shear"].Verdict)
		for _, m := range []float64{1e-9, 1e-3, 1, -1} {
			in.Actions.Mx, in.Actions.My = m, -m
			r, got := check(t, in)
			assert.Equal(t, want, got, "%v %g", b, m)
			followed(t, &r)
		}
		in.Actions.Mx = 1e3
		_, got := check(t, in)
		assert.Equal(t, limit.OutOfScope, got["rod_tension"].Verdict)
	}
}
