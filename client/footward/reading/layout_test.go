package reading_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestTheLineThatIsWrongIsNamed(t *testing.T) {
	for _, c := range []struct {
		name, text   string
		line, column int
		reason       string
	}{
		{"tab", "weld:\n  label: x\n\trun: {}\n", 3, 1, "a tab stands before the text"},
		{"tab alone", "weld:\n\tlabel: x\n", 2, 1, "a tab stands before the text"},
		{"tab behind a list mark", "items:\n  - \tweld: {}\n", 2, 5, "a tab stands before the text"},
		{"further left than the fields before", "weld:\n  label: x\n  run:\n    length_mm: 5\n   group: {}\n", 5, 4, "starts at column 4, where no line above it does that it could go on from (columns 1, 3, 5)"},
		{"further right than the fields before", "weld:\n  label: x\n  basis: {}\n   run: {}\n", 4, 4, "starts at column 4"},
		{"in a list", "items:\n- weld:\n    label: x\n   run: {}\n", 4, 4, "(columns 1, 3, 5)"},
		{"far below where the part began", "weld:\n  basis: {}\n  group:\n    segments:\n" + strings.Repeat("      - {x1_mm: 1}\n", 300) + "   run: {}\n", 305, 4, "the indentation is wrong"},
		{"a list without its mark", "items:\n  - weld: {}\n  weld: {}\n", 3, 3, "- is missing"},
		{"no colon", "weld:\n  label x\n  run: {}\n", 3, 3, "the line above may lack its own colon"},
		{"no blank behind the colon", "weld:\n  label:x\n  run: {}\n", 3, 3, "the line above may lack its own colon"},
		{"in a later document", "weld: {}\n---\nweld:\n  label: x\n basis: {}\n", 5, 2, "the indentation is wrong"},
		{"a bracket that stays open", "weld:\n  run: {length_mm: 5\n  basis: {}\n", 2, 3, "did not find expected"},
		{"further left than the first line", "  weld:\n    label: x\nbearing: {}\n", 3, 1, ""},
	} {
		items := read(t, c.text)
		f := items[len(items)-1].Faults
		require.Len(t, f, 1, c.name)
		assert.Equal(t, c.line, f[0].Line, c.name)
		assert.Equal(t, c.column, f[0].Column, c.name)
		assert.Contains(t, f[0].Reason, c.reason, c.name)
		assert.Equal(t, strings.Split(c.text, "\n")[c.line-1], f[0].Source, c.name)
	}
}

func TestFieldAtAnotherLevelIsToldSo(t *testing.T) {
	for text, want := range map[string]string{
		"plate_bending:\n  plate:\n    size_x_mm: 5\n    footprint: {}\n":                                    `unknown field "footprint"; it is a field of plate_bending: this line is indented too far`,
		"plate_bending:\n  plate:\n  size_x_mm: 5\n":                                                         `unknown field "size_x_mm"; it is a field of plate before it: this line is indented too little`,
		"items:\n- plate_bending:\n    plate: {steel: {thickness_mm: 5}}\n":                                  `unknown field "thickness_mm"; it is a field of plate: this line is indented too far`,
		"weld:\n  group:\n    segments:\n      - x1_mm: 5\n        actions_height_mm: 1\n        label: a\n": `unknown field "actions_height_mm"`,
		"weld:\n  thicknes_mm: 3\n":                                                                          `unknown field "thicknes_mm"; known are`,
	} {
		items := read(t, text)
		require.NotEmpty(t, items[0].Faults, text)
		assert.Contains(t, items[0].Faults[0].Reason, want, text)
	}
	assert.Contains(t, one(t, "label: x\naction_set:\n  actions: []\n  basis: {}\n", &footwardv1.CombineActionsRequest{}),
		`it is a field of the request: this line is indented too far`)
}

// one returns what is wrong with a file that is read as a request.
func one(t *testing.T, text string, m proto.Message) string {
	t.Helper()
	faults, err := reading.One(strings.NewReader(text), m)
	require.NoError(t, err)
	require.NotEmpty(t, faults)
	return faults[0].Reason
}

func TestRequestForAnotherCommandIsToldSo(t *testing.T) {
	demo := func(name string) string {
		text, err := os.ReadFile("../../../testdata/" + name + ".yaml")
		require.NoError(t, err)
		return string(text)
	}
	size, combine := &footwardv1.SizeColumnBaseRequest{}, &footwardv1.CombineActionsRequest{}
	compare := &footwardv1.CompareFootingsRequest{}
	for name, command := range map[string]string{"sizes": "size", "actions": "combine", "compare": "compare"} {
		assert.Equal(t, "this is a request for footward "+command, only(t, demo("demo-more/"+name)).Reason)
	}
	assert.Equal(t, "this is a request for footward size", one(t, demo("demo-more/sizes"), combine))
	assert.Equal(t, "this is a request for footward combine", one(t, demo("demo-more/actions"), size))
	assert.Equal(t, "this is a request for footward compare", one(t, demo("demo-more/compare"), size))
	for _, m := range []proto.Message{size, combine, compare} {
		assert.Equal(t, "this is a request for footward check", one(t, demo("demo/3-weld"), m))
		assert.Equal(t, "this is a request for footward check", one(t, "items:\n- weld: {}\n", m))
	}
	inside := strings.ReplaceAll(strings.SplitAfterN(demo("demo/3-weld"), "weld:\n", 2)[1], "\n  ", "\n")
	assert.Contains(t, only(t, strings.TrimPrefix(inside, "  ")).Reason, "write weld: above these fields")
	// A request with a slip stays what it is.
	assert.Contains(t, one(t, strings.Replace(demo("demo-more/sizes"), "thickness_mm: [", "thicknes_mm: [", 1), size), `unknown field "thicknes_mm", nearest is thickness_mm`)
	assert.Contains(t, only(t, "weld: {labl: x}\n").Reason, `unknown field "labl", nearest is label`)
	assert.Contains(t, only(t, "plate-bending: {}\n").Reason, "nearest is plate_bending")
}

func TestValuesThatAreRefusedAreNotOffered(t *testing.T) {
	reason := only(t, "weld: {detail: GOVERN}\n").Reason
	assert.Equal(t, `unknown enum value "GOVERN", nearest is DETAIL_GOVERNING; known are DETAIL_GOVERNING, DETAIL_LIMIT_STATES, DETAIL_DERIVATION`, reason)
}
