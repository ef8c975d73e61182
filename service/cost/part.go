package cost

import footwardv1 "footward.example/footward/proto/footward/v1"

// at returns what a part takes by its detail [us].
func (b by) at(d footwardv1.Detail) float64 {
	switch d {
	case footwardv1.Detail_DETAIL_GOVERNING:
		return b.governing
	case footwardv1.Detail_DETAIL_DERIVATION:
		return b.derivation
	}
	return b.states
}

func rods(g *footwardv1.RodGroup) float64 { return float64(len(g.GetPositions())) }

func plate(m *footwardv1.CheckPlateBendingRequest) float64 {
	sum := ofPlate.at(m.GetDetail())
	if n := rods(m.GetRods()); n > 0 {
		sum += ofPulled.at(m.GetDetail()) + rodOfPlate*n
	}
	return sum
}

func weld(m *footwardv1.CheckWeldRequest) float64 {
	lines := float64(len(m.GetGroup().GetSegments()))
	sum := ofWeld.at(m.GetDetail()) + lineElastic*lines
	if m.GetGroup().GetMethod() == footwardv1.WeldGroupMethod_WELD_GROUP_METHOD_INSTANTANEOUS_CENTRE {
		sum += firstCentre + lineCentre*lines
	}
	return sum
}

func anchorage(m *footwardv1.CheckAnchorageRequest) float64 {
	n := rods(m.GetRods())
	sum := ofAnchorage.at(m.GetDetail())
	if m.GetAnchorage().GetThrough() != nil {
		return sum + pairOfRods*n*n
	}
	return sum + rodOfHeads*n
}

func pin(m *footwardv1.CheckPinRequest) float64 {
	pins := float64(m.GetLayout().GetRows()) * float64(m.GetLayout().GetPinsPerRow())
	if pins > mostPins {
		pins = 0 // refused
	}
	each := onePin
	if m.GetDetail() != footwardv1.Detail_DETAIL_GOVERNING {
		each = sizedPin
	}
	return ofPin.at(m.GetDetail()) + each*pins
}

// mostPins is the most of a layout.
const mostPins = 512

func settlement(m *footwardv1.CheckSettlementRequest) float64 {
	return ofSettling.at(m.GetDetail()) + settling(m.GetLayers(), len(m.GetStages()), len(m.GetNeighbours()))
}

// settling returns the cost of stages on layers [us].
func settling(layers []*footwardv1.GroundLayer, stages, neighbours int) float64 {
	clay := 0
	for _, l := range layers {
		if l.GetOedometer() != nil {
			clay++
		}
	}
	return float64(stages) * (stageOfLayer*float64(len(layers)+neighbours) + clayOfLayer*float64(clay))
}
