package api

import (
	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/tie"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func (r *reader) anchorageInput(m *footwardv1.CheckAnchorageRequest) base.AnchorageInput {
	in := base.AnchorageInput{
		Rods: r.rodInput(&footwardv1.CheckAnchorRodsRequest{
			Basis: m.GetBasis(), Exposure: m.GetExposure(), Plate: m.GetPlate(), Rods: m.GetRods(), Forces: m.GetForces(), RodForces: m.GetRodForces(),
			StandOff: m.GetStandOff(), Friction: m.GetFriction(),
		}),
		Stretch:   m.GetRods().GetRod().GetStretchLengthMm(),
		Anchorage: r.anchorage(m.GetAnchorage()),
	}
	if in.Anchorage.Kind == base.Through {
		in.Anchorage.Through.Share, _ = weights(m.GetBasis())
	}
	if h := m.GetAnchorage().GetHeaded(); h != nil && h.GetBlock() == nil {
		r.faults.Add(limit.Missing, "anchorage.headed.block", "is required: there is no support whose block could be meant")
	}
	return in
}

// anchorage reads what holds rods below.
func (r *reader) anchorage(m *footwardv1.Anchorage) base.Anchorage {
	switch m.GetHold().(type) {
	case *footwardv1.Anchorage_Headed:
		return base.Anchorage{Kind: base.Headed, Headed: r.headed(m.GetHeaded()), BlockOfSupport: m.GetHeaded().GetBlock() == nil}
	case *footwardv1.Anchorage_Through:
		return base.Anchorage{Kind: base.Through, Through: r.through(m.GetThrough())}
	}
	return base.Anchorage{}
}

func (r *reader) headed(h *footwardv1.HeadedAnchorage) anchor.Input {
	in := anchor.Input{
		Embedment: h.GetEmbedmentMm(),
		Head: anchor.Head{
			Diameter: h.GetHead().GetDiameterMm(), Thickness: h.GetHead().GetThicknessMm(), Area: h.GetHead().GetBearingAreaMm2(),
		},
		Uncracked: h.GetUncracked(), PryFactor: h.GetPryOutFactor(), LightFactor: h.GetLightweightFactor(),
		Brittle: h.GetBrittleSteel(),
		Under:   anchor.Under{GroutThick: h.GetBlock().GetGrout().GetThicknessMm(), GroutStrength: h.GetBlock().GetGrout().GetStrengthMpa()},
	}
	if h.GetBlock() != nil {
		var s bearing.Input
		block := reader{}
		block.support(&footwardv1.Support{Medium: &footwardv1.Support_Concrete{Concrete: h.GetBlock()}}, &s)
		for _, f := range block.faults {
			f.Field = "anchorage.headed.block" + f.Field[len("support.concrete"):]
			r.faults = append(r.faults, f)
		}
		b := &s.Block
		in.Block = anchor.Block{Concrete: b.Concrete, SizeX: b.SizeX, SizeY: b.SizeY, Height: b.Height, OffsetX: b.OffsetX, OffsetY: b.OffsetY}
	}
	return in
}

func (r *reader) through(t *footwardv1.ThroughAnchorage) tie.Input {
	p := t.GetBottomPlate()
	in := tie.Input{
		Plate:  r.plateAt(p, "anchorage.through.bottom_plate"),
		PressX: t.GetPressedXMm(), PressY: t.GetPressedYMm(), PressDiameter: t.GetPressedDiameterMm(), Height: t.GetHeightMm(),
		Clamped: t.GetClampedWeightKn() * newton,
		Soil: tie.Soil{
			Depth: t.GetGround().GetDepthMm(), Weight: t.GetGround().GetUnitWeightKnM3() * newtonPerMM3,
			Angle: t.GetGround().GetAngleDeg() * degree,
		},
		Preload: t.GetInitialPreloadKn() * newton, Relaxed: t.GetRelaxation(), Settlement: t.GetFillSettlementMm(),
		Stack: t.GetStackStiffnessKnMm() * newton, Needed: t.GetNeededPreloadKn() * newton, MostStretch: t.GetMaxStretchMm(),
	}
	return in
}
