package cost

import (
	"math"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// mostChoices is the most that a search may have; with more it is refused.
const mostChoices = 200000

// search returns the cost of looking for the cheapest base.
func search(m *footwardv1.SizeColumnBaseRequest) Cost {
	o := m.GetOffer()
	choices := 1.0
	for _, n := range [...]int{len(o.GetPlans()), len(o.GetThicknessMm()), len(o.GetRods()), len(o.GetThroatMm()), len(o.GetBottomPlates()), len(o.GetStacks())} {
		choices *= float64(max(1, n))
	}
	if choices > mostChoices {
		return Cost{}
	}
	n, sum := float64(len(m.GetLoadCases().GetCases())), choiceListed*choices
	if set := m.GetActionSet(); set != nil {
		n = combinations(m.GetBasis(), set, checked(m.GetBase()))
		sum += combining(m.GetBasis(), set, checked(m.GetBase()))
		if n > mostCombinations {
			return costOf(known(sum))
		}
	}
	each, once := perCase(m.GetBase())
	try := once + each*n
	tries := min(choices, triesPerRoot*math.Sqrt(choices))
	return costOf(work{usual: sum + tries*try, least: sum + caseAlone*n})
}

// Steps of a pad that are usual where none are given.
const (
	usualPlans  = 71
	usualDepths = 26
)

// comparison returns the cost of checking a base and sizing a pad.
func comparison(m *footwardv1.CompareFootingsRequest) Cost {
	plans, ok := steps(m.GetPad().GetPlan(), usualPlans)
	depths, fine := steps(m.GetPad().GetThickness(), usualDepths)
	pads := plans * depths * float64(max(1, len(m.GetPad().GetBars())))
	set := m.GetActionSet()
	n := combinations(m.GetBasis(), set, checked(m.GetBase()))
	sum := comparing + 2*combining(m.GetBasis(), set, checked(m.GetBase()))
	if !ok || !fine || pads > mostChoices || n > mostCombinations {
		return costOf(known(sum))
	}
	each, once := perCase(m.GetBase())
	one := padTried + caseOfPad*n
	return costOf(work{usual: sum + once + each*(n+sizedCases) + max(1, padsTried*pads)*one, least: sum + caseAlone*n + one})
}

// steps returns how many sizes there are; ok is false where they are refused.
func steps(s *footwardv1.SizeSteps, usual float64) (n float64, ok bool) {
	if s == nil {
		return usual, true
	}
	n = math.Floor((s.GetMaxMm()-s.GetMinMm())/s.GetStepMm()+1e-9) + 1
	return n, n >= 1 && n <= mostChoices
}
