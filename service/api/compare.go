package api

import (
	"context"
	"errors"
	"slices"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/size"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CompareFootings implements CompareServiceServer.
func (c *Check) CompareFootings(ctx context.Context, m *footwardv1.CompareFootingsRequest) (*footwardv1.CompareFootingsResponse, error) {
	violations := append(c.validator.Violations(m), guard.Foreign(m)...)
	r := readerOf(m.GetExposure())
	r.stop = ctx.Err
	in := r.comparison(m)
	if guard.Unread(m) == nil {
		size.ValidateComparison(&in, &r.faults)
	}
	if violations = merge(violations, r.faults); len(violations) > 0 {
		return nil, guard.InvalidArgument(violations)
	}
	in.Base.Stop, in.Pad.Stop = r.stop, r.stop
	out, err := size.Compare(&in)
	var faults limit.Faults
	var scope *limit.Scope
	switch {
	case errors.As(err, &faults):
		return nil, guard.InvalidArgument(merge(nil, faults))
	case errors.As(err, &scope):
		return nil, status.Error(codes.FailedPrecondition, "the ring footing is not covered by the basis: "+scope.Error())
	case err != nil:
		return nil, status.FromContextError(err).Err()
	}
	answer := compared(m, &in, out)
	for i, kind := range [...]footwardv1.CheckKind{kindColumnBase, kindPad} {
		c.metrics.Check(kind, answer.GetFootings()[i].GetResult())
	}
	return answer, nil
}

// defaultStrength is the strongest concrete that the default of carbon stands for
// [MPa].
const defaultStrength = 30

// The plans and thicknesses of a pad by default [mm].
var (
	usualPlan      = size.Steps{Least: 500, Step: 50, Most: 4000}
	usualThickness = size.Steps{Least: 250, Step: 50, Most: 1500}
)

func (r *reader) comparison(m *footwardv1.CompareFootingsRequest) size.Comparison {
	p, s, e := m.GetPad(), m.GetSupply(), m.GetExcavation()
	in := size.Comparison{
		Base: r.columnInput(&footwardv1.CheckColumnBaseRequest{
			Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase(), Loads: &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: m.GetActionSet()},
		}),
		Pad: size.PadInput{
			Pad: pad.Input{
				Design: r.design(m.GetBasis()), Concrete: r.concrete(p.GetConcrete(), "pad.concrete"),
				Reinforcement: pad.Reinforcement{Cover: p.GetCoverMm(), Bend: p.GetBendMm(), Yield: p.GetFyMpa()},
				SizeEffect:    p.GetSizeEffect(),
				Blinding:      p.GetBlindingMm() > 0 && !p.GetCastAgainstGround(), // the bars' ends face soil
			},
			Above: p.GetAboveMm(), Concrete: p.GetConcreteUnitWeightKnM3() * newtonPerMM3, Aspect: p.GetAspect(),
			Plan: sizeSteps(p.GetPlan(), usualPlan), Thickness: sizeSteps(p.GetThickness(), usualThickness), Most: 1,
		},
		Stack: compare.Stack{
			Brackets: s.GetBracketsKg(), Rods: compare.Rods{Fittings: s.GetRodFittingsKg()},
			Levelling: compare.Course{Loose: s.GetLevellingLooseFactor()},
		},
		Margin: s.GetLevellingMarginMm(), PlinthX: p.GetPlinthXMm(), PlinthY: p.GetPlinthYMm(), Anchors: p.GetAnchorRodsKg(),
		AbovePad: p != nil && p.AboveMm != nil,
		Concrete: compare.Pad{
			Blinding: p.GetBlindingMm(), Beyond: p.GetBlindingBeyondMm(), Against: p.GetCastAgainstGround(),
			Other: p.GetOtherReinforcementKg(),
		},
		Dig: compare.Dig{
			Space: e.GetWorkingSpaceMm(), Slope: e.GetSlope(), UnitWeight: e.GetSoilUnitWeightKnM3() * newtonPerMM3, Bulking: e.GetBulkingFactor(),
		},
		Rates: compare.Rates{
			Haul:       compare.Haul{Cost: rate(m.GetTransport().GetCost()), Carbon: rate(m.GetTransport().GetCarbon())},
			NoDefaults: m.GetNoDefaultCarbon(),
		},
	}
	in.Pad.Ground.Depth = p.GetDepthMm()
	in.Rates.Strong = in.Pad.Pad.Concrete.Strength > defaultStrength
	if v := p.GetMaxUtilization(); v > 0 {
		in.Pad.Most = v
	}
	for _, b := range p.GetBars() {
		in.Pad.Bars = append(in.Pad.Bars, pad.Bars{Diameter: b.GetDiameterMm(), Spacing: b.GetSpacingMm()})
	}
	for i, g := range s.GetRings() {
		one := compare.Ring{Outer: g.GetOuterDiameterMm(), Mass: g.GetMassKg(), Reused: g.GetReused(), Loose: g.GetFillLooseFactor()}
		if tiers := m.GetBase().GetSubstructure().GetStack().GetTiers(); i < len(tiers) {
			one.Reused = one.Reused || tiers[i].GetRing().GetKind() == footwardv1.RingKind_RING_KIND_TYRE
		}
		in.Stack.Rings = append(in.Stack.Rings, one)
	}
	if g := s.GetGeotextile(); g != nil {
		in.Stack.Geotextile = compare.Sheet{
			SizeX: g.GetSizeXMm(), SizeY: g.GetSizeYMm(), Layers: int(g.GetLayers()), Laps: g.GetLaps(), Mass: g.GetMassKgM2(),
		}
	}
	for _, v := range m.GetRates() {
		in.Rates.Each = append(in.Rates.Each, compare.Rate{
			Kind: compare.Kind(v.GetKind()), Cost: rate(v.GetCost()), Hours: rate(v.GetHours()), Carbon: rate(v.GetCarbon()),
			Distance: v.GetDistanceKm(), OnSite: v.GetOnSite(),
		})
	}
	in.Pad.Cases = r.padCases(m)
	return in
}

