package main

import (
	"context"
	"fmt"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const compareHelp = `footward compare FILE : hold a ring footing against a concrete pad

FILE is YAML or JSON and holds one request; "-" stands for standard input. To start,
see footward example compare.

Exit status: 0 both footings pass; 1 one does not; 2 bad input or no answer.

`

func comparing(ctx context.Context, args []string, t terminal) int {
	request, answer := &footwardv1.CompareFootingsRequest{}, &footwardv1.CompareFootingsResponse{}
	q := question{
		command: "compare", help: compareHelp, answer: "CompareFootingsResponse", request: request,
		ask: func(ctx context.Context, c *client.Client, _ bool) (m proto.Message, err error) {
			answer, err = c.CompareFootings(ctx, request)
			return answer, err
		},
		show: func(p *page) { p.comparison(answer) },
		passes: func() bool {
			if !answer.GetPad().GetFound() {
				return false
			}
			for _, f := range answer.GetFootings() {
				if f.GetResult().GetVerdict() != footwardv1.Verdict_VERDICT_PASS {
					return false
				}
			}
			return true
		},
	}
	return q.run(ctx, args, t)
}

func (p *page) comparison(m *footwardv1.CompareFootingsResponse) {
	if m.GetLabel() != "" {
		p.line(m.GetLabel())
		p.blank()
	}
	for _, f := range m.GetFootings() {
		r := f.GetResult()
		use := ""
		if r.GoverningUtilization != nil {
			use = ", utilization " + utilization(r.GetGoverningUtilization())
		}
		p.paragraph("  ", fmt.Sprintf("%s: %s, governed by %s%s", f.GetName(), verdicts[r.GetVerdict()], r.GetGoverningLimitStateId(), use))
	}
	p.pad(m.GetPad())
	for _, f := range m.GetFootings() {
		p.blank()
		p.line("  " + strings.ToUpper(f.GetName()[:1]) + f.GetName()[1:])
		p.items(f)
	}
	p.blank()
	p.line("  Totals")
	p.totals(m)
	p.notices(m.GetNotices())
	p.origin(m.GetProvenance())
}

// pad says which pad was sized.
func (p *page) pad(c *footwardv1.PadChoice) {
	of := "plain concrete"
	if b := c.GetBars(); b != nil {
		of = fmt.Sprintf("bars of %s mm every %s mm both ways", short(b.GetDiameterMm()), short(b.GetSpacingMm()))
	}
	found := ""
	if !c.GetFound() {
		found = "; no pad that was offered holds, this is the closest miss"
	}
	p.paragraph("    ", fmt.Sprintf("%s x %s x %s mm, %s%s", short(c.GetSizeXMm()), short(c.GetSizeYMm()), short(c.GetThicknessMm()), of, found))
}

func (p *page) items(f *footwardv1.FootingCount) {
	rows := make([][]string, len(f.GetRows()))
	for i, r := range f.GetRows() {
		rows[i] = []string{
			r.GetName(), amount(r.GetMassKg(), "%.0f"), amount(r.GetVolumeM3(), "%.2f"), amount(r.GetAreaM2(), "%.1f"), amount(float64(r.GetCount()), "%.0f"),
			known(r.GetCost()), known(r.GetHours()), known(r.GetCarbon()), known(r.GetTransportCost()), known(r.GetTransportCarbon()),
		}
	}
	p.table("    ", []column{
		{title: "Item"}, {title: "kg", right: true}, {title: "m3", right: true}, {title: "m2", right: true}, {title: "pieces", right: true},
		{title: "Cost", right: true}, {title: "Hours", right: true}, {title: "kg CO2e", right: true},
		{title: "Haul", right: true}, {title: "CO2e", right: true},
	}, rows)
}

func amount(v float64, format string) string {
	if v == 0 {
		return ""
	}
	return fmt.Sprintf(format, v)
}

func known(f *footwardv1.ItemFigure) string {
	switch {
	case f == nil:
		return ""
	case f.Value == nil:
		return "?"
	}
	return fmt.Sprintf("%.1f", f.GetValue())
}

func (p *page) totals(m *footwardv1.CompareFootingsResponse) {
	columns := []column{{title: ""}}
	for _, f := range m.GetFootings() {
		columns = append(columns, column{title: f.GetName(), right: true})
	}
	columns = append(columns, column{title: "difference", right: true}, column{title: "ratio", right: true})
	c := m.GetContrast()
	var rows [][]string
	var missing []string
	add := func(name string, of func(*footwardv1.FootingTotals) *footwardv1.PartialSum, against *footwardv1.Contrast) {
		row := []string{name}
		for _, f := range m.GetFootings() {
			s := of(f.GetTotals())
			text := fmt.Sprintf("%.1f", s.GetValue())
			if n := s.GetMissing(); len(n) > 0 {
				text += " and more"
				missing = append(missing, fmt.Sprintf("%s of the %s lacks %s.", name, f.GetName(), strings.Join(n, ", ")))
			}
			row = append(row, text)
		}
		difference, ratio := "", ""
		if against != nil && against.Difference != nil {
			difference = fmt.Sprintf("%+.1f", against.GetDifference())
		}
		if against != nil && against.Ratio != nil {
			ratio = fmt.Sprintf("%.2f", against.GetRatio())
		}
		rows = append(rows, append(row, difference, ratio))
	}
	type totals = footwardv1.FootingTotals
	add("Mass of materials, kg", func(t *totals) *footwardv1.PartialSum { return t.GetMassKg() }, c.GetMass())
	add("Concrete and fill, m3", func(t *totals) *footwardv1.PartialSum { return t.GetVolumeM3() }, c.GetVolume())
	add("Cost", func(t *totals) *footwardv1.PartialSum { return t.GetCost() }, c.GetCost())
	add("Labour, hours", func(t *totals) *footwardv1.PartialSum { return t.GetHours() }, c.GetHours())
	add("Carbon A1 to A3, kg CO2e", func(t *totals) *footwardv1.PartialSum { return t.GetCarbon() }, c.GetCarbon())
	add("Cost of transport", func(t *totals) *footwardv1.PartialSum { return t.GetTransportCost() }, c.GetTransportCost())
	add("Carbon of transport A4, kg CO2e", func(t *totals) *footwardv1.PartialSum { return t.GetTransportCarbon() }, c.GetTransportCarbon())
	p.table("    ", columns, rows)
	for _, text := range missing {
		p.paragraph("    ", text)
	}
	if c.GetReason() != "" {
		p.paragraph("    ", "Nothing is compared: "+c.GetReason()+".")
	}
}
