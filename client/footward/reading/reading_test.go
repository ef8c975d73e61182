package reading_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/client/footward/reading"
)

func read(t *testing.T, text string) []reading.Item {
	t.Helper()
	items, err := reading.Read(strings.NewReader(text))
	require.NoError(t, err)
	return items
}

// only returns the single fault of the single item.
func only(t *testing.T, text string) reading.Fault {
	t.Helper()
	items := read(t, text)
	require.Len(t, items, 1)
	require.Len(t, items[0].Faults, 1)
	assert.Nil(t, items[0].Check)
	return items[0].Faults[0]
}

func TestReadsYAMLAndJSONAlike(t *testing.T) {
	for name, text := range map[string]string{
		"yaml":             "# a comment\nweld:\n  label: shoe # mine\n  run: {length_mm: 120, normal_kn: -1.5e1}\n",
		"json":             `{"weld": {"label": "shoe", "run": {"length_mm": 120, "normal_kn": -15}}}`,
		"json camel case":  `{"weld": {"label": "shoe", "run": {"lengthMm": 120.0, "normalKn": -15}}}`,
		"json with tabs":   "{\n\t\"weld\": {\n\t\t\"label\": \"shoe\",\n\t\t\"run\": {\"length_mm\": 120, \"normal_kn\": -15}\n\t}\n}\n",
		"windows line end": "weld:\r\n  label: shoe\r\n  run: {length_mm: 120, normal_kn: -15}\r\n",
		"byte order mark":  "\ufeffweld: {label: shoe, run: {length_mm: 120, normal_kn: -15}}",
		"marks round it":   "---\nweld: {label: shoe, run: {length_mm: 120, normal_kn: -15}}\n...\n",
	} {
		t.Run(name, func(t *testing.T) {
			items := read(t, text)
			require.Len(t, items, 1)
			require.Empty(t, items[0].Faults)
			w := items[0].Check.GetWeld()
			assert.Equal(t, "shoe", w.GetLabel())
			assert.Equal(t, 120.0, w.GetRun().GetLengthMm())
			assert.Equal(t, -15.0, w.GetRun().GetNormalKn())
		})
	}
}

func TestReadsListsAndSeveralDocuments(t *testing.T) {
	items := read(t, "# first\n---\nweld: {label: a}\n--- # second\nitems:\n  - bearing: {label: b}\n"+
		"  - anchor_rods: {label: c}\n---\n# nothing\n--- {plate_bending: {label: d}}\n")
	require.Len(t, items, 4)
	assert.Equal(t, "a", items[0].Check.GetWeld().GetLabel())
	assert.Equal(t, "b", items[1].Check.GetBearing().GetLabel())
	assert.Equal(t, "c", items[2].Check.GetAnchorRods().GetLabel())
	assert.Equal(t, "d", items[3].Check.GetPlateBending().GetLabel())
	for i, want := range [][3]int{{1, 0, 3}, {2, 1, 6}, {2, 2, 7}, {3, 0, 10}} {
		assert.Equal(t, want, [3]int{items[i].Document, items[i].Number, items[i].Line})
	}
}

func TestRefusesWithThePlace(t *testing.T) {
	for _, c := range []struct {
		name, text   string
		line, column int
		reason       string
	}{
		{"unknown field", "weld:\n  labl: x\n", 2, 3, `unknown field "labl", nearest is label; known are label, basis, detail, exposure, weld, run, group, ...`},
		{"in a later document", "weld: {}\n---\nweld:\n  labl: x\n", 4, 3, `unknown field "labl"`},
		{"unit in a number", "bearing:\n  forces:\n    n_kn: -120 kN\n", 3, 11, `"-120 kN" is not a number; units stand in the name of the field`},
		{"comma in a number", "bearing:\n  forces:\n    n_kn: 1,5\n", 3, 11, `"1,5" is not a number`},
		{"number too large", "bearing: {forces: {n_kn: 1e999}}", 1, 26, `"1e999" is too large for a number`},
		{"unknown enum", "weld: {weld: {kind: WELD_KIND_GLUE}}", 1, 21, `unknown enum value "WELD_KIND_GLUE"; known are WELD_KIND_FILLET, WELD_KIND_PARTIAL`},
		{"one of many", "settlement: {halfspace: true}", 1, 14,
			`unknown field "halfspace", nearest is half_space; known are label, basis, detail, footing, rigid, `},
		{"two kinds", "weld: {}\nbearing: {}\n", 2, 10, "field weld is already set"},
		{"text for fields", "weld: heavy\n", 1, 7, "expected the fields of CheckWeldRequest, got scalar"},
		{"twice", "weld:\n  label: a\n  label: b\n", 3, 3, `"label" stands here for the second time`},
		{"anchor", "weld: &a {}\n", 1, 7, "anchors and aliases"},
		{"deep", "weld: " + strings.Repeat("[", 40) + strings.Repeat("]", 40), 1, 0, "more than 32 levels deep"},
		{"empty list", "items: []\n", 1, 8, "items is empty"},
		{"tab", "weld:\n\tlabel: x\n", 2, 1, "a tab stands before the text"},
	} {
		t.Run(c.name, func(t *testing.T) {
			items := read(t, c.text)
			last := items[len(items)-1]
			require.Len(t, last.Faults, 1)
			f := last.Faults[0]
			assert.Contains(t, f.Reason, c.reason)
			assert.Equal(t, c.line, f.Line)
			if c.column > 0 {
				assert.Equal(t, c.column, f.Column)
			}
		})
	}
}

