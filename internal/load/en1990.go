package load

// en1990 adds the combinations of a situation and stage.
//
//	(6.10)   gamma_G G + gamma_Q Q_1 + sum gamma_Q psi_0 Q_i
//	(6.10a)  gamma_G G + sum gamma_Q psi_0 Q_i
//	(6.10b)  xi gamma_G G + gamma_Q Q_1 + sum gamma_Q psi_0 Q_i
//	(6.11b)  G + A + (psi_1 or psi_2) Q_1 + sum psi_2 Q_i
//	(6.14b)  G + Q_1 + sum psi_0 Q_i
//	(6.15b)  G + psi_1 Q_1 + sum psi_2 Q_i
//	(6.16b)  G + sum psi_2 Q_i
//
// Source: EN 1990:2002+A1:2005 6.4.3.2, 6.4.3.3, 6.5.3, Table A1.2.
func (c *collector) en1990() {
	f := &c.in.Factors
	switch c.situation {
	case Strength:
		c.leading("EN 1990 (6.10), set B", f.GSup, f.GInf, f.Q, f.Q, zeroth)
	case StrengthAB:
		c.together("EN 1990 (6.10a), set B", f.GSup, f.GInf, f.Q, zeroth)
		c.leading("EN 1990 (6.10b), set B", f.Xi*f.GSup, f.GInf, f.Q, f.Q, zeroth)
	case Ground:
		c.leading("EN 1990 (6.10), set C", 1, f.GInf, f.QC, f.QC, zeroth)
	case Equilibrium:
		c.leading("EN 1990 (6.10), set A", f.GSupA, f.GInfA, f.Q, f.Q, zeroth)
	case AccidentalCase:
		for _, i := range c.accident {
			c.factors[i] = 1
			if f.AccidentalFrequent {
				c.lead("EN 1990 (6.11b)", 1, 1, func(p Psi) float64 { return p.Frequent }, second)
			} else {
				c.together("EN 1990 (6.11b)", 1, 1, 1, second)
			}
			c.factors[i] = 0
		}
	case Characteristic:
		c.leading("EN 1990 (6.14b)", 1, 1, 1, 1, zeroth)
	case Frequent:
		c.lead("EN 1990 (6.15b)", 1, 1, func(p Psi) float64 { return p.Frequent }, second)
	case QuasiPermanent:
		c.together("EN 1990 (6.16b)", 1, 1, 1, second)
	}
}

func zeroth(p Psi) float64 { return p.Combination }
func second(p Psi) float64 { return p.QuasiPermanent }

// leading has each variable action of each set lead with its own value, all of its
// parts together.
func (c *collector) leading(name string, sup, inf, lead, rest float64, psi func(Psi) float64) {
	c.lead(name, sup, inf, func(Psi) float64 { return lead }, func(p Psi) float64 { return rest * psi(p) })
}

// lead has each variable action of each set lead.
func (c *collector) lead(name string, sup, inf float64, leads, rest func(Psi) float64) {
	c.eachPermanent(sup, inf, func() {
		c.eachSet(func(set []int) {
			for k, first := range set {
				if c.in.led(set, k) {
					continue
				}
				for _, i := range set {
					if c.in.leads(set, first, i) {
						c.factors[i] = leads(c.in.Actions[i].psi())
					} else {
						c.factors[i] = rest(c.in.Actions[i].psi())
					}
				}
				c.add(name)
			}
			for _, i := range set {
				c.factors[i] = 0
			}
			if len(set) == 0 {
				c.add(name)
			}
		})
	})
}

// together has no action lead.
func (c *collector) together(name string, sup, inf, gamma float64, psi func(Psi) float64) {
	c.eachPermanent(sup, inf, func() {
		c.eachSet(func(set []int) {
			for _, i := range set {
				c.factors[i] = gamma * psi(c.in.Actions[i].psi())
			}
			c.add(name)
			for _, i := range set {
				c.factors[i] = 0
			}
		})
	})
}
