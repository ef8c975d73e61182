package contact

import (
	"math"

	"footward.example/footward/internal/geom"
)

// moments are the integrals of 1, x, y, x^2, x y, y^2 over an area.
type moments struct{ a, x, y, xx, xy, yy float64 }

func (m *moments) add(o moments, by float64) {
	m.a += by * o.a
	m.x += by * o.x
	m.y += by * o.y
	m.xx += by * o.xx
	m.xy += by * o.xy
	m.yy += by * o.yy
}

// integrate returns the moments of a polygon, positive whatever its sense.
func integrate(p []geom.Point) moments {
	var m moments
	for i := range p {
		q := p[(i+1)%len(p)]
		x0, y0, x1, y1 := p[i].X, p[i].Y, q.X, q.Y
		w := x0*y1 - x1*y0
		m.a += w / 2
		m.x += w * (x0 + x1) / 6
		m.y += w * (y0 + y1) / 6
		m.xx += w * (x0*x0 + x0*x1 + x1*x1) / 12
		m.yy += w * (y0*y0 + y0*y1 + y1*y1) / 12
		m.xy += w * (x0*y1 + 2*x0*y0 + 2*x1*y1 + x1*y0) / 24
	}
	if m.a < 0 {
		var flipped moments
		flipped.add(m, -1)
		return flipped
	}
	return m
}

// plane is u = a + b x + c y.
type plane struct{ a, b, c float64 }

func (u plane) at(p geom.Point) float64 { return u.a + u.b*p.X + u.c*p.Y }

// cut appends to out the part of a polygon where the plane is above a level.
func cut(p []geom.Point, u plane, level float64, out []geom.Point) []geom.Point {
	for i := range p {
		q := p[(i+1)%len(p)]
		s, t := u.at(p[i])-level, u.at(q)-level
		if s > 0 {
			out = append(out, p[i])
		}
		if (s > 0) != (t > 0) {
			f := s / (s - t)
			out = append(out, geom.Point{X: p[i].X + f*(q.X-p[i].X), Y: p[i].Y + f*(q.Y-p[i].Y)})
		}
	}
	return out
}

// inside reports whether a point lies within a convex polygon, by more than a
// share of its size.
func inside(p []geom.Point, at geom.Point, margin float64) bool {
	side := 0.0
	for i := range p {
		q := p[(i+1)%len(p)]
		dx, dy := q.X-p[i].X, q.Y-p[i].Y
		w := dx*(at.Y-p[i].Y) - dy*(at.X-p[i].X)
		if math.Abs(w) <= margin*(dx*dx+dy*dy) || side*w < 0 {
			return false
		}
		side = w
	}
	return true
}