func TestShowsTheLine(t *testing.T) {
	assert.Equal(t, "  labl: x", only(t, "weld:\n  labl: x\n").Source)
}

func TestBadItemOfAListFailsAlone(t *testing.T) {
	for name, text := range map[string]string{
		"yaml": "items:\n- weld: {label: a}\n- weld: {labl: b, size: 3}\n- weld: {label: c}\n",
		"json": `{"items": [{"weld": {"label": "a"}}, {"weld": {"labl": "b", "size": 3}}, {"weld": {"label": "c"}}]}`,
	} {
		t.Run(name, func(t *testing.T) {
			items := read(t, text)
			require.Len(t, items, 3)
			assert.Equal(t, "a", items[0].Check.GetWeld().GetLabel())
			assert.Len(t, items[1].Faults, 2)
			assert.Nil(t, items[1].Check)
			assert.Equal(t, "c", items[2].Check.GetWeld().GetLabel())
		})
	}
}

func TestFaultOutsideTheListRefusesTheDocument(t *testing.T) {
	for _, text := range []string{
		"itmes: 3\nitems:\n- weld: {label: a}\n",
		"items:\n- weld: {label: a}\nitmes: 3\n",
		"items:\n  - weld: {label: a}\nitmes: 3\n",
	} {
		assert.Contains(t, only(t, text).Reason, `unknown field "itmes"`, "%q", text)
	}
}

func TestRefusesTheFile(t *testing.T) {
	for name, text := range map[string]string{
		"holds no check":     "# nothing\n---\n",
		"is larger than":     strings.Repeat("# much\n", reading.MaxBytes/6),
		"holds more than":    "a: [" + strings.Repeat("0,", 1<<20) + "0]",
		"is not text in UTF": "weld: {label: \xff}\n",
	} {
		_, err := reading.Read(strings.NewReader(text))
		assert.ErrorContains(t, err, name)
	}
}

// TestAliasBombsAreRefused holds a text that would unfold into 10^9 values.
func TestAliasBombsAreRefused(t *testing.T) {
	var b strings.Builder
	b.WriteString("a0: &a0 [x,x,x,x,x,x,x,x,x,x]\n")
	for i := range 8 {
		n, last := string(rune('1'+i)), string(rune('0'+i))
		b.WriteString("a" + n + ": &a" + n + " [" + strings.Repeat("*a"+last+",", 9) + "*a" + last + "]\n")
	}
	assert.Contains(t, only(t, b.String()).Reason, "aliases")
}

func FuzzRead(f *testing.F) {
	files, err := filepath.Glob("../../../testdata/demo/*.yaml")
	require.NoError(f, err)
	for _, name := range files {
		text, err := os.ReadFile(name)
		require.NoError(f, err)
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		items, err := reading.Read(strings.NewReader(string(data)))
		if err != nil {
			return
		}
		if len(items) == 0 {
			t.Error("neither an item nor an error")
		}
		for _, item := range items {
			if (item.Check == nil) != (len(item.Faults) > 0) {
				t.Errorf("item %+v", item)
			}
			for _, f := range item.Faults {
				if f.Reason == "" {
					t.Errorf("a fault without a reason at line %d", f.Line)
				}
			}
		}
	})
}
