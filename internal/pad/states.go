package pad

import "footward.example/footward/internal/limit"

const (
	noBalance    = "the resultant lies outside the pad, or the pad is lifted off"
	isPlain      = "the pad is of plain concrete"
	isBars       = "the pad is reinforced"
	allPresses   = "the pressure is nowhere less than the weight"
	tooMuchSteel = "the bars are more than what fails in tension (ACI 318-19 7.3.3.1, 8.3.3.1)"
	topBars      = "the top needs bars, which are not covered"
	noSection    = "the section lies outside the pad"
	hook         = "hooked bars (ACI 318-19 25.4.3) are not covered, and straight ones are too short"
	coverBlind   = 40        // EN 1992-1-1:2004 4.4.1.3(4), k_1 [mm]
	coverGround  = 75        // the same, k_2; ACI 318-19 Table 20.5.1.3.1, 3 in [mm]
	spacingEC    = 250       // 9.3.1.1(3) under concentrated loads; also 2 h [mm]
	spacingUS    = 18 * inch // 8.7.2.2; also 2 h
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	b := r.in.Design.Basis
	if r.Scope != "" {
		for _, k := range Kinds() {
			if k.Clause[b] != "" {
				l.Add(limit.Beyond(k, r.Scope))
			}
		}
		return
	}
	s := limit.Evaluate(balance, r.Share, 1)
	if !r.OnPad {
		s.Verdict, s.Reason = limit.Fail, noBalance
		l.Add(s)
		r.skip(l, noBalance, Kinds()[1:])
		return
	}
	l.Add(s)
	if r.in.reinforced() {
		r.skip(l, isBars, Kinds()[1:plainKinds])
		r.topState(l)
		r.reinforcedStates(l)
		return
	}
	r.plainStates(l)
	r.topState(l)
	r.skip(l, isPlain, Kinds()[plainKinds+1:])
}

func (r *Result) skip(l *limit.List, why string, kinds []*limit.Kind) {
	for _, k := range kinds {
		if k.Clause[r.in.Design.Basis] != "" {
			l.Add(limit.Skip(k, why))
		}
	}
}

// worst evaluates both directions and returns the one that is used more.
func (r *Result) worst(k *limit.Kind) limit.State {
	x, atX := r.numbers(k, &r.Spans[0])
	y, atY := r.numbers(k, &r.Spans[1])
	return worse(limit.Evaluate(k, x, atX).Of(1), limit.Evaluate(k, y, atY).Of(2))
}

// numbers returns demand and resistance of a state that has one of each direction.
func (r *Result) numbers(k *limit.Kind, s *Span) (demand, resistance float64) {
	in, us := r.in, r.in.Design.Basis.US()
	switch k {
	case plainThickness:
		return s.Need, in.Thickness
	case plainBending:
		return s.M, s.Plain
	case top:
		return s.MTop, s.Plain
	case leastSteel:
		return s.RhoMin, s.Rho
	case barSpacing:
		if us {
			return s.Gap, min(2*in.Thickness, spacingUS)
		}
		return s.Gap, min(2*in.Thickness, spacingEC)
	case barDiameter:
		return leastBarEC, s.Bar
	case anchorage:
		return s.Bond, s.Has
	case effective:
		return leastDepth, s.Depth
	case strut:
		return s.VFace, s.Strut
	}
	return s.V, s.VRd // shear along a section
}

// worse returns the state that is nearer to failing.
func worse(a, b limit.State) limit.State {
	switch {
	case a.Verdict == limit.Fail && !a.Rated:
		return a
	case b.Verdict == limit.Fail && !b.Rated, b.Utilization > a.Utilization:
		return b
	}
	return a
}

func (r *Result) plainStates(l *limit.List) {
	us := r.in.Design.Basis.US()
	if us {
		l.Add(limit.Evaluate(plainLeast, leastPlain, r.in.Thickness).Need(limit.PadThickness, leastPlain))
		l.Add(r.sized(l, plainBending))
	} else {
		l.Add(r.sized(l, plainThickness))
	}
	l.Add(r.shearState(l, plainShearing))
	if us {
		l.Add(r.punchState(l, plainPunching))
	}
}

