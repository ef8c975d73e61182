package load

import "footward.example/footward/internal/basis"

// rule is one basic combination: factors of D, L, W and of one action on the
// roof.
type rule struct {
	number         string
	d, l, w        float64
	lr, snow, rain float64
}

// lrfd are the basic combinations of ASCE 7-22 2.3.1. Snow is a strength-level
// load in that edition, hence 1.0 and 0.3.
var lrfd = []rule{
	{"1", 1.4, 0, 0, 0, 0, 0},
	{"2", 1.2, 1.6, 0, 0.5, 0.3, 0.5},
	{"3a", 1.2, 1, 0, 1.6, 1, 1.6},
	{"3b", 1.2, 0, 0.5, 1.6, 1, 1.6},
	{"4", 1.2, 1, 1, 0.5, 0.3, 0.5},
	{"5", 0.9, 0, 1, 0, 0, 0},
}

// asd are the basic combinations of ASCE 7-22 2.4.1.
var asd = []rule{
	{"1", 1, 0, 0, 0, 0, 0},
	{"2", 1, 1, 0, 0, 0, 0},
	{"3", 1, 0, 0, 1, 0.7, 1},
	{"4", 1, 0.75, 0, 0.75, 0.75 * 0.7, 0.75},
	{"5", 1, 0, 0.6, 0, 0, 0},
	{"6", 1, 0.75, 0.75 * 0.6, 0.75, 0.75 * 0.7, 0.75},
	{"7", 0.6, 0, 0.6, 0, 0, 0},
}

// asce7 adds the basic combinations of a stage. Every action but D may be
// missing; of actions on the roof one acts at a time, and so of wind.
//
// Source: ASCE 7-22 2.3.1, 2.4.1.
func (c *collector) asce7() {
	rules, standard := lrfd, "ASCE 7-22 2.3.1 ("
	if c.in.Basis == basis.USASD {
		rules, standard = asd, "ASCE 7-22 2.4.1 ("
	}
	var live, roof, windy []int
	for _, i := range c.variable {
		switch c.in.Actions[i].Kind {
		case Imposed:
			live = append(live, i)
		case Wind:
			windy = append(windy, i)
		default:
			roof = append(roof, i)
		}
	}
	for _, r := range rules {
		c.eachPermanent(r.d, r.d, func() {
			c.eachSet(when(r.l > 0, live), func(lives []int) {
				c.set(lives, r.l)
				c.oneOf(when(r.lr > 0, roof), func(i int) float64 { return r.roof(c.in.Actions[i].Kind) }, func() {
					c.oneOf(when(r.w > 0, windy), func(int) float64 { return r.w }, func() { c.add(standard + r.number + ")") })
				})
				c.set(lives, 0)
			})
		})
	}
}

func (r *rule) roof(k Kind) float64 {
	switch k {
	case Snow:
		return r.snow
	case Rain:
		return r.rain
	}
	return r.lr
}

func when(yes bool, list []int) []int {
	if yes {
		return list
	}
	return nil
}

func (c *collector) set(list []int, factor float64) {
	for _, i := range list {
		c.factors[i] = factor
	}
}

// oneOf takes each action of a list alone, and none.
func (c *collector) oneOf(list []int, factor func(int) float64, then func()) {
	for _, i := range list {
		if c.clear(i) {
			c.factors[i] = factor(i)
			then()
			c.factors[i] = 0
		}
	}
	then()
}

// clear reports whether no alternative to an action is in the combination.
func (c *collector) clear(i int) bool {
	g := c.in.Actions[i].Group
	for j, f := range c.factors {
		if f != 0 && j != i && g != "" && c.in.Actions[j].Group == g {
			return false
		}
	}
	return true
}
