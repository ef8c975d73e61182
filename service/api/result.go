package api

import (
	"errors"
	"strings"
	"sync"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/corrosion"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// outcome is what every part of the kernel answers with.
type outcome interface {
	States(*limit.List)
	Notices(*limit.Notices)
	Derive(*derive.Sheet)
}

// asked is what the caller wants to know of any check.
type asked struct {
	label    string
	basis    *footwardv1.DesignBasis
	detail   footwardv1.Detail
	exposure *footwardv1.Exposure // nil: of no steel, or of none that corrodes
}

// scratch is the working memory of one answer.
type scratch struct {
	list    limit.List
	notices limit.Notices
	sheet   derive.Sheet
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// answer writes the response of a check from its outcome.
func answer(a asked, o outcome) *footwardv1.CheckResult {
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	s.list.Reset()
	s.list.NoSizes = a.detail == footwardv1.Detail_DETAIL_GOVERNING
	s.notices.Reset()
	o.States(&s.list)
	o.Notices(&s.notices)
	exposed := a.exposure != nil
	if exposed {
		s.notices.Add(corrosion.Remark)
	}

	r := &footwardv1.CheckResult{
		Label: a.label, Basis: a.basis.Basis(), Edition: basis.Basis(a.basis.Basis()).Edition(), Annex: a.basis.GetEurocode().GetAnnex(), Verdict: footwardv1.Verdict(s.list.Verdict()),
	}
	if g := s.list.Governing(); g != nil {
		r.GoverningLimitStateId = g.Kind.ID
		if g.Rated {
			u := g.Utilization
			r.GoverningUtilization = &u
		}
	}
	r.Reason = reason(s.list.All(), r.GetVerdict())
	full := a.detail != footwardv1.Detail_DETAIL_GOVERNING
	r.Notices = notices(s.notices.All(), full)
	if !full {
		return r
	}
	r.LimitStates = states(s.list.All(), a.basis.Basis())
	s.sheet.Reset(a.detail != footwardv1.Detail_DETAIL_DERIVATION)
	if exposed {
		exposure(a.exposure).Derive(&s.sheet)
	}
	o.Derive(&s.sheet)
	r.Factors = factors(s.sheet.Factors, a.basis)
	r.Derivation = steps(s.sheet.Steps)
	return r
}

// refusal turns the error of a kernel check into an answer, when the basis does
// not cover it, or into faults.
func refusal(a asked, err error) (*footwardv1.CheckResult, limit.Faults) {
	var faults limit.Faults
	if errors.As(err, &faults) {
		return nil, faults
	}
	r := &footwardv1.CheckResult{
		Label: a.label, Basis: a.basis.Basis(), Edition: basis.Basis(a.basis.Basis()).Edition(), Annex: a.basis.GetEurocode().GetAnnex(),
		Verdict: footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, Reason: err.Error(),
	}
	return r, nil
}

// reason repeats why a whole check is out of scope or not applicable: the
// reason of the first limit state with that verdict.
func reason(all []limit.State, verdict footwardv1.Verdict) string {
	if verdict != footwardv1.Verdict_VERDICT_OUT_OF_SCOPE && verdict != footwardv1.Verdict_VERDICT_NOT_APPLICABLE {
		return ""
	}
	for i := range all {
		if footwardv1.Verdict(all[i].Verdict) == verdict {
			return all[i].Reason
		}
	}
	return "there is nothing to check"
}

// unit is how a measure is shown: its name and how many kernel units it holds.
type unit struct {
	name string
	of   float64
}

var units = [...]unit{
	limit.Ratio:       {"", 1},
	limit.Force:       {"kN", newton},
	limit.Moment:      {"kNm", newtonMM},
	limit.Stress:      {"MPa", 1},
	limit.ForceLength: {"kN/m", 1},
	limit.UnitMoment:  {"kNm/m", 1e3},
	limit.Length:      {"mm", 1},
}

// states writes the limit states. Messages and optional numbers come from one
// block each, since an answer has a dozen of both.
func states(all []limit.State, basis footwardv1.Basis) []*footwardv1.LimitState {
	block := make([]footwardv1.LimitState, len(all))
	family := familyOf(basis)
	numbers := make([]float64, 0, 3*len(all))
	optional := func(v float64) *float64 {
		numbers = append(numbers, v)
		return &numbers[len(numbers)-1]
	}
	out := make([]*footwardv1.LimitState, len(all))
	for i := range all {
		s, m := &all[i], &block[i]
		u := units[s.Kind.Measure]
		m.Id, m.Title, m.Unit = s.Kind.ID, s.Kind.Title, u.name
		m.Clause = s.Kind.Clause[basis]
		if s.Clause != "" {
			m.Clause = s.Clause
		}
		m.Demand = s.Demand / u.of
		m.Verdict, m.Reason, m.Member = footwardv1.Verdict(s.Verdict), s.Reason, uint32(s.Member)
		m.Combination, m.Stage = s.Combination, uint32(s.Stage)
		m.Evidence = evidence[s.Kind.ID][family]
		if s.Rated {
			m.Resistance = optional(s.Resistance / u.of)
			m.Utilization = optional(s.Utilization)
		}
		if s.Size != limit.NoSize {
			m.RequiredSize = &footwardv1.RequiredSize{Kind: footwardv1.SizeKind(s.Size), Value: s.Required, Unit: sizeUnit(s.Size)}
		}
		out[i] = m
	}
	return out
}

// sizeUnit is the unit of a required size.
func sizeUnit(s limit.Size) string {
	if s == limit.SteelPerWidth {
		return "mm2/mm"
	}
	return "mm"
}

func notices(all []*limit.Notice, text bool) []*footwardv1.Notice {
	if len(all) == 0 {
		return nil
	}
	block := make([]footwardv1.Notice, len(all))
	out := make([]*footwardv1.Notice, len(all))
	for i, n := range all {
		block[i].Code, block[i].Severity = n.Code, footwardv1.Severity(n.Severity)
		if text {
			block[i].Text = n.Text
		}
		out[i] = &block[i]
	}
	return out
}

// givenInRequest is the source of a factor that the caller set.
const givenInRequest = "given in the request"

func factors(all []derive.Factor, b *footwardv1.DesignBasis) []*footwardv1.FactorUsed {
	block := make([]footwardv1.FactorUsed, len(all))
	own := statedBy(b, annexes)
	out := make([]*footwardv1.FactorUsed, len(all))
	for i, f := range all {
		block[i].Symbol, block[i].Value, block[i].Source = f.Symbol, f.Value, f.Source
		for _, s := range own {
			if s.is(&f) && !strings.HasSuffix(f.Source, givenInRequest) {
				block[i].Source = s.source
			}
		}
		out[i] = &block[i]
	}
	return out
}

func steps(all []derive.Step) []*footwardv1.DerivationStep {
	if len(all) == 0 {
		return nil
	}
	out := make([]*footwardv1.DerivationStep, len(all))
	for i, s := range all {
		out[i] = &footwardv1.DerivationStep{
			Symbol: s.Symbol, Expression: s.Expression, Numbers: s.Numbers,
			Value: s.Value, Unit: s.Unit, Clause: s.Clause,
		}
	}
	return out
}

// familyOf is the column of a basis in the table of evidence.
func familyOf(b footwardv1.Basis) int {
	if b == footwardv1.Basis_BASIS_EUROCODE {
		return 0
	}
	return 1
}
