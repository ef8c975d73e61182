package bed

import (
	"math"
	"slices"
)

// Section is the moment of a full straight section of the plate. It is positive
// where it pulls the underside.
type Section struct {
	At     float64 // x or y of the section [mm]
	Moment float64 // [Nmm]
	Unit   float64 // mean per width [Nmm/mm]
}

// Bending is what bends the plate along one direction.
type Bending struct {
	Width float64 // of each section [mm]
	// Greatest moments that pull the underside and the top, of sections that cross
	// no stiff patch but touch it at most; zero where none does.
	Sag, Hog Section
	// Moment per width at the plate's centre [Nmm/mm], from curvatures, without
	// twist; 0 under a stiff patch. It grows without limit as the patch on the
	// centre shrinks to a point.
	Local float64
	// The same at the nodes and halfway between, the greatest amount [Nmm/mm].
	Most float64
}

// freeBody is what stands on one side of sections along one direction.
type freeBody struct {
	s      *Solver
	lines  []line
	forces [][3]float64
	size   float64 // along the direction [mm]
	width  float64 // of the sections [mm]
	alongX bool
}

func (s *Solver) freeBody(alongX bool) freeBody {
	p := &s.in.Plate
	if alongX {
		return freeBody{s: s, lines: s.grid.x, forces: s.along, size: p.SizeX, width: p.SizeY, alongX: true}
	}
	return freeBody{s: s, lines: s.grid.y, forces: s.across, size: p.SizeY, width: p.SizeX}
}

// SectionX returns the moment of the section x = at [mm] of the plate last
// solved: that of bed, patches and rods beyond it.
//
//	M(s) = int_{x > s} (p - q)(x - s) dA - sum T (x_r - s)
//
// Source: statics of a free body.
func (s *Solver) SectionX(at float64) Section {
	if s.in == nil {
		return Section{}
	}
	f := s.freeBody(true)
	return f.section(at)
}

// SectionY returns the moment of the section y = at [mm] of the plate last
// solved.
//
// Source: as SectionX.
func (s *Solver) SectionY(at float64) Section {
	if s.in == nil {
		return Section{}
	}
	f := s.freeBody(false)
	return f.section(at)
}

func (f *freeBody) section(at float64) Section {
	m, _ := f.moment(at)
	return Section{At: at, Moment: m, Unit: m / f.width}
}

// moment returns moment and shear of a section: what is beyond it, about it. Of
// the bed's pressure it integrates the square curve through the three Gauss
// points of each element, which is exact over whole elements.
func (f *freeBody) moment(at float64) (m, v float64) {
	unit := f.s.grid.unit
	for i := len(f.lines) - 1; i >= 0; i-- {
		start, end := f.lines[i].start*unit, f.lines[i].end*unit
		from := max(at, start)
		if !(end > from) {
			break
		}
		for g := range 3 {
			x := from + gaussAt[g]*(end-from)
			p := square(&f.forces[i], (x-start)/(end-start)) * gaussOf[g] * (end - from)
			m += p * (x - at)
			v += p
		}
	}
	for i := range f.s.in.Patches {
		p := &f.s.in.Patches[i]
		c, b := f.span(p)
		turn := p.My
		if !f.alongX {
			turn = -p.Mx
		}
		from, end := max(at, c-b/2), c+b/2
		if !(end > from) {
			continue
		}
		for g := range 3 {
			x := from + gaussAt[g]*(end-from)
			q := (-p.N/b + 12*turn*(x-c)/(b*b*b)) * gaussOf[g] * (end - from)
			m -= q * (x - at)
			v -= q
		}
	}
	for i := range f.s.in.Rods {
		x := f.rod(i)
		if t := f.s.rods[i].pull * f.s.d / unit; x > at {
			m -= t * (x - at)
			v -= t
		}
	}
	return m, v
}

