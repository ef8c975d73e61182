package api

import (
	"footward.example/footward/internal/trial"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// usualConfidence is that of bounds without failure.
const usualConfidence = 0.75

func or(v *float64, usual float64) float64 {
	if v == nil {
		return usual
	}
	return *v
}

func loadTests(m *footwardv1.AssessLoadTestsRequest) trial.Input {
	in := trial.Input{
		Mode: trial.Mode(m.GetMode()), LogNormal: m.GetLogNormalBecause() != "", Confidence: or(m.Confidence, usualConfidence),
		Factor: m.GetPartialFactor().GetValue(), Source: m.GetPartialFactor().GetSource(),
	}
	for _, t := range m.GetTests() {
		in.Tests = append(in.Tests, trial.Test{
			Specimen: t.GetSpecimen(), Ground: t.GetGround(), Date: t.GetDate(), Load: t.GetLoadKn() * newton,
			Failed: t.GetMode() != 0, Mode: trial.Mode(t.GetMode()), Size: t.GetSizeMm(), Predicted: t.GetPredictedKn() * newton,
			Deflection: t.GetDeflectionLoadKn() * newton, Removed: t.GetLeftOutBecause(),
		})
	}
	if v := m.GetVariation(); v != nil {
		in.Variation = trial.Variation{Knowledge: trial.Known, Value: v.GetValue(), Comparable: int(v.GetComparableTests()), Source: v.GetSource()}
		if v.PriorDegreesOfFreedom != nil {
			in.Variation.Knowledge, in.Variation.Degrees = trial.Prior, v.GetPriorDegreesOfFreedom()
		}
	}
	for _, c := range m.GetConversionFactors() {
		in.Conversions = append(in.Conversions, trial.Conversion{Value: c.GetValue(), Reason: c.GetReason()})
	}
	c := m.GetCorrelation()
	in.Correlation = trial.Correlation{
		Mean: c.GetXiMean(), Least: c.GetXiLeast(), Stiff: c.GetShiftsLoad(), Source: c.GetSource(),
		Factor: c.GetPartialFactor().GetValue(), FactorSource: c.GetPartialFactor().GetSource(),
	}
	s := m.GetReliability()
	if s == nil {
		s = &footwardv1.TestReliability{}
	}
	in.States = trial.States{
		Beta: or(s.Beta, 3.5), Material: or(s.MaterialVariation, 0.10), Fabrication: or(s.FabricationVariation, 0.15),
		DeadLive: s.GetDeadOverLive(), HasDeadLive: s.DeadOverLive != nil,
	}
	if f := m.GetFamily(); f != nil {
		in.Family = trial.Family{Asked: true, Predicted: f.GetPredictedKn() * newton, Variation: f.GetInputVariation(), Source: f.GetSource()}
	}
	return in
}

func assessed(in *trial.Input, r *trial.Result) *footwardv1.AssessLoadTestsResponse {
	found := r.Characteristic > 0
	both := r.Route == trial.ByAnnexD || r.Route == trial.BySurvivors
	out := &footwardv1.AssessLoadTestsResponse{
		Failed: uint32(r.Failed), Survived: uint32(r.Survived), LowerBoundOnly: r.Failed == 0, Route: footwardv1.TestRoute(r.Route),
		MeanKn: kilonewton(r.Mean, r.Survived == 0 && !in.Family.Asked), Variation: shown(r.Variation, r.Survived == 0 && r.Failed > 1 && !in.Family.Asked),
		VariationUsed: shown(r.Used, r.Used > 0), Factor: shown(r.Factor, both && r.Factor > 0),
		NormalKn: kilonewton(r.Normal, both && r.Normal > 0), LogNormalKn: kilonewton(r.LogNormal, both && r.LogNormal > 0),
		Characteristic: testValue(r.Characteristic, r.Reason), Design: testValue(r.Design, r.DesignReason), Direct: testValue(r.Direct, r.DirectReason),
		WithAllKn: kilonewton(r.Everything, r.Everything > 0),
		Survivors: &footwardv1.SurvivorBound{
			LoadKn: r.Least / newton, Share: r.Share, TestsNeeded: uint32(r.Needed), CharacteristicKn: kilonewton(r.Bound, r.Bound > 0 && found),
		},
		Allowable: testValue(r.Allowance.Load, r.Allowance.Reason), PhiMean: testValue(r.Resistance.Load, r.Resistance.Reason),
		Phi: shown(r.Resistance.Phi, r.Resistance.Phi > 0),
	}
	if f := &r.Model; in.Family.Asked {
		out.Family = &footwardv1.FamilyValue{
			Bias: f.Bias, ErrorVariation: f.ErrorVariation, Variation: f.Variation,
			CharacteristicRatio: shown(f.Characteristic, found), DesignRatio: shown(f.Design, found && f.Design > 0),
		}
	} else if c := &r.Correlated; c.Mean > 0 {
		out.Correlation = &footwardv1.CorrelatedValue{
			XiMean: c.Mean, XiLeast: c.Least, CharacteristicKn: kilonewton(c.Characteristic, c.Characteristic > 0), DesignKn: kilonewton(c.Design, c.Design > 0),
		}
	}
	return out
}

func kilonewton(v float64, holds bool) *float64 { return shown(v/newton, holds) }

func testValue(v float64, reason string) *footwardv1.TestValue {
	if v > 0 {
		reason = ""
	}
	return &footwardv1.TestValue{ValueKn: kilonewton(v, v > 0), Reason: reason}
}
