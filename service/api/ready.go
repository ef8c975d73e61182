package api

import (
	"fmt"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// The factors on weights of combinations made ready, whose own are not known: as
// great and as small as any (ASCE 7-22 2.3.1, 2.4.1).
var readyWeights = map[basis.Basis][]float64{basis.USLRFD: {1.4, 0.9}, basis.USASD: {1, 0.6}}

const (
	casesField = "load_cases.cases"

	noPairs = "the load cases hold none of kind CHARACTERISTIC, which the Eurocode's checks of the ground need" +
		" with their permanent part; or give the actions themselves"
	noService = "the load cases hold none of kind CHARACTERISTIC, which settlements and service values need; or give the actions themselves"
	noStage   = "of some stage there is a load case of another kind and none of kind CHARACTERISTIC: stage %d (0: none stated)"
)

// ready reads combinations made by the caller: what is checked for strength, what a
// substructure takes of them, and what they leave out.
func (r *reader) ready(m *footwardv1.CheckColumnBaseRequest, list []*footwardv1.LoadCase, to *base.ColumnInput) {
	b := basis.Basis(m.GetBasis().Basis())
	to.Cases = make([]base.Case, 0, len(list)+1)
	named, told := map[string]int{}, true
	in := load.Input{Basis: b}
	for i, k := range list {
		field := fmt.Sprintf("%s[%d]", casesField, i)
		if j, twice := named[k.GetName()]; twice {
			r.faults.Add(limit.Conflict, field+".name", fmt.Sprintf("%q is the name of cases[%d] too", k.GetName(), j))
		}
		named[k.GetName()] = i
		r.readyKind(b, k, field, m.GetBase().GetSubstructure().GetGround() != nil)
		told = told && k.GetKind() != 0
		in.Situations = append(in.Situations, load.Situation(k.GetKind()))
		r.made.ready(k)
		readyCase(b, k, to)
	}
	if len(to.Cases) == 0 {
		if len(list) > 0 {
			r.faults.Add(limit.Missing, casesField, "hold no combination of design values, by which strength is checked")
		}
		to.Cases = make([]base.Case, 1) // where the schema names what is missing
		return
	}
	if told {
		leaveOut(&in, m.GetBase(), casesField, to)
	}
	readyStages(b, &to.Below, to.Cases)
}

// readyKind holds the kind of a case to the basis, and its permanent part to its kind.
func (r *reader) readyKind(b basis.Basis, k *footwardv1.LoadCase, field string, ground bool) {
	kind := k.GetKind()
	strength, service, factored := footwardv1.CombinationKind_COMBINATION_KIND_STRENGTH,
		footwardv1.CombinationKind_COMBINATION_KIND_CHARACTERISTIC, footwardv1.CombinationKind_COMBINATION_KIND_FACTORED
	switch {
	case kind == 0 || kind == strength:
	case b == basis.USLRFD && kind != service:
		r.faults.Add(limit.Conflict, field+".kind", "must be STRENGTH or CHARACTERISTIC with US LRFD")
	case b == basis.USASD && kind != factored:
		r.faults.Add(limit.Conflict, field+".kind", "must be STRENGTH or FACTORED with US ASD")
	case b == basis.Eurocode && kind == factored:
		r.faults.Add(limit.Conflict, field+".kind", "goes with US ASD only")
	}
	parted := kind == service || kind == footwardv1.CombinationKind_COMBINATION_KIND_ACCIDENTAL
	switch {
	case k.GetPermanent() != nil && !parted:
		r.faults.Add(limit.Conflict, field+".permanent", "goes with cases of kind CHARACTERISTIC or ACCIDENTAL only")
	case k.GetPermanent() == nil && parted && ground && b == basis.Eurocode:
		r.faults.Add(limit.Missing, field+".permanent", "is needed: the ground has other factors on permanent than on variable actions")
	}
}

// readyCase adds a case to what takes it.
func readyCase(b basis.Basis, k *footwardv1.LoadCase, to *base.ColumnInput) {
	s := &to.Below
	one := base.Case{Name: k.GetName(), Stage: int(k.GetStage()), Actions: actions(k.GetForces())}
	if d := load.Duration(k.GetLoadDuration()); d > 0 && d <= load.Instantaneous {
		one.Lasting = lasting(d.Factors())
	}
	permanent := actions(k.GetPermanent())
	pair := base.Pair{Name: one.Name, Stage: one.Stage, Permanent: permanent, Variable: sum(one.Actions, permanent, -1), Weight: 1}
	switch k.GetKind() {
	case footwardv1.CombinationKind_COMBINATION_KIND_FACTORED:
		s.Factored = append(s.Factored, one)
		return
	case footwardv1.CombinationKind_COMBINATION_KIND_CHARACTERISTIC:
		s.Service = append(s.Service, one)
		if b == basis.Eurocode {
			s.Pairs = append(s.Pairs, pair)
		}
		if permanent != (geom.Actions{}) {
			s.Sustained = append(s.Sustained, base.Case{Name: one.Name + ": permanent actions", Stage: one.Stage, Actions: permanent})
		}
		to.ReadyService = true
		return
	case footwardv1.CombinationKind_COMBINATION_KIND_ACCIDENTAL:
		if k.GetPermanent() != nil {
			pair.Accidental = true
			s.Pairs = append(s.Pairs, pair)
		}
	}
	if b == basis.Eurocode && k.GetKind() != 0 {
		recommended := load.Input{Factors: load.Recommended()}
		one.Weights = padWeights(&recommended, &load.Combination{Situation: load.Situation(k.GetKind())})
	}
	to.Cases = append(to.Cases, one)
	if b == basis.USASD {
		s.Service = append(s.Service, one)
	}
	for _, w := range readyWeights[b] {
		s.Pairs = append(s.Pairs, base.Pair{Name: one.Name, Stage: one.Stage, Permanent: one.Actions, Weight: w})
	}
}

// readyStages says what cannot be checked for want of characteristic cases: all that
// needs them, also where one stage has none.
func readyStages(b basis.Basis, s *base.Substructure, cases []base.Case) {
	if b == basis.USASD {
		return
	}
	stages := map[int]bool{}
	for i := range s.Service {
		stages[s.Service[i].Stage] = true
	}
	why, whyPairs := "", ""
	for i := range cases {
		if stage := cases[i].Stage; len(stages) > 0 && !stages[stage] {
			why = fmt.Sprintf(noStage, stage)
			whyPairs = why
			break
		}
	}
	if len(stages) == 0 {
		why, whyPairs = noService, noPairs
	}
	if why == "" {
		return
	}
	s.NoService, s.Service, s.Sustained = why, nil, nil
	if b == basis.Eurocode {
		s.NoPairs, s.Pairs = whyPairs, nil
	}
}
