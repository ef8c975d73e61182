package api_test

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/client/local"
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/pin"
	"footward.example/footward/internal/record"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/size"
	"footward.example/footward/internal/trial"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

var update = flag.Bool("update", false, "write the table of limit states in README.md")

const (
	readme = "../../README.md"
	opens  = "<!-- limit states: go test ./service/api -run Readme -update -->\n"
	closes = "<!-- end of limit states -->\n"
)

var parts = []struct {
	name    string
	kinds   []*limit.Kind
	remarks []*limit.Notice
}{
	{"Bearing", bearing.Kinds(), bearing.Remarks()},
	{"Plate bending", base.PlateKinds(), base.PlateRemarks()},
	{"Weld", weld.Kinds(), weld.Remarks()},
	{"Anchor rods", rod.Kinds(), rod.Remarks()},
	{"Pin", pin.Kinds(), base.PinRemarks()},
	{"Settlement", settle.Kinds(), settle.Remarks()},
	{"Footing", ground.Kinds(), ground.Remarks()},
	{"Ring stack", ring.Kinds(), ring.Remarks()},
	{"Concrete pad", pad.Kinds(), slices.Concat(pad.Remarks(), size.PadRemarks(), size.CompareRemarks(), compare.Remarks())},
	{"Anchorage", base.AnchorageKinds(), base.AnchorageRemarks()},
	{"Column base", base.ColumnKinds(), slices.Concat(base.ColumnRemarks(), size.SearchRemarks())},
}

// TestReadmeListsEveryLimitState holds the README's table to the kernel's lists.
func TestReadmeListsEveryLimitState(t *testing.T) {
	var table strings.Builder
	table.WriteString("| check | limit state | id | Eurocode | US (LRFD and ASD) |\n|---|---|---|---|---|\n")
	for _, p := range parts {
		for _, k := range p.kinds {
			require.Equal(t, k.Clause[basis.USLRFD], k.Clause[basis.USASD], k.ID)
			fmt.Fprintf(&table, "| %s | %s | `%s` | %s | %s |\n", p.name, k.Title, k.ID,
				orNone(k.Clause[basis.Eurocode]), orNone(k.Clause[basis.USLRFD]))
		}
	}
	text, err := os.ReadFile(readme)
	require.NoError(t, err)
	before, rest, found := bytes.Cut(text, []byte(opens))
	require.True(t, found, "README.md has no table of limit states")
	got, after, found := bytes.Cut(rest, []byte(closes))
	require.True(t, found)
	if *update {
		require.NoError(t, os.WriteFile(readme, bytes.Join([][]byte{before, []byte(opens), []byte(table.String()), []byte(closes), after}, nil), 0o644))
		return
	}
	assert.Equal(t, table.String(), string(got), "run: go test ./service/api -run Readme -update")
}

func orNone(clause string) string {
	if clause == "" {
		return "-"
	}
	return clause
}

// TestCatalogueListsEveryLimitStateAndNotice holds the service's lists to the
// kernel's.
func TestCatalogueListsEveryLimitStateAndNotice(t *testing.T) {
	c, err := local.Start(patient)
	require.NoError(t, err)
	defer func() { assert.NoError(t, c.Close()) }()
	states, err := c.ListLimitStates(t.Context(), &footwardv1.ListLimitStatesRequest{})
	require.NoError(t, err)
	notices, err := c.ListNotices(t.Context(), &footwardv1.ListNoticesRequest{})
	require.NoError(t, err)
	var ids, codes, wantIDs, wantCodes []string
	for _, s := range states.GetLimitStates() {
		ids = append(ids, s.GetId())
	}
	for _, n := range notices.GetNotices() {
		codes = append(codes, n.GetCode())
	}
	seen := map[string]bool{}
	for _, p := range parts {
		for _, k := range p.kinds {
			wantIDs = append(wantIDs, k.ID)
			assert.False(t, seen[k.ID], "%s stands twice", k.ID)
			seen[k.ID] = true
		}
		for _, n := range p.remarks {
			wantCodes = append(wantCodes, n.Code)
			assert.False(t, seen[n.Code], "%s stands twice", n.Code)
			seen[n.Code] = true
		}
	}
	for _, n := range slices.Concat(load.Remarks(), trial.Remarks(), record.Remarks()) {
		wantCodes = append(wantCodes, n.Code)
	}
	assert.Equal(t, wantIDs, ids)
	assert.Equal(t, wantCodes, codes)
}
