package pad_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// deep is a pad by ACI 318-19 that keeps every rule of sizes.
func deep() pad.Input {
	in := footing(basis.USLRFD)
	in.Reinforcement.Yield = 420
	in.Actions, in.Weight = geom.Actions{N: -300e3}, 40e3
	return in
}

func TestLeastSizesOfAPadByACI(t *testing.T) {
	for name, c := range map[string]struct {
		state  string
		change func(*pad.Input, float64)
		fails  float64
		holds  float64
	}{
		// ACI 318-19 14.3.2.1: 8 in = 203.2 mm.
		"plain": {"pad_plain_least_thickness", func(in *pad.Input, v float64) {
			in.Reinforcement, in.Thickness = pad.Reinforcement{}, v
		}, 203, 203.3},
		// 13.3.1.2: 6 in = 152.4 mm of effective depth: h - 75 - 12 - 6 of the upper bars.
		"depth": {"pad_effective_depth", func(in *pad.Input, v float64) { in.Thickness = v + 93 }, 152.3, 152.5},
		// 8.7.2.2: 18 in = 457.2 mm on a pad thicker than 9 in.
		"spacing": {"pad_bar_spacing", func(in *pad.Input, v float64) { in.Reinforcement.X.Spacing = v }, 457.3, 457.1},
		// Table 20.5.1.3.1: 3 in, taken as 75 mm, with and without blinding.
		"cover": {"pad_cover", func(in *pad.Input, v float64) { in.Reinforcement.Cover, in.Blinding = v, true }, 74, 75},
	} {
		for v, want := range map[float64]limit.Verdict{c.fails: limit.Fail, c.holds: limit.Pass} {
			in := deep()
			c.change(&in, v)
			_, states := check(t, in)
			assert.Equal(t, want, states[c.state].Verdict, "%s %g", name, v)
		}
	}
}

func TestCoverOnBlindingAndAgainstTheGround(t *testing.T) {
	// EN 1992-1-1 4.4.1.3(4): k_1 40 mm on blinding, k_2 75 mm against the ground.
	for _, c := range []struct {
		cover    float64
		blinding bool
		want     limit.Verdict
	}{{39, true, limit.Fail}, {40, true, limit.Pass}, {74, false, limit.Fail}, {75, false, limit.Pass}} {
		in := footing(basis.Eurocode)
		in.Reinforcement.Cover, in.Blinding = c.cover, c.blinding
		_, states := check(t, in)
		assert.Equal(t, c.want, states["pad_cover"].Verdict, "%+v", c)
	}
}

func TestDevelopmentOfBarsByACI(t *testing.T) {
	// 25.4.2.3 with f_y 60 ksi, f'c 4000 psi: No. 6 f_y/(25 sqrt f'c) = 37.95 d_b, No. 7 f_y/(20 sqrt f'c) = 47.43 d_b;
	// nearer than 3 d_b between centres half as much again.
	root := math.Sqrt(4000)
	for _, c := range []struct{ bar, gap, want float64 }{
		{19.05, 150, 60000 / (25 * root) * 19.05},
		{22.225, 150, 60000 / (20 * root) * 22.225},
		{22.225, 3.1 * 22.225, 60000 / (20 * root) * 22.225},
		{22.225, 2.9 * 22.225, 1.5 * 60000 / (20 * root) * 22.225},
	} {
		in := deep()
		in.Concrete.Strength, in.Reinforcement.Yield = 4000*psi, 60e3*psi
		in.Reinforcement.X = pad.Bars{Diameter: c.bar, Spacing: c.gap}
		in.Thickness = 900
		// Just as many bars as are needed: nothing is taken off (25.4.10.1).
		r, _ := check(t, in)
		need := r.Spans[0].AsNeed / r.Spans[0].As
		assert.InDelta(t, max(c.want*min(1, need), 304.8), r.Spans[0].Bond, 0.1, "%+v", c)
		in.Actions.N *= 400
		r, _ = check(t, in)
		assert.InDelta(t, c.want, r.Spans[0].Bond, 0.1, "%+v", c)
	}
}

