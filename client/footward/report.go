package main

import (
	"fmt"
	"io"
	"strings"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// printReport writes the answers for people.
func printReport(t terminal, tasks []*task, provenance *footwardv1.Provenance, o *checkOptions) error {
	p := newPage(t.out)
	several := len(tasks) > 1
	for i, k := range tasks {
		if o.brief && several && k.outcome.GetResult() != nil {
			continue
		}
		if p.text.Len() > 0 {
			p.blank()
		}
		number := ""
		if several {
			number = fmt.Sprintf("%d. ", i+1)
		}
		p.answer(number, k)
	}
	if several {
		if p.text.Len() > 0 {
			p.blank()
		}
		p.summary(tasks)
	}
	p.origin(provenance)
	_, err := io.WriteString(t.out, p.text.String())
	return err
}

func (p *page) answer(number string, k *task) {
	p.paragraph(number, k.label())
	r := k.outcome.GetResult()
	indent := strings.Repeat(" ", len(number))
	if r == nil {
		p.refusal(indent, k)
		return
	}
	p.paragraph(indent, fmt.Sprintf("%s, %s, %s", k.kind(), bases[r.GetBasis()], k.place()))
	p.blank()
	p.paragraph("  ", sentence(r))
	p.states(k, r)
	p.factors(r.GetFactors())
	p.derivation(r.GetDerivation())
	p.notices(r.GetNotices())
}

// sentence gives the outcome of a check in words.
func sentence(r *footwardv1.CheckResult) string {
	governs := ""
	if id := r.GetGoverningLimitStateId(); id != "" {
		title := id
		for _, s := range r.GetLimitStates() {
			if s.GetId() == id {
				title = s.GetTitle()
			}
		}
		governs = "Governed by: " + title
		if r.GoverningUtilization != nil {
			governs += ", utilization " + utilization(r.GetGoverningUtilization())
		}
		governs += "."
	}
	switch r.GetVerdict() {
	case footwardv1.Verdict_VERDICT_PASS:
		return "PASS. " + governs
	case footwardv1.Verdict_VERDICT_FAIL:
		return "FAIL. " + governs
	case footwardv1.Verdict_VERDICT_NOT_APPLICABLE:
		return "NOT APPLICABLE: " + r.GetReason() + ". " + governs
	}
	return "OUT OF SCOPE, an engineer must judge: " + r.GetReason() + ". " + governs
}

// governingMark stands before the limit state that governs.
const governingMark = ">"

func (p *page) states(k *task, r *footwardv1.CheckResult) {
	if len(r.GetLimitStates()) == 0 {
		return
	}
	p.blank()
	columns := []column{
		{title: "Limit state", wraps: true}, {title: "Demand", right: true}, {title: "Resistance", right: true},
		{title: "Unit"}, {title: "Utilization", right: true}, {title: "Verdict"}, {title: "Held"},
	}
	var rows [][]string
	for _, s := range r.GetLimitStates() {
		rows = append(rows, stateRow(s))
	}
	// The columns are set once, so that the remarks may stand between the rows.
	const indent = "    "
	widths := p.widths(indent, columns, rows)
	titles := make([]string, len(columns))
	for i, c := range columns {
		titles[i] = c.title
	}
	p.row(indent, columns, widths, titles)
	for i, s := range r.GetLimitStates() {
		lead := indent
		if s.GetId() == r.GetGoverningLimitStateId() {
			lead = "  " + governingMark + " "
		}
		p.row(lead, columns, widths, rows[i])
		p.paragraph(indent+"  ", remark(s))
	}
	if r.GetGoverningLimitStateId() != "" {
		p.line("  " + governingMark + " governs")
	}
}

func stateRow(s *footwardv1.LimitState) []string {
	row := []string{s.GetTitle(), "", "", "", "", verdicts[s.GetVerdict()], held[s.GetEvidence()]}
	if s.GetDemand() > 0 || s.Resistance != nil {
		row[1], row[3] = figure(s.GetDemand()), s.GetUnit()
	}
	if s.Resistance != nil {
		row[2] = figure(s.GetResistance())
	}
	if s.Utilization != nil {
		row[4] = utilization(s.GetUtilization())
	}
	return row
}

// remark says what does not fit in the columns: clause, member, reason, size.
func remark(s *footwardv1.LimitState) string {
	var parts []string
	if s.GetReason() != "" {
		parts = append(parts, s.GetReason())
	}
	if s.GetClause() != "" {
		parts = append(parts, s.GetClause())
	}
	if s.GetMember() > 0 {
		parts = append(parts, fmt.Sprintf("%s %d", member(s), s.GetMember()))
	}
	if s.GetCombination() != "" && s.GetVerdict() != footwardv1.Verdict_VERDICT_NOT_APPLICABLE {
		parts = append(parts, under(s))
	}
	if r := s.GetRequiredSize(); r != nil {
		parts = append(parts, fmt.Sprintf("%s %s %s would do", sizes[r.GetKind()], size(r.GetValue()), r.GetUnit()))
	}
	return strings.Join(parts, "; ")
}

// under names the combination that is worst for a limit state.
func under(s *footwardv1.LimitState) string {
	if s.GetStage() == 0 {
		return s.GetCombination()
	}
	return fmt.Sprintf("stage %d, %s", s.GetStage(), s.GetCombination())
}

// members names what limit states are numbered by, by how their ids begin.
var members = []struct{ prefix, name string }{
	{"weld_base_metal", "part"}, {"weld_", "segment"}, {"ring_", "tier"}, {"settle_differential", "neighbour"},
	{"settle_", "stage"}, {"plate_", "rod"}, {"rod_", "rod"}, {"hole_", "rod"}, {"anchor_", "rod"}, {"tie_", "rod"},
}

// member names what a limit state is numbered by.
func member(s *footwardv1.LimitState) string {
	for _, m := range members {
		if strings.HasPrefix(s.GetId(), m.prefix) {
			return m.name
		}
	}
	return "part"
}

func (p *page) refusal(indent string, k *task) {
	p.paragraph(indent, k.place())
	p.blank()
	if k.outcome == nil && len(k.item.Faults) == 0 {
		p.line("  NO ANSWER.")
		return
	}
	p.line("  REFUSED.")
	for _, f := range k.item.Faults {
		p.paragraph("    ", faultPlace(k.file, f)+": "+f.Reason)
		if f.Source != "" {
			p.line(fmt.Sprintf("      | %.*s", p.width-8, f.Source))
		}
	}
	for _, v := range k.outcome.GetRefusal().GetViolations() {
		p.paragraph("    ", fmt.Sprintf("%s %s", v.GetField(), v.GetDescription()))
	}
}

func faultPlace(file string, f reading.Fault) string {
	switch {
	case f.Line == 0:
		return file
	case f.Column == 0:
		return fmt.Sprintf("%s:%d", file, f.Line)
	}
	return fmt.Sprintf("%s:%d:%d", file, f.Line, f.Column)
}
