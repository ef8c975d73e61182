package weld_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/weld"
)

// Another way to a group of welds: its segments cut into points. Each holds its share of
// the force, and of the moments in proportion to its distance, by sums over all points.

// bit is a point of the weld.
type bit struct{ x, y, l, ux, uy float64 }

func bits(segments []geom.Segment, each int) (all []bit) {
	for i := range segments {
		s := &segments[i]
		l := s.Length()
		for k := range each {
			at := (float64(k) + 0.5) / float64(each)
			all = append(all, bit{x: s.A.X + at*(s.B.X-s.A.X), y: s.A.Y + at*(s.B.Y-s.A.Y), l: l / float64(each),
				ux: (s.B.X - s.A.X) / l, uy: (s.B.Y - s.A.Y) / l})
		}
	}
	return all
}

// centroid returns the length of the bits and their middle.
func centroid(all []bit) (length, x, y float64) {
	for _, b := range all {
		length, x, y = length+b.l, x+b.l*b.x, y+b.l*b.y
	}
	return length, x / length, y / length
}

// worstBit returns the greatest force per length, the greatest stress over throat by the
// directional method and the greatest across the throat, per throat [N/mm].
func worstBit(g *weld.Group) (size, equivalent, across float64) {
	all := bits(g.Segments, 2000)
	length, cx, cy := centroid(all)
	var xx, yy, xy float64
	for _, b := range all {
		xx, yy, xy = xx+b.l*(b.x-cx)*(b.x-cx), yy+b.l*(b.y-cy)*(b.y-cy), xy+b.l*(b.x-cx)*(b.y-cy)
	}
	// All forces brought to the centroid.
	a := g.Actions
	rx, ry, rz := g.AtX-cx, g.AtY-cy, g.AtZ
	mx, my, turn := a.Mx+ry*a.N-rz*a.Vy, a.My+rz*a.Vx-rx*a.N, a.T+rx*a.Vy-ry*a.Vx
	// n = N/L + p x + q y, with sum n y = M_x and -sum n x = M_y.
	det := xx*yy - xy*xy
	p, q := (-my*yy-mx*xy)/det, (mx*xx+my*xy)/det
	for _, b := range all {
		x, y := b.x-cx, b.y-cy
		n := math.Abs(a.N/length + p*x + q*y)
		vx, vy := a.Vx/length-turn*y/(xx+yy), a.Vy/length+turn*x/(xx+yy)
		along, beside := vx*b.ux+vy*b.uy, math.Abs(-vx*b.uy+vy*b.ux)
		size = max(size, math.Sqrt(n*n+along*along+beside*beside))
		across = max(across, (n+beside)/math.Sqrt2)
		for _, side := range []float64{-1, 1} {
			perp, shear := (n+side*beside)/math.Sqrt2, (n-side*beside)/math.Sqrt2
			equivalent = max(equivalent, math.Sqrt(perp*perp+3*(shear*shear+along*along)))
		}
	}
	return size, equivalent, across
}

// TestGroupOfPointsHasTheSameWorst for groups of one to six segments anywhere, under all
// six components applied anywhere: within 0.5 %.
func TestGroupOfPointsHasTheSameWorst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis")
		in := fillet(b, 0, 5, 235, 360, 0.8)
		c := rapid.Float64Range(-300, 300)
		for range rapid.IntRange(2, 6).Draw(t, "n") {
			s := geom.Segment{A: geom.Point{X: c.Draw(t, "x1"), Y: c.Draw(t, "y1")}, B: geom.Point{X: c.Draw(t, "x2"), Y: c.Draw(t, "y2")}}
			if s.Length() < 60 {
				s.B.Y = s.A.Y + 80
			}
			in.Group.Segments = append(in.Group.Segments, s)
		}
		f := newtons(200000)
		in.Group.Actions = geom.Actions{N: f.Draw(t, "N"), Vx: f.Draw(t, "Vx"), Vy: f.Draw(t, "Vy"),
			Mx: 50 * f.Draw(t, "Mx"), My: 50 * f.Draw(t, "My"), T: 50 * f.Draw(t, "T")}
		in.Group.AtX, in.Group.AtY, in.Group.AtZ = c.Draw(t, "x"), c.Draw(t, "y"), c.Draw(t, "z")
		var faults limit.Faults
		if weld.Validate(&in, &faults); len(faults) > 0 {
			return // two welds on one line
		}
		r, s := check(t, &in)
		g := &r.Group
		if r.Reason != "" || g.Ix*g.Iy-g.Ixy*g.Ixy < 1e-3*(g.Ix+g.Iy)*(g.Ix+g.Iy) {
			return // nearly a line
		}
		size, equivalent, across := worstBit(&in.Group)
		same := func(want, got float64, what string) {
			if !(math.Abs(got-want) <= 0.005*want+1e-9) {
				t.Fatalf("%s: %g by points, %g", what, want, got)
			}
		}
		if !b.US() {
			same(equivalent/5, s["weld_directional"].Demand, "directional")
			same(across/5, s["weld_normal_stress"].Demand, "across the throat")
			same(equivalent/5/(360/0.8/1.25), s["weld_directional"].Utilization, "used")
			return
		}
		same(size, s["weld_metal"].Demand, "force per length")
		factor := 0.75
		if b == basis.USASD {
			factor = 0.5
		}
		same(size/(factor*0.6*70*ksi*5), s["weld_metal"].Utilization, "used")
	})
}

