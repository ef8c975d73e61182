package pin

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
)

func clauses(ec, us string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: ec, basis.USLRFD: us, basis.USASD: us}
}

// The limit states, in the order of an answer.
var (
	lateral = &limit.Kind{ID: "pin_lateral", Title: "Pin against the timber", Measure: limit.Force,
		Clause: clauses(clauseLateralEC, clauseLateralUS)}
	row = &limit.Kind{ID: "pin_row", Title: "Row of pins along the grain", Measure: limit.Force,
		Clause: clauses(clauseRowEC, "")}
	spacing = &limit.Kind{ID: "pin_spacing", Title: "Least spacing, end and edge distance of the pins", Measure: limit.Length,
		Clause: clauses(clauseLeastEC, clauseLeastUS)}
	spread = &limit.Kind{ID: "pin_row_spread", Title: "Outer rows on one plate", Measure: limit.Length,
		Clause: clauses("", clauseSpread)}
	cutPin = &limit.Kind{ID: "pin_steel_shear", Title: "Pin in shear", Measure: limit.Force,
		Clause: clauses(clausePinEC, clausePinUS)}
	gap = &limit.Kind{ID: "pin_gap_bending", Title: "Pin in bending and shear across the gap", Measure: limit.Ratio,
		Clause: clauses(clauseGapEC, clauseGapUS)}
	splits = &limit.Kind{ID: "column_splitting", Title: "Timber across the grain at the pins", Measure: limit.Force,
		Clause: clauses(clauseSplitEC, clauseSplitUS)}
	block = &limit.Kind{ID: "column_block_shear", Title: "Timber shearing out along the grain", Measure: limit.Force,
		Clause: clauses(clauseBlockEC, clauseBlockUS)}
	netTimber = &limit.Kind{ID: "column_net_section", Title: "Timber in tension at the holes", Measure: limit.Force,
		Clause: clauses(clauseNetEC, clauseNetUS)}
	endGrain = &limit.Kind{ID: "column_end_grain", Title: "End grain on the plate", Measure: limit.Force,
		Clause: clauses(clauseEndEC, clauseEndUS)}
	netPlate = &limit.Kind{ID: "bracket_net_section", Title: "Plates of the shoe in tension at the holes", Measure: limit.Force,
		Clause: clauses(clausePlateNetEC, clausePlateNetUS)}
	buckles = &limit.Kind{ID: "bracket_compression", Title: "Plates of the shoe in compression", Measure: limit.Force,
		Clause: clauses(clauseBuckleEC, clauseBuckleUS)}
	bends = &limit.Kind{ID: "bracket_bending", Title: "Plates of the shoe in bending in their plane", Measure: limit.Stress,
		Clause: clauses(clausePlateEC, clausePlateUS)}
	bears = &limit.Kind{ID: "bracket_hole_bearing", Title: "Plate of the shoe in bearing at a hole", Measure: limit.Force,
		Clause: clauses(clauseHoleEC, clauseHoleUS)}
	tears = &limit.Kind{ID: "bracket_tear_out", Title: "Plate of the shoe in tear-out at a hole", Measure: limit.Force,
		Clause: clauses("", clauseHoleUS)}
	tearsBlock = &limit.Kind{ID: "bracket_block_tearing", Title: "Plates of the shoe in block tearing", Measure: limit.Force,
		Clause: clauses(clauseTearingEC, clauseTearingUS)}
	pattern = &limit.Kind{ID: "bracket_hole_pattern", Title: "Least edge distance and spacing of the plates' holes", Measure: limit.Length,
		Clause: clauses(clauseTightEC, clauseTightUS)}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{lateral, row, spacing, spread, cutPin, gap, splits, block, netTimber, endGrain,
		netPlate, buckles, bends, bears, tears, tearsBlock, pattern}
}

const (
	noForce    = "no force on the pins"
	noLift     = "the column does not pull on the pins"
	gapLateral = "yield theory with a gap: EN 1995-1-1:2004 8.2.3 and NDS 2018 12.3 print it without one; AWC TR12"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	in, s := r.in, &r.Steel
	l.Add(r.sized(l, r.lateralState(), r.toColumn, r.toPlate))
	if r.ec {
		l.Add(r.sized(l, r.rowState(), r.toRow, r.toColumn))
	}
	if which, d := r.tightest(); d.Needs > 0 {
		l.Add(r.sized(l, limit.Evaluate(spacing, d.Needs, d.Has).Of(which+1), r.toLayout))
	}
	if !r.ec {
		if in.Layout.Rows == 1 {
			l.Add(limit.Skip(spread, "there is one row"))
		} else {
			l.Add(limit.Evaluate(spread, in.across(), mostSpread))
		}
	}
	if why := r.idle(); why != "" {
		l.Add(limit.Skip(cutPin, why))
	} else {
		l.Add(r.sized(l, limit.Evaluate(cutPin, s.Plane, s.Cut), r.toCut))
	}
	l.Add(r.sized(l, r.gapState(), r.toPin))
	r.timberStates(l)
	r.plateStates(l)
}

// idle says why no pin's force can be held against its resistance; empty: it can.
func (r *Result) idle() string {
	switch {
	case r.Unshared != "":
		return r.Unshared
	case !r.Loaded:
		return noForce
	}
	return ""
}