func sizeSteps(s *footwardv1.SizeSteps, usual size.Steps) size.Steps {
	if s == nil {
		return usual
	}
	return size.Steps{Least: s.GetMinMm(), Step: s.GetStepMm(), Most: s.GetMaxMm()}
}

func rate(v *footwardv1.RateValue) compare.Value {
	if v == nil {
		return compare.Value{}
	}
	return compare.Value{Given: true, Per: compare.Measure(v.GetPer()), Value: v.GetValue(), Source: v.GetSource()}
}

// padCases finds the factored combinations that the concrete must hold; with ASD
// those of LRFD, since concrete has no allowable stresses.
func (r *reader) padCases(m *footwardv1.CompareFootingsRequest) []size.PadCase {
	own := reader{stop: r.stop} // its faults are those of the base
	in := own.loadInput(m.GetBasis(), m.GetActionSet(), "action_set.")
	if in.Basis.US() {
		in.Basis = basis.USLRFD
	}
	asked := situations(&in, m.GetBase())
	in.Situations = []load.Situation{load.Strength}
	for _, s := range [...]load.Situation{load.Equilibrium, load.AccidentalCase} {
		if slices.Contains(asked, s) && !in.Basis.US() {
			in.Situations = append(in.Situations, s)
		}
	}
	combined, err := load.Combine(&in)
	if err != nil {
		return nil
	}
	var out []size.PadCase
	for i := range combined.Combinations {
		k := &combined.Combinations[i]
		for _, w := range padWeights(&in, k) {
			out = append(out, size.PadCase{Name: base.OnPad(k.Name, w), Actions: k.Sum, Weight: w})
		}
	}
	return out
}

func compared(m *footwardv1.CompareFootingsRequest, in *size.Comparison, r *size.Compared) *footwardv1.CompareFootingsResponse {
	var l limit.Notices
	r.Notices(&l)
	out := &footwardv1.CompareFootingsResponse{
		Label: m.GetLabel(), Contrast: contrastOf(&r.Count.Contrasts[0]), Pad: padChoice(in, r.Pad),
		Notices: notices(l.All(), true), Provenance: provenanceOf(m.GetBasis().Basis()),
	}
	for i, o := range [...]outcome{r.Rings, r.Pad} {
		a := &r.Count.Answers[i]
		out.Footings = append(out.Footings, &footwardv1.FootingCount{
			Name: a.Label, Result: answer(asked{a.Label, m.GetBasis(), footwardv1.Detail_DETAIL_LIMIT_STATES, m.GetExposure()}, o),
			Rows: itemRows(a.Rows), Totals: totals(&a.Totals),
		})
	}
	if why := unequal(out, r); why != "" {
		out.Contrast = &footwardv1.FootingContrast{Reason: why}
	}
	return out
}

