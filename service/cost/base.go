package cost

import footwardv1 "footward.example/footward/proto/footward/v1"

// mostCombinations is the most that a set of actions may make; with more it is
// refused.
const mostCombinations = 20000

// columnBase returns the work of checking a base under all of its combinations. What a
// combination takes depends much on whether rods pull.
func columnBase(m *footwardv1.CheckColumnBaseRequest) work {
	n := float64(len(m.GetLoadCases().GetCases()))
	sum := ofBase.at(m.GetDetail())
	if set := m.GetActionSet(); set != nil {
		n = combinations(m.GetBasis(), set, checked(m.GetBase()))
		sum += combining(m.GetBasis(), set, checked(m.GetBase()))
		if n > mostCombinations {
			return known(sum)
		}
	}
	each, once := perCase(m.GetBase())
	return work{usual: sum + once + each*(n+min(n, 1)*sizedCases), least: sum + caseAlone*n}
}

// perCase returns what a base takes in each combination, and once for all [us].
func perCase(b *footwardv1.ColumnBase) (each, once float64) {
	n := rods(b.GetRods())
	through := b.GetAnchorage().GetThrough() != nil
	each = caseAlone
	switch {
	case n == 0 && b.GetSharing().GetSubgradeModulusNMm3() > 0:
		once += tilted
	case n == 0:
	case through || b.GetSharing().GetSubgradeModulusNMm3() > 0 || b.GetSubstructure().GetStack() != nil:
		each = caseElastic + rodElastic*n
	default:
		each = casePlastic + rodPlastic*n
	}
	if through {
		each += pairThrough * n * n
	}
	sub := b.GetSubstructure()
	if sub.GetGround() != nil {
		once += ofSubsoil
		if through && sub.GetStack() != nil {
			once += bottomPlate
		}
	}
	if s := sub.GetSettlement(); s != nil {
		once += ofSubsoil + settling(s.GetLayers(), mostStages, len(s.GetNeighbours()))
	}
	return each, once
}

// mostStages is the most stages of a set of actions.
const mostStages = 20
