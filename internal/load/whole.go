package load

// one reports whether two variable actions are parts of one action: said to be of one
// whole, or of one kind and category and not said to be of different wholes. What says
// nothing is a part of whatever is of its kind and category.
//
// Source: EN 1990:2002 1.5.3.10, a single action is independent of any other (from
// memory); ASCE 7-22 2.2, L, S and W are whole loads.
func (in *Input) one(i, j int) bool {
	a, b := &in.Actions[i], &in.Actions[j]
	if a.Kind != b.Kind {
		return false
	}
	return a.Part != "" && a.Part == b.Part || a.Category == b.Category && (a.Part == "" || b.Part == "")
}

// leads reports whether an action of a set leads where the whole of another does.
func (in *Input) leads(set []int, first, i int) bool {
	whole := in.Actions[first].Part
	for _, m := range set {
		if (m == first || whole != "" && in.Actions[m].Part == whole) && in.one(m, i) {
			return true
		}
	}
	return false
}

// led reports whether the k-th of a set need not lead: an action before it is a part
// of the same whole, or it leads with every whole of its kind.
func (in *Input) led(set []int, k int) bool {
	a := &in.Actions[set[k]]
	for n, j := range set {
		b := &in.Actions[j]
		if in.one(set[k], j) && (n < k && a.Part == b.Part || a.Part == "" && b.Part != "") {
			return true
		}
	}
	return false
}

// exclude reports whether two actions never act together: alternatives that are not
// parts of one whole.
func (in *Input) exclude(i, j int) bool {
	a, b := &in.Actions[i], &in.Actions[j]
	return i != j && a.Group != "" && a.Group == b.Group && (a.Part == "" || a.Part != b.Part)
}

// free reports whether no alternative to an action is in the combination.
func (c *collector) free(i int) bool {
	for j, f := range c.factors {
		if f != 0 && c.in.exclude(i, j) {
			return false
		}
	}
	return true
}

// eachSet takes every set of the variable actions of which no two are alternatives,
// nor one to what is in the combination already.
func (c *collector) eachSet(then func(set []int)) {
	var able []int
	for _, i := range c.variable {
		if c.free(i) {
			able = append(able, i)
		}
	}
	c.setFrom(able, nil, then)
}

func (c *collector) setFrom(from, set []int, then func(set []int)) {
	if c.full {
		return
	}
	if len(from) == 0 {
		then(set)
		return
	}
	i, joins := from[0], true
	for _, j := range set {
		joins = joins && !c.in.exclude(i, j)
	}
	if joins {
		c.setFrom(from[1:], append(set[:len(set):len(set)], i), then)
	}
	c.setFrom(from[1:], set, then)
}
