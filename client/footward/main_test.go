package main

import (
	"bytes"
	"context"
	"flag"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/health"
	"google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

var update = flag.Bool("update", false, "write the golden files anew")

// result is what a command leaves behind.
type result struct {
	code     int
	out, err string
}

// waiting are the commands that take a longest time to wait.
var waiting = []string{"check", "combine", "size", "compare", "tests", "reading", "evidence"}

func footward(t *testing.T, stdin string, args ...string) result {
	t.Helper()
	var out, err bytes.Buffer
	if len(args) > 1 && slices.Contains(waiting, args[0]) {
		// However busy the machine is, its answer is what is tested.
		args = slices.Insert(slices.Clone(args), 1, "--timeout=10m")
	}
	code := run(t.Context(), args, strings.NewReader(stdin), &out, &err)
	return result{code, out.String(), err.String()}
}

func golden(t *testing.T, name, got string) {
	t.Helper()
	path := filepath.Join("../../testdata/golden", name)
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(got), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, string(want), got)
}

// staged is a service that answers by the label of a weld. The real one is used
// where its numbers matter; this one shows what is rare.
type staged struct {
	footwardv1.UnimplementedCheckServiceServer
	calls atomic.Int64
}

func (s *staged) CheckMany(_ context.Context, m *footwardv1.CheckManyRequest) (*footwardv1.CheckManyResponse, error) {
	s.calls.Add(1)
	r := &footwardv1.CheckManyResponse{Provenance: &footwardv1.Provenance{
		ServiceVersion: "0", KernelRevision: 0, Caution: "Design aid only.",
		Bases: []*footwardv1.BasisEdition{{Basis: footwardv1.Basis_BASIS_US_ASD, Editions: "AISC 360"}},
	}}
	for _, item := range m.GetItems() {
		label := item.GetWeld().GetLabel()
		if label == "breaks" {
			return nil, status.Error(codes.Internal, "something broke, id 7")
		}
		r.Outcomes = append(r.Outcomes, outcomeOf(label))
	}
	return r, nil
}

func outcomeOf(label string) *footwardv1.CheckOutcome {
	used := 1.00004
	c := &footwardv1.CheckResult{Label: label, Basis: footwardv1.Basis_BASIS_US_ASD, Verdict: footwardv1.Verdict_VERDICT_PASS}
	switch label {
	case "refused":
		return &footwardv1.CheckOutcome{Outcome: &footwardv1.CheckOutcome_Refusal{Refusal: &footwardv1.Refusal{
			Violations: []*footwardv1.FieldViolation{
				{Field: "weld.run.length_mm", Description: "must be over 0 and at most 50 000 mm, is -5"},
				{Field: "weld.weld.parts", Description: "needs 2 parts, has 1"},
			}}}}
	case "beyond":
		c.Verdict, c.Reason = footwardv1.Verdict_VERDICT_OUT_OF_SCOPE, "the basis ends here"
	case "nothing":
		c.Verdict, c.Reason = footwardv1.Verdict_VERDICT_NOT_APPLICABLE, "there is no force"
	case "fails":
		c.Verdict, c.GoverningLimitStateId, c.GoverningUtilization = footwardv1.Verdict_VERDICT_FAIL, "weld_throat", &used
		resistance, needed := 100.0, 4.01
		c.LimitStates = []*footwardv1.LimitState{{
			Id: "weld_throat", Title: "Weld on its throat, with a title that is long enough to be broken into two lines",
			Clause: "J2.4", Demand: 100.004, Resistance: &resistance, Utilization: &used, Unit: "kN",
			Verdict: footwardv1.Verdict_VERDICT_FAIL, RequiredSize: &footwardv1.RequiredSize{Kind: footwardv1.SizeKind_SIZE_KIND_WELD_LEG, Value: needed, Unit: "mm"}, Member: 2,
		}, {
			Id: "other", Title: "Other", Clause: "J2.5", Verdict: footwardv1.Verdict_VERDICT_NOT_APPLICABLE, Reason: "there is no \x1b[31mtension",
		}}
	}
	return &footwardv1.CheckOutcome{Outcome: &footwardv1.CheckOutcome_Result{Result: c}}
}