// turning is what a group resists when it turns about a point [N, Nmm]: the greatest
// turn that no bit exceeds, each with the force of its own slip.
func turning(all []bit, leg, filler, x, y, sense float64) (fx, fy, m float64) {
	theta := func(b bit) (way, degrees, dx, dy float64) {
		dx, dy = -sense*(b.y-y), sense*(b.x-x)
		way = math.Hypot(dx, dy)
		return way, math.Acos(min(1, math.Abs(dx*b.ux+dy*b.uy)/way)) * 180 / math.Pi, dx / way, dy / way
	}
	turn := math.Inf(1)
	for _, b := range all {
		way, deg, _, _ := theta(b)
		turn = min(turn, min(1.087*math.Pow(deg+6, -0.65), 0.17)*leg/way)
	}
	for _, b := range all {
		way, deg, dx, dy := theta(b)
		p := turn * way / (0.209 * math.Pow(deg+2, -0.32) * leg)
		force := 0.6 * filler * (1 + 0.5*math.Pow(math.Sin(deg*math.Pi/180), 1.5)) * math.Pow(p*(1.9-0.9*p), 0.3) * leg * math.Sqrt2 / 2 * b.l
		fx, fy, m = fx+force*dx, fy+force*dy, m+force*(dx*-b.y+dy*b.x)
	}
	return fx, fy, m
}

// TestCentreIsThatOfAllPointsTried: the centre is looked for on a net of points that is
// drawn together round the best of them, where force and moment fit the load.
func TestCentreIsThatOfAllPointsTried(t *testing.T) {
	for name, g := range map[string]weld.Group{
		"two lines": twoLines(250, 0.5, 0.6),
		"C":         cShape(250, 0.7, 0.3),
		"angle": {Segments: []geom.Segment{{B: geom.Point{X: 180}}, {B: geom.Point{Y: 260}}},
			Actions: geom.Actions{Vx: 0.6, Vy: -0.8}, AtX: 300, AtY: 40, Method: weld.InstantaneousCentre},
	} {
		in := fillet(basis.USLRFD, 5, 0, 345, 450, 0)
		in.Group = g
		r, _ := check(t, &in)
		all := bits(g.Segments, 60)
		a := g.Actions
		force := math.Hypot(a.Vx, a.Vy)
		ux, uy := a.Vx/force, a.Vy/force
		arm := a.T/force + g.AtX*uy - g.AtY*ux // moment about the origin over the force
		_, cx, cy := centroid(all)
		sense := math.Copysign(1, arm-(cx*uy-cy*ux))
		best, at, holds := math.Inf(1), [2]float64{cx, cy}, 0.0
		for width := 1200.0; width > 0.05; width *= 0.5 {
			middle := at
			for i := -8; i <= 8; i++ {
				for k := -8; k <= 8; k++ {
					x, y := middle[0]+width*float64(i)/8, middle[1]+width*float64(k)/8
					fx, fy, m := turning(all, 5, 70*ksi, x, y, sense)
					with, beside := fx*ux+fy*uy, fx*uy-fy*ux
					off := math.Hypot(beside, (m-with*arm)/250) / math.Abs(with)
					if with > 0 && off < best {
						best, at, holds = off, [2]float64{x, y}, with
					}
				}
			}
		}
		assert.Less(t, best, 0.002, name)
		assert.InEpsilon(t, holds, r.Centre.Nominal, 0.01, name)
		assert.InDelta(t, at[0]-cx, r.Centre.X, 0.02*250, name)
		assert.InDelta(t, at[1]-cy, r.Centre.Y, 0.02*250, name)
	}
}
