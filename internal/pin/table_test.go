package pin_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pin"
)

// TestKmodByDuration: EN 1995-1-1:2004 Table 3.1, solid and glued laminated timber.
func TestKmodByDuration(t *testing.T) {
	in := foot(basis.Eurocode)
	for class, row := range map[int][5]float64{
		1: {0.60, 0.70, 0.80, 0.90, 1.10},
		2: {0.60, 0.70, 0.80, 0.90, 1.10},
		3: {0.50, 0.55, 0.65, 0.70, 0.90},
	} {
		for i, d := range []pin.Duration{pin.Permanent, pin.LongTerm, pin.MediumTerm, pin.ShortTerm, pin.Instantaneous} {
			in.Timber.ServiceClass, in.Timber.Duration = class, d
			r, _ := check(t, in)
			assert.InDelta(t, row[i], r.Timber.Kmod, 0, "%d %d", class, d)
		}
	}
}

// TestHolesOfAShoeByTable34: EN 1993-1-8:2005 Table 3.4, holes of 13, f_u 360, f_ub 400,
// whichever direction bears less.
func TestHolesOfAShoeByTable34(t *testing.T) {
	for _, c := range []struct {
		rows                     int
		end, edge, along, across float64
		alpha, k1                float64
	}{
		{1, 30, 70, 0, 0, 0.769231, 2.5},        // 30/39
		{1, 16, 18, 0, 0, 0.461538, 1.746154},   // across: 18/39, 2.8 16/13 - 1.7
		{1, 18, 16, 0, 0, 0.461538, 1.746154},   // along: the same turned
		{2, 40, 40, 40, 30, 0.775641, 1.530769}, // along: 40/39 - 0.25, 1.4 30/13 - 1.7
		{2, 40, 40, 30, 40, 0.775641, 1.530769}, // across: the same turned
		{2, 60, 60, 30, 200, 0.519231, 2.5},     // along: 30/39 - 0.25; across 1.5308
		{2, 60, 60, 200, 200, 1, 2.5},
	} {
		in := single(basis.Eurocode)
		if c.rows > 1 {
			in = foot(basis.Eurocode)
		}
		in.Plates.EndDistance, in.Plates.Width = c.end, c.across+2*c.edge
		in.Layout.SpacingAlong, in.Layout.SpacingAcross = c.along, c.across
		if c.across > 0 {
			in.Timber.AcrossPin = c.across + 120
			in.Layout.EdgeDistance = 60
		}
		r, _ := check(t, in)
		assert.InDelta(t, c.k1*c.alpha, r.Steel.K1*r.Steel.Alpha, 1e-5, "%+v", c)
	}
}

// TestHolesOfAShoeTooNear: EN 1993-1-8:2005 Table 3.3: 2.4 d_0 between holes, 31.2 mm.
func TestHolesOfAShoeTooNear(t *testing.T) {
	for spacing, want := range map[float64]limit.Verdict{31.1: limit.Fail, 31.3: limit.Pass} {
		in := foot(basis.Eurocode)
		in.Layout.SpacingAlong = spacing
		_, s := check(t, in)
		assert.Equal(t, want, s["bracket_hole_pattern"].Verdict, spacing)
	}
}

// TestPinsBeyondTheClauses: EN 1995-1-1:2004 8.5.1.1(2) and 8.6(2), bolts to 30 mm, dowels
// from over 6 mm; 10.4.3: holes of plates 2 mm or 0.1 d over the pin.
func TestPinsBeyondTheClauses(t *testing.T) {
	for _, c := range []struct {
		kind    pin.Kind
		d, hole float64
		held    bool
	}{
		{pin.Bolt, 30, 31, true}, {pin.Bolt, 30.5, 31.5, false},
		{pin.Dowel, 6, 7, false}, {pin.Dowel, 6.5, 7, true},
		{pin.Bolt, 12, 14, true}, {pin.Bolt, 12, 14.1, false},
		{pin.Bolt, 24, 26.4, true}, {pin.Bolt, 24, 26.5, false},
	} {
		in := single(basis.Eurocode)
		in.Timber.AcrossPin, in.Layout.EdgeDistance, in.Layout.EndDistance = 400, 200, 300
		in.Pin.Kind, in.Pin.Diameter, in.Plates.Hole = c.kind, c.d, c.hole
		in.Plates.Width, in.Plates.EndDistance = 200, 80
		_, s := check(t, in)
		assert.Equal(t, c.held, s["pin_lateral"].Rated, "%+v: %s", c, s["pin_lateral"].Reason)
	}
}

// TestUnloadedEndOfADowel: EN 1995-1-1:2004 Table 8.5 before A1: 40 mm or 3.5 d.
func TestUnloadedEndOfADowel(t *testing.T) {
	for d, want := range map[float64]float64{10: 40, 12: 42} {
		in := single(basis.Eurocode)
		in.Pin.Kind, in.Pin.Diameter, in.Plates.Hole = pin.Dowel, d, d+0.5
		in.Actions = pin.Actions{N: -5e3}
		r, _ := check(t, in)
		assert.InDelta(t, want, r.Least[2].Needs, 1e-9)
	}
}

// TestGroupAcrossTheGrain: NDS 2018 (11.3-1) for two rows loaded across the grain. E_m is a
// twentieth of that along it (our choice), A_m the thickness times the width of the group
// along the grain, 90 mm, no less than 4 D for one pin in a row.
func TestGroupAcrossTheGrain(t *testing.T) {
	for _, c := range []struct {
		inRow int
		width float64
	}{{2, 90}, {1, 48}} {
		in := foot(basis.USLRFD)
		in.Layout.InRow = c.inRow
		in.Actions = pin.Actions{V: 2e3}
		in.Timber.AlongPin = 150
		r, _ := check(t, in)
		timber := 11000.0 / 20 * 150 * c.width
		steel := 29e6 * psi * 2 * 8 * c.width
		gamma := 270000 * math.Pow(12/inch, 1.5) * pound / inch
		u := 1 + gamma*80/2*(1/timber+1/steel)
		m := u - math.Sqrt(u*u-1)
		rea := timber / steel
		want := m * (1 - math.Pow(m, 4)) / (2 * ((1+rea*m*m)*(1+m) - 1 + math.Pow(m, 4))) * (1 + rea) / (1 - m)
		assert.InDelta(t, want, r.US.Cg, 2e-4, c.inRow)
	}
}

// TestSpacingAcrossTheGrain: NDS 2018 Table 12.5.1B (from memory): 2.5 D up to l/D 2,
// (5 l + 10 D)/8 up to 6, then 5 D.
func TestSpacingAcrossTheGrain(t *testing.T) {
	for along, want := range map[float64]float64{40: 62.5, 50: 62.5, 100: 93.75, 150: 125, 200: 125} {
		in := foot(basis.USLRFD)
		in.Pin.Diameter, in.Plates.Hole, in.Timber.AlongPin = 25, 26.5, along
		in.Actions = pin.Actions{V: 2e3}
		r, _ := check(t, in)
		assert.InDelta(t, want, r.Least[0].Needs, 1e-9, along)
	}
}

// TestThinPinsUS: NDS 2018 Table 12.3.1B begins at 1/4 in.
func TestThinPinsUS(t *testing.T) {
	for d, held := range map[float64]bool{6: false, 6.35: true, 7: true} {
		in := single(basis.USLRFD)
		in.Pin.Diameter, in.Plates.Hole = d, d+1
		_, s := check(t, in)
		assert.Equal(t, held, s["pin_lateral"].Rated, d)
	}
}
