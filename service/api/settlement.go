package api

import (
	"context"

	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/settle"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckSettlement implements CheckServiceServer.
func (c *Check) CheckSettlement(_ context.Context, m *footwardv1.CheckSettlementRequest) (*footwardv1.CheckSettlementResponse, error) {
	r, violations := c.settlement(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckSettlementResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

func (c *Check) settlement(m *footwardv1.CheckSettlementRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := reader{}
	in := r.settlementInput(m)
	violations := c.refused(kindSettlement, m, &r, func(f *limit.Faults) { settle.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), nil}
	out, err := settle.Check(&in)
	result, violations := c.answered(kindSettlement, a, out, err)
	if result != nil && err == nil && m.GetDetail() != footwardv1.Detail_DETAIL_GOVERNING {
		result.SettlementStages = settled(out)
	}
	return result, violations
}

func (r *reader) settlementInput(m *footwardv1.CheckSettlementRequest) settle.Input {
	f := m.GetFooting()
	in := settle.Input{
		Design: r.design(m.GetBasis()), Rigid: m.GetRigid(), Depth: f.GetDepthMm(),
		Above: m.GetUnitWeightAboveKnM3() * newtonPerMM3, Embedment: m.GetDepthFactor(),
		Water: m.GetWaterDepthMm(), Dry: dry(m), HalfSpace: m.GetHalfSpace(),
		Preloaded: m.GetPreloadedKpa() * megaPa, Simpson: m.GetSimpson(), Years: m.GetCreepYears(),
		Spread: stressSpread(m.GetStressSpread()), Layers: layers(m.GetLayers()), Limits: settlementLimits(m.GetLimits()),
		Neighbours: neighbours(m.GetNeighbours()),
	}
	switch p := f.GetPlan().(type) {
	case *footwardv1.Footing_Rectangle:
		in.Shape, in.SizeX, in.SizeY = settle.Rectangle, p.Rectangle.GetSizeXMm(), p.Rectangle.GetSizeYMm()
	case *footwardv1.Footing_Circle:
		in.Shape, in.Diameter = settle.Circle, p.Circle.GetDiameterMm()
	}
	for _, s := range m.GetStages() {
		in.Stages = append(in.Stages, settle.Stage{
			Name: s.GetName(), Net: s.GetNetPressureKpa() * megaPa, N: s.GetCompressionKn() * newton,
			Mx: s.GetMXKnm() * newtonMM, My: s.GetMYKnm() * newtonMM,
		})
	}
	return in
}

func stressSpread(s footwardv1.StressSpread) settle.Spread {
	if s == footwardv1.StressSpread_STRESS_SPREAD_TWO_TO_ONE {
		return settle.TwoToOne
	}
	return settle.Boussinesq
}

func settlementLimits(l *footwardv1.SettlementLimits) settle.Limits {
	return settle.Limits{Total: l.GetTotalMm(), Distortion: l.GetAngularDistortion(), Tilt: l.GetTilt()}
}

func layers(all []*footwardv1.GroundLayer) (out []settle.Layer) {
	for _, g := range all {
		o := g.GetOedometer()
		out = append(out, settle.Layer{
			Thickness: g.GetThicknessMm(), Modulus: g.GetModulusMpa(), Poisson: g.GetPoisson(),
			Weight: g.GetUnitWeightKnM3() * newtonPerMM3, N60: g.GetN60(), Cone: g.GetConeResistanceMpa(),
			Oedometer: settle.Oedometer{
				Compression: o.GetCompressionIndex(), Recompression: o.GetRecompressionIndex(), Void: o.GetVoidRatio(),
				Preconsolidation: o.GetPreconsolidationKpa() * megaPa,
			},
		})
	}
	return out
}

func neighbours(all []*footwardv1.SettlementNeighbour) (out []settle.Neighbour) {
	for _, n := range all {
		out = append(out, settle.Neighbour{Distance: n.GetDistanceMm(), Settlement: n.GetSettlementMm()})
	}
	return out
}

// settled writes the table of stages; a method whose data are missing is left out.
func settled(r *settle.Result) []*footwardv1.StageSettlement {
	if r == nil {
		return nil
	}
	known := func(v float64, missing string) *float64 {
		if missing != "" {
			return nil
		}
		return &v
	}
	out := make([]*footwardv1.StageSettlement, len(r.Stages))
	for i := range r.Stages {
		s := &r.Stages[i]
		out[i] = &footwardv1.StageSettlement{
			Name: s.Name, PressureKpa: s.Pressure / megaPa, CentreMm: s.Centre, Tilt: s.Tilt, AboveMm: s.Above,
			ElasticMm: known(s.Elastic, r.NoElastic), SchmertmannMm: known(s.Schmertmann, r.NoSchmertmann),
			BurlandBurbidgeMm: known(s.Burland, r.NoBurland), ConsolidationMm: known(s.Consolidation, r.NoConsolidation), TotalMm: known(s.Total.Sum, r.NoTotal()),
		}
	}
	return out
}
