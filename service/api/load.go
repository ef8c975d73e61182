package api

import (
	"context"
	"strings"

	"google.golang.org/grpc/status"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// Load implements LoadService. It holds no state between calls.
type Load struct {
	footwardv1.UnimplementedLoadServiceServer
	validator *guard.Validator
}

// NewLoad returns the service.
func NewLoad(validator *guard.Validator) *Load { return &Load{validator: validator} }

// CombineActions implements LoadServiceServer.
func (s *Load) CombineActions(ctx context.Context, m *footwardv1.CombineActionsRequest) (*footwardv1.CombineActionsResponse, error) {
	violations := append(s.validator.Violations(m), guard.Foreign(m)...)
	r := reader{stop: ctx.Err}
	in := r.loadInput(m.GetBasis(), m.GetActionSet(), "action_set.")
	if guard.Unread(m) == nil {
		r.faults = append(r.faults, within("action_set.", func(f *limit.Faults) { load.Validate(&in, f) })...)
	}
	if violations = merge(violations, r.faults); len(violations) > 0 {
		return nil, guard.InvalidArgument(violations)
	}
	out, err := load.Combine(&in)
	if err != nil {
		if ctx.Err() != nil {
			return nil, status.FromContextError(ctx.Err()).Err()
		}
		_, faults := refusal(asked{}, err)
		return nil, guard.InvalidArgument(merge(nil, prefixed("action_set.", faults)))
	}
	return combined(m, out), nil
}

// onlyStage is the one stage of a request that names none.
const onlyStage = "in use"

// loadInput reads a set of actions; prefix is its path in the request, for
// faults that are found here.
func (r *reader) loadInput(b *footwardv1.DesignBasis, m *footwardv1.ActionSet, prefix string) load.Input {
	in := load.Input{Stop: r.stop, Basis: r.design(b).Basis, Factors: parametersOf(b, annexes).actions, Stages: []string{onlyStage}}
	if len(m.GetStages()) > 0 {
		in.Stages = make([]string, len(m.GetStages()))
		for i, s := range m.GetStages() {
			in.Stages[i] = s.GetName()
		}
	}
	for _, k := range m.GetKinds() {
		in.Situations = append(in.Situations, load.Situation(k))
	}
	for _, a := range m.GetActions() {
		in.Actions = append(in.Actions, load.Action{
			Name: a.GetName(), Kind: load.Kind(a.GetKind()), Category: load.Category(a.GetCategory()),
			Site: load.Site(a.GetSnowSite()), OwnPsi: a.GetPsi() != nil,
			Psi: load.Psi{
				Combination: a.GetPsi().GetPsi_0(), Frequent: a.GetPsi().GetPsi_1(), QuasiPermanent: a.GetPsi().GetPsi_2(),
			},
			First: int(a.GetFirstStage()), Last: int(a.GetLastStage()), Group: a.GetExclusiveGroup(),
			Part: a.GetPartOf(), Duration: load.Duration(a.GetLoadDuration()),
			Forces: actions(a.GetForces()),
		})
	}
	return in
}

func combined(m *footwardv1.CombineActionsRequest, r *load.Result) *footwardv1.CombineActionsResponse {
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	s.notices.Reset()
	s.sheet.Reset(true)
	r.Notices(&s.notices)
	r.Derive(&s.sheet)
	out := &footwardv1.CombineActionsResponse{
		Label: m.GetLabel(), Basis: m.GetBasis().Basis(), Edition: basis.Basis(m.GetBasis().Basis()).Edition(), Annex: m.GetBasis().GetEurocode().GetAnnex(),
		Notices: notices(s.notices.All(), true), Factors: factors(s.sheet.Factors, m.GetBasis()),
		Provenance: provenanceOf(m.GetBasis().Basis()),
	}
	kept := chosen(r, m.GetEnvelopeOnly())
	at := make(map[int]uint32, len(kept))
	for _, i := range kept {
		at[i] = uint32(len(out.Combinations))
		out.Combinations = append(out.Combinations, combination(basis.Basis(m.GetBasis().Basis()), &r.Combinations[i]))
	}
	for _, e := range r.Envelopes {
		one := &footwardv1.Envelope{Kind: footwardv1.CombinationKind(e.Situation)}
		for k, x := range e.Extremes {
			one.Extremes = append(one.Extremes, &footwardv1.Extreme{
				Component: footwardv1.ForceComponent(k + 1), Greatest: at[x.Greatest], Least: at[x.Least],
			})
		}
		out.Envelopes = append(out.Envelopes, one)
	}
	return out
}

// chosen returns the places of the combinations that are sent, in order.
func chosen(r *load.Result, envelopeOnly bool) []int {
	wanted := make([]bool, len(r.Combinations))
	for _, e := range r.Envelopes {
		for _, x := range e.Extremes {
			wanted[x.Greatest], wanted[x.Least] = true, true
		}
	}
	var out []int
	for i := range wanted {
		if wanted[i] || !envelopeOnly {
			out = append(out, i)
		}
	}
	return out
}

func combination(b basis.Basis, c *load.Combination) *footwardv1.Combination {
	out := &footwardv1.Combination{
		Name: c.Name, Kind: footwardv1.CombinationKind(c.Situation), Stage: uint32(c.Stage), Forces: atFoot(&c.Sum),
		LoadDuration: footwardv1.LoadDuration(c.Lasting.Class),
	}
	switch l := c.Lasting; b {
	case basis.USASD:
		out.LoadDurationFactor = &l.LoadDuration
	case basis.USLRFD:
		out.TimeEffectFactor = &l.TimeEffect
	}
	for i, f := range c.Factors {
		if f != 0 {
			out.Terms = append(out.Terms, &footwardv1.CombinationTerm{Action: uint32(i), Factor: f})
		}
	}
	return out
}

func atFoot(a *geom.Actions) *footwardv1.ForcesAtFoot {
	return &footwardv1.ForcesAtFoot{
		NKn: a.N / newton, VXKn: a.Vx / newton, VYKn: a.Vy / newton,
		MXKnm: a.Mx / newtonMM, MYKnm: a.My / newtonMM, TKnm: a.T / newtonMM,
	}
}

// within returns the faults that validate finds, with their paths in the
// message that holds what it looks at.
func within(prefix string, validate func(*limit.Faults)) limit.Faults {
	var f limit.Faults
	validate(&f)
	return prefixed(prefix, f)
}

func prefixed(prefix string, faults limit.Faults) limit.Faults {
	for i := range faults {
		if !strings.HasPrefix(faults[i].Field, "basis.") {
			faults[i].Field = prefix + faults[i].Field
		}
	}
	return faults
}
