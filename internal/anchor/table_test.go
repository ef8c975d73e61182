package anchor_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// atFace is a row of rods 100 mm from the face at -x, where blow-out counts.
func atFace(b basis.Basis, pull ...float64) anchor.Input {
	in := group(b)
	in.At, in.Each = nil, nil
	for i, n := range pull {
		in.At = append(in.At, geom.Point{X: -350, Y: (float64(i) - float64(len(pull)-1)/2) * 160})
		in.Each = append(in.Each, anchor.Force{Tension: n, ShearX: -1e3})
	}
	return in
}

// TestUncrackedConcreteHoldsMore by the factors of EN 1992-4:2018 7.2.1.4 (12.7 for
// 8.9), 7.2.1.5 (10.5 for 7.5), 7.2.1.8 (12.2 for 8.7), 7.2.2.5 (2.4 for 1.7), and of
// ACI 318-19 17.6.2.5.1, 17.6.3.3.1 and 17.7.2.5.1.
func TestUncrackedConcreteHoldsMore(t *testing.T) {
	for b, want := range map[basis.Basis][4]float64{
		basis.Eurocode: {12.7 / 8.9, 10.5 / 7.5, 12.2 / 8.7, 2.4 / 1.7},
		basis.USLRFD:   {1.25, 1.4, 1, 1.4},
	} {
		in := atFace(b, 20e3, 20e3)
		cracked, _ := check(t, in)
		in.Uncracked = true
		whole, _ := check(t, in)
		require.True(t, cracked.Blow.Applies && cracked.Edge.Applies)
		for i, of := range []func(*anchor.Result) float64{
			func(r *anchor.Result) float64 { return r.Cone.NRk },
			func(r *anchor.Result) float64 { return r.Pull.NRk },
			func(r *anchor.Result) float64 { return r.Blow.NRk },
			func(r *anchor.Result) float64 { return r.Edge.VRk },
		} {
			assert.InEpsilon(t, want[i], of(whole)/of(cracked), 1e-9, "%v %d", b, i)
		}
	}
}

// TestBlowOutOfARow: 100 mm from the face, c_2 by the width of the block.
func TestBlowOutOfARow(t *testing.T) {
	for _, c := range []struct {
		b                basis.Basis
		wide             float64
		pull             []float64
		corner, group, n float64
	}{
		// EN 1992-4:2018 7.2.1.8: c_2 120: 0.7 + 0.3 120/200; sqrt 2 - 0.4142 160/400
		{basis.Eurocode, 400, []float64{20e3, 20e3}, 0.88, 1.24853, 40e3},
		{basis.Eurocode, 800, []float64{20e3, 20e3}, 1, 1.24853, 40e3},
		// ACI 318-19 17.6.4: (1 + 120/100)/4, (1 + 1)/4 nearer than c_a1; 1 + 160/600
		{basis.USLRFD, 400, []float64{20e3, 20e3}, 0.55, 1.266667, 40e3},
		{basis.USLRFD, 320, []float64{20e3, 20e3}, 0.5, 1.266667, 40e3},
		{basis.USLRFD, 800, []float64{20e3, 20e3}, 1, 1.266667, 40e3},
		// 17.6.4.2: as if the other pulled as much, 30 1.2667
		{basis.USLRFD, 800, []float64{30e3, 1e3}, 1, 1.266667, 38e3},
		{basis.USLRFD, 1000, []float64{20e3, 20e3, 20e3}, 1, 1.533333, 60e3},
	} {
		in := atFace(c.b, c.pull...)
		in.Block.SizeY = c.wide
		r, _ := check(t, in)
		require.True(t, r.Blow.Applies, "%v", c)
		assert.InDelta(t, c.corner, r.Blow.PsiS, 1e-6, "%v", c)
		assert.InDelta(t, c.group, r.Blow.PsiG, 1e-5, "%v", c)
		assert.InDelta(t, c.n, r.Blow.Force, 1, "%v", c)
	}
}