func stage(t *testing.T) (*staged, string) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	s, g := &staged{}, grpc.NewServer()
	footwardv1.RegisterCheckServiceServer(g, s)
	grpc_health_v1.RegisterHealthServer(g, health.NewServer())
	go func() { _ = g.Serve(listener) }()
	t.Cleanup(g.Stop)
	return s, listener.Addr().String()
}

// welds is a request file with a weld for each label.
func welds(labels ...string) string {
	var b strings.Builder
	b.WriteString("items:\n")
	for _, l := range labels {
		fmt.Fprintf(&b, "- weld: {label: %q}\n", l)
	}
	return b.String()
}

func TestExitStatus(t *testing.T) {
	_, address := stage(t)
	for _, c := range []struct {
		stdin string
		want  int
	}{
		{welds("passes", "passes"), 0},
		{welds("passes", "fails"), 1},
		{welds("passes", "beyond"), 1},
		{welds("nothing"), 1},
		{welds("passes", "refused"), 2},
		{welds("fails", "refused"), 2},
		{welds("passes", "breaks"), 2},
		{"weld: {labl: x}", 2},
		{"", 2},
	} {
		r := footward(t, c.stdin, "check", "-", "--server", address)
		assert.Equal(t, c.want, r.code, "%s\n%s", c.stdin, r.out)
		assert.Equal(t, c.want == 2, r.err != "", "%s: %s", c.stdin, r.err)
		assert.Equal(t, c.want, footward(t, c.stdin, "check", "-", "--json", "--server", address).code, c.stdin)
	}
}

func TestReportShowsWhatIsRare(t *testing.T) {
	_, address := stage(t)
	stdin := welds("fails", "refused", "beyond", "nothing", "a label with \x07 and\ttab") + "---\nweld:\n  labl: x\n  run: {length_mm: 5 m}\n"
	r := footward(t, stdin, "check", "--server", address, "-")
	assert.Equal(t, 2, r.code)
	assert.Equal(t, "footward: 2 of 6 checks could not be made\n", r.err)
	golden(t, "footward-rare.txt", r.out)
	for _, line := range strings.Split(r.out, "\n") {
		assert.LessOrEqual(t, length(line), usualWidth, line)
	}
}

func TestJSONHasAnOutcomeForEveryCheck(t *testing.T) {
	_, address := stage(t)
	r := footward(t, welds("passes", "refused")+"---\nweld: {labl: x}\n", "check", "-", "--json", "--server", address)
	var m footwardv1.CheckManyResponse
	require.NoError(t, protojson.Unmarshal([]byte(r.out), &m))
	require.Len(t, m.GetOutcomes(), 3)
	assert.Equal(t, "passes", m.GetOutcomes()[0].GetResult().GetLabel())
	assert.Len(t, m.GetOutcomes()[1].GetRefusal().GetViolations(), 2)
	assert.Contains(t, m.GetOutcomes()[2].GetRefusal().GetViolations()[0].GetDescription(), `standard input:5:8: unknown field "labl"`)
	assert.EqualValues(t, 2, m.GetOutcomes()[2].GetIndex())
	assert.Equal(t, "Design aid only.", m.GetProvenance().GetCaution())
}

func TestManyChecksGoInPartsAndShowTheSummaryOnly(t *testing.T) {
	s, address := stage(t)
	labels := make([]string, 250)
	for i := range labels {
		labels[i] = fmt.Sprint("weld ", i)
	}
	labels[120] = "fails"
	r := footward(t, welds(labels...), "check", "-", "--server", address)
	assert.Equal(t, 1, r.code)
	assert.EqualValues(t, 3, s.calls.Load())
	assert.Contains(t, r.out, "250 checks: 249 pass, 1 FAIL.")
	assert.NotContains(t, r.out, "Limit state")
	assert.NotContains(t, r.err, "\r", "a bar is for terminals")

	r = footward(t, welds(labels...), "check", "-", "--full", "--server", address)
	assert.Contains(t, r.out, "Limit state")
}

func TestAnswersBeforeAFailureAreStillPrinted(t *testing.T) {
	_, address := stage(t)
	labels := make([]string, 101)
	labels[100] = "breaks"
	r := footward(t, welds(labels...), "check", "-", "--server", address)
	assert.Equal(t, 2, r.code)
	assert.Contains(t, r.out, "101 checks: 100 pass, 1 no answer.")
	assert.Equal(t, "footward: no answer from "+address+": something broke, id 7 (Internal)\n", r.err)
}

