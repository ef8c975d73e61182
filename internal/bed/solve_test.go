package bed_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/geom"
)

// point is the size of a patch that stands for a point or a line [mm].
const point = 1e-3

func solve(t require.TestingT, in *bed.Input, fineness int) (bed.Result, *bed.Solver) {
	s := &bed.Solver{Fineness: fineness}
	r, err := s.Solve(in)
	require.NoError(t, err)
	require.LessOrEqual(t, r.Residual, 1e-8)
	return r, s
}

// unit returns a plate with D = 1e7 Nmm on a bed with l = 100 mm.
func unit(sizeX, sizeY, nu float64) *bed.Input {
	p := bed.Plate{SizeX: sizeX, SizeY: sizeY, Thickness: 10, Nu: nu}
	p.E = 1e7 * 12 * (1 - nu*nu) / 1000
	return &bed.Input{Plate: p, Modulus: 0.1}
}

// sunk returns the sink of the node at a place.
func sunk(t require.TestingT, r *bed.Result, x, y float64) float64 {
	for i, n := range r.Nodes {
		if math.Hypot(n.X-x, n.Y-y) < 1e-6 {
			return r.Sink[i]
		}
	}
	require.Failf(t, "no node", "%g %g", x, y)
	return 0
}

// TestLoadFarFromEdges holds w_0 = P l^2/(8 D) and p_0 = P/(8 l^2) of an endless
// plate (Hertz, Westergaard; from memory, sure), with sides of 12 l. The bed may
// pull there, so the load is weight enough to keep the plate pressed.
func TestLoadFarFromEdges(t *testing.T) {
	const p, l = 1000.0, 100.0
	in := unit(1200, 1200, 0.3)
	weight(in)
	in.Patches = append(in.Patches, bed.Patch{SizeX: point, SizeY: point, N: -p})
	r, _ := solve(t, in, 48)
	require.InDelta(t, 1, r.Contact, 1e-12)
	w := r.Centre - even/in.Modulus
	t.Logf("interior w0 D/(P l2) %.5f", w*1e7/(p*l*l))
	assert.InEpsilon(t, 0.125, w*1e7/(p*l*l), 0.005)
	assert.InEpsilon(t, 0.125, (r.Peak-even)*l*l/p, 0.005)
}

// even is the pressure of weight [MPa].
const even = 1.0

// weight presses all of a plate evenly.
func weight(in *bed.Input) {
	p := &in.Plate
	in.Patches = append(in.Patches, bed.Patch{SizeX: p.SizeX, SizeY: p.SizeY, N: -even * p.SizeX * p.SizeY})
}

// TestLoadAtEdge holds w = P sqrt((2 + 1.2 nu)/(E h^3 k)) (Westergaard, corrected
// form in Ioannides and others 1985; from memory, fairly sure).
func TestLoadAtEdge(t *testing.T) {
	const p, l = 1000.0, 100.0
	for _, c := range []struct{ nu, want float64 }{{0.15, 0.4311}, {0.3, 0.4649}} {
		in := unit(1000, 1000, c.nu)
		assert.InDelta(t, c.want, math.Sqrt((2+1.2*c.nu)/(12*(1-c.nu*c.nu))), 6e-5)
		weight(in)
		in.Patches = append(in.Patches, bed.Patch{At: geom.Point{X: 500 - point/2}, SizeX: point, SizeY: point, N: -p})
		r, _ := solve(t, in, 40)
		require.InDelta(t, 1, r.Contact, 1e-12)
		w := sunk(t, &r, 500, 0) - even/in.Modulus
		t.Logf("edge nu %g: w D/(P l2) %.5f", c.nu, w*1e7/(p*l*l))
		assert.InEpsilon(t, c.want, w*1e7/(p*l*l), 0.01)
	}
}