func (r *Result) topState(l *limit.List) {
	if r.Hang == 0 {
		l.Add(limit.Skip(top, allPresses))
		return
	}
	s := r.worst(top)
	if s.Verdict == limit.Fail {
		s.Verdict, s.Reason = limit.OutOfScope, topBars
	}
	l.Add(s)
}

func (r *Result) reinforcedStates(l *limit.List) {
	in, us := r.in, r.in.Design.Basis.US()
	for i, k := range bending {
		s := &r.Spans[i]
		state := limit.Evaluate(k, s.M, s.MRd).Need(limit.SteelPerWidth, s.AsNeed)
		if us && s.As > s.AsMost {
			state.Verdict, state.Reason = limit.Fail, tooMuchSteel
		}
		l.Add(state)
	}
	least := r.worst(leastSteel)
	over := in.Thickness
	if !us {
		over = r.Spans[least.Member-1].Depth
	}
	l.Add(least.Need(limit.SteelPerWidth, r.Spans[least.Member-1].RhoMin*over))
	l.Add(r.worst(barSpacing))
	if !us {
		l.Add(r.worst(barDiameter))
	}
	l.Add(r.bondState())
	l.Add(limit.Evaluate(cover, in.leastCover(), in.Reinforcement.Cover))
	if us {
		l.Add(r.worst(effective))
	}
	l.Add(r.shearState(l, shearing))
	if !us {
		l.Add(r.worst(strut))
	}
	l.Add(r.punchState(l, punching))
	if !us {
		l.Add(limit.Evaluate(perimeter, r.Column.V, r.Column.R))
	}
}

// leastCover returns the least cover. Blinding counts with the Eurocode only.
func (in *Input) leastCover() float64 {
	if in.Blinding && !in.Design.Basis.US() {
		return coverBlind
	}
	return coverGround
}

// bondState leaves a hook, which would do what straight bars cannot, out of scope.
func (r *Result) bondState() limit.State {
	s := r.worst(anchorage)
	if s.Verdict == limit.Fail && r.in.Design.Basis.US() && r.in.Reinforcement.Bend > 0 {
		s.Verdict, s.Reason = limit.OutOfScope, hook
	}
	return s
}

func (r *Result) shearState(l *limit.List, k *limit.Kind) limit.State {
	if r.Spans[0].V == 0 && r.Spans[1].V == 0 && r.Net > 0 {
		return limit.Skip(k, noSection)
	}
	return r.sized(l, k)
}

func (r *Result) punchState(l *limit.List, k *limit.Kind) limit.State {
	if r.PunchSkip != "" {
		return limit.Skip(k, r.PunchSkip)
	}
	return r.sized(l, k)
}

// state evaluates a state that has a thickness to be asked for.
func (r *Result) state(k *limit.Kind) limit.State {
	if k != punching && k != plainPunching {
		return r.worst(k)
	}
	if r.PunchSkip != "" {
		return limit.State{Kind: k, Verdict: limit.Pass}
	}
	if !(r.Punch.D > 0) {
		return limit.State{Kind: k, Verdict: limit.Fail, Reason: "nothing of the thickness counts"}
	}
	return limit.Evaluate(k, r.Punch.V, r.Punch.R)
}

const (
	thickest = greatestDepth // of the thickness that is looked for [mm]
	leap     = 50            // first step up [mm]
	growth   = 1.3           // of further steps
	halvings = 40
)

// sized evaluates a state and adds the least thickness with which it passes, the cover, bars,
// actions and weight as they are. A thicker pad is used less, but the lever of a
// shear grows with it: so steps go up from below until one holds, and halving closes
// in between the last two.
func (r *Result) sized(l *limit.List, k *limit.Kind) limit.State {
	s := r.state(k)
	if l.NoSizes {
		return s
	}
	in := *r.in
	holds := func(h float64) bool {
		in.Thickness = h
		t := evaluate(&in)
		return t.OnPad && t.state(k).Verdict == limit.Pass
	}
	low := in.Reinforcement.Cover + in.Reinforcement.X.Diameter + in.Reinforcement.Y.Diameter
	high := low + leap
	for ; !holds(high); high *= growth {
		if low = high; high > thickest {
			return s
		}
	}
	for range halvings {
		if middle := (low + high) / 2; holds(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return s.Need(limit.PadThickness, high)
}