// unequal says why two footings cannot be compared; empty: they can.
func unequal(m *footwardv1.CompareFootingsResponse, r *size.Compared) string {
	for _, f := range m.GetFootings() {
		switch f.GetResult().GetVerdict() {
		case footwardv1.Verdict_VERDICT_FAIL:
			return "the " + f.GetName() + " does not hold"
		case footwardv1.Verdict_VERDICT_OUT_OF_SCOPE:
			return "the " + f.GetName() + " is not verified as a whole: see what of it is out of scope"
		}
	}
	if !r.Pad.Found {
		return "no pad that was offered holds"
	}
	return ""
}

func itemRows(all []compare.Row) []*footwardv1.ItemRow {
	out := make([]*footwardv1.ItemRow, len(all))
	for i := range all {
		r := &all[i]
		out[i] = &footwardv1.ItemRow{
			Kind: footwardv1.ItemKind(r.Item.Kind), Name: r.Name, MassKg: r.Item.Mass, VolumeM3: r.Item.Volume,
			LooseVolumeM3: r.Item.Loose, AreaM2: r.Item.Area, Count: uint32(r.Item.Count),
			Cost: figure(&r.Cost), Hours: figure(&r.Hours), Carbon: figure(&r.Carbon),
		}
		if r.Moved {
			out[i].TransportCost, out[i].TransportCarbon = figure(&r.HaulCost), figure(&r.HaulCarbon)
		}
	}
	return out
}

func figure(f *compare.Figure) *footwardv1.ItemFigure {
	out := &footwardv1.ItemFigure{Rate: f.Rate, Per: footwardv1.RateMeasure(f.Per), Source: f.Source, ByDefault: f.Default, Reason: f.Reason}
	if f.Known {
		v := f.Value
		out.Value = &v
	}
	return out
}

func totals(t *compare.Totals) *footwardv1.FootingTotals {
	sum := func(s *compare.Sum) *footwardv1.PartialSum {
		return &footwardv1.PartialSum{Value: s.Value, Missing: s.Missing}
	}
	return &footwardv1.FootingTotals{
		MassKg: sum(&t.Mass), VolumeM3: sum(&t.Volume), DugM3: t.Dug, Cost: sum(&t.Cost), Hours: sum(&t.Hours), Carbon: sum(&t.Carbon),
		TransportCost: sum(&t.HaulCost), TransportCarbon: sum(&t.HaulCarbon),
	}
}

func contrastOf(c *compare.Contrasts) *footwardv1.FootingContrast {
	one := func(c *compare.Contrast) *footwardv1.Contrast {
		out := &footwardv1.Contrast{}
		if c.Known {
			v := c.Difference
			out.Difference = &v
		}
		if c.HasRatio {
			v := c.Ratio
			out.Ratio = &v
		}
		return out
	}
	return &footwardv1.FootingContrast{
		Mass: one(&c.Mass), Volume: one(&c.Volume), Cost: one(&c.Cost), Hours: one(&c.Hours), Carbon: one(&c.Carbon),
		TransportCost: one(&c.HaulCost), TransportCarbon: one(&c.HaulCarbon),
	}
}

var padDimensions = map[size.Dimension]footwardv1.PadDimension{
	size.PadPlan: footwardv1.PadDimension_PAD_DIMENSION_PLAN, size.PadDepth: footwardv1.PadDimension_PAD_DIMENSION_THICKNESS,
	size.PadReinforcement: footwardv1.PadDimension_PAD_DIMENSION_BARS,
}

func padChoice(in *size.Comparison, r *size.PadResult) *footwardv1.PadChoice {
	b := &r.Best
	out := &footwardv1.PadChoice{
		Found: r.Found, SizeXMm: b.SizeX, SizeYMm: b.SizeY, ThicknessMm: b.Thickness, Choices: uint32(r.Choices), Checked: uint32(r.Checked),
	}
	if b.Bars >= 0 {
		bars := in.Pad.Bars[b.Bars]
		out.Bars = &footwardv1.PadBars{DiameterMm: bars.Diameter, SpacingMm: bars.Spacing}
	}
	for i := range r.Stops {
		s := &r.Stops[i]
		one := &footwardv1.PadStop{Dimension: padDimensions[s.Dimension], LimitStateId: s.Choice.Governing}
		if s.Choice.Rated {
			u := s.Choice.Utilization
			one.Utilization = &u
		}
		out.Stops = append(out.Stops, one)
	}
	return out
}
