package settle_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/settle"
)

// Another way to stress and settlement: the load is many small forces on a half space,
// each pressing as Boussinesq's does, and the ground many thin slices.

// piece is a part of the load, that far from the point beneath.
type piece struct{ away, area float64 }

// corner cuts a rectangle into pieces, seen from a corner of it; they are the smaller the
// nearer they lie, down to a part of the depth z.
func corner(b, l, z float64) (all []piece) {
	const parts = 40
	cut := func(size float64) (at, width [parts]float64) {
		last, full := 0.0, math.Asinh(size/z)
		for i := range parts {
			next := z * math.Sinh(full*float64(i+1)/parts)
			at[i], width[i] = (last+next)/2, next-last
			last = next
		}
		return at, width
	}
	x, dx := cut(b)
	y, dy := cut(l)
	for i := range x {
		for j := range y {
			all = append(all, piece{away: math.Hypot(x[i], y[j]), area: dx[i] * dy[j]})
		}
	}
	return all
}

// circle cuts a circle into rings about its centre.
func circle(radius, z float64) (all []piece) {
	const parts = 400
	last, full := 0.0, math.Asinh(radius/z)
	for i := range parts {
		next := z * math.Sinh(full*float64(i+1)/parts)
		all = append(all, piece{away: (last + next) / 2, area: math.Pi * (next*next - last*last)})
		last = next
	}
	return all
}

// vertical is the stress straight down, and sum that of the three straight stresses over
// 1 + nu, of pieces that press with 1 MPa at the depth z.
//
//	sigma_z = 3 P z^3/(2 pi R^5), sigma_x + sigma_y + sigma_z = (1 + nu) P z/(pi R^3)
func vertical(all []piece, z float64) (stress, sum float64) {
	for _, p := range all {
		r := math.Sqrt(p.away*p.away + z*z)
		stress += 3 * p.area * z * z * z / (2 * math.Pi * r * r * r * r * r)
		sum += p.area * z / (math.Pi * r * r * r)
	}
	return stress, sum
}

// TestStressIsThatOfManySmallForces within 1 %.
func TestStressIsThatOfManySmallForces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		b, l, z := number("b", 200, 5000), number("l", 200, 5000), number("z", 20, 10000)
		want, _ := vertical(corner(b, l, z), z)
		assert.InEpsilon(t, want, settle.StressBelowCorner(1, b, l, z), 0.01, "corner")
		want, _ = vertical(circle(b, z), z)
		assert.InEpsilon(t, want, settle.StressBelowCircle(1, b, z), 0.01, "circle")
	})
}

// TestSpreadTwoToOneHasTheLoadOfManySmallForces: on the rectangle to which the load spreads
// it gives all of the load; the half space gives a half to all of it there, the rest beside.
func TestSpreadTwoToOneHasTheLoadOfManySmallForces(t *testing.T) {
	for _, c := range [][3]float64{{1000, 1000, 500}, {1000, 1000, 1500}, {1000, 2500, 1000}, {2000, 800, 3000}} {
		b, l, z := c[0], c[1], c[2]
		const parts = 40
		mean := 0.0
		below := func(x, y float64) float64 {
			// The load seen from beside its corner is a sum of four rectangles.
			part := func(x, y float64) float64 {
				s := settle.StressBelowCorner(1, math.Abs(x), math.Abs(y), z)
				return math.Copysign(s, x*y)
			}
			return part(b/2+x, l/2+y) + part(b/2-x, l/2+y) + part(b/2+x, l/2-y) + part(b/2-x, l/2-y)
		}
		for i := range parts {
			for j := range parts {
				mean += below((b+z)*((float64(i)+0.5)/parts-0.5), (l+z)*((float64(j)+0.5)/parts-0.5)) / parts / parts
			}
		}
		spread := settle.SpreadTwoToOne(1, b, l, z)
		assert.InEpsilon(t, b*l, spread*(b+z)*(l+z), 1e-12)
		assert.LessOrEqual(t, mean, spread, "%v", c)
		assert.GreaterOrEqual(t, mean, 0.5*spread, "%v", c)
	}
}

// slices is the settlement of the centre over q/E of a layer from one depth to another,
// each slice strained by the stresses of many small forces.
//
//	strain = ((1 + nu) sigma_z - nu (sigma_x + sigma_y + sigma_z))/E
func slices(pieces func(z float64) []piece, times, from, to, nu float64) (sum float64) {
	const parts = 120
	for i := range parts {
		z := from + (to-from)*(float64(i)+0.5)/parts
		stress, all := vertical(pieces(z), z)
		sum += times * (1 + nu) * (stress - nu*all) * (to - from) / parts
	}
	return sum
}

// TestElasticSettlementIsThatOfSlices for rectangles and circles on one to three layers,
// within 1 %; Poisson's ratio is that of each layer.
func TestElasticSettlementIsThatOfSlices(t *testing.T) {
	for seed := range 20 {
		in := rapid.Custom(random).Example(seed)
		in.Rigid, in.HalfSpace, in.Depth, in.Embedment = false, false, 0, 0
		for i := range in.Layers {
			in.Layers[i].Thickness = max(in.Layers[i].Thickness, 100)
		}
		r, _ := check(t, in)
		pieces, times := func(z float64) []piece { return corner(in.SizeX/2, in.SizeY/2, z) }, 4.0
		if in.Shape == settle.Circle {
			pieces, times = func(z float64) []piece { return circle(in.Diameter/2, z) }, 1
		}
		top, whole := 0.0, 0.0
		for i, l := range in.Layers {
			want := slices(pieces, times, top, top+l.Thickness, l.Poisson) / r.Width
			assert.InDelta(t, want, r.Influence[i], 0.01*max(want, 0.02), "layer %d of %+v", i, in)
			whole += want * r.Width / l.Modulus
			top += l.Thickness
		}
		s := last(r)
		assert.InEpsilon(t, s.Pressure*whole, s.Centre, 0.01)
	}
}

// TestSteinbrennersFactorsAreThoseOfSlices of the corner: F_1 and F_2 by two ratios.
func TestSteinbrennersFactorsAreThoseOfSlices(t *testing.T) {
	for _, c := range [][2]float64{{1, 0.5}, {1, 4}, {2, 1}, {2.5, 8}, {5, 3}} {
		f1, f2 := settle.Steinbrenner(c[0], c[1])
		for _, nu := range []float64{0, 0.3, 0.5} {
			want := slices(func(z float64) []piece { return corner(1, c[0], z) }, 1, 0, c[1], nu)
			assert.InEpsilon(t, want, (1-nu*nu)*(f1+(1-2*nu)/(1-nu)*f2), 0.01, "%v %g", c, nu)
		}
	}
}

// TestTurnedFootingSettlesTheSame: x for y, and moments about y for those about x.
func TestTurnedFootingSettlesTheSame(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		in.Design.Basis = rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USASD}).Draw(t, "code")
		_, before := check(t, in)
		in.SizeX, in.SizeY = in.SizeY, in.SizeX
		in.Stages = append([]settle.Stage(nil), in.Stages...)
		for i := range in.Stages {
			s := &in.Stages[i]
			s.Mx, s.My = s.My, s.Mx
		}
		_, after := check(t, in)
		for id, s := range before {
			assert.Equal(t, s.Verdict, after[id].Verdict, id)
			assert.InDelta(t, s.Demand, after[id].Demand, 1e-9*(1+s.Demand), id)
			assert.InDelta(t, s.Utilization, after[id].Utilization, 1e-9*(1+s.Utilization), id)
		}
	})
}
