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

// onRoof are the kinds of which one acts on the roof at a time.
var onRoof = [...]Kind{ImposedRoof, Snow, Rain}

// asce7 adds the basic combinations of a stage. Every action but D may be missing. L,
// W and what lies on the roof are each the whole load of that kind: its parts act
// together with one factor unless they exclude each other. Of roof live load, snow
// and rain one acts at a time.
//
// Source: ASCE 7-22 2.3.1, 2.4.1.
func (c *collector) asce7() {
	rules, standard := lrfd, "ASCE 7-22 2.3.1 ("
	if c.in.Basis == basis.USASD {
		rules, standard = asd, "ASCE 7-22 2.4.1 ("
	}
	for k := range rules {
		r := &rules[k]
		c.rule = r
		windy := func() {
			c.each(c.ofKind(r.w > 0, Wind), r.w, func() { c.add(standard + r.number + ")") })
		}
		c.eachPermanent(r.d, r.d, func() {
			c.each(c.ofKind(r.l > 0, Imposed), r.l, func() {
				if r.lr == 0 {
					windy()
					return
				}
				for _, kind := range onRoof {
					c.each(c.ofKind(true, kind), r.roof(kind), windy)
				}
			})
		})
	}
	c.rule = nil
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

// ofKind returns the variable actions of a kind, where they are in a rule.
func (c *collector) ofKind(yes bool, k Kind) (list []int) {
	for _, i := range c.variable {
		if yes && c.in.Actions[i].Kind == k {
			list = append(list, i)
		}
	}
	return list
}

// each takes every set of a list, and none of it, with one factor.
func (c *collector) each(list []int, factor float64, then func()) {
	if c.full {
		return
	}
	if len(list) == 0 {
		then()
		return
	}
	i := list[0]
	if c.free(i) {
		c.factors[i] = factor
		c.each(list[1:], factor, then)
		c.factors[i] = 0
	}
	c.each(list[1:], factor, then)
}