func TestMoreBarsThanCanYieldDoNotCount(t *testing.T) {
	// EN 1992-1-1 Table 3.1, eps_cu3 0.0035: C25/30, f_yd 434.8: x/d 0.6169, A_s <= 0.8 d 16.67/434.8 0.6169.
	in := footing(basis.Eurocode)
	in.Reinforcement.X = pad.Bars{Diameter: 32, Spacing: 80}
	in.Thickness = 300
	r, _ := check(t, in)
	s := r.Spans[0]
	fyd, fcd := 500/1.15, 25/1.5
	most := 0.8 * s.Depth * fcd / fyd * 0.0035 / (0.0035 + fyd/200e3)
	assert.InDelta(t, most, s.AsMost, 1e-9)
	assert.Greater(t, s.As, most)
	assert.InDelta(t, most*fyd*(s.Depth-most*fyd/(2*fcd)), s.MRd, 1e-6*s.MRd)
}

func TestBarsBeyondTwoPerCentDoNotCountInShear(t *testing.T) {
	// EN 1992-1-1 6.2.2(1): rho_l <= 0.02; v_Rd,c = 0.12 k (100 0.02 25)^(1/3) d.
	in := footing(basis.Eurocode)
	in.Thickness, in.SizeX = 300, 6000
	in.Reinforcement.X = pad.Bars{Diameter: 32, Spacing: 80}
	r, _ := check(t, in)
	s := r.Spans[0]
	assert.Greater(t, s.As/s.Depth, 0.02)
	k := min(2, 1+math.Sqrt(200/s.Depth))
	assert.InDelta(t, 0.12*k*math.Cbrt(50)*s.Depth, s.VRd, 1e-6*s.VRd)
}

func TestSizeEffectByHand(t *testing.T) {
	// ACI 318-19 22.5.5.1.3: lambda_s = sqrt(2/(1 + d/10 in)), d 20 in: 0.8165.
	in := deep()
	in.SizeEffect, in.Thickness = true, 508+75+6
	r, _ := check(t, in)
	assert.InDelta(t, math.Sqrt(2.0/3), r.Spans[0].K, 1e-9)
}

func TestFactorsOfTheAnnexReachThePad(t *testing.T) {
	in := footing(basis.Eurocode)
	was, _ := check(t, in)
	in.Design.EC.GammaS, in.Design.EC.AlphaCTPl = 1.0, 0.6
	r, _ := check(t, in)
	assert.InDelta(t, 500, r.Strength.Fyd, 1e-9)
	assert.InDelta(t, 0.6/0.8*was.Strength.FctdPl, r.Strength.FctdPl, 1e-9)
	assert.Greater(t, r.Spans[0].MRd, was.Spans[0].MRd)
}

func TestTurnedByNinetyDegreesAPadAnswersTheSame(t *testing.T) {
	for _, b := range bases {
		for _, plain := range []bool{false, true} {
			in := footing(b)
			in.Reinforcement.X.Spacing, in.Reinforcement.Yield = 100, 420
			if plain {
				in.Reinforcement = pad.Reinforcement{}
			}
			in.Actions = geom.Actions{N: -400e3, Vx: 12e3, Vy: -4e3, Mx: 9e6, My: 15e6}
			_, one := check(t, in)
			a, s := in.Actions, &in.Reinforcement
			in.Actions = geom.Actions{N: a.N, Vx: -a.Vy, Vy: a.Vx, Mx: -a.My, My: a.Mx}
			in.SizeX, in.SizeY = in.SizeY, in.SizeX
			in.Column = pad.Column{SizeX: in.Column.SizeY, SizeY: in.Column.SizeX}
			if !plain {
				s.X, s.Y, s.YBelow = s.Y, s.X, !s.YBelow
			}
			_, two := check(t, in)
			other := map[string]string{"pad_bending_x": "pad_bending_y", "pad_bending_y": "pad_bending_x"}
			for id, state := range one {
				to := id
				if other[id] != "" {
					to = other[id]
				}
				assert.Equal(t, state.Verdict, two[to].Verdict, id)
				assert.InDelta(t, state.Utilization, two[to].Utilization, 1e-6*max(1, state.Utilization), id)
			}
		}
	}
}
