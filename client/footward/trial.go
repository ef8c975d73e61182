package main

import (
	"context"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const testsHelp = `footward tests FILE : find what load tests allow

FILE is YAML or JSON and holds one request; "-" stands for standard input. To start,
see footward example tests. With --table the tests come from CSV with a heading: a test
on each line, columns by the names of the request (load_kn, date, mode and so on). Dates
are ISO 8601, decimals have a point; a test without mode was stopped.

Exit status: 0 there is a characteristic value; 1 there is none, and why is said; 2 bad
input or no answer.

`

func tests(ctx context.Context, args []string, t terminal) int {
	var table string
	request, answer := &footwardv1.AssessLoadTestsRequest{}, &footwardv1.AssessLoadTestsResponse{}
	q := question{
		command: "tests", help: testsHelp, answer: "AssessLoadTestsResponse", request: request,
		flags: func(f *flag.FlagSet) { f.StringVar(&table, "table", "", "read the tests from this CSV file") },
		more: func() (err error) {
			if table == "" {
				return nil
			}
			if len(request.Tests) > 0 {
				return fmt.Errorf("the tests stand in the request and in %s", table)
			}
			request.Tests, err = tabled(table, reading.Tests)
			return err
		},
		ask: func(ctx context.Context, c *client.Client, _ bool) (m proto.Message, err error) {
			answer, err = c.AssessLoadTests(ctx, request)
			return answer, err
		},
		show:   func(p *page) { p.assessed(answer) },
		passes: func() bool { return answer.GetCharacteristic().ValueKn != nil },
	}
	return q.run(ctx, args, t)
}

// tabled reads rows from a file.
func tabled[T any](name string, read func(io.Reader) (T, error)) (rows T, err error) {
	f, err := os.Open(name)
	if err != nil {
		return rows, fmt.Errorf("%s: %s", name, plain(err))
	}
	defer f.Close()
	if rows, err = read(f); err != nil {
		return rows, fmt.Errorf("%s: %w", name, err)
	}
	return rows, nil
}

func (p *page) assessed(m *footwardv1.AssessLoadTestsResponse) {
	p.title(m.GetLabel())
	p.line(fmt.Sprintf("  %d failed by the mode, %d did not", m.GetFailed(), m.GetSurvived()))
	if m.GetLowerBoundOnly() {
		p.line("  LOWER BOUND ONLY: no test failed by the mode")
	}
	p.blank()
	rows := [][]string{
		valueRow("Characteristic, 5 % fractile", m.GetCharacteristic()),
		valueRow("Design, EN 1990 D7.2", m.GetDesign()),
		valueRow("Design, EN 1990 D7.3", m.GetDirect()),
	}
	if c := m.GetCorrelation(); c != nil {
		rows = append(rows, []string{"Beside: EN 1997-1 Table A.9, characteristic", kilonewtons(c.CharacteristicKn), ""})
		if c.DesignKn != nil {
			rows = append(rows, []string{"Beside: EN 1997-1, design", kilonewtons(c.DesignKn), ""})
		}
	}
	rows = append(rows, valueRow("US: allowable, 2.5 on the least", m.GetAllowable()), valueRow("US: phi on the mean", m.GetPhiMean()))
	if m.WithAllKn != nil {
		rows = append(rows, []string{"Characteristic with tests left out", kilonewtons(m.WithAllKn), ""})
	}
	p.figures(rows)
	p.blank()
	s := m.GetSurvivors()
	p.paragraph("  ", fmt.Sprintf("Every test bore %.1f kN: by itself that shows that %.0f %% of the population bear it; as a 5 %% fractile it takes %d tests without failure.",
		s.GetLoadKn(), 100*s.GetShare(), s.GetTestsNeeded()))
	p.factors(m.GetFactors())
	p.notices(m.GetNotices())
	p.derivation(m.GetDerivation())
	p.origin(m.GetProvenance())
}

const readingHelp = `footward reading FILE : read the record of one load test

FILE is YAML or JSON and holds one request; "-" stands for standard input. To start,
see footward example reading. With --table the stages come from CSV with a heading: a
reading on each line, columns stage, phase, load_kn, minutes and settlement_mm, or
settlement_1_mm, settlement_2_mm and so on for several gauges. Decimals have a point.

Exit status: 0 read; 2 bad input or no answer.

`

func loadTest(ctx context.Context, args []string, t terminal) int {
	var table string
	request, answer := &footwardv1.ReadLoadTestRequest{}, &footwardv1.ReadLoadTestResponse{}
	q := question{
		command: "reading", help: readingHelp, answer: "ReadLoadTestResponse", request: request,
		flags: func(f *flag.FlagSet) { f.StringVar(&table, "table", "", "read the stages from this CSV file") },
		more: func() (err error) {
			if table == "" {
				return nil
			}
			if len(request.Stages) > 0 {
				return fmt.Errorf("the stages stand in the request and in %s", table)
			}
			request.Stages, err = tabled(table, reading.Stages)
			return err
		},
		ask: func(ctx context.Context, c *client.Client, _ bool) (m proto.Message, err error) {
			answer, err = c.ReadLoadTest(ctx, request)
			return answer, err
		},
		show: func(p *page) { p.record(answer) },
	}
	return q.run(ctx, args, t)
}

func (p *page) record(m *footwardv1.ReadLoadTestResponse) {
	p.title(m.GetLabel())
	if m.GetFailed() {
		p.line(fmt.Sprintf("  FAILED at %.1f kN: %s", m.GetResistanceKn(), criterion(m.GetGoverning())))
	} else {
		p.line(fmt.Sprintf("  NOT FAILED: %.1f kN is a lower bound", m.GetResistanceKn()))
	}
	p.blank()
	var rows [][]string
	for _, c := range m.GetCriteria() {
		rows = append(rows, []string{"Failure by " + criterion(c.GetCriterion()), kilonewtons(c.LoadKn), c.GetReason()})
	}
	rows = append(rows,
		[]string{"E_v, first loading", number(m.GetFirstLoading().EVMpa, "%.1f MPa"), m.GetFirstLoading().GetReason()},
		[]string{"E_v, reload", number(m.GetReload().EVMpa, "%.1f MPa"), m.GetReload().GetReason()},
		[]string{"Subgrade reaction, plate", number(m.GetSubgrade().PlateNMm3, "%.4f N/mm3"), m.GetSubgrade().GetReason()})
	if v := m.GetSubgrade().FootingNMm3; v != nil {
		bound := ""
		if m.GetSubgrade().GetBoundOnly() {
			bound = "bound only: the footing is too wide for the plate"
		}
		rows = append(rows, []string{"Subgrade reaction, footing", number(v, "%.4f N/mm3"), bound})
	}
	for _, c := range m.GetCreep() {
		rows = append(rows, []string{fmt.Sprintf("Creep in stage %d, a log cycle", c.GetStage()), number(c.UsedMm, "%.3f mm"), c.GetReason()})
		if c.LifeMm != nil {
			rows = append(rows, []string{"  settlement at the design life", number(c.LifeMm, "%.2f mm"), ""})
		}
	}
	rows = append(rows, []string{"Hyperbola, extrapolated", kilonewtons(m.GetHyperbola().ExtrapolatedKn), m.GetHyperbola().GetReason()})
	if c := m.GetClamp(); c != nil {
		for _, r := range []struct {
			name string
			v    *float64
		}{
			{"Rods go slack at", c.SlackLoadKn}, {"Preload lost by embedment", c.PreloadLostKn}, {"Rods go slack then at", c.SlackLoadLeftKn},
			{"Preload at the design life, least", c.PreloadAtLifeLeastKn}, {"Rods go slack then at", c.SlackLoadAtLifeKn},
		} {
			if r.v != nil {
				rows = append(rows, []string{r.name, kilonewtons(r.v), ""})
			}
		}
	}
	p.figures(rows)
	p.notices(m.GetNotices())
	p.derivation(m.GetDerivation())
	p.origin(m.GetProvenance())
}

func criterion(c footwardv1.FailureCriterion) string {
	return strings.ToLower(strings.ReplaceAll(strings.TrimPrefix(c.String(), "FAILURE_CRITERION_"), "_", " "))
}

// title is the label of an answer.
func (p *page) title(label string) {
	if label != "" {
		p.line(label)
		p.blank()
	}
}

// figures is a list of names and values; where there is no value, why.
func (p *page) figures(rows [][]string) {
	var why [][2]string
	for _, r := range rows {
		if r[1] == "" {
			r[1] = "none"
		}
		if r[2] != "" {
			why = append(why, [2]string{r[0], r[2]})
		}
	}
	short := make([][]string, len(rows))
	for i, r := range rows {
		short[i] = r[:2]
	}
	p.list("  ", []column{{}, {right: true}}, short)
	if len(why) > 0 {
		p.blank()
	}
	for _, w := range why {
		p.paragraph("  ", strings.TrimSpace(w[0])+": "+w[1]+".")
	}
}

func valueRow(name string, v *footwardv1.TestValue) []string {
	return []string{name, kilonewtons(v.ValueKn), v.GetReason()}
}

func kilonewtons(v *float64) string { return number(v, "%.1f kN") }

func number(v *float64, format string) string {
	if v == nil {
		return ""
	}
	return fmt.Sprintf(format, *v)
}
