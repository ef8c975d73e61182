package api

import footwardv1 "footward.example/footward/proto/footward/v1"

// uncounted returns the service with nothing counted: the items of a batch are counted
// once it is answered whole, for of one whose caller is gone none is.
func (c *Check) uncounted() *Check {
	quiet := *c
	quiet.metrics = nil
	return &quiet
}

// count counts the items of a batch that is answered.
func (c *Check) count(items []*footwardv1.CheckItem, outcomes []*footwardv1.CheckOutcome) {
	for i, o := range outcomes {
		switch kind := kindOf(items[i]); {
		case o.GetResult() != nil:
			c.metrics.Check(kind, o.GetResult())
		case o.GetRefusal() != nil:
			c.metrics.Refused(kind, o.GetRefusal().GetViolations())
		}
	}
}

// kindOf is the kind of an item; without a check it has none.
func kindOf(item *footwardv1.CheckItem) footwardv1.CheckKind {
	switch item.GetCheck().(type) {
	case *footwardv1.CheckItem_Bearing:
		return kindBearing
	case *footwardv1.CheckItem_PlateBending:
		return kindPlateBending
	case *footwardv1.CheckItem_Weld:
		return kindWeld
	case *footwardv1.CheckItem_AnchorRods:
		return kindAnchorRods
	case *footwardv1.CheckItem_Anchorage:
		return kindAnchorage
	case *footwardv1.CheckItem_Pin:
		return kindPin
	case *footwardv1.CheckItem_Settlement:
		return kindSettlement
	case *footwardv1.CheckItem_Footing:
		return kindFooting
	case *footwardv1.CheckItem_RingStack:
		return kindRingStack
	case *footwardv1.CheckItem_ColumnBase:
		return kindColumnBase
	}
	return footwardv1.CheckKind_CHECK_KIND_UNSPECIFIED
}
