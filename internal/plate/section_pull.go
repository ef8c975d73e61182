package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
)

// sectionPull returns the tension of a rod by the contact found for the sections,
// with the prying on it by Eurocode [N]; 0 where there is none.
//
// Prying is that of a T-stub of such rods, held where the footprint is nearest.
func (r *Result) sectionPull(i int) float64 {
	s := &r.Sections
	if !s.Known || !s.Contact.Found || !r.Counts(i) {
		return 0
	}
	t := s.Contact.Tensions[i]
	if r.in.Design.Basis != basis.Eurocode || !(t > 0) {
		return t
	}
	m, edge := r.in.nearest(r.in.Rods.At[i])
	if !(m > 0) {
		return t
	}
	rods := &r.in.Rods
	stub := TStub{M: m, N: min(edge, edgeShare*m), L1: min(2*math.Pi*m, 4*m+1.25*edge), Lb: rods.Stretch}
	if stub.Lb == 0 {
		stub.Lb = CastInLength(rods.Diameter, r.in.Bearing.GroutThick, r.in.Plate.Thickness, rods.Washer)
	}
	stub.LbStar = pryingLimit * m * m * m * rods.StressArea / (stub.L1 * r.T * r.T * r.T)
	stub.Prying = stub.Lb <= stub.LbStar
	stub.Mpl1 = stub.L1 * s.Rt
	return t + stub.pry(2*t)/2
}

// nearest returns how far a rod stands off what holds the plate there, and off the
// edge of the plate beyond it [mm].
func (in *Input) nearest(p geom.Point) (m, edge float64) {
	if arm, ok := in.inBay(p); ok {
		return arm, in.Plate.SizeX/2 - math.Abs(p.X)
	}
	h := in.holdingLines()
	x, y := math.Abs(p.X), math.Abs(p.Y)
	dx, dy := x, y
	if h.n > 1 {
		dx, dy = max(0, x-h.at[2].X), max(0, y-h.at[2].Y)
	}
	far := math.Hypot(dx, dy)
	edge = math.Inf(1)
	if dx > 0 {
		edge = min(edge, (in.Plate.SizeX/2-x)*far/dx)
	}
	if dy > 0 {
		edge = min(edge, (in.Plate.SizeY/2-y)*far/dy)
	}
	return far - h.round, edge
}
