package pin

import (
	"math"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

// The sizes that are looked for.
const (
	mostColumn = 1000.0 // mm; thickest column that is looked for
	mostPlate  = 100.0  // mm; thickest plate that is looked for to hold a pin
	mostSteps  = 100
	closeTo    = 1e-10 // of a search, below the slack of a verdict
	nearly     = 1e-8
)

// size is a size that may satisfy a limit state; what is no size is left out.
type size struct {
	kind limit.Size
	mm   float64
}

// sized adds to a rated state the first of the sizes that fits the input as it is:
// the column must still hold its rows, the plates theirs. A size is what holds
// with all else unchanged, so a state that no size of its own can mend has none.
//
// Source: the clause of the limit state, turned round.
func (r *Result) sized(l *limit.List, s limit.State, sizes ...func(*limit.State) size) limit.State {
	if l.NoSizes || !s.Rated || s.Utilization == 0 {
		return s
	}
	for _, find := range sizes {
		v := find(&s)
		if v.mm > 0 && v.mm < math.MaxFloat64 && r.fits(v.kind, v.mm) {
			return s.Need(v.kind, v.mm)
		}
	}
	return s
}

// fits reports whether the input would do with a size put in.
func (r *Result) fits(kind limit.Size, mm float64) bool {
	in := *r.in
	in.set(kind, mm)
	var faults limit.Faults
	Validate(&in, &faults)
	return len(faults) == 0
}

// set puts a size into the input.
func (in *Input) set(kind limit.Size, mm float64) {
	switch kind {
	case limit.PlateThickness:
		in.Plates.Thickness = mm
	case limit.PinDiameter:
		in.Plates.Hole += mm - in.Pin.Diameter
		in.Pin.Diameter = mm
	case limit.ColumnThickness:
		in.Timber.AlongPin = mm
	case limit.PinSpacingAlong:
		in.Layout.SpacingAlong = mm
	case limit.PinSpacingAcross:
		in.Layout.SpacingAcross = mm
	case limit.PinEndDistance:
		in.Layout.EndDistance = mm
	case limit.PinEdgeDistance:
		in.Layout.EdgeDistance = mm
	case limit.BracketEndDistance:
		in.Plates.EndDistance = mm
	case limit.BracketWidth:
		in.Plates.Width = mm
	}
}

// spare returns the resistance over the demand of a limit state whose size is
// searched, less 1, with a size put in [-]; -1 where the basis does not cover it.
func (r *Result) spare(k *limit.Kind, kind limit.Size, mm float64) float64 {
	in := *r.in
	in.set(kind, mm)
	x := Result{in: &in}
	x.atPins()
	switch {
	case k == spacing:
		_, d := x.tightest()
		return d.Has/d.Needs - 1
	case x.reason != "":
		return -1
	case k == row:
		return x.EC.Row/x.Row - 1
	case k == gap:
		x.steel()
		return 1/x.Steel.Sum - 1
	}
	return x.Lateral/x.F - 1
}

// search returns the size from low to high at which a limit state begins to hold,
// for sizes that are no proportion; nothing where it holds or fails throughout,
// or where the ends do not fit. It follows the chord, which is the curve itself
// where resistance is a proportion, and halves where that is slow.
//
// Source: the clause of the limit state, turned round.
func (r *Result) search(k *limit.Kind, kind limit.Size, low, high float64) size {
	if !(low < high) || !r.fits(kind, low) || !r.fits(kind, high) {
		return size{}
	}
	below, above := r.spare(k, kind, low), r.spare(k, kind, high)
	if !(above >= 0) || !(below < 0) {
		return size{}
	}
	step := func(v float64) float64 {
		g := r.spare(k, kind, v)
		if g >= 0 {
			high, above = v, g
		} else {
			low, below = v, g
		}
		return g
	}
	for i := 0; i < mostSteps && high-low > closeTo*high; i++ {
		middle := (low + high) / 2
		if i%3 < 2 {
			middle = min(max(low-below*(high-low)/(above-below), low), high)
		}
		g := step(middle)
		// Beside a root that was met, so that the other end closes in too.
		beside := middle - math.Copysign(closeTo/4*high, g)
		if math.Abs(g) < nearly && low < beside && beside < high {
			step(beside)
		}
	}
	return size{kind, high}
}

// toColumn returns the size of the column along the pins at which a limit state
// begins to hold. A pin that bends rather than crushes the timber gains nothing
// from more of it.
func (r *Result) toColumn(s *limit.State) size {
	return r.search(s.Kind, limit.ColumnThickness, r.leastColumn(), mostColumn)
}

// leastColumn returns the thinnest column that is looked for [mm].
func (r *Result) leastColumn() float64 {
	return max(r.in.slot(), 2*r.in.Plates.Eccentricity) + leastSize
}

// toPlate returns the thickness of outer plates at which a limit state of the
// pin begins to hold: a thick plate holds the pin in its holes.
func (r *Result) toPlate(s *limit.State) size {
	if r.in.Plates.Arrangement != Outside {
		return size{}
	}
	return r.search(s.Kind, limit.PlateThickness, r.in.Plates.Corrosion+leastSize, mostPlate)
}

// toPin returns the diameter of the pin at which a limit state begins to hold, by
// a search within what the basis covers.
func (r *Result) toPin(s *limit.State) size {
	if r.ec {
		return r.search(s.Kind, limit.PinDiameter, leastDowel, mostBolt)
	}
	return r.search(s.Kind, limit.PinDiameter, leastUS, mostUS)
}

// toCut returns the diameter of the pin that its shear needs. The area follows its
// square; a pin beyond the basis is left out.
func (r *Result) toCut(s *limit.State) size {
	most := mostUS
	if r.ec {
		most = mostBolt
	}
	if d := r.in.Pin.Diameter * math.Sqrt(s.Utilization); d <= most {
		return size{limit.PinDiameter, d}
	}
	return size{}
}

// toLayout returns the distance of the layout that is tightest, where all others
// hold with it. Spacings may also turn the forces that a moment gives the pins.
func (r *Result) toLayout(s *limit.State) size {
	l, in, which := &r.in.Layout, r.in, s.Member-1
	switch which {
	case 0:
		return r.search(spacing, limit.PinSpacingAlong, in.Plates.Hole, 2*in.Plates.Arm/float64(l.InRow-1)*(1-closeTo))
	case 1:
		most := min(in.Timber.AcrossPin-2*l.EdgeDistance, (in.Plates.Width-in.Plates.Hole)*(1-closeTo))
		return r.search(spacing, limit.PinSpacingAcross, in.Plates.Hole, most/float64(l.Rows-1))
	}
	for i, v := range r.Least {
		if i != which && v.Needs > v.Has {
			return size{}
		}
	}
	return size{limit.PinSpacingAlong + limit.Size(which), s.Demand}
}

// toRow returns the spacing along the row at which so many pins count that it
// holds.
func (r *Result) toRow(*limit.State) size {
	l, in := &r.in.Layout, r.in
	return r.search(row, limit.PinSpacingAlong, in.Plates.Hole, 2*in.Plates.Arm/float64(l.InRow-1)*(1-closeTo))
}

// toWidth returns the size of the column along the pins that a resistance needs
// which follows what is left beside a slot; next to nothing is none.
func (r *Result) toWidth(s *limit.State) size {
	if !(r.Timber.Width*s.Utilization >= leastSize) {
		return size{}
	}
	return size{limit.ColumnThickness, r.in.slot() + r.Timber.Width*s.Utilization}
}

// toSplit returns the edge distance of the pins that splitting needs: the farther
// the pins from the loaded edge, the more it resists.
//
//	EN: h_e = A/(1 + A/h), A = (F/(14 b k_mod/gamma_M))^2
//	US: h_e = (F h^2/(2/3 F'_v b))^(1/3)
func (r *Result) toSplit(*limit.State) size {
	t, h := &r.Timber, r.in.Timber.AcrossPin
	he := math.Cbrt(r.Shear * h * h / (2.0 / 3 * t.Fv * t.Width))
	if r.ec {
		if r.Shear > r.shearEC() {
			return size{} // the section is too small, wherever the pins are
		}
		a := r.Shear / (splitting * t.Width * t.Kmod / t.GammaC)
		he = a * a / (1 + a*a/h)
	}
	return size{limit.PinEdgeDistance, he - r.in.across()}
}

// toBlock returns the end distance that shearing out needs; none where the
// tension of the block holds it by itself, or the spacing of the pins governs,
// or next to nothing would do.
func (r *Result) toBlock(*limit.State) size {
	t, l, need := &r.Timber, &r.in.Layout, 0.0
	for k := 1; k <= r.Pulling; k++ {
		pull, lt := r.pull(k), r.between(k)
		if !r.ec {
			need = max(need, (pull-t.Ft*t.Width*lt)/(float64(l.InRow)*t.Fv*t.Width))
			continue
		}
		design := t.Kmod / t.GammaC
		if blockTension*lt*t.Width*r.in.Timber.Tension*design >= pull {
			continue
		}
		length := pull / (blockShear * r.wide(k) * r.in.Timber.Shear * design)
		if atEnd := length/2 - float64(l.InRow-1)*max(0, l.SpacingAlong-t.Hole); atEnd > leastSize {
			need = max(need, atEnd+t.Hole/2)
		}
	}
	if !r.ec && l.InRow > 1 && need > l.SpacingAlong {
		return size{}
	}
	return size{limit.PinEndDistance, need}
}

// toBlockColumn returns the size of the column along the pins that shearing out
// needs; none where a plug thinner than the timber comes out.
func (r *Result) toBlockColumn(s *limit.State) size {
	if r.ec && r.in.Plates.Arrangement == Inside {
		return size{}
	}
	return r.toWidth(s)
}

// plate returns the thickness of the plates as built for which need, a net
// thickness by the strengths of the steel, is met; next to nothing is none.
func (r *Result) plate(need func(fy, fu float64) float64) size {
	p := &r.in.Plates
	g := geom.Plate{Thickness: p.Thickness, Corrosion: p.Corrosion, Steel: p.Steel}
	t := g.Needed(need)
	if t-p.Corrosion < leastSize {
		return size{}
	}
	return size{limit.PlateThickness, t}
}
