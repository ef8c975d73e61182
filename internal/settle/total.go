package settle

// Total is how much the ground settles in all under one stage: the parts that
// different methods find of different layers, added.
type Total struct {
	Sand float64 // what the sand settles, by the worst of the methods that know all of it [mm]
	Clay float64 // consolidation [mm]
	Rest float64 // layers known by their modulus alone, by elasticity [mm]
	Sum  float64 // [mm]
	By   sandBy  // whose figure Sand is
}

// sandBy is the method that the sand is taken by.
type sandBy uint8

const (
	noSand sandBy = iota
	byElasticity
	byCone
	byBlows
)

// clay reports whether a layer is known by an oedometer test.
func (l *Layer) clay() bool { return l.Oedometer.Compression > 0 }

// known reports whether a layer is sand that one of its methods knows, of which
// their authors say how deep it counts.
func (l *Layer) known() bool { return l.Cone > 0 || l.N60 > 0 }

// bearsOn reports whether the stress of the footing still counts at the depth z:
// a fifth of what was there before or more; where that is not known, down to the
// end of the strain influence.
//
// Source: EN 1997-1:2004 6.6.2(6).
func (r *Result) bearsOn(z float64) bool {
	before, known := r.initial(z)
	if !known {
		return z < endDepth(r.Width, planeShare(r.Width, r.Length))
	}
	most := 0.0
	for i := range r.Stages {
		most = max(most, r.Stages[i].Pressure)
	}
	return r.below(most, z) > 0.2*before
}

// elasticOf returns what the layers that counts takes settle by elasticity under
// the net pressure q [mm].
//
// Source: as the elastic settlement of all layers.
func (r *Result) elasticOf(q float64, counts func(*Layer) bool) float64 {
	give := 0.0
	for i := range r.in.Layers {
		if l := &r.in.Layers[i]; counts(l) && l.Modulus > 0 {
			give += r.Influence[i] / l.Modulus
		}
	}
	return r.Factor * q * r.Width * r.Embedment * give
}

func (l *Layer) notClay() bool { return !l.clay() }
func (l *Layer) rest() bool    { return !l.clay() && !l.known() && l.Modulus > 0 }

// plan says which methods together know every layer that the stress reaches.
type plan struct {
	elastic, cone, blows bool   // ways to know all that is no clay
	parts                int    // how many figures one way adds at most
	gap                  string // why none does
}

// plan asks whose figures can be added to the whole.
func (r *Result) plan() plan {
	var p plan
	clay, other, rest, moduli, blank := false, false, false, true, -1
	depth := 0.0
	for i := range r.in.Layers {
		l := &r.in.Layers[i]
		switch {
		case l.clay():
			clay = true
		case l.known():
			other = true
			moduli = moduli && l.Modulus > 0
		case l.Modulus > 0:
			other, rest = true, true
		case r.bearsOn(depth) && blank < 0:
			other, moduli, blank = true, false, i
		}
		depth += l.Thickness
	}
	sand := r.NoSchmertmann == "" || r.NoBurland == ""
	p.elastic = other && moduli
	p.cone, p.blows = blank < 0 && r.NoSchmertmann == "", blank < 0 && r.NoBurland == ""
	for _, one := range [...]bool{clay, other && (p.elastic || sand), rest && sand} {
		if one {
			p.parts++
		}
	}
	switch {
	case r.NoElastic == "":
		// Elasticity knows every layer by itself.
	case clay && r.NoConsolidation != "":
		p.gap = "consolidation is not known: " + r.NoConsolidation
	case !other || p.elastic || p.cone || p.blows:
	case blank >= 0:
		p.gap = nameless(blank, "data by which it could settle, and the stress of the footing reaches it")
	default:
		p.gap = "no method knows all the layers beside the clay: " + firstOf(r.NoSchmertmann, r.NoBurland, r.NoElastic)
	}
	return p
}

func firstOf(all ...string) string {
	for _, s := range all {
		if s != "" {
			return s
		}
	}
	return ""
}

// totalOf adds the parts of a stage; where one has no figure, what is known.
//
//	s = s_sand + s_clay + s_rest
//
// Source: EN 1997-1:2004 6.6.2(2), (5): all layers that the stress reaches.
func (r *Result) totalOf(s *Settled) Total {
	t := Total{Clay: s.Consolidation}
	rest := r.elasticOf(s.Pressure, (*Layer).rest)
	take := func(can bool, by sandBy, sand, rest float64) {
		if can && sand+rest >= t.Sand+t.Rest {
			t.By, t.Sand, t.Rest = by, sand, rest
		}
	}
	if r.whole.elastic {
		take(true, byElasticity, r.elasticOf(s.Pressure, (*Layer).notClay), 0)
	}
	// A method that leaves a layer out still says what is settled at least.
	take(r.NoSchmertmann == "", byCone, s.Schmertmann, rest)
	take(r.NoBurland == "", byBlows, s.Burland, rest)
	if t.By == noSand {
		t.Rest = rest
	}
	t.Sum = t.Sand + t.Clay + t.Rest
	return t
}
