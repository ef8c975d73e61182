package main

import (
	"context"
	"fmt"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const sizeHelp = `footward size FILE : look for the cheapest column base that holds

FILE is YAML or JSON and holds one request; "-" stands for standard input. To start,
see footward example size.

Exit status: 0 found; 1 none of the choices passes; 2 bad input or no answer.

`

func sizing(ctx context.Context, args []string, t terminal) int {
	request, answer := &footwardv1.SizeColumnBaseRequest{}, &footwardv1.SizeColumnBaseResponse{}
	q := question{
		command: "size", help: sizeHelp, answer: "SizeColumnBaseResponse", request: request,
		ask: func(ctx context.Context, c *client.Client, _ bool) (m proto.Message, err error) {
			answer, err = c.SizeColumnBase(ctx, request)
			return answer, err
		},
		show:   func(p *page) { p.sizes(request, answer) },
		passes: func() bool { return answer.GetFound() },
	}
	return q.run(ctx, args, t)
}

var dimensions = map[footwardv1.SizeDimension]string{
	footwardv1.SizeDimension_SIZE_DIMENSION_PLAN:      "smaller plan",
	footwardv1.SizeDimension_SIZE_DIMENSION_THICKNESS: "thinner plate",
	footwardv1.SizeDimension_SIZE_DIMENSION_ROD:       "weaker rods",
	footwardv1.SizeDimension_SIZE_DIMENSION_THROAT:    "smaller weld",

	footwardv1.SizeDimension_SIZE_DIMENSION_BOTTOM_PLATE: "lighter bottom plate",
	footwardv1.SizeDimension_SIZE_DIMENSION_STACK:        "smaller stack",
}

func (p *page) sizes(request *footwardv1.SizeColumnBaseRequest, m *footwardv1.SizeColumnBaseResponse) {
	if m.GetLabel() != "" {
		p.line(m.GetLabel())
		p.blank()
	}
	rows := [][]string{choiceCells("best", m.GetBest())}
	if !m.GetFound() {
		p.line("  NO CHOICE PASSES. The closest miss:")
		rows[0][0] = "miss"
	}
	if n := m.GetNextBest(); n != nil {
		rows = append(rows, choiceCells("next", n))
	}
	p.table("  ", []column{{title: ""}, {title: "Plate, mm"}, {title: "Rods"}, {title: "Weld, mm", right: true}, {title: "Mass, kg", right: true},
		{title: "Cost", right: true}, {title: "Governed by"}, {title: "Utilization", right: true}}, rows)
	best, o := m.GetBest(), request.GetOffer()
	if why := best.GetReason(); why != "" {
		p.paragraph("    ", best.GetGoverningLimitStateId()+": "+why)
	}
	for _, line := range [][2]string{{"bottom plate ", bottom(o, int(best.GetBottomPlate()))}, {"tiers ", tiers(o, int(best.GetStack()))}} {
		if line[1] != "" {
			p.paragraph("    ", line[0]+line[1])
		}
	}
	if len(m.GetStops()) > 0 {
		p.blank()
		p.line("  What stops the next smaller value")
		var stops [][]string
		for _, s := range m.GetStops() {
			why, use := s.GetLimitStateId(), ""
			if why == "" {
				why = "it passes, but costs more"
			}
			if s.GetReason() != "" {
				why += ": " + s.GetReason()
			}
			if s.Utilization != nil {
				use = fmt.Sprintf("%.3f", s.GetUtilization())
			}
			stops = append(stops, []string{dimensions[s.GetDimension()], offered(request.GetOffer(), s), why, use})
		}
		p.list("    ", []column{{}, {right: true}, {wraps: true}, {right: true}}, stops)
	}
	p.blank()
	p.line(fmt.Sprintf("  %d choices, %d of them checked.", m.GetChoices(), m.GetChecked()))
	p.notices(m.GetNotices())
	p.origin(m.GetProvenance())
}

// offered is the value that a stop is about.
func offered(o *footwardv1.SizeOffer, s *footwardv1.SizeStop) string {
	i := int(s.GetIndex())
	switch {
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_PLAN && i < len(o.GetPlans()):
		return fmt.Sprintf("%s x %s mm", short(o.GetPlans()[i].GetSizeXMm()), short(o.GetPlans()[i].GetSizeYMm()))
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_THICKNESS && i < len(o.GetThicknessMm()):
		return short(o.GetThicknessMm()[i]) + " mm"
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_ROD && i < len(o.GetRods()):
		return strings.TrimSpace(o.GetRods()[i].GetThread() + " " + o.GetRods()[i].GetSteel())
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_THROAT && i < len(o.GetThroatMm()):
		return short(o.GetThroatMm()[i]) + " mm"
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_BOTTOM_PLATE:
		return bottom(o, i)
	case s.GetDimension() == footwardv1.SizeDimension_SIZE_DIMENSION_STACK:
		return tiers(o, i)
	}
	return ""
}

// bottom is a bottom plate that is offered; empty where none is.
func bottom(o *footwardv1.SizeOffer, i int) string {
	if i >= len(o.GetBottomPlates()) {
		return ""
	}
	b := o.GetBottomPlates()[i]
	return fmt.Sprintf("%s x %s x %s mm", short(b.GetSizeXMm()), short(b.GetSizeYMm()), short(b.GetThicknessMm()))
}

// tiers are those of a stack that is offered, diameter by height; empty where none
// is.
func tiers(o *footwardv1.SizeOffer, i int) string {
	if i >= len(o.GetStacks()) {
		return ""
	}
	var all []string
	for _, t := range o.GetStacks()[i].GetTiers() {
		all = append(all, fmt.Sprintf("%s by %s", short(t.GetDiameterMm()), short(t.GetHeightMm())))
	}
	return strings.Join(all, ", ") + " mm"
}

func choiceCells(name string, c *footwardv1.SizeChoice) []string {
	use, weld := "", ""
	if c.GoverningUtilization != nil {
		use = fmt.Sprintf("%.3f", c.GetGoverningUtilization())
	}
	if c.GetThroatMm() > 0 {
		weld = short(c.GetThroatMm())
	}
	return []string{
		name, fmt.Sprintf("%s x %s x %s", short(c.GetSizeXMm()), short(c.GetSizeYMm()), short(c.GetThicknessMm())),
		strings.TrimSpace(c.GetThreadDesignation() + " " + c.GetRodSteel()), weld, fmt.Sprintf("%.1f", c.GetMassKg()), fmt.Sprintf("%.1f", c.GetCost()), c.GetGoverningLimitStateId(), use,
	}
}
