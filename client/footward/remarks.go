package main

import (
	"fmt"
	"strings"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func (p *page) factors(all []*footwardv1.FactorUsed) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.line("  Factors")
	var rows [][]string
	for _, f := range all {
		rows = append(rows, []string{f.GetSymbol(), tidy(f.GetValue()), f.GetSource()})
	}
	p.list("    ", []column{{}, {right: true}, {wraps: true}}, rows)
}

// list is a table without titles.
func (p *page) list(indent string, columns []column, rows [][]string) {
	widths := p.widths(indent, columns, rows)
	for _, row := range rows {
		p.row(indent, columns, widths, row)
	}
}

func (p *page) notices(all []*footwardv1.Notice) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.line("  Notices")
	var rows [][]string
	for _, n := range all {
		text := n.GetText()
		if text == "" {
			text = n.GetCode()
		}
		rows = append(rows, []string{severities[n.GetSeverity()], text})
	}
	p.list("    ", []column{{}, {wraps: true}}, rows)
}

// derivation writes symbol = expression = numbers = value unit [clause], on one
// line where it fits.
func (p *page) derivation(all []*footwardv1.DerivationStep) {
	if len(all) == 0 {
		return
	}
	p.blank()
	p.line("  Derivation, in N, mm and MPa")
	for _, s := range all {
		p.step(s)
	}
}

func (p *page) step(s *footwardv1.DerivationStep) {
	const indent = "    "
	value := tidy(s.GetValue())
	if s.GetUnit() != "" {
		value += " " + s.GetUnit()
	}
	var terms []string
	for _, t := range []string{s.GetExpression(), product(s.GetNumbers())} {
		if t != "" && t != value {
			terms = append(terms, t)
		}
	}
	if n := len(terms); n > 1 && terms[n-1] == terms[n-2] {
		terms = terms[:n-1] // numbers only: nothing was put in
	}
	terms = append(terms, value)
	clause := ""
	if s.GetClause() != "" {
		clause = "  [" + s.GetClause() + "]"
	}
	whole := indent + s.GetSymbol() + " = " + strings.Join(terms, " = ")
	if length(whole+clause) <= p.width {
		p.line(whole + clause)
		return
	}
	lead := indent + s.GetSymbol() + " = "
	for i, t := range terms {
		if i == len(terms)-1 && length(lead+t+clause) <= p.width {
			p.line(lead + t + clause)
			clause = ""
			break
		}
		p.paragraph(lead, t)
		lead = strings.Repeat(" ", length(indent+s.GetSymbol())) + " = "
	}
	if clause != "" {
		p.paragraph(strings.Repeat(" ", length(lead)), strings.TrimSpace(clause))
	}
}

// product puts a * for the blank by which numbers are multiplied, which between
// numbers reads like a gap: 0.9 800 becomes 0.9 * 800.
func product(numbers string) string {
	const ends, starts = "0123456789)", "0123456789(abcdefghijklmnopqrstuvwxyz"
	var b strings.Builder
	for i := range len(numbers) {
		if numbers[i] == ' ' && i > 0 && i+1 < len(numbers) &&
			strings.IndexByte(ends, numbers[i-1]) >= 0 && strings.IndexByte(starts, numbers[i+1]) >= 0 {
			b.WriteString(" *")
		}
		b.WriteByte(numbers[i])
	}
	return b.String()
}

// summary writes one line for each check.
func (p *page) summary(tasks []*task) {
	columns := []column{
		{title: "No.", right: true}, {title: "Check", wraps: true}, {title: "Governed by", wraps: true},
		{title: "Utilization", right: true}, {title: "Verdict"},
	}
	var rows [][]string
	tally := map[string]int{}
	for i, k := range tasks {
		row := []string{fmt.Sprint(i + 1), k.label(), "", "", "refused"}
		switch r := k.outcome.GetResult(); {
		case r != nil:
			row[2], row[4] = r.GetGoverningLimitStateId(), verdicts[r.GetVerdict()]
			if r.GoverningUtilization != nil {
				row[3] = utilization(r.GetGoverningUtilization())
			}
		case k.outcome == nil && len(k.item.Faults) == 0:
			row[4] = "no answer"
		}
		if row[1] == "check" {
			row[1] = k.place()
		}
		tally[row[4]]++
		rows = append(rows, row)
	}
	p.line("Summary")
	p.table("  ", columns, rows)
	var parts []string
	for _, v := range []string{"pass", "FAIL", "out of scope", "not applicable", "refused", "no answer"} {
		if tally[v] > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", tally[v], v))
		}
	}
	p.blank()
	p.paragraph("  ", counted(len(tasks), "check")+": "+strings.Join(parts, ", ")+".")
}

// origin writes what produced the answers, and what they are not.
func (p *page) origin(o *footwardv1.Provenance) {
	if o.GetServiceVersion() == "" {
		return
	}
	p.blank()
	p.paragraph("", fmt.Sprintf("Footward %s, calculation kernel revision %d", o.GetServiceVersion(), o.GetKernelRevision()))
	for _, b := range o.GetBases() {
		p.paragraph(bases[b.GetBasis()]+": ", b.GetEditions())
	}
	p.paragraph("", o.GetCaution())
}
