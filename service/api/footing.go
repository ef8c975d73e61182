package api

import (
	"context"
	"math"

	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/ring"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckFooting implements CheckServiceServer.
func (c *Check) CheckFooting(_ context.Context, m *footwardv1.CheckFootingRequest) (*footwardv1.CheckFootingResponse, error) {
	r, violations := c.footing(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckFootingResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// CheckRingStack implements CheckServiceServer.
func (c *Check) CheckRingStack(_ context.Context, m *footwardv1.CheckRingStackRequest) (*footwardv1.CheckRingStackResponse, error) {
	r, violations := c.ringStack(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckRingStackResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

func (c *Check) footing(m *footwardv1.CheckFootingRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := reader{}
	in := r.footingInput(m)
	violations := c.refused(kindFooting, m, &r, func(f *limit.Faults) { ground.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), nil}
	out, err := ground.Check(&in)
	return c.answered(kindFooting, a, out, err)
}

func (c *Check) ringStack(m *footwardv1.CheckRingStackRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.ringInput(m)
	violations := c.refused(kindRingStack, m, &r, func(f *limit.Faults) { ring.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := ring.Check(&in)
	return c.answered(kindRingStack, a, out, err)
}

const degree = math.Pi / 180 // rad

func (r *reader) footingInput(m *footwardv1.CheckFootingRequest) ground.Input {
	f := m.GetFooting()
	in := ground.Input{
		Design: r.design(m.GetBasis()), Depth: f.GetDepthMm(), Height: m.GetHeightMm(),
		Permanent: actions(m.GetPermanent()), Variable: actions(m.GetVariable()), Linked: m.GetVariableActionsSimultaneous(),
		Weight: m.GetWeightKn() * newton,
		Soil:   soil(m.GetSoil()), Interface: baseContact(m.GetBaseContact()), Layer: granularLayer(m.GetLayer()),
		Presumptive: presumptive(m.GetPresumptive()), Approaches: approaches(m.GetDesignApproaches()),
		Author: ground.Author(m.GetBearingAuthor()), Apart: m.GetPermanentApart(),
	}
	groundSafety(m.GetBasis(), &in)
	switch p := f.GetPlan().(type) {
	case *footwardv1.Footing_Rectangle:
		in.Shape, in.SizeX, in.SizeY = ground.Rectangle, p.Rectangle.GetSizeXMm(), p.Rectangle.GetSizeYMm()
	case *footwardv1.Footing_Circle:
		in.Shape, in.Diameter = ground.Circle, p.Circle.GetDiameterMm()
	}
	return in
}

func soil(s *footwardv1.GroundStrength) ground.Soil {
	return ground.Soil{
		Friction: s.GetFrictionAngleDeg() * degree, Cohesion: s.GetCohesionKpa() * megaPa,
		Critical: s.GetCriticalAngleDeg() * degree, Undrained: s.GetUndrainedStrengthKpa() * megaPa,
		Above: s.GetUnitWeightAboveKnM3() * newtonPerMM3, Below: s.GetUnitWeightKnM3() * newtonPerMM3,
		Water: s.GetWaterDepthMm(), Dry: dry(s),
	}
}

func baseContact(c *footwardv1.BaseContact) ground.Interface {
	return ground.Interface{Share: c.GetFrictionShare(), Sealed: c.GetSealed()}
}

func granularLayer(l *footwardv1.GranularLayer) ground.Layer {
	return ground.Layer{
		Thickness: l.GetThicknessMm(), Clay: l.GetUndrainedStrengthKpa() * megaPa, Punching: l.GetPunchingCoefficient(),
	}
}

func presumptive(p *footwardv1.PresumptivePressure) ground.Presumptive {
	return ground.Presumptive{Pressure: p.GetPressureKpa() * megaPa, Source: p.GetSource()}
}

func approaches(all []footwardv1.DesignApproach) (out []ground.Approach) {
	for _, a := range all {
		out = append(out, ground.Approach(a))
	}
	return out
}

func (r *reader) ringInput(m *footwardv1.CheckRingStackRequest) ring.Input {
	shoe, rods := m.GetShoe(), m.GetRods()
	return ring.Input{
		Design: r.design(m.GetBasis()), Actions: actions(m.GetForces()), Service: actions(m.GetServiceForces()),
		Shoe:   ring.Shoe{SizeX: shoe.GetSizeXMm(), SizeY: shoe.GetSizeYMm(), Round: shoe.GetRound(), Loaded: shoe.GetLoadedDiameterMm()},
		Safety: stackSafety(m.GetBasis()), Tiers: tiers(m.GetTiers()),
		Rods: ring.Rods{
			Count: int(rods.GetCount()), Area: rods.GetAreaMm2(), Modulus: rods.GetModulusMpa(), Length: rods.GetLengthMm(),
			Preload: rods.GetPreloadKn() * newton, Creep: rods.GetCreepMm(), Stack: rods.GetStackStiffnessKnMm() * newton,
			Needed: rods.GetNeededPreloadKn() * newton, Relaxed: rods.GetRelaxation(),
		},
		LoadTested: m.GetLoadTested(), LoadTest: m.GetLoadTestKn() * newton,
		TestShoe: m.GetLoadTestShoeMm(), Cover: m.GetCoverKpa() * megaPa,
		Exposed: m.GetExposure() != nil, Face: r.lost.PerFace(),
		Settlement: m.GetSettlementLimitMm(), Bedding: m.GetBeddingMm(),
		Repeated: m.GetRepeatedLoad(), Sloping: m.GetSloping(), Flooded: m.GetFlooded(),
	}
}

// stackSafety reads the factors of fill and stack.
func stackSafety(b *footwardv1.DesignBasis) (out ring.Safety) {
	switch f := b.GetFamily().(type) {
	case *footwardv1.DesignBasis_Eurocode:
		out.GammaPhi = parametersOf(b, annexes).fill
	case *footwardv1.DesignBasis_UsLrfd:
		out.PhiB, out.PhiSliding = f.UsLrfd.GetFillResistanceFactor(), f.UsLrfd.GetSlidingResistanceFactor()
	case *footwardv1.DesignBasis_UsAsd:
		out.Fill, out.Stability = f.UsAsd.GetFillSafetyFactor(), f.UsAsd.GetStabilitySafetyFactor()
	}
	out.Favourable, out.Unfavourable = weights(b)
	return out
}

// groundSafety reads the factors of the ground by the US bases.
func groundSafety(b *footwardv1.DesignBasis, to *ground.Input) {
	switch f := b.GetFamily().(type) {
	case *footwardv1.DesignBasis_UsLrfd:
		to.Resistance, to.Slip, to.Stability = f.UsLrfd.GetBearingResistanceFactor(), f.UsLrfd.GetSlidingResistanceFactor(), f.UsLrfd.GetStabilitySafetyFactor()
	case *footwardv1.DesignBasis_UsAsd:
		to.Safety, to.Stability = f.UsAsd.GetBearingSafetyFactor(), f.UsAsd.GetStabilitySafetyFactor()
	}
}

func tiers(all []*footwardv1.RingTier) (out []ring.Tier) {
	for _, t := range all {
		g, f := t.GetRing(), t.GetFill()
		out = append(out, ring.Tier{
			Diameter: t.GetDiameterMm(), Height: t.GetHeightMm(),
			Ring: ring.Ring{
				// kN/m are N/mm.
				Kind: ring.RingKind(g.GetKind()), Capacity: g.GetCapacityKn() * newton, Stiffness: g.GetStiffnessKnM(),
				Strain: g.GetAxialStrain(), Durability: g.GetDurabilityFactor(), Joint: g.GetJointFactor(), Partial: g.GetPartialFactor(),
				EdgeLoad: g.GetEdgeLoadKn() * newton, Tested: g.GetTested(), Yields: g.GetTestedStrain(),
				Wall: g.GetWallThicknessMm(), Bolt: g.GetJointBoltMm(), Lug: g.GetJointThicknessMm(),
			},
			Fill: ring.Fill{
				UnitWeight: f.GetUnitWeightKnM3() * newtonPerMM3, Phi: f.GetFrictionAngleDeg() * degree, Cohesion: f.GetCohesionKpa() * megaPa,
				Modulus: f.GetModulusMpa(), Grade: ring.Grade(f.GetGrade()), Compaction: f.GetCompactionStressKpa() * megaPa, Tested: f.GetTested(),
			},
		})
	}
	return out
}

// dry reports whether there is no water within reach. A depth of water that is given
// all the same counts: it is where the water is.
func dry(m interface {
	GetDry() bool
	GetWaterDepthMm() float64
}) bool {
	return m.GetDry() && !(m.GetWaterDepthMm() > 0)
}