// TestLoadAtCorner holds w = 1.205 P/(k l^2) for nu = 0.15 (Ioannides and others
// 1985; from memory, fairly sure). Westergaard's 1.1 of 1926 is 10 % off.
func TestLoadAtCorner(t *testing.T) {
	const p, l = 1000.0, 100.0
	in := unit(1000, 1000, 0.15)
	weight(in)
	at := geom.Point{X: 500 - point/2, Y: 500 - point/2}
	in.Patches = append(in.Patches, bed.Patch{At: at, SizeX: point, SizeY: point, N: -p})
	r, _ := solve(t, in, 40)
	require.InDelta(t, 1, r.Contact, 1e-12)
	w := sunk(t, &r, 500, 500) - even/in.Modulus
	t.Logf("corner w k l2/P %.5f", w*in.Modulus*l*l/p)
	assert.InEpsilon(t, 1.205, w*in.Modulus*l*l/p, 0.015)
}

// beam returns a beam 50 mm wide with lambda L under a line load in its middle,
// and lambda.
func beam(lambdaL float64) (*bed.Input, float64) {
	in := unit(1000, 50, 0)
	lambda := lambdaL / 1000
	in.Modulus = 4e7 * math.Pow(lambda, 4)
	in.Patches = []bed.Patch{{SizeX: point, SizeY: 50, N: -1000}}
	return in, lambda
}

// TestFiniteBeam holds the free beam under a load P in its middle (Hetenyi 1946;
// from memory, checked by finite elements to six digits): w = P lambda/(2 k)
// (cosh + cos + 2)/(sinh + sin), M = P/(4 lambda) (cosh - cos)/(sinh + sin) of
// lambda L. With a length of 5 the ends would lift, so all of it has weight.
func TestFiniteBeam(t *testing.T) {
	for _, c := range []struct{ lambdaL, w, m float64 }{
		{1, 1.012406, 0.124311}, {2, 0.5892706, 0.2302798}, {math.Pi, 0.5451657, 0.2725829}, {5, 0.5221814, 0.2523278},
	} {
		in, lambda := beam(c.lambdaL)
		weight(in)
		r, s := solve(t, in, 64)
		require.InDelta(t, 1, r.Contact, 1e-12)
		k := in.Modulus * 50
		w := (r.Centre - even/in.Modulus) * k / (1000 * lambda)
		m := s.SectionX(0).Moment * lambda / 1000
		t.Logf("lambda L %.4g: w %.7f (%.1e), M %.6f (%.1e)", c.lambdaL, w, w/c.w-1, m, m/c.m-1)
		assert.InEpsilon(t, c.w, w, 2e-6)
		assert.InEpsilon(t, c.m, m, 1e-4)
		assert.InDelta(t, 0, r.X.Sag.At, 1)
	}
}

// TestBeamWithoutTension holds a weightless beam that lifts (derived): contact
// length pi/lambda, w = c/2 P lambda/k, M = c/4 P/lambda, with c = (cosh pi +
// 1)/sinh pi.
func TestBeamWithoutTension(t *testing.T) {
	c := (math.Cosh(math.Pi) + 1) / math.Sinh(math.Pi)
	for _, lambdaL := range []float64{5, 8} {
		in, lambda := beam(lambdaL)
		r, _ := solve(t, in, 64)
		w, m := r.Centre*in.Modulus*50/(1000*lambda), r.X.Sag.Moment*lambda/1000
		t.Logf("lambda L %g: w %.6f M %.6f contact %.4f, %d steps", lambdaL, w, m, r.Contact*lambdaL, r.Steps)
		assert.InEpsilon(t, c/2, w, 1e-4)
		assert.InEpsilon(t, c/4, m, 3e-3)
		assert.InDelta(t, math.Pi, r.Contact*lambdaL, lambdaL/64)
	}
}

