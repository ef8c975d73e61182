package geom

// thickest is the greatest thickness that is looked for [mm].
const thickest = 300.0

// Needed returns the least thickness as built [mm] for which need, the net
// thickness demanded by the strengths of the steel, is met, or 0 where there is
// none. Strength may fall with thickness, so each band is tried in turn.
//
// Source: the clause of the limit state, turned round.
func (p *Plate) Needed(need func(fy, fu float64) float64) float64 {
	g := p.Steel.Grade
	if g == nil {
		return usable(need(p.Steel.Fy, p.Steel.Fu)+p.Corrosion, 0, thickest)
	}
	thinner := 0.0
	for _, b := range g.Bands {
		if t := usable(need(b.Fy, b.Fu)+p.Corrosion, thinner, min(b.UpTo, thickest)); t > 0 {
			return t
		}
		thinner = b.UpTo
	}
	return 0
}

// step is how far above the edge of a band the next band is entered [mm].
const step = 1e-6

func usable(t, over, upTo float64) float64 {
	if t <= over {
		t = over + step
	}
	if t > 0 && t <= upTo {
		return t
	}
	return 0
}
