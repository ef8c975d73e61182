package api

import (
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/load"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// substructure reads what carries a base below its plate; the actions come from
// shares.
func substructure(b *footwardv1.DesignBasis, m *footwardv1.Substructure) base.Substructure {
	s, g, t := m.GetStack(), m.GetGround(), m.GetSettlement()
	out := base.Substructure{
		HasStack: s != nil, HasGround: g != nil, HasSettlement: t != nil,
		Levelling:   base.Levelling{Thickness: m.GetLevelling().GetThicknessMm(), UnitWeight: m.GetLevelling().GetUnitWeightKnM3() * newtonPerMM3},
		OtherWeight: m.GetOtherWeightKn() * newton, Concrete: m.GetConcreteUnitWeightKnM3() * newtonPerMM3,
		Subgrade: g.GetSubgradeModulusNMm3(), Blinding: m.GetBlindingMm() > 0,
	}
	if p := m.GetReinforcement(); p != nil {
		bars := pad.Bars{Diameter: p.GetBars().GetDiameterMm(), Spacing: p.GetBars().GetSpacingMm()}
		out.Reinforcement = pad.Reinforcement{X: bars, Y: bars, Cover: p.GetCoverMm(), Yield: p.GetFyMpa(), Bend: p.GetBendMm()}
		out.SizeEffect = p.GetSizeEffect()
	}
	if s != nil {
		out.Stack = ring.Input{
			Tiers: tiers(s.GetTiers()), Safety: stackSafety(b), Shoe: ring.Shoe{Loaded: s.GetLoadedDiameterMm()},
			LoadTested: s.GetLoadTested(), LoadTest: s.GetLoadTestKn() * newton,
			TestShoe: s.GetLoadTestShoeMm(), Cover: s.GetCoverKpa() * megaPa,
			Settlement: s.GetSettlementLimitMm(), Bedding: s.GetBeddingMm(), Key: s.GetShearKeyKn() * newton,
			Repeated: s.GetRepeatedLoad(), Sloping: s.GetSloping(), Flooded: s.GetFlooded(),
		}
	}
	if g != nil {
		out.Ground = ground.Input{
			Depth: g.GetDepthMm(), Soil: soil(g.GetSoil()), Interface: baseContact(g.GetBaseContact()),
			Layer: granularLayer(g.GetLayer()), Presumptive: presumptive(g.GetPresumptive()),
			Approaches: approaches(g.GetDesignApproaches()), Author: ground.Author(g.GetBearingAuthor()),
			Apart: g.GetPermanentApart(),
		}
		groundSafety(b, &out.Ground)
	}
	if t != nil {
		out.Settlement = settle.Input{
			Rigid: t.GetRigid(), Embedment: t.GetDepthFactor(), HalfSpace: t.GetHalfSpace(), Preloaded: t.GetPreloadedKpa() * megaPa,
			Years: t.GetCreepYears(), Spread: stressSpread(t.GetStressSpread()), Layers: layers(t.GetLayers()),
			Limits: settlementLimits(t.GetLimits()), Neighbours: neighbours(t.GetNeighbours()),
		}
	}
	return out
}

// shares finds what the checks below take of actions: characteristic pairs with
// the Eurocode, else the combinations with their factor on weights; service
// values; permanent actions stage by stage.
func (r *reader) shares(in *load.Input, combined *load.Result, s *base.Substructure) error {
	service := *in
	service.Situations = []load.Situation{load.Characteristic}
	if in.Basis.US() {
		service.Basis, service.Situations = basis.USASD, []load.Situation{load.Strength}
	}
	out, err := load.Combine(&service)
	if err != nil {
		return err
	}
	r.made.add(service.Basis, out.Combinations)
	for i := range out.Combinations {
		k := &out.Combinations[i]
		s.Service = append(s.Service, base.Case{Name: k.Name, Stage: k.Stage, Actions: k.Sum})
		if !in.Basis.US() {
			permanent, variable := parted(in, k)
			s.Pairs = append(s.Pairs, base.Pair{
				Name: k.Name, Stage: k.Stage, Permanent: permanent, Variable: variable, Weight: 1, Lift: lifting(in, k),
			})
		}
	}
	for i := range combined.Combinations {
		if k := &combined.Combinations[i]; k.Situation == load.AccidentalCase {
			permanent, other := parted(in, k)
			s.Pairs = append(s.Pairs, base.Pair{Name: k.Name, Stage: k.Stage, Permanent: permanent, Variable: other, Weight: 1, Accidental: true})
		}
	}
	if in.Basis.US() {
		for i := range combined.Combinations {
			k := &combined.Combinations[i]
			for _, w := range weightFactors(in, k) {
				s.Pairs = append(s.Pairs, base.Pair{Name: k.Name, Stage: k.Stage, Permanent: k.Sum, Weight: w})
			}
		}
	}
	if in.Basis == basis.USASD {
		factored := *in
		factored.Basis, factored.Situations = basis.USLRFD, []load.Situation{load.Strength}
		out, err := load.Combine(&factored)
		if err != nil {
			return err
		}
		r.made.add(factored.Basis, out.Combinations)
		for i := range out.Combinations {
			k := &out.Combinations[i]
			s.Factored = append(s.Factored, base.Case{Name: k.Name, Stage: k.Stage, Actions: k.Sum, Weights: padWeights(&factored, k)})
		}
	}
	for i, name := range in.Stages {
		only := base.Case{Name: name + ": permanent actions", Stage: i + 1}
		for _, a := range in.Actions {
			if a.Kind == load.Permanent && i+1 >= a.First && (a.Last == 0 || i+1 <= a.Last) {
				only.Actions = sum(only.Actions, a.Forces, 1)
			}
		}
		if only.Actions != (geom.Actions{}) {
			s.Sustained = append(s.Sustained, only)
		}
	}
	return nil
}

// nationalWeights has the weights of stack and clamped fill take the factors on actions
// that the basis gives.
func nationalWeights(b *footwardv1.DesignBasis, in *base.ColumnInput) {
	holds, presses := weights(b)
	if in.Below.HasStack {
		in.Below.Stack.Safety.Favourable, in.Below.Stack.Safety.Unfavourable = holds, presses
	}
	if in.Anchorage.Kind == base.Through {
		in.Anchorage.Through.Share = holds
	}
}

// parted returns the permanent and the variable actions of a combination.
func parted(in *load.Input, k *load.Combination) (permanent, variable geom.Actions) {
	for i, f := range k.Factors {
		if in.Actions[i].Kind == load.Permanent {
			permanent = sum(permanent, in.Actions[i].Forces, f)
		} else {
			variable = sum(variable, in.Actions[i].Forces, f)
		}
	}
	return permanent, variable
}

// lifting returns what the permanent actions of a combination lift by that do lift,
// whatever others press [N].
func lifting(in *load.Input, k *load.Combination) (up float64) {
	for i, f := range k.Factors {
		if in.Actions[i].Kind == load.Permanent {
			up += max(0, f*in.Actions[i].Forces.N)
		}
	}
	return up
}

// weightFactors returns the factor on weights of a combination: that on its
// permanent actions, or every one that might be meant.
func weightFactors(in *load.Input, k *load.Combination) []float64 {
	for i, f := range k.Factors {
		if f != 0 && in.Actions[i].Kind == load.Permanent {
			return []float64{f}
		}
	}
	return readyWeights[in.Basis]
}

// padWeights returns the factors on the weight of a concrete pad in a combination:
// the least and the greatest that its permanent actions may have.
//
// Source: EN 1990:2002 Tables A1.2(A), A1.2(B), A1.3; ASCE 7-22 2.3.1.
func padWeights(in *load.Input, k *load.Combination) []float64 {
	f := &in.Factors
	switch {
	case in.Basis.US():
		return weightFactors(in, k)
	case k.Situation == load.Strength, k.Situation == load.StrengthAB: // (6.10b) would have xi of it
		return []float64{f.GSup, f.GInf}
	case k.Situation == load.Equilibrium:
		return []float64{f.GSupA, f.GInfA}
	case k.Situation == load.Ground:
		return []float64{1, f.GInf}
	}
	return []float64{1}
}

func sum(a, b geom.Actions, by float64) geom.Actions {
	return geom.Actions{
		N: a.N + by*b.N, Vx: a.Vx + by*b.Vx, Vy: a.Vy + by*b.Vy, Mx: a.Mx + by*b.Mx, My: a.My + by*b.My, T: a.T + by*b.T,
	}
}