func TestFoldersAreReadInOrder(t *testing.T) {
	_, address := stage(t)
	folder := t.TempDir()
	for name, text := range map[string]string{
		"b.json": `{"weld": {"label": "second"}}`, "a.yaml": "weld: {label: first}",
		"c/d.YML": "weld: {label: third}", "notes.txt": "nothing",
	} {
		path := filepath.Join(folder, name)
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o755))
		require.NoError(t, os.WriteFile(path, []byte(text), 0o600))
	}
	r := footward(t, "", "check", folder, "--brief", "--server", address)
	assert.Equal(t, 0, r.code)
	first, second, third := strings.Index(r.out, "first"), strings.Index(r.out, "second"), strings.Index(r.out, "third")
	assert.True(t, 0 < first && first < second && second < third, r.out)

	r = footward(t, "", "check", t.TempDir(), filepath.Join(folder, "none.yaml"), folder, "--server", address)
	assert.Equal(t, 2, r.code)
	assert.Contains(t, r.out, "holds no file that ends in .yaml, .yml or .json")
	assert.Contains(t, r.out, "no such file")
	assert.Contains(t, r.out, "5 checks: 3 pass, 2 refused.")
}

func TestWrongUseIsExplained(t *testing.T) {
	for _, c := range []struct {
		args []string
		want string
	}{
		{nil, "footward check FILE..."},
		{[]string{"chekc"}, `there is no command "chekc", nearest is check`},
		{[]string{"check"}, "check what?"},
		{[]string{"check", "--fast", "x"}, "see footward check --help"},
		{[]string{"check", "--brief", "--full", "x"}, "--brief goes neither"},
		{[]string{"check", "x", "--plaintext"}, "go with --server"},
		{[]string{"check", "x", "--server", "127.0.0.1:1", "--ca", "/none"}, "no such file"},
		{[]string{"catalog", "bolts"}, `there is no list "bolts"; name one of bases, steels, rod-steels`},
		{[]string{"catalog", "steel"}, `there is no list "steel", nearest is steels; name one of bases, steels`},
		{[]string{"example"}, "name one of anchor_rods, anchorage, bearing, column_base, combine, compare, footing, pin, plate_bending, reading, ring_stack, settlement, size, tests, weld"},
		{[]string{"example", "bolt"}, `there is no example "bolt"; name one of anchor_rods`},
		{[]string{"example", "plate"}, `there is no example "plate", nearest is plate_bending`},
		{[]string{"schema", "wled"}, `there is no kind "wled", nearest is weld; name one of anchor_rods`},
		{[]string{"schema", "weld", "pin"}, "takes one kind"},
		{[]string{"completion"}, "name one of bash, fish, zsh"},
		{[]string{"completion", "csh"}, `there is no shell "csh"`},
		{[]string{"version", "x"}, "version takes nothing"},
		{[]string{"size", "../../testdata/demo/3-weld.yaml"}, "this is a request for footward check"},
		{[]string{"compare", "../../testdata/demo-more/sizes.yaml"}, "this is a request for footward size"},
	} {
		r := footward(t, "", c.args...)
		assert.Equal(t, 2, r.code, "%v", c.args)
		assert.Contains(t, r.err, c.want, "%v", c.args)
		assert.Empty(t, r.out, "%v", c.args)
	}
}

func TestHelp(t *testing.T) {
	asked := [][]string{{"--help"}, {"help"}, {"catalog", "-h"}}
	for _, name := range commandNames() {
		asked = append(asked, []string{name, "--help"}, []string{"help", name})
	}
	for _, args := range asked {
		r := footward(t, "", args...)
		assert.Equal(t, 0, r.code, "%v", args)
		assert.Contains(t, r.out, "footward", "%v", args)
		assert.Empty(t, r.err, "%v", args)
		for _, line := range strings.Split(r.out, "\n") {
			assert.NotContains(t, line, "Service", "%v", args)
		}
	}
}

func TestNoServerIsToldAtOnce(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	address := listener.Addr().String()
	require.NoError(t, listener.Close())
	r := footward(t, welds("passes"), "check", "-", "--server", address)
	assert.Equal(t, 2, r.code)
	assert.Contains(t, r.err, "no answer from "+address)
}
