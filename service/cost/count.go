package cost

import footwardv1 "footward.example/footward/proto/footward/v1"

// situations are those that are combined unless others are asked for.
type situations func(accidental bool) []footwardv1.CombinationKind

const (
	strength       = footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH
	strengthAB     = footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH_AB
	equilibrium    = footwardv1.CombinationKind_COMBINATION_KIND_EQUILIBRIUM
	accident       = footwardv1.CombinationKind_COMBINATION_KIND_ACCIDENTAL
	characteristic = footwardv1.CombinationKind_COMBINATION_KIND_CHARACTERISTIC
	frequent       = footwardv1.CombinationKind_COMBINATION_KIND_FREQUENT
	quasiPermanent = footwardv1.CombinationKind_COMBINATION_KIND_QUASI_PERMANENT
)

// combined are those of a set that is written out.
func combined(accidental bool) []footwardv1.CombinationKind {
	if accidental {
		return []footwardv1.CombinationKind{strength, equilibrium, accident, characteristic, frequent, quasiPermanent}
	}
	return []footwardv1.CombinationKind{strength, equilibrium, characteristic, frequent, quasiPermanent}
}

// checked are those of a base.
func checked(b *footwardv1.ColumnBase) situations {
	return func(accidental bool) []footwardv1.CombinationKind {
		out := []footwardv1.CombinationKind{strength}
		if b.GetRods() != nil || b.GetSubstructure() != nil {
			out = append(out, equilibrium)
		}
		if accidental {
			out = append(out, accident)
		}
		return out
	}
}

// combining returns the cost of writing out a set of actions [us].
func combining(b *footwardv1.DesignBasis, set *footwardv1.ActionSet, usual situations) float64 {
	return combination * min(combinations(b, set, usual), mostCombinations)
}

// The most of a set; with more it is refused.
const (
	mostActions = 16
	mostKinds   = 8
)

// combinations returns about how many combinations a set of actions makes. Those
// that come out equal are counted each.
func combinations(b *footwardv1.DesignBasis, set *footwardv1.ActionSet, usual situations) float64 {
	if len(set.GetActions()) > mostActions || len(set.GetStages()) > mostStages || len(set.GetKinds()) > mostKinds {
		return 0
	}
	total := 0.0
	for stage := range uint32(max(1, len(set.GetStages()))) {
		var a acting
		for _, one := range set.GetActions() {
			if stage+1 >= one.GetFirstStage() && (one.GetLastStage() == 0 || stage+1 <= one.GetLastStage()) {
				a.add(one)
			}
		}
		if a.none() {
			continue
		}
		if b.Basis() != footwardv1.Basis_BASIS_EUROCODE {
			total += a.american()
			continue
		}
		kinds := set.GetKinds()
		if len(kinds) == 0 {
			kinds = usual(a.accidental > 0)
		}
		for _, k := range kinds {
			total += a.european(k)
		}
	}
	return total
}

// acting are the actions of a stage.
type acting struct {
	permanent, accidental int
	variable              []*footwardv1.Action
}

func (a *acting) none() bool { return a.permanent+a.accidental+len(a.variable) == 0 }

func (a *acting) add(one *footwardv1.Action) {
	switch one.GetKind() {
	case footwardv1.ActionKind_ACTION_KIND_PERMANENT:
		a.permanent++
	case footwardv1.ActionKind_ACTION_KIND_ACCIDENTAL:
		a.accidental++
	default:
		a.variable = append(a.variable, one)
	}
}

// european returns the combinations of a situation by EN 1990: every set of variable
// actions with every permanent one at its upper and lower factor, and where an action
// leads, with each that does.
func (a *acting) european(k footwardv1.CombinationKind) float64 {
	all := sets(a.variable)
	permanent := float64(int(1) << a.permanent)
	leading := max(all, a.leading(all))
	switch k {
	case strengthAB:
		return permanent * (all + leading)
	case accident:
		return float64(a.accidental) * all
	case quasiPermanent:
		return all
	case characteristic, frequent:
		return leading
	}
	return permanent * leading
}

// whole is an action of which each part leads where one does.
type whole struct {
	kind     footwardv1.ActionKind
	category footwardv1.ImposedCategory
	part     string
}

func wholeOf(a *footwardv1.Action) whole {
	return whole{a.GetKind(), a.GetCategory(), a.GetPartOf()}
}

// leading returns the sets, each counted for every whole in it that may lead.
func (a *acting) leading(all float64) float64 {
	total := 1.0 // the set of none
	seen := map[whole]bool{}
	for _, v := range a.variable {
		w := wholeOf(v)
		if seen[w] {
			continue
		}
		seen[w] = true
		var others []*footwardv1.Action
		for _, o := range a.variable {
			if wholeOf(o) != w {
				others = append(others, o)
			}
		}
		total += all - sets(others)
	}
	return total
}

// sets returns how many sets of actions there are of which no two are alternatives.
func sets(actions []*footwardv1.Action) float64 {
	n := 1.0
	groups := map[string]float64{}
	for _, v := range actions {
		if g := v.GetExclusiveGroup(); g != "" && v.GetPartOf() == "" {
			groups[g]++
		} else {
			n *= 2
		}
	}
	for _, g := range groups {
		n *= 1 + g
	}
	return n
}

// rulesOfASCE are the basic combinations, of which each takes a set at most once.
const rulesOfASCE = 7

// american returns the combinations of ASCE 7-22 2.3.1 or 2.4.1: in about five rules
// of seven wind acts or not, in about four something on the roof, in about four what
// is imposed.
func (a *acting) american() float64 {
	of := map[footwardv1.ActionKind][]*footwardv1.Action{}
	for _, v := range a.variable {
		of[v.GetKind()] = append(of[v.GetKind()], v)
	}
	imposed, wind := sets(of[footwardv1.ActionKind_ACTION_KIND_IMPOSED]), sets(of[footwardv1.ActionKind_ACTION_KIND_WIND])
	roof := 1.0
	for _, k := range [...]footwardv1.ActionKind{footwardv1.ActionKind_ACTION_KIND_IMPOSED_ROOF, footwardv1.ActionKind_ACTION_KIND_SNOW, footwardv1.ActionKind_ACTION_KIND_RAIN} {
		roof += sets(of[k]) - 1
	}
	return min(1+imposed*roof+roof*wind+imposed*roof*wind+imposed*roof+wind, rulesOfASCE*sets(a.variable))
}
