package main

import (
	"context"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// rows turns the entries of an answer into rows. An entry may give several.
func rows[E any](m proto.Message, entries []E, err error, row func(E) [][]string) (proto.Message, [][]string, error) {
	if err != nil {
		return nil, nil, err
	}
	var out [][]string
	for _, e := range entries {
		out = append(out, row(e)...)
	}
	return m, out, nil
}

// short writes a number of a catalogue: four digits, and no zeros behind them.
func short(v float64) string {
	s := figure(v)
	if strings.Contains(s, ".") && !strings.Contains(s, "e") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// orAny writes a limit, or that there is none.
func orAny(v float64) string {
	if v == 0 || v >= 1e6 {
		return "any"
	}
	return tidy(v)
}

var source = column{title: "Source", wraps: true}

var lists = []list{
	{"bases", "Design bases, with the default factors", listBases,
		[]column{{title: "Name"}, {title: "Factor"}, {title: "Value", right: true}, source}},
	{"steels", "Steels of plates and joined parts", listSteels,
		[]column{{title: "Name"}, {title: "Up to, mm", right: true}, {title: "f_y, MPa", right: true},
			{title: "f_u, MPa", right: true}, {title: "beta_w", right: true}, source}},
	{"rod-steels", "Steels of rods", listRodSteels,
		[]column{{title: "Name"}, {title: "Up to, mm", right: true}, {title: "f_yb, MPa", right: true},
			{title: "f_ub, MPa", right: true}, source}},
	{"threads", "Threads", listThreads,
		[]column{{title: "Name"}, {title: "d, mm", right: true}, {title: "Pitch, mm", right: true},
			{title: "A_s, mm2", right: true}, source}},
	{"fillers", "Fillers of welds", listFillers,
		[]column{{title: "Name"}, {title: "Strength, MPa", right: true}, source}},
	{"concretes", "Concretes", listConcretes,
		[]column{{title: "Name"}, {title: "Cylinder strength, MPa", right: true}, source}},
	{"timbers", "Timbers", listTimbers,
		[]column{{title: "Name"}, {title: "Kind"}, {title: "Along, MPa", right: true},
			{title: "Across, MPa", right: true}, {title: "Basis"}, source}},
	{"unit-weights", "Unit weights", listUnitWeights,
		[]column{{title: "Material"}, {title: "Least, kN/m3", right: true}, {title: "Most, kN/m3", right: true}, source}},
	{"limit-states", "Limit states", listLimitStates,
		[]column{{title: "Check"}, {title: "Id"}, {title: "Title", wraps: true}, {title: "Held (EC, US)"}, {title: "Clauses", wraps: true}}},
	{"notices", "Notices", listNotices,
		[]column{{title: "Code"}, {title: "Severity"}, {title: "Text", wraps: true}}},
}

func listBases(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListDesignBases(ctx, &footwardv1.ListDesignBasesRequest{})
	return rows(m, m.GetBases(), err, func(e *footwardv1.BasisEntry) [][]string {
		out := [][]string{{e.GetBasis().String(), "", "", e.GetEdition() + ": " + strings.Join(e.GetStandards(), "; ")}}
		for _, f := range e.GetFactors() {
			out = append(out, []string{"", f.GetSymbol(), tidy(f.GetValue()), f.GetSource()})
		}
		return out
	})
}

func listSteels(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListSteels(ctx, &footwardv1.ListSteelsRequest{})
	return rows(m, m.GetSteels(), err, func(e *footwardv1.SteelEntry) [][]string {
		var out [][]string
		for i, b := range e.GetBands() {
			row := []string{"", orAny(b.GetUpToThicknessMm()), short(b.GetFyMpa()), short(b.GetFuMpa()), "", ""}
			if i == 0 {
				row[0], row[5] = e.GetGrade(), e.GetSource()
				if e.GetBetaW() > 0 {
					row[4] = tidy(e.GetBetaW())
				}
			}
			out = append(out, row)
		}
		return out
	})
}

func listRodSteels(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListRodSteels(ctx, &footwardv1.ListRodSteelsRequest{})
	return rows(m, m.GetRodSteels(), err, func(e *footwardv1.RodSteelEntry) [][]string {
		return [][]string{{e.GetGrade(), orAny(e.GetUpToDiameterMm()), short(e.GetFyMpa()), short(e.GetFuMpa()), e.GetSource()}}
	})
}

func listThreads(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListThreads(ctx, &footwardv1.ListThreadsRequest{})
	return rows(m, m.GetThreads(), err, func(e *footwardv1.ThreadEntry) [][]string {
		return [][]string{{e.GetDesignation(), short(e.GetDiameterMm()), short(e.GetPitchMm()), short(e.GetStressAreaMm2()), e.GetSource()}}
	})
}

func listFillers(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListWeldMetals(ctx, &footwardv1.ListWeldMetalsRequest{})
	return rows(m, m.GetWeldMetals(), err, func(e *footwardv1.WeldMetalEntry) [][]string {
		return [][]string{{e.GetGrade(), short(e.GetStrengthMpa()), e.GetSource()}}
	})
}

func listUnitWeights(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListUnitWeights(ctx, &footwardv1.ListUnitWeightsRequest{})
	return rows(m, m.GetUnitWeights(), err, func(e *footwardv1.UnitWeightEntry) [][]string {
		return [][]string{{e.GetMaterial(), short(e.GetMinKnM3()), short(e.GetMaxKnM3()), e.GetSource()}}
	})
}

func listConcretes(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListConcretes(ctx, &footwardv1.ListConcretesRequest{})
	return rows(m, m.GetConcretes(), err, func(e *footwardv1.ConcreteEntry) [][]string {
		return [][]string{{e.GetGrade(), short(e.GetStrengthMpa()), e.GetSource()}}
	})
}

func listTimbers(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	kinds := map[footwardv1.TimberKind]string{
		footwardv1.TimberKind_TIMBER_KIND_SOLID_SOFTWOOD:  "softwood",
		footwardv1.TimberKind_TIMBER_KIND_GLUED_LAMINATED: "glued laminated",
		footwardv1.TimberKind_TIMBER_KIND_SOLID_HARDWOOD:  "hardwood",
	}
	m, err := c.ListTimbers(ctx, &footwardv1.ListTimbersRequest{})
	return rows(m, m.GetTimbers(), err, func(e *footwardv1.TimberEntry) [][]string {
		basis := "Eurocode"
		if e.GetBasis() != footwardv1.Basis_BASIS_EUROCODE {
			basis = "US"
		}
		return [][]string{{e.GetGrade(), kinds[e.GetKind()], short(e.GetCompressionAlongMpa()),
			short(e.GetCompressionAcrossMpa()), basis, e.GetSource()}}
	})
}

// checkKind names a check in words: CHECK_KIND_ANCHOR_RODS is anchor rods.
func checkKind(k footwardv1.CheckKind) string {
	return strings.ToLower(strings.ReplaceAll(strings.TrimPrefix(k.String(), "CHECK_KIND_"), "_", " "))
}

func listLimitStates(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListLimitStates(ctx, &footwardv1.ListLimitStatesRequest{})
	return rows(m, m.GetLimitStates(), err, func(e *footwardv1.LimitStateEntry) [][]string {
		// LRFD and ASD share their clauses, so each is told once.
		var clauses []string
		evidence := map[bool]string{} // by whether it is a US basis
		for _, k := range e.GetClauses() {
			evidence[k.GetBasis() != footwardv1.Basis_BASIS_EUROCODE] = held[k.GetEvidence()]
			if n := len(clauses); n == 0 || clauses[n-1] != k.GetClause() {
				clauses = append(clauses, k.GetClause())
			}
		}
		return [][]string{{checkKind(e.GetCheck()), e.GetId(), e.GetTitle(), both(evidence[false], evidence[true]), strings.Join(clauses, "; ")}}
	})
}

// both names the evidence by the Eurocode and by the US bases, once if they agree.
func both(eurocode, us string) string {
	if eurocode == us {
		return us
	}
	return orNone(eurocode) + ", " + orNone(us)
}

func orNone(s string) string {
	if s == "" {
		return "-"
	}
	return s
}

func listNotices(ctx context.Context, c *client.Client) (proto.Message, [][]string, error) {
	m, err := c.ListNotices(ctx, &footwardv1.ListNoticesRequest{})
	return rows(m, m.GetNotices(), err, func(e *footwardv1.NoticeEntry) [][]string {
		return [][]string{{e.GetCode(), severities[e.GetSeverity()], e.GetText()}}
	})
}
