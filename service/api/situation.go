package api

import (
	"fmt"
	"slices"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// cases reads the combinations, and what a substructure takes of them.
func (r *reader) cases(m *footwardv1.CheckColumnBaseRequest, to *base.ColumnInput) {
	to.Cases = make([]base.Case, 1) // where the schema names what is missing
	if list := m.GetLoadCases(); list != nil {
		r.ready(m, list.GetCases(), to)
		return
	}
	if m.GetActionSet() == nil {
		return
	}
	in := r.loadInput(m.GetBasis(), m.GetActionSet(), "action_set.")
	leaveOut(&in, m.GetBase(), "action_set.kinds", to)
	in.Situations = situations(&in, m.GetBase())
	combined, err := load.Combine(&in)
	if err == nil && m.GetBase().GetSubstructure() != nil {
		err = r.shares(&in, combined, &to.Below)
	}
	if err != nil {
		_, faults := refusal(asked{}, err)
		r.faults = append(r.faults, prefixed("action_set.", faults)...)
		return
	}
	if len(combined.Combinations) == 0 {
		r.faults.Add(limit.Conflict, "action_set.kinds", "make no combination of these actions")
		return
	}
	r.made.add(in.Basis, combined.Combinations)
	var l limit.Notices
	combined.Notices(&l)
	to.Remarks = l.All()
	to.Cases = make([]base.Case, len(combined.Combinations))
	for i := range combined.Combinations {
		k := &combined.Combinations[i]
		to.Cases[i] = base.Case{Name: k.Name, Stage: k.Stage, Actions: k.Sum, Weights: padWeights(&in, k), Lasting: lasting(k.Lasting), Factors: k.Factors}
	}
	for i := range in.Actions {
		to.Actions = append(to.Actions, base.Action{Name: in.Actions[i].Name, Forces: in.Actions[i].Forces})
	}
}

func lasting(l load.Lasting) base.Lasting {
	return base.Lasting{Class: bearing.Duration(l.Class), LoadDuration: l.LoadDuration, TimeEffect: l.TimeEffect}
}

// situations returns what a base is checked for: what was asked for, else strength,
// equilibrium where weight or rods hold something down, and what is accidental.
func situations(in *load.Input, b *footwardv1.ColumnBase) []load.Situation {
	if len(in.Situations) > 0 {
		return in.Situations
	}
	out := []load.Situation{load.Strength}
	if in.Basis != basis.Eurocode {
		return out
	}
	if b.GetRods() != nil || b.GetSubstructure() != nil {
		out = append(out, load.Equilibrium)
	}
	if in.Accidental() {
		out = append(out, load.AccidentalCase)
	}
	return out
}

// leaveOut says what the kinds of a field leave out.
func leaveOut(in *load.Input, b *footwardv1.ColumnBase, field string, to *base.ColumnInput) {
	if in.Basis != basis.Eurocode || len(in.Situations) == 0 {
		return
	}
	asked := func(s load.Situation) bool { return slices.Contains(in.Situations, s) }
	if !asked(load.Strength) && !asked(load.StrengthAB) {
		if to.NoPersistent = asked(load.AccidentalCase); !to.NoPersistent {
			to.Unproved.Strength = fmt.Sprintf("not verified: %s hold no combinations of strength", field)
		}
	}
	if !asked(load.Equilibrium) {
		to.Unproved.Equilibrium = fmt.Sprintf("not verified: %s leave out equilibrium (EN 1990 Table A1.2(A))", field)
		to.NoEquilibrium = b.GetRods() != nil
	}
}
