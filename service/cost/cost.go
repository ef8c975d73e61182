package cost

import (
	"time"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Cost is about what a request takes of one processor.
type Cost struct {
	Usual time.Duration
	// Least is below Usual where much depends on what is found: a search may find its
	// answer at once.
	Least time.Duration
	// Items are those of a batch.
	Items int
}

// Of returns the cost of a request. What is no work, or refused before any, costs
// nothing.
func Of(m any) Cost {
	switch m := m.(type) {
	case *footwardv1.CheckManyRequest:
		return batch(m.GetItems())
	case *footwardv1.StreamChecksRequest:
		return batch(m.GetItems())
	case *footwardv1.SizeColumnBaseRequest:
		return search(m)
	case *footwardv1.CompareFootingsRequest:
		return comparison(m)
	case *footwardv1.CombineActionsRequest:
		return sure(combining(m.GetBasis(), m.GetActionSet(), combined))
	default:
		return sure(check(m))
	}
}

// sure is a cost that is known.
func sure(v float64) Cost { return Cost{Usual: us(v), Least: us(v)} }

// mostItems is the most that a batch may have; with more it is refused.
const mostItems = 10000

func batch(items []*footwardv1.CheckItem) Cost {
	if len(items) > mostItems {
		return Cost{}
	}
	sum := 0.0
	for _, i := range items {
		sum += item(i)
	}
	c := sure(sum)
	c.Items = len(items)
	return c
}

// item returns the cost of an item of a batch [us].
func item(i *footwardv1.CheckItem) float64 {
	switch c := i.GetCheck().(type) {
	case *footwardv1.CheckItem_Bearing:
		return check(c.Bearing)
	case *footwardv1.CheckItem_PlateBending:
		return check(c.PlateBending)
	case *footwardv1.CheckItem_Weld:
		return check(c.Weld)
	case *footwardv1.CheckItem_AnchorRods:
		return check(c.AnchorRods)
	case *footwardv1.CheckItem_Anchorage:
		return check(c.Anchorage)
	case *footwardv1.CheckItem_Pin:
		return check(c.Pin)
	case *footwardv1.CheckItem_Settlement:
		return check(c.Settlement)
	case *footwardv1.CheckItem_Footing:
		return check(c.Footing)
	case *footwardv1.CheckItem_RingStack:
		return check(c.RingStack)
	case *footwardv1.CheckItem_ColumnBase:
		return check(c.ColumnBase)
	}
	return emptyItem
}

// check returns the cost of one check [us].
func check(m any) float64 {
	switch m := m.(type) {
	case *footwardv1.CheckBearingRequest:
		return ofBearing.at(m.GetDetail())
	case *footwardv1.CheckPlateBendingRequest:
		return plate(m)
	case *footwardv1.CheckWeldRequest:
		return weld(m)
	case *footwardv1.CheckAnchorRodsRequest:
		return ofRods.at(m.GetDetail()) + rodOfRods*rods(m.GetRods())
	case *footwardv1.CheckAnchorageRequest:
		return anchorage(m)
	case *footwardv1.CheckPinRequest:
		return pin(m)
	case *footwardv1.PredictSettlementRequest:
		return settlement(m)
	case *footwardv1.CheckFootingRequest:
		return ofFooting.at(m.GetDetail()) + approach*float64(max(1, len(m.GetDesignApproaches())))
	case *footwardv1.CheckRingStackRequest:
		return ofRings.at(m.GetDetail()) + tier*float64(len(m.GetTiers()))
	case *footwardv1.CheckColumnBaseRequest:
		return columnBase(m)
	}
	return 0
}
