package plate

import (
	"math"

	"footward.example/footward/internal/geom"
)

// slopes are the tangents of yield lines across a corner of the plate, every 2
// degrees from the flange.
var slopes = [...]float64{
	0.03492077, 0.06992681, 0.1051042, 0.1405408, 0.176327, 0.2125566, 0.249328, 0.2867454, 0.3249197,
	0.3639702, 0.4040262, 0.4452287, 0.4877326, 0.5317094, 0.5773503, 0.6248694, 0.6745085, 0.7265425,
	0.7812856, 0.8390996, 0.900404, 0.9656888, 1.03553, 1.110613, 1.191754, 1.279942, 1.376382, 1.482561,
	1.600335, 1.732051, 1.880726, 2.050304, 2.246037, 2.475087, 2.747477, 3.077684, 3.487414, 4.010781, 4.70463,
	5.671282, 7.11537, 9.514364, 14.30067, 28.63625,
}

// Corner is the straight yield line through an end of the flange, or along the side
// of the footprint, that holds the rods of a row least.
type Corner struct {
	Side  bool    // whether the line runs along the side of the footprint
	Low   bool    // whether it is at the lower end of the flange across
	Slope float64 // of the line against the flange; 0 along the side [-]
	S     float64 // length across the plate, along the flange; along the side the plate's [mm]
	Arms  float64 // of all rods beyond the line, off the flange; along the side off that [mm]
	Rows  float64 // rows whose rods stand beyond it [-]
	Hold  float64 // tension of the row for a plastic moment of 1 per width [-]
}

// corner finds that line for a row at the distance m off the flange, the fixed edge.
//
//	T/n sum of (b_i k + m) = m_pl s (1 + k^2), with s along the flange
//	T/n rows sum of b_i = m_pl L along the side of the footprint
//
// It governs where rods stand beyond the ends of the flange or near an edge, which
// the clauses' patterns do not know.
//
// Source: yield lines (an upper bound); K. W. Johansen, Yield-line theory, 1962 (from
// memory).
func (in *Input) corner(f *frame, row *Row, m, rows float64) Corner {
	c := Corner{Hold: math.Inf(1)}
	n, q, off := float64(row.Count), f.L/2-f.H/2-(row.S-f.H/2-m), (f.B-f.W)/2
	for _, low := range [...]bool{false, true} {
		if low && row.Count <= 2 {
			break // the row is symmetrical
		}
		try := func(k float64) {
			s := min(off, (f.L-q)/k) + min(q/k, f.B-off)
			if a := in.arms(f, row, low, k, m); a > 0 && n*s*(1+k*k) < c.Hold*a {
				c = Corner{Low: low, Slope: k, S: s, Arms: a, Rows: 1, Hold: n * s * (1 + k*k) / a}
			}
		}
		for _, k := range slopes {
			try(k)
		}
		try(q / (f.B - off)) // through the next corners of the plate
		if off > 0 {
			try((f.L - q) / off)
		}
		if a := in.arms(f, row, low, 1, 0); a > 0 && n*f.L/(a*rows) < c.Hold {
			c = Corner{Side: true, Low: low, S: f.L, Arms: a, Rows: rows, Hold: n * f.L / (a * rows)}
		}
	}
	return c
}

// arms returns the distances of the rods of a row beyond a line of slope k through
// the end of the flange, off the flange, in all [mm].
func (in *Input) arms(f *frame, row *Row, low bool, k, m float64) (sum float64) {
	if row.Count == 2 {
		b := row.High - f.W/2
		return max(0, b*k+m) + max(0, (b-row.Gauge)*k+m)
	}
	for _, p := range in.Rods.At {
		if b, ok := f.beyond(p, low); ok {
			sum += max(0, b*k+m)
		}
	}
	return sum
}

// beyond returns how far a rod of the lifted side stands beyond an end of the flange
// [mm].
func (f *frame) beyond(p geom.Point, low bool) (b float64, ok bool) {
	s, across := p.X, p.Y
	if f.AlongY {
		s, across = p.Y, p.X
	}
	if low {
		across = -across
	}
	return across - f.W/2, s*f.Side > f.H/2
}