func (r *Result) lateralState() limit.State {
	switch {
	case r.Unshared != "":
		return limit.State{Kind: lateral, Verdict: limit.Fail, Reason: r.Unshared}
	case !r.Loaded:
		return limit.Skip(lateral, noForce)
	case r.reason != "":
		return limit.Beyond(lateral, r.reason)
	}
	s := limit.Evaluate(lateral, r.F, r.Lateral)
	if r.in.Plates.Gap > 0 {
		s.Clause = gapLateral
	}
	return s
}

func (r *Result) rowState() limit.State {
	switch why := r.idle(); {
	case why != "":
		return limit.Skip(row, why)
	case r.reason != "":
		return limit.Beyond(row, r.reason)
	case r.in.Layout.InRow == 1:
		return limit.Skip(row, "a row has one pin")
	case r.Row == 0:
		return limit.Skip(row, "no force along the grain")
	}
	return limit.Evaluate(row, r.Row, r.EC.Row)
}

func (r *Result) gapState() limit.State {
	switch why := r.idle(); {
	case r.in.Plates.Gap == 0:
		return limit.Skip(gap, "no gap: bending of the pin is part of the yield modes")
	case why != "":
		return limit.Skip(gap, why)
	case r.reason != "":
		return limit.Beyond(gap, r.reason)
	}
	return limit.Evaluate(gap, r.Steel.Sum, 1)
}

func (r *Result) timberStates(l *limit.List) {
	s := &r.Timber
	hard := r.in.Timber.Kind == material.SolidHardwood
	switch why := r.idle(); {
	case why != "":
		l.Add(limit.Skip(splits, why))
	case r.Shear == 0:
		l.Add(limit.Skip(splits, "no force across the grain"))
	case r.ec && hard:
		l.Add(limit.Beyond(splits, "EN 1995-1-1 8.1.4(3) gives the resistance for softwood only"))
	default:
		l.Add(r.sized(l, limit.Evaluate(splits, r.Shear, s.Split), r.toSplit, r.toWidth))
	}
	switch why := r.idle(); {
	case why != "":
		l.Add(limit.Skip(block, why))
	case r.Pulling == 0:
		l.Add(limit.Skip(block, noLift))
	case r.ec && r.reason != "":
		l.Add(limit.Beyond(block, r.reason))
	default:
		l.Add(r.sized(l, limit.Evaluate(block, s.Pull, s.Block), r.toBlock, r.toBlockColumn))
	}
	if r.Nj > 0 {
		l.Add(r.sized(l, limit.Evaluate(netTimber, r.Nj, s.Tension), r.toWidth))
	} else {
		l.Add(limit.Skip(netTimber, noLift))
	}
	switch {
	case !r.in.EndBears:
		l.Add(limit.Skip(endGrain, "the column's end does not stand on a plate"))
	case r.End == 0:
		l.Add(limit.Skip(endGrain, "there is no compression"))
	default:
		l.Add(r.sized(l, limit.Evaluate(endGrain, r.End, s.Bearing), r.toWidth))
	}
}

func (r *Result) plateStates(l *limit.List) {
	s := &r.Steel
	switch {
	case r.Nj > 0:
		l.Add(r.sized(l, limit.Evaluate(netPlate, s.N, min(s.Yield, s.Rupture)), r.toNet))
		l.Add(limit.Skip(buckles, "the plates are in tension"))
	case r.Nj < 0:
		l.Add(limit.Skip(netPlate, noLift))
		l.Add(r.sized(l, limit.Evaluate(buckles, s.N, s.Buckle), r.toBuckle))
	default:
		l.Add(limit.Skip(netPlate, noLift))
		l.Add(limit.Skip(buckles, "no compression goes through the plates"))
	}
	switch {
	case s.M == 0 && r.Nj == 0:
		l.Add(limit.Skip(bends, "no force on the plates"))
	case s.V > s.Vlimit:
		l.Add(limit.Beyond(bends, "shear above half of the plates' plastic shear reduces their bending resistance (EN 1993-1-1 6.2.8), which is not part of this check"))
	default:
		l.Add(r.sized(l, limit.Evaluate(bends, s.Stress, s.Allowed), r.toBend))
	}
	why := r.idle()
	if why != "" {
		l.Add(limit.Skip(bears, why))
	} else {
		l.Add(r.sized(l, limit.Evaluate(bears, s.Share, s.Hole), r.toBear))
	}
	if !r.ec {
		if why != "" {
			l.Add(limit.Skip(tears, why))
		} else {
			l.Add(r.sized(l, limit.Evaluate(tears, s.Share, s.Tear), r.toTear))
		}
	}
	switch {
	case why != "":
		l.Add(limit.Skip(tearsBlock, why))
	case s.Torn == 0:
		l.Add(limit.Skip(tearsBlock, "no group of holes is pressed towards a free edge of the plates; a single hole has its bearing and tear-out"))
	default:
		l.Add(r.sized(l, limit.Evaluate(tearsBlock, s.Torn, s.Whole), r.toTearing))
	}
	l.Add(r.sized(l, limit.Evaluate(pattern, s.Needs, s.Has), r.toPattern))
}