// square returns the square curve through the values at three Gauss points.
func square(v *[3]float64, share float64) float64 {
	x := (share - 0.5) / (gaussAt[2] - 0.5)
	return v[1] + x*(v[2]-v[0])/2 + x*x*(v[0]+v[2]-2*v[1])/2
}

// span returns where a patch lies along the direction, and how long it is [mm].
func (f *freeBody) span(p *Patch) (at, size float64) {
	if f.alongX {
		return p.At.X, p.SizeX
	}
	return p.At.Y, p.SizeY
}

// rod returns where a rod stands along the direction [mm].
func (f *freeBody) rod(i int) float64 {
	if f.alongX {
		return f.s.in.Rods[i].At.X
	}
	return f.s.in.Rods[i].At.Y
}

// crosses reports whether a section crosses a stiff patch.
func (f *freeBody) crosses(at float64) bool {
	for i := range f.s.in.Patches {
		if p := &f.s.in.Patches[i]; p.Stiff {
			if c, b := f.span(p); math.Abs(at-c) < b/2*(1-slack) {
				return true
			}
		}
	}
	return false
}

// perElement is in how many pieces of each element a top is looked for.
const perElement = 4

// greatest writes the sections with the greatest moments of both signs: at a
// corner of M(s), or where its slope dM/ds = -V changes sign between corners.
func (f *freeBody) greatest(b *Bending) {
	unit := f.s.grid.unit
	at := append(f.s.corners[:0], f.size/2)
	for i := range f.lines {
		l := &f.lines[i]
		for j := range perElement {
			at = append(at, (l.start+l.h*float64(j)/perElement)*unit)
		}
	}
	for i := range f.s.in.Patches {
		c, size := f.span(&f.s.in.Patches[i])
		at = append(at, c-size/2, c+size/2)
	}
	for i := range f.s.in.Rods {
		at = append(at, f.rod(i))
	}
	slices.Sort(at)
	f.s.corners = at
	for i, from := range at {
		f.look(b, from)
		if i+1 == len(at) {
			break
		}
		to := at[i+1]
		inside := slack * (to - from) // a rod's pull is no part of the piece
		low, high := from+inside, to-inside
		_, v := f.moment(low)
		_, w := f.moment(high)
		if (v < 0) == (w < 0) {
			continue
		}
		for range 50 {
			middle := (low + high) / 2
			if _, u := f.moment(middle); (u < 0) == (v < 0) {
				low = middle
			} else {
				high = middle
			}
		}
		f.look(b, low)
	}
}

// look takes a section where its moment is greater, unless it crosses a stiff
// patch.
func (f *freeBody) look(b *Bending, at float64) {
	if f.crosses(at) {
		return
	}
	switch s := f.section(at); {
	case s.Moment > b.Sag.Moment:
		b.Sag = s
	case s.Moment < b.Hog.Moment:
		b.Hog = s
	}
}

func (s *Solver) bendings(r *Result) {
	write := func(b *Bending, alongX bool) {
		f := s.freeBody(alongX)
		*b = Bending{Width: f.width}
		f.greatest(b)
	}
	write(&r.X, true)
	write(&r.Y, false)
	look := func(x, y float64) {
		if s.in.stiff(x, y) {
			return
		}
		mx, my := s.local(x, y)
		r.X.Most, r.Y.Most = max(r.X.Most, math.Abs(mx)), max(r.Y.Most, math.Abs(my))
	}
	if !s.in.stiff(0, 0) {
		r.X.Local, r.Y.Local = s.local(0, 0)
	}
	halves(s.grid.x, func(x float64) {
		halves(s.grid.y, func(y float64) { look(x*s.grid.unit, y*s.grid.unit) })
	})
}

// halves goes over the ends and the middles of lines.
func halves(l []line, visit func(float64)) {
	visit(l[0].start)
	for i := range l {
		visit(l[i].start + l[i].h/2)
		visit(l[i].end)
	}
}
