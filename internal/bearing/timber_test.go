package bearing_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

// wood returns a contact of 200 by 100 mm, 200 along the grain, far from the ends, on
// timber of 20 MPa along and 2.5 MPa across the grain.
func wood(b basis.Basis, kind material.TimberKind, grain bearing.Grain) *bearing.Input {
	return &bearing.Input{
		Design: design(b), SizeX: 200, SizeY: 100, Actions: geom.Actions{N: -10e3}, Medium: bearing.Timber,
		Timber: bearing.TimberBearing{Timber: material.Timber{Along: 20, Across: 2.5, Kind: kind}, Direction: grain,
			ServiceClass: 1, EndDistance: 500},
	}
}

func capacity(t *testing.T, in *bearing.Input) float64 {
	r, err := bearing.Check(in)
	require.NoError(t, err)
	return r.Timber.Capacity
}

const (
	softwood = material.SolidSoftwood
	glulam   = material.GluedLaminated
	hardwood = material.SolidHardwood
)

// TestFactorAcrossTheGrain holds k_c,90 of EN 1995-1-1 6.1.5(2) to (4): 1.25 and 1.5 on a
// continuous, 1.5 and 1.75 on a discrete support for softwood and glulam, the last up to
// 400 mm of contact; 1 for hardwood, and wherever a neighbour is nearer than 2 h or h is
// not known. R = 100 (200 + 2 30) k_c,90 k_mod 2.5/gamma_M.
func TestFactorAcrossTheGrain(t *testing.T) {
	for _, c := range []struct {
		support bearing.AcrossSupport
		kind    material.TimberKind
		length  float64
		want    float64
	}{
		{bearing.Continuous, softwood, 200, 1.25}, {bearing.Continuous, glulam, 200, 1.5}, {bearing.Continuous, hardwood, 200, 1},
		{bearing.Discrete, softwood, 200, 1.5}, {bearing.Discrete, glulam, 200, 1.75}, {bearing.Discrete, hardwood, 200, 1},
		{bearing.Continuous, glulam, 401, 1.5}, {bearing.Discrete, softwood, 401, 1.5},
		{bearing.Discrete, glulam, 400, 1.75}, {bearing.Discrete, glulam, 401, 1},
		{0, softwood, 200, 1}, {0, glulam, 200, 1},
	} {
		in := wood(basis.Eurocode, c.kind, bearing.AcrossGrain)
		in.SizeX, in.Timber.Support = c.length, c.support
		gamma := 1.3
		if c.kind == glulam {
			gamma = 1.25
		}
		name := fmt.Sprintf("%+v", c)
		assert.InDelta(t, 100*(c.length+60)*c.want*0.6*2.5/gamma, capacity(t, in), 1e-6, name)
		for _, n := range []struct{ clear, depth, want float64 }{{300, 150, c.want}, {299, 150, 1}, {300, 0, 1}} {
			in.Timber.HasNeighbour, in.Timber.ClearSpacing, in.Timber.Depth = true, n.clear, n.depth
			assert.InDelta(t, 100*(c.length+60)*n.want*0.6*2.5/gamma, capacity(t, in), 1e-6, "%s %+v", name, n)
		}
	}
}

// TestContactIsLengthenedAlongTheGrainOnly holds min(30 mm, a, l, l_1/2) of 6.1.5(1) at
// each end, one of them governing after the other.
func TestContactIsLengthenedAlongTheGrainOnly(t *testing.T) {
	for _, c := range []struct {
		length, end, clear float64
		extra              float64
	}{{200, 500, 0, 30}, {200, 29, 0, 29}, {200, 0, 0, 0}, {20, 500, 0, 20}, {200, 500, 50, 25}, {200, 500, 61, 30}} {
		for _, turned := range []bool{false, true} {
			in := wood(basis.Eurocode, hardwood, bearing.AcrossGrain)
			in.SizeX, in.Timber.EndDistance = c.length, c.end
			in.Timber.HasNeighbour, in.Timber.ClearSpacing = c.clear > 0, c.clear
			if turned {
				in.SizeX, in.SizeY, in.Timber.GrainAlongY = in.SizeY, in.SizeX, true
			}
			assert.InDelta(t, 100*(c.length+2*c.extra)*0.6*2.5/1.3, capacity(t, in), 1e-6, "%+v", c)
		}
	}
}

