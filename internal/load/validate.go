package load

import (
	"fmt"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Bounds that the kernel accepts; the contract's are narrower or the same.
const (
	mostStages  = 20
	mostActions = 16
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// Validate adds to faults everything about the input that does not fit.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Basis.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "is not a design basis")
	}
	if n := len(in.Stages); n < 1 || n > mostStages {
		faults.Add(limit.Number, "stages", fmt.Sprintf("has %d stages; must have 1 to %d", n, mostStages))
	}
	if n := len(in.Actions); n < 1 || n > mostActions {
		faults.Add(limit.Number, "actions", fmt.Sprintf("has %d actions; must have 1 to %d", n, mostActions))
		return
	}
	if f := &in.Factors; in.Basis == basis.Eurocode {
		for _, v := range [...]float64{f.GSup, f.Q, f.GSupA, f.QC} {
			faults.Range("factors", v, 1, 2, 1, ", on what is unfavourable")
		}
		for _, v := range [...]float64{f.GInf, f.Xi, f.GInfA} {
			faults.Range("factors", v, 0.5, 1, 1, ", on what is favourable and as a reduction")
		}
	}
	for i, s := range in.Situations {
		field := fmt.Sprintf("kinds[%d]", i)
		switch {
		case s < Strength || s > QuasiPermanent:
			faults.Add(limit.UnknownValue, field, "is not a kind of combination")
		case s != Strength && in.Basis.US():
			faults.Add(limit.Conflict, field, "goes with the Eurocode only; ASCE 7 has combinations of strength")
		}
	}
	names := map[string]int{}
	for i := range in.Actions {
		a := &in.Actions[i]
		field := fmt.Sprintf("actions[%d]", i)
		if j, twice := names[a.Name]; twice {
			faults.Add(limit.Conflict, field+".name", fmt.Sprintf("%q is the name of actions[%d] too", a.Name, j))
		}
		names[a.Name] = i
		a.validate(in, field, faults)
	}
}

func (a *Action) validate(in *Input, field string, faults *limit.Faults) {
	known := a.Kind >= Permanent && a.Kind <= Accidental
	variable := a.Kind != Permanent && a.Kind != Accidental
	switch {
	case !known:
		faults.Add(limit.UnknownValue, field+".kind", "is not a kind of action")
	case a.Kind == Rain && in.Basis == basis.Eurocode:
		faults.Add(limit.Conflict, field+".kind", "rain is an action of ASCE 7; by EN 1991-1-1 ponding is imposed or snow")
	case (a.Kind == Temperature || a.Kind == Accidental) && in.Basis.US():
		faults.Add(limit.Conflict, field+".kind", "is not among the basic combinations of ASCE 7 2.3.1 and 2.4.1")
	case a.Kind == Imposed && a.Category == 0 && !a.OwnPsi && in.Basis == basis.Eurocode:
		faults.Add(limit.Missing, field+".category", "is needed for the psi factors of an imposed action, or give psi")
	case int(a.Category) >= len(imposed):
		faults.Add(limit.UnknownValue, field+".category", "is not a category")
	case a.Category != 0 && a.Kind != Imposed:
		faults.Add(limit.Conflict, field+".category", "goes with imposed actions only")
	}
	if a.Site > Nordic {
		faults.Add(limit.UnknownValue, field+".snow_site", "is not a site")
	} else if known && a.Site != 0 && a.Kind != Snow {
		faults.Add(limit.Conflict, field+".snow_site", "goes with snow only")
	}
	if a.OwnPsi {
		p := &a.Psi
		switch {
		case !variable || in.Basis.US():
			faults.Add(limit.Conflict, field+".psi", "goes with variable actions and the Eurocode only")
		case !within(p.Combination, 0, 1) || !within(p.Frequent, 0, 1) || !within(p.QuasiPermanent, 0, p.Frequent):
			faults.Add(limit.OutOfRange, field+".psi", "needs factors from 0 to 1, psi_2 not above psi_1")
		}
	}
	last := a.Last
	if last == 0 {
		last = len(in.Stages)
	}
	switch n := len(in.Stages); {
	case a.First < 0 || a.First > n:
		faults.Add(limit.OutOfRange, field+".first_stage", fmt.Sprintf("is %d; there are %d stages", a.First, n))
	case a.Last < 0 || a.Last > n:
		faults.Add(limit.OutOfRange, field+".last_stage", fmt.Sprintf("is %d; there are %d stages", a.Last, n))
	case last < a.First:
		faults.Add(limit.Conflict, field+".last_stage", fmt.Sprintf("is %d, before its first stage %d", a.Last, a.First))
	}
	switch {
	case a.Duration > Instantaneous:
		faults.Add(limit.UnknownValue, field+".load_duration", "is not a duration")
	case a.Kind == Permanent && a.Duration >= ShortTerm && last >= len(in.Stages):
		// Medium-term may be the self-weight of what stands for some months.
		faults.Add(limit.Conflict, field+".load_duration", "of a permanent action that stays is more than a week: timber would count with the strength of a gust")
	}
	in.validateWhole(a, field, faults)
	if a.Kind != Permanent && a.Group != "" && alone(in, a) {
		faults.Add(limit.Conflict, field+".exclusive_group",
			fmt.Sprintf("names the group %q, of which no other action is: give the same name to every action that excludes the others", a.Group))
	}
	if a.Kind == Permanent && a.Group != "" {
		faults.Add(limit.Conflict, field+".exclusive_group", "a permanent action has no alternatives")
	}
	if !a.Forces.Computable() {
		a.Forces.Range(field+".forces", faults)
	}
}

// validateWhole adds to faults what does not fit of the whole of which an action is a
// part.
func (in *Input) validateWhole(a *Action, field string, faults *limit.Faults) {
	if a.Part == "" {
		return
	}
	if a.Kind == Permanent || a.Kind == Accidental {
		faults.Add(limit.Conflict, field+".part_of", "goes with variable actions only")
		return
	}
	for j := range in.Actions {
		b := &in.Actions[j]
		switch {
		case b.Part != a.Part || b == a:
		case b.Kind != a.Kind:
			faults.Add(limit.Conflict, field+".part_of", fmt.Sprintf("names the whole %q, of which actions[%d] of another kind is a part", a.Part, j))
			return
		case b.Group != a.Group:
			faults.Add(limit.Conflict, field+".exclusive_group",
				fmt.Sprintf("is not that of actions[%d], a part of the same whole %q: what excludes a whole excludes all its parts", j, a.Part))
			return
		}
	}
}

// alone reports whether an action is of a group of which no action excludes it.
func alone(in *Input, a *Action) bool {
	for i := range in.Actions {
		if b := &in.Actions[i]; b != a && b.Group == a.Group && (a.Part == "" || b.Part != a.Part) {
			return false
		}
	}
	return true
}
