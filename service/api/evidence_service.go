package api

import (
	"context"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/record"
	"footward.example/footward/internal/trial"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// Evidence implements EvidenceService. It holds no state between calls and may be
// used by any number of them at once.
type Evidence struct {
	footwardv1.UnimplementedEvidenceServiceServer
	validator *guard.Validator
}

// NewEvidence returns the service.
func NewEvidence(validator *guard.Validator) *Evidence { return &Evidence{validator: validator} }

// AssessLoadTests implements EvidenceServiceServer.
func (e *Evidence) AssessLoadTests(_ context.Context, m *footwardv1.AssessLoadTestsRequest) (*footwardv1.AssessLoadTestsResponse, error) {
	violations := append(e.validator.Violations(m), guard.Foreign(m)...)
	in := loadTests(m)
	var faults limit.Faults
	if guard.Unread(m) == nil {
		trial.Validate(&in, &faults)
	}
	if violations = merge(violations, faults); len(violations) > 0 {
		return nil, guard.InvalidArgument(violations)
	}
	r, err := trial.Assess(&in)
	if err != nil {
		return nil, err
	}
	out := assessed(&in, r)
	out.Label, out.Provenance = m.GetLabel(), provenanceOf(allBases...)
	w := written(r, m.GetDetail())
	out.Notices, out.Factors, out.Derivation = w.notices, w.factors, w.steps
	return out, nil
}

// ReadLoadTest implements EvidenceServiceServer.
func (e *Evidence) ReadLoadTest(_ context.Context, m *footwardv1.ReadLoadTestRequest) (*footwardv1.ReadLoadTestResponse, error) {
	violations := append(e.validator.Violations(m), guard.Foreign(m)...)
	in := testRecord(m)
	var faults limit.Faults
	if guard.Unread(m) == nil {
		record.Validate(&in, &faults)
	}
	if violations = merge(violations, faults); len(violations) > 0 {
		return nil, guard.InvalidArgument(violations)
	}
	r, err := record.Read(&in)
	if err != nil {
		return nil, err
	}
	out := testRead(&in, r)
	out.Label, out.Provenance = m.GetLabel(), provenanceOf(allBases...)
	w := written(r, m.GetDetail())
	out.Notices, out.Derivation = w.notices, w.steps
	return out, nil
}

// words are what goes with figures.
type words struct {
	notices []*footwardv1.Notice
	factors []*footwardv1.FactorUsed
	steps   []*footwardv1.DerivationStep
}

func written(r interface {
	Notices(*limit.Notices)
	Derive(*derive.Sheet)
}, detail footwardv1.Detail) (w words) {
	var n limit.Notices
	r.Notices(&n)
	full := detail != footwardv1.Detail_DETAIL_GOVERNING
	w.notices = notices(n.All(), full)
	if full {
		s := derive.Sheet{FactorsOnly: detail != footwardv1.Detail_DETAIL_DERIVATION}
		r.Derive(&s)
		w.factors, w.steps = factors(s.Factors, nil), steps(s.Steps)
	}
	return w
}

// shown is an optional number, absent unless it holds.
func shown(v float64, holds bool) *float64 {
	if !holds {
		return nil
	}
	return &v
}