// TestModificationByTermAndMoisture holds k_mod of EN 1995-1-1 Table 3.1 for solid and
// glued laminated timber.
func TestModificationByTermAndMoisture(t *testing.T) {
	for class, row := range map[bearing.ServiceClass][6]float64{
		1: {0.6, 0.6, 0.7, 0.8, 0.9, 1.1}, 2: {0.6, 0.6, 0.7, 0.8, 0.9, 1.1}, 3: {0.5, 0.5, 0.55, 0.65, 0.7, 0.9},
	} {
		for term, want := range row {
			in := wood(basis.Eurocode, glulam, bearing.AlongGrain)
			in.Timber.ServiceClass, in.Timber.Duration = class, bearing.Duration(term)
			assert.InDelta(t, 20e3*want*20/1.25, capacity(t, in), 1e-6, "class %d term %d", class, term)
		}
	}
}

// TestWetTimberByTheNDS holds C_M: 0.8 and 0.73 along, 0.67 and 0.53 across the grain for
// sawn and glued laminated timber, wet where the moisture is not stated; C_D 0.9 and lambda
// 0.6 where no term is stated.
func TestWetTimberByTheNDS(t *testing.T) {
	for _, kind := range []material.TimberKind{softwood, hardwood, glulam} {
		along, across := 0.8, 0.67
		if kind == glulam {
			along, across = 0.73, 0.53
		}
		for class, wet := range []bool{true, false, false, true} {
			a, c := 1.0, 1.0
			if wet {
				a, c = along, across
			}
			asd, lrfd := wood(basis.USASD, kind, bearing.AlongGrain), wood(basis.USLRFD, kind, bearing.AlongGrain)
			asd.Timber.ServiceClass, lrfd.Timber.ServiceClass = bearing.ServiceClass(class), bearing.ServiceClass(class)
			assert.InDelta(t, 20e3*20*a*0.9, capacity(t, asd), 1e-6, "%d %d", kind, class)
			assert.InDelta(t, 20e3*20*a*2.4*0.9*0.6, capacity(t, lrfd), 1e-6, "%d %d", kind, class)
			one, two := *asd, *lrfd
			one.Timber.LoadDuration, two.Timber.TimeEffect = 1.6, 1
			assert.InDelta(t, 20e3*20*a*1.6, capacity(t, &one), 1e-6)
			assert.InDelta(t, 20e3*20*a*2.4*0.9, capacity(t, &two), 1e-6)
			asd.Timber.Direction, lrfd.Timber.Direction = bearing.AcrossGrain, bearing.AcrossGrain
			assert.InDelta(t, 20e3*2.5*c, capacity(t, asd), 1e-6, "%d %d", kind, class)
			assert.InDelta(t, 20e3*2.5*c*1.67*0.9, capacity(t, lrfd), 1e-6, "%d %d", kind, class)
		}
	}
}

// TestShortContactFarFromTheEnd holds C_b = (l + 3/8 in)/l of NDS 3.10.4: below 6 in, at
// least 3 in from the end.
func TestShortContactFarFromTheEnd(t *testing.T) {
	for _, c := range []struct{ length, end, want float64 }{
		{100, 3 * 25.4, 109.525 / 100}, {100, 3*25.4 - 0.1, 1}, {100, 70, 1}, {6 * 25.4, 500, 1}, {6*25.4 - 0.1, 500, (6*25.4 - 0.1 + 9.525) / (6*25.4 - 0.1)},
	} {
		in := wood(basis.USASD, softwood, bearing.AcrossGrain)
		in.SizeX, in.Timber.EndDistance = c.length, c.end
		assert.InDelta(t, c.length*100*2.5*c.want, capacity(t, in), 1e-6, "%+v", c)
	}
}