// stiff returns a square plate of 1000 mm with D/(k L^4) = 1, of a thickness
// times that, loaded by a patch
// at eccentricities in shares of its side.
func stiff(ex, ey, thicker float64) *bed.Input {
	in := unit(1000, 1000, 0.3)
	in.Modulus = 1e-5 // 0.1 at D/(k L^4) of 1e-4
	in.Plate.Thickness *= thicker
	const size = 0.04
	in.Patches = []bed.Patch{{At: geom.Point{X: 1000 * ex, Y: 1000 * ey}, SizeX: 1000 * size, SizeY: 1000 * size, N: -1e5}}
	return in
}

// TestStiffPlateIsRigid holds peak pressures of a rigid plate over the mean
// (derived), and package contact.
func TestStiffPlateIsRigid(t *testing.T) {
	for _, c := range []struct{ ex, ey, want float64 }{{0, 0, 1}, {0.1, 0.05, 1.9}, {0.3, 0, 10. / 3}, {0.2, 0.2, 4.1371}} {
		for _, thicker := range []float64{10, 100} {
			in := stiff(c.ex, c.ey, thicker)
			r, _ := solve(t, in, 20)
			t.Logf("e %g %g: %.5f in %d steps, residual %.1e", c.ex, c.ey, r.Peak*10, r.Steps, r.Residual)
			assert.InEpsilon(t, c.want, r.Peak*10, 2e-4)
			var s contact.Solver
			rigid, err := s.Solve(&contact.Input{Outline: contact.Rectangle(1000, 1000), Bed: contact.Bed{Modulus: in.Modulus},
				Actions: geom.Actions{N: -1e5, My: 1e8 * c.ex, Mx: -1e8 * c.ey}})
			require.NoError(t, err)
			assert.InEpsilon(t, rigid.Peak, r.Peak, 2e-4)
			assert.InEpsilon(t, rigid.Area, r.Contact*1e6, 2e-3)
		}
	}
}

// steel returns a square plate of steel with a square patch in the middle that
// brings 200 kN, on k [N/mm3].
func steel(side, patch, thickness, k float64) *bed.Input {
	return &bed.Input{Plate: bed.Plate{SizeX: side, SizeY: side, Thickness: thickness, E: 210e3, Nu: 0.3}, Modulus: k,
		Patches: []bed.Patch{{SizeX: patch, SizeY: patch, N: -200e3}}}
}

// TestMeshConverges logs and holds a plate of 400 mm, 25 mm thick, under a patch
// of 200 mm on 10 N/mm3; another program (own) has a peak of 2.5046 times the mean
// and 2014.7 N of moment at the face per 160 kN with 12 to 48 elements along the
// plate.
func TestMeshConverges(t *testing.T) {
	for _, n := range []int{8, 12, 16, 20, 32, 48} {
		r, s := solve(t, steel(400, 200, 25, 10), n)
		face := s.SectionX(100)
		t.Logf("%2d %v: peak %.5f contact %.4f face %.3f centre %.3f local %.2f, %d steps", n, r.Elements, r.Peak/1.25,
			r.Contact, face.Unit, r.X.Sag.Unit, r.X.Local, r.Steps)
	}
	r, s := solve(t, steel(400, 200, 25, 10), 0)
	assert.InEpsilon(t, 2.5046, r.Peak/1.25, 2e-4)
	assert.InEpsilon(t, 1.25*2014.7, s.SectionX(100).Unit, 2e-4)
	assert.InEpsilon(t, 8290.5, r.X.Local, 1e-3)
	// A plate that bends within 37 mm: own values of 64 elements along it.
	thin, fine := steel(600, 250, 10, 10), [2]float64{3.62483, 465.377}
	r, _ = solve(t, thin, 0)
	t.Logf("thin %v: peak %.5f centre %.3f", r.Elements, r.Peak, r.X.Sag.Unit)
	assert.InEpsilon(t, fine[0], r.Peak, 2e-3)
	assert.InEpsilon(t, fine[1], r.X.Sag.Unit, 2e-3)
}
