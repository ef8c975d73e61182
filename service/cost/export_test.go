package cost

import footwardv1 "footward.example/footward/proto/footward/v1"

// Combinations is about how many a request to combine writes out.
func Combinations(m *footwardv1.CombineActionsRequest) float64 {
	return combinations(m.GetBasis(), m.GetActionSet(), combined)
}