// TestGroutAtItsLimits holds 6.2.5(7) of EN 1993-1-8 at each limit and just beyond: 0.2
// f_ck, 0.2 of the smaller side, above 50 mm as strong as the concrete.
func TestGroutAtItsLimits(t *testing.T) {
	for _, c := range []struct {
		thick, strength float64
		side            float64
		holds           bool
	}{
		{30, 5, 300, true}, {30, 4.99, 300, false}, {30, 4, 300, false}, {60, 25, 300, true}, {60.1, 25, 300, false},
		{50, 5, 300, true}, {50.1, 25, 300, true}, {50.1, 24.9, 300, false},
	} {
		in := &bearing.Input{Design: design(basis.Eurocode), SizeX: 400, SizeY: c.side, Actions: geom.Actions{N: -100e3},
			Medium: bearing.Concrete, Block: block(25, 1000, 800)}
		in.Block.GroutThick, in.Block.GroutStrength = c.thick, c.strength
		r, err := bearing.Check(in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		joint := l.All()[2]
		require.Equal(t, "joint_design_pressure", joint.Kind.ID)
		_, err = bearing.Available(in)
		if c.holds {
			assert.Equal(t, limit.Pass, joint.Verdict, "%+v", c)
			assert.NoError(t, err, "%+v", c)
		} else {
			assert.Equal(t, limit.OutOfScope, joint.Verdict, "%+v", c)
			assert.NotEmpty(t, joint.Reason)
			assert.Error(t, err, "%+v", c)
		}
		in.SizeX, in.SizeY = in.SizeY, in.SizeX
		turned, err := bearing.Check(in)
		require.NoError(t, err)
		assert.Equal(t, r.Concrete.GroutReason, turned.Concrete.GroutReason)
	}
}

// TestShallowBlockSpreadsByItsHeight takes a plate of 300 by 200 mm on a block of 1500 mm:
// the US frustum of 2 horizontal to 1 vertical reaches 2 50 mm on each side of a block 50
// mm high: (300 + 200)/300 = 1.667; the Eurocode's spread of 1:2 reaches 50/2:
// (300 + 50)/300 = 1.167.
func TestShallowBlockSpreadsByItsHeight(t *testing.T) {
	in := &bearing.Input{Design: design(basis.USLRFD), SizeX: 300, SizeY: 200, Actions: geom.Actions{N: -100e3},
		Medium: bearing.Concrete, Block: block(25, 1500, 50)}
	r, err := bearing.Check(in)
	require.NoError(t, err)
	assert.InDelta(t, 0.65*0.85*25*60e3*500/300, r.Concrete.Rc, 1e-3)
	in.Design = design(basis.USASD)
	r, err = bearing.Check(in)
	require.NoError(t, err)
	assert.InDelta(t, 0.85*25*60e3*500/300/2.31, r.Concrete.Rc, 1e-3)
	in.Design = design(basis.Eurocode)
	r, err = bearing.Check(in)
	require.NoError(t, err)
	assert.InDelta(t, 25/1.5*60e3*350/300, r.Concrete.FRdu, 1e-3)
}

// TestNoLimitStateVanishesWhereNothingPresses compares the states under compression with
// those of uplift and of a resultant off the contact.
func TestNoLimitStateVanishesWhereNothingPresses(t *testing.T) {
	ids := func(in *bearing.Input) (out []string) {
		r, err := bearing.Check(in)
		require.NoError(t, err)
		var l limit.List
		r.States(&l)
		for _, s := range l.All() {
			out = append(out, s.Kind.ID)
		}
		return out
	}
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		for medium, in := range map[string]*bearing.Input{
			"along": wood(b, softwood, bearing.AlongGrain), "across": wood(b, glulam, bearing.AcrossGrain),
			"concrete": {Design: design(b), SizeX: 200, SizeY: 100, Medium: bearing.Concrete, Block: block(25, 600, 600)},
			"given":    {Design: design(b), SizeX: 200, SizeY: 100, Medium: bearing.Given, Given: bearing.GivenPressure{Pressure: 1}},
		} {
			in.Actions = geom.Actions{N: -1e4}
			want := ids(in)
			for _, a := range []geom.Actions{{N: 1e4}, {}, {N: -1e4, Mx: 1e6}, {N: -1e4, My: 2e6}} {
				in.Actions = a
				assert.Equal(t, want, ids(in), "%v %s %+v", b, medium, a)
			}
		}
	}
}
