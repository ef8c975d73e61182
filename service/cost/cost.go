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
		return costOf(known(combining(m.GetBasis(), m.GetActionSet(), combined)))
	case *footwardv1.AssessLoadTestsRequest:
		return costOf(known(evidenceRead + oneTest*float64(len(m.GetTests()))))
	case *footwardv1.ReadLoadTestRequest:
		return costOf(known(evidenceRead + oneStage*float64(len(m.GetStages()))))
	default:
		return costOf(check(m))
	}
}

// work is what something takes, and takes at the least [us].
type work struct{ usual, least float64 }

// known is work that depends on little that is found.
func known(v float64) work { return work{v, v} }

func costOf(w work) Cost { return Cost{Usual: us(w.usual), Least: us(w.least)} }

// mostItems is the most that a batch may have; with more it is refused.
const mostItems = 10000

func batch(items []*footwardv1.CheckItem) Cost {
	if len(items) > mostItems {
		return Cost{}
	}
	var sum work
	for _, i := range items {
		one := item(i)
		sum.usual += one.usual
		sum.least += one.least
	}
	c := costOf(sum)
	c.Items = len(items)
	return c
}

// item returns the work of an item of a batch.
func item(i *footwardv1.CheckItem) work {
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
	return known(emptyItem)
}

// check returns the work of one check.
func check(m any) work {
	if base, is := m.(*footwardv1.CheckColumnBaseRequest); is {
		return columnBase(base)
	}
	return known(part(m))
}

// part returns what a check of a part takes [us].
func part(m any) float64 {
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
	case *footwardv1.CheckSettlementRequest:
		return settlement(m)
	case *footwardv1.CheckFootingRequest:
		return ofFooting.at(m.GetDetail()) + approach*float64(max(1, len(m.GetDesignApproaches())))
	case *footwardv1.CheckRingStackRequest:
		return ofRings.at(m.GetDetail()) + tier*float64(len(m.GetTiers()))
	}
	return 0
}
