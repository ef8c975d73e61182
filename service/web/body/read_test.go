package body

import (
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"buf.build/go/protoyaml"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// texts are the checks of the demo as JSON, in both spellings.
func texts(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../../testdata/demo/*.yaml")
	require.NoError(t, err)
	var out []string
	for _, path := range files {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		i := &footwardv1.CheckItem{}
		require.NoError(t, protoyaml.Unmarshal(text, i), path)
		for _, names := range []bool{true, false} {
			out = append(out, protojson.MarshalOptions{UseProtoNames: names, Multiline: names}.Format(i))
		}
	}
	require.NotEmpty(t, out)
	return out
}

// walk reads a text by its fields, whether something is wrong with it or not, and
// returns what is.
func walk(t testing.TB, text string, m proto.Message) []*footwardv1.FieldViolation {
	t.Helper()
	told := mostTold
	r := reader{told: &told}
	r.root(trim([]byte(text)), m.ProtoReflect())
	require.NoError(t, r.err)
	return r.faults
}

// same holds the reader by fields and protobuf's own to take the same texts, and to
// make the same of them.
func same(t testing.TB, text string) {
	t.Helper()
	want, got := &footwardv1.CheckItem{}, &footwardv1.CheckItem{}
	err := unmarshal.Unmarshal([]byte(text), want)
	if unreadable([]byte(text)) != "" {
		assert.Error(t, err, "%q", text)
		return
	}
	faults := walk(t, text, got)
	if err != nil {
		assert.NotEmpty(t, faults, "%v: %q", err, text)
		return
	}
	if len(faults) == 1 && faults[0].GetReason() == footwardv1.FieldReason_FIELD_REASON_COUNT {
		return // a list that the schema forbids is told here already
	}
	assert.Empty(t, faults, "%q", text)
	assert.True(t, proto.Equal(want, got), "%q", text)
}

// pieces are put into texts at random.
var pieces = []string{
	`"`, `{`, `}`, `[`, `]`, `,`, `:`, `null`, `true`, `1e999`, `-1`, `1.5`, `"12"`, `"NaN"`, `"x"`, `\`, `\ud800`, `\u0041`, " \n\t", "\xff", "é",
	`"label":"a",`, `"n_kn":1,`, `"nKn":null,`, `{},`, `[],`, `0`, `99`,
}

// spoil changes a text at some places.
func spoil(random *rand.Rand, text string) string {
	for range 1 + random.IntN(3) {
		at := random.IntN(len(text))
		piece := pieces[random.IntN(len(pieces))]
		switch random.IntN(3) {
		case 0:
			text = text[:at] + piece + text[at:]
		case 1:
			text = text[:at] + text[min(len(text), at+1+random.IntN(3)):]
		default: // in place of what stands behind a colon
			if colon := strings.IndexByte(text[at:], ':'); colon >= 0 {
				at += colon + 1
				end := at + strings.IndexAny(text[at:]+",", ",}")
				text = text[:at] + piece + text[min(len(text), end):]
			}
		}
	}
	return text
}

func TestTakesWhatProtobufTakesAndNothingElse(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	rounds := 120
	if testing.Short() {
		rounds = 20
	}
	for _, text := range texts(t) {
		same(t, text)
		for range rounds {
			same(t, spoil(random, text))
		}
	}
}

func FuzzTexts(f *testing.F) {
	for _, text := range texts(f) {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		same(t, text)
		for _, m := range []proto.Message{&footwardv1.CheckManyRequest{}, &footwardv1.SizeColumnBaseRequest{}} {
			require.NoError(t, Read([]byte(text), m))
		}
	})
}

func TestWhatIsWrongWithOneItemStaysWithIt(t *testing.T) {
	m := &footwardv1.CheckManyRequest{}
	require.NoError(t, Read([]byte(`{"items": [{"weld": {"labl": 1}}, {"weld": {"label": "b"}}, {"weld": {}, "x": 1}]}`), m))
	assert.Nil(t, guard.Unread(m))
	require.Len(t, m.GetItems(), 3)
	assert.Len(t, guard.Unread(m.GetItems()[0].GetWeld()), 1)
	assert.Equal(t, "b", m.GetItems()[1].GetWeld().GetLabel())
	assert.Empty(t, m.GetItems()[1].GetWeld().ProtoReflect().GetUnknown())
	assert.Len(t, guard.Unread(m.GetItems()[2]), 1)
}

// TestMuchThatIsWrongTakesLittleMemory: what is told of all items is bounded, and
// each of them is still refused.
func TestMuchThatIsWrongTakesLittleMemory(t *testing.T) {
	var fields []string
	for i := range 200 {
		fields = append(fields, fmt.Sprintf(`"thickness_%d": 1`, i))
	}
	item := `{"column_base": {` + strings.Join(fields, ",") + `}}`
	m := &footwardv1.CheckManyRequest{}
	require.NoError(t, Read([]byte(`{"items": [`+item+strings.Repeat(","+item, 2999)+`]}`), m))
	require.Len(t, m.GetItems(), 3000)
	for _, i := range m.GetItems() {
		require.NotEmpty(t, guard.Unread(i.GetColumnBase()))
		require.LessOrEqual(t, len(guard.Unread(i.GetColumnBase())), mostFaults)
	}
	assert.Less(t, proto.Size(m), mostTold+3000*300)
}

// TestALongListIsNotRead: of a list that is longer than it may be, nothing is made.
func TestALongListIsNotRead(t *testing.T) {
	for _, c := range []struct {
		m    proto.Message
		text string
		path string
	}{
		{&footwardv1.CheckManyRequest{}, `{"items": [{}` + strings.Repeat(",{}", 1<<18) + `]}`, "items"},
		{&footwardv1.StreamChecksRequest{}, `{"items": [{}` + strings.Repeat(",{}", 1000) + `]}`, "items"},
		{&footwardv1.CheckColumnBaseRequest{}, `{"load_cases": {"cases": [{}` + strings.Repeat(",{}", 1<<18) + `]}}`, "load_cases.cases"},
		{&footwardv1.SizeColumnBaseRequest{}, `{"offer": {"thickness_mm": [1` + strings.Repeat(",1", 1<<18) + `]}}`, "offer.thickness_mm"},
	} {
		require.NoError(t, Read([]byte(c.text), c.m))
		faults := guard.Unread(c.m)
		require.Len(t, faults, 1, c.path)
		assert.Equal(t, c.path, faults[0].GetField())
		assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_COUNT, faults[0].GetReason())
		assert.Less(t, proto.Size(c.m), 1000)
	}
}

func TestTellsWhereATextBreaksOff(t *testing.T) {
	for text, want := range map[string]string{
		"{\n  \"a\": 1,\n  b": "is not JSON: invalid character 'b' looking for beginning of object key string at line 3, column 3",
		"{\"ü\": [1,":         "is not JSON: it breaks off at column 10",
		"{\"ü\": \"\xfe\"}":   "is not text in UTF-8: byte 0xFE at column 8",
		"\ufeff{}":            "begins with a byte order mark; leave it out",
		"\xfe\xff\x00{":       "is not text in UTF-8, but in UTF-16 by its first bytes",
		" \n ":                "is blank; a request without fields is {}",
		"{} {}":               "is not JSON: invalid character '{' after top-level value at column 4",
		"{}":                  "",
	} {
		assert.Equal(t, want, unreadable([]byte(text)), "%q", text)
	}
	deep := strings.Repeat("[", 20000) + strings.Repeat("]", 20000)
	assert.Contains(t, unreadable([]byte(deep)), "max depth")
}

func TestAnswersAreOnOneLineWithoutNeedlessBlanks(t *testing.T) {
	m := &footwardv1.CheckOutcome{Index: 3, Outcome: &footwardv1.CheckOutcome_Refusal{Refusal: &footwardv1.Refusal{
		Violations: []*footwardv1.FieldViolation{{Field: "a", Description: "b, c: \n d"}},
	}}}
	text, err := Write(m)
	require.NoError(t, err)
	assert.Equal(t, `{"index":3,"refusal":{"violations":[{"field":"a","description":"b, c: \n d","reason":"FIELD_REASON_UNSPECIFIED"}]}}`, string(text))
}