// TestBlowOutOfTheFaceThatIsUsedMost: rods at two faces, one row pulls more.
func TestBlowOutOfTheFaceThatIsUsedMost(t *testing.T) {
	for _, b := range bases {
		for _, pull := range [][2]float64{{50e3, 10e3}, {10e3, 50e3}} {
			in := group(b)
			in.At = []geom.Point{{X: -350}, {X: 350}}
			in.Each = []anchor.Force{{Tension: pull[0]}, {Tension: pull[1]}}
			r, _ := check(t, in)
			assert.InDelta(t, 50e3, r.Blow.Force, 1)
		}
	}
}

// TestEdgeInAThinNarrowBlock: EN 1992-4:2018 7.2.2.5(8), ACI 318-19 17.7.2.1.2: where
// h and both c_2 are below 1.5 c_1, c_1 counts as the greatest of c_2/1.5, h/1.5, s/3.
func TestEdgeInAThinNarrowBlock(t *testing.T) {
	for _, c := range []struct {
		height, wide, c1, apart, want float64
	}{
		{250, 400, 450, 0, 166.667},  // h/1.5; c_2 200
		{250, 800, 450, 0, 266.667},  // c_2/1.5
		{250, 1300, 450, 0, 433.333}, // c_2 650 < 675
		{250, 1400, 450, 0, 450},     // c_2 700
		{250, 800, 450, 700, 233.333},
		{299, 300, 200, 0, 199.333},
		{301, 300, 200, 0, 200},
		{250, 580, 200, 0, 193.333},
		{250, 620, 200, 0, 200},
	} {
		for _, b := range bases {
			in := group(b)
			in.Embedment = 160
			in.Block.SizeX, in.Block.SizeY, in.Block.Height = 2*c.c1, c.wide, c.height
			in.At, in.Each = []geom.Point{{}}, []anchor.Force{{ShearX: 5e3}}
			if c.apart > 0 {
				in.At = []geom.Point{{Y: c.apart / 2}, {Y: -c.apart / 2}}
				in.Each = []anchor.Force{{ShearX: 5e3}, {ShearX: 5e3}}
			}
			r, _ := check(t, in)
			if r.Edge.Side >= 2 { // along the edge beside, half of it
				continue
			}
			assert.InDelta(t, c.want, r.Edge.C1, 0.001, "%v %v", b, c)
		}
	}
}

// TestLengthThatCarriesShear: EN 1992-4:2018 7.2.2.5: h_ef up to 12 d, and above 24 mm
// up to 8 d or 300 mm.
func TestLengthThatCarriesShear(t *testing.T) {
	for _, c := range [][3]float64{
		{24, 280, 280}, {24, 500, 288}, {25, 500, 300}, {30, 500, 300}, {42, 500, 336}, {42, 310, 310},
	} {
		in := atFace(basis.Eurocode, 0)
		in.Thread = material.Thread{Diameter: c[0], StressArea: 0.6 * c[0] * c[0]}
		in.Head.Diameter, in.Embedment = 2.5*c[0], c[1]
		r, _ := check(t, in)
		assert.InDelta(t, c[2], r.Edge.Lf, 1e-9, "%v", c)
	}
}

// TestPartialFactorsOfRods: EN 1992-4:2018 Table 4.1: 1.2 f_uk/f_yk >= 1.4 in tension;
// in shear f_uk/f_yk >= 1.25, 1.5 for f_uk above 800 or f_yk/f_uk above 0.8.
func TestPartialFactorsOfRods(t *testing.T) {
	for _, c := range [][4]float64{
		{240, 400, 2, 1.6667}, {640, 800, 1.5, 1.25}, {900, 1000, 1.4, 1.5}, {560, 640, 1.4, 1.5}, {500, 640, 1.536, 1.28},
		{640, 850, 1.59375, 1.5},
	} {
		in := group(basis.Eurocode)
		in.Steel = material.RodSteel{Fy: c[0], Fu: c[1]}
		r, _ := check(t, in)
		assert.InDelta(t, c[2], r.Steel.GammaN, 1e-4, "%v", c)
		assert.InDelta(t, c[3], r.Steel.GammaV, 1e-4, "%v", c)
	}
}

// TestPryOutOfShortRods: ACI 318-19 17.7.3.1: k_cp 1 below 2.5 in (63.5 mm), else 2.
func TestPryOutOfShortRods(t *testing.T) {
	for embedment, want := range map[float64]float64{63: 1, 64: 2} {
		in := group(basis.USLRFD)
		in.Thread, in.Head.Diameter, in.Embedment = material.Thread{Diameter: 12, StressArea: 84.3}, 30, embedment
		r, _ := check(t, in)
		assert.InDelta(t, want, r.KPry, 0, embedment)
	}
}

// TestLittleShearOrTensionIsNotCombined: ACI 318-19 17.8.1, 17.8.2: up to 0.2.
func TestLittleShearOrTensionIsNotCombined(t *testing.T) {
	in := group(basis.USLRFD)
	for i := range in.Each {
		in.Each[i] = anchor.Force{Tension: 1e3, ShearX: 1e3}
	}
	_, s := check(t, in)
	most := func(ids ...string) (u float64) {
		for _, id := range ids {
			if s[id].Rated {
				u = max(u, s[id].Utilization)
			}
		}
		return u
	}
	n := most("anchor_rod_tension", "anchor_cone", "anchor_pull_out", "anchor_blow_out")
	v := most("anchor_rod_shear", "anchor_pry_out", "anchor_edge")
	for _, share := range [][2]float64{{0.19, 0.5}, {0.21, 0.5}, {0.5, 0.19}, {0.5, 0.21}} {
		for i := range in.Each {
			in.Each[i] = anchor.Force{Tension: 1e3 * share[0] / n, ShearX: 1e3 * share[1] / v}
		}
		_, s := check(t, in)
		if min(share[0], share[1]) < 0.2 {
			assert.Equal(t, limit.NotApplicable, s["anchor_combined"].Verdict, "%v", share)
			continue
		}
		assert.InDelta(t, 0.71/1.2, s["anchor_combined"].Utilization, 1e-6)
	}
}

// TestConeBetweenThreeEdges: EN 1992-4:2018 7.2.1.4(8), ACI 318-19 17.6.2.1.2: with three
// edges nearer than 1.5 h_ef, h_ef counts as the greatest of c/1.5 and s/3.
func TestConeBetweenThreeEdges(t *testing.T) {
	for _, c := range []struct {
		sizeX, sizeY, apart, want float64
	}{
		{590, 590, 0, 196.667},   // four edges at 295 < 300
		{610, 610, 0, 200},       // none
		{610, 590, 0, 200},       // two
		{500, 400, 0, 166.667},   // 250/1.5
		{400, 700, 560, 186.667}, // 560/3 > 200/1.5
		{2000, 300, 0, 200},      // two
	} {
		for _, b := range bases {
			in := group(b)
			in.Embedment, in.Block.Height = 200, 700
			in.Block.SizeX, in.Block.SizeY = c.sizeX, c.sizeY
			in.At, in.Each = []geom.Point{{}}, []anchor.Force{{Tension: 5e3}}
			if c.apart > 0 {
				in.At = []geom.Point{{Y: c.apart / 2}, {Y: -c.apart / 2}}
				in.Each = []anchor.Force{{Tension: 5e3}, {Tension: 5e3}}
			}
			r, _ := check(t, in)
			assert.InDelta(t, c.want, r.Cone.H, 0.001, "%v %v", b, c)
		}
	}
}

// TestGroutUnderThePlate: EN 1992-4:2018 7.2.2.3.1: 1 - 0.01 t_grout, up to 40 mm.
func TestGroutUnderThePlate(t *testing.T) {
	for _, thick := range []float64{10, 33, 39} {
		in := group(basis.Eurocode)
		in.Under = anchor.Under{GroutThick: thick, GroutStrength: 50, Plate: 30}
		r, _ := check(t, in)
		assert.InDelta(t, 1-thick/100, r.Steel.KGrout, 1e-12)
		assert.InEpsilon(t, (1-thick/100)*r.Steel.K6*r.Steel.NRk, r.Steel.VRk, 1e-12)
	}
}
