package guard

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/encoding/protowire"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const largest = 16 << 20

// demo are the checks of the demo that go into batches.
func demo(t testing.TB) (out []*footwardv1.CheckItem) {
	t.Helper()
	files, err := filepath.Glob("../../testdata/demo*/*.yaml")
	require.NoError(t, err)
	for _, name := range files {
		f, err := os.Open(name)
		require.NoError(t, err)
		items, err := reading.Read(f)
		require.NoError(t, err)
		require.NoError(t, f.Close())
		for _, i := range items {
			if i.Check != nil {
				out = append(out, i.Check)
			}
		}
	}
	require.Greater(t, len(out), 5)
	return out
}

// fullOf is the largest batch of one check after another.
func fullOf(items ...*footwardv1.CheckItem) *footwardv1.CheckManyRequest {
	m := &footwardv1.CheckManyRequest{}
	for n := 0; len(m.Items) < 10000; {
		i := items[len(m.Items)%len(items)]
		if n += proto.Size(i) + 4; n > largest {
			break
		}
		m.Items = append(m.Items, i)
	}
	return m
}

func meterOf(t testing.TB, m proto.Message, wire []byte) *meter {
	t.Helper()
	out := &meter{ctx: context.Background(), most: DecodedMessages * largest}
	out.wire(shapeOf(m.ProtoReflect().Descriptor()), wire, 0)
	return out
}

// hostile are bytes that become much: by number of empty messages, and of values in
// packed lists.
func hostile() map[string][]byte {
	item := func(field protowire.Number, of []byte) []byte {
		check := protowire.AppendBytes(protowire.AppendTag(nil, field, protowire.BytesType), of)
		return protowire.AppendBytes(protowire.AppendTag(nil, 1, protowire.BytesType), check)
	}
	many := (&footwardv1.CheckItem{}).ProtoReflect().Descriptor().Fields()
	settlement := many.ByName("settlement").Number()
	layers := (&footwardv1.CheckSettlementRequest{}).ProtoReflect().Descriptor().Fields().ByName("layers").Number()
	empty := protowire.AppendVarint(protowire.AppendTag(nil, layers, protowire.BytesType), 0)
	return map[string][]byte{
		"items":              bytes.Repeat([]byte{0x0a, 0}, 1<<15),
		"empty settlements":  bytes.Repeat(item(settlement, nil), 1<<14),
		"layers of one":      item(settlement, bytes.Repeat(empty, 1<<16)),
		"layers of each":     bytes.Repeat(item(settlement, bytes.Repeat(empty, 800)), 100),
		"fields of no name":  bytes.Repeat(protowire.AppendVarint(protowire.AppendTag(nil, 15, protowire.VarintType), 1), 1<<16),
		"values that are no": bytes.Repeat(protowire.AppendVarint(protowire.AppendTag(nil, 1, protowire.VarintType), 1), 1<<16),
	}
}

// TestNoMessageTakesMoreThanMeasured compares with what Go has given out for it.
func TestNoMessageTakesMoreThanMeasured(t *testing.T) {
	all := hostile()
	for i, item := range demo(t) {
		m := &footwardv1.CheckManyRequest{}
		for range 300 {
			m.Items = append(m.Items, item)
		}
		wire, err := proto.Marshal(m)
		require.NoError(t, err)
		all[fmt.Sprintf("demo %d", i)] = wire
	}
	for name, wire := range all {
		m := &footwardv1.CheckManyRequest{}
		spent := meterOf(t, m, wire).spent
		_ = proto.Unmarshal(wire, m) // what is cut off is decoded up to there
		kept := proto.Clone(m)
		m = nil
		before := live()
		runtime.KeepAlive(kept)
		kept = nil
		took := before - live()
		assert.GreaterOrEqual(t, spent, took-32<<10, name)
		t.Logf("%s: %d bytes become %d, measured %d", name, len(wire), took, spent)
	}
}

// live is the memory in use, but for what pools keep for one more round [bytes].
func live() int {
	runtime.GC()
	runtime.GC()
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return int(m.HeapAlloc)
}

// TestTheLargestBatchesOfTheDemoAreTaken: there is room for every honest message, in
// protobuf's wire format and in JSON.
func TestTheLargestBatchesOfTheDemoAreTaken(t *testing.T) {
	m := fullOf(demo(t)...)
	wire, err := proto.Marshal(m)
	require.NoError(t, err)
	w := meterOf(t, m, wire)
	assert.Less(t, w.spent, w.most/2)
	text, err := protojson.Marshal(m)
	require.NoError(t, err)
	j := &meter{ctx: t.Context(), most: w.most}
	assert.Equal(t, uint64(len(m.Items)), j.body(shapeOf(m.ProtoReflect().Descriptor()), text))
	assert.Less(t, j.spent, j.most/2)
	assert.Greater(t, j.spent, w.spent/2, "JSON is measured as what it becomes")
	t.Logf("%d items: %d bytes become %d, %d of JSON %d", len(m.Items), len(wire), w.spent, len(text), j.spent)
	for i, item := range demo(t) { // were their items as large as a message may be
		m := &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{item}}
		wire, err := proto.Marshal(m)
		require.NoError(t, err)
		w := meterOf(t, m, wire)
		assert.Less(t, w.spent*(largest/len(wire)), w.most, i)
	}
}

func TestWhatWouldBecomeTooMuchIsRefusedUndecoded(t *testing.T) {
	d := NewDoor(Doorway{MessageBytes: largest, Tally: nobody{}})
	const share = 40 // of the largest message, in 10 000 items
	wire := bytes.Repeat(hostile()["layers of each"], share)
	m := &footwardv1.CheckManyRequest{}
	_, err := d.measure(t.Context(), wire, m)
	assert.Equal(t, codes.OutOfRange, status.Code(err))
	assert.ErrorContains(t, err, "128 MiB")
	assert.ErrorContains(t, err, "divide")
	assert.Zero(t, d.decoded.load())
}

// TestBatchOfTooManyItemsIsRefusedInTheSameWords, whether it is decoded or not.
func TestBatchOfTooManyItemsIsRefusedInTheSameWords(t *testing.T) {
	v, err := NewValidator()
	require.NoError(t, err)
	read := func(text []byte, m proto.Message) error { return protojson.Unmarshal(text, m) }
	for _, m := range []proto.Message{
		&footwardv1.CheckManyRequest{Items: make([]*footwardv1.CheckItem, 10001)},
		&footwardv1.StreamChecksRequest{Items: make([]*footwardv1.CheckItem, few)},
	} {
		wire, err := proto.Marshal(m)
		require.NoError(t, err)
		text, err := protojson.Marshal(m)
		require.NoError(t, err)
		require.Greater(t, len(wire), few)
		want := status.Convert(InvalidArgument(v.Violations(m)))
		d := NewDoor(Doorway{MessageBytes: largest, Tally: nobody{}})
		for name, got := range map[string]error{
			"wire": second(d.measure(t.Context(), wire, m)), "JSON": second(d.Inner(read).measure(t.Context(), text, m)),
		} {
			assert.Equal(t, want.Message(), status.Convert(got).Message(), name)
			assert.True(t, proto.Equal(want.Proto(), status.Convert(got).Proto()), name)
		}
	}
}

func second(_ int, err error) error { return err }

// nobody counts nothing.
type nobody struct{}

func (nobody) Panicked()                        {}
func (nobody) TurnedAway(footwardv1.CallReason) {}

// TestDecodingInPiecesIsDecoding: the pieces of a message are one message.
func TestDecodingInPiecesIsDecoding(t *testing.T) {
	want := fullOf(demo(t)...)
	want.Items = want.Items[:500]
	wire, err := proto.Marshal(want)
	require.NoError(t, err)
	require.Greater(t, len(wire), 2*piece)
	got := &footwardv1.CheckManyRequest{Items: []*footwardv1.CheckItem{{}}} // from before
	d := NewDoor(Doorway{MessageBytes: largest, Tally: nobody{}})
	r := d.reader(t.Context(), "/a/B", true)
	require.NoError(t, r.decode(wire, got))
	assert.True(t, proto.Equal(want, got))
	assert.Positive(t, d.decoded.load())
	r.done()
	assert.Zero(t, d.decoded.load())
	assert.Equal(t, codes.Internal, status.Code(r.decode(wire[:len(wire)-3], got)))
}

// TestDecodingEndsWithItsCall: nobody waits for what is left.
func TestDecodingEndsWithItsCall(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	m := fullOf(demo(t)...)
	wire, err := proto.Marshal(m)
	require.NoError(t, err)
	d := NewDoor(Doorway{MessageBytes: largest, Tally: nobody{}})
	r := d.reader(ctx, "/a/B", true)
	assert.Equal(t, codes.Canceled, status.Code(r.decode(wire, m)), "while it is measured")
	assert.Equal(t, codes.Canceled, status.Code(r.inPieces(wire, m)), "while it is decoded")
	assert.Empty(t, m.GetItems())
	text, err := protojson.Marshal(fullOf(demo(t)...))
	require.NoError(t, err)
	j := &meter{ctx: ctx, most: 1 << 40}
	j.body(shapeOf(m.ProtoReflect().Descriptor()), text)
	assert.ErrorIs(t, j.late, context.Canceled)
	assert.Less(t, j.steps, 2*lookEvery)
}

// TestJSONIsMeasuredWhateverItHolds: names that nobody knows, escapes, blanks, values
// of another kind and text that breaks off hide nothing of what else is there.
func TestJSONIsMeasuredWhateverItHolds(t *testing.T) {
	const layers = 5000
	list := strings.Repeat("{},", layers) + "{}"
	s := shapeOf((&footwardv1.CheckSettlementRequest{}).ProtoReflect().Descriptor())
	least := layers * s.names["layers"].message.bytes
	for name, text := range map[string]string{
		"plain":         `{"layers":[` + list + `]}`,
		"unknown first": `{"what": {"a":[1,{"b":"]}\""}],"c":null}, "more":[[],{}], "layers":[` + list + `]}`,
		"escaped":       `{"\u006cayers" : [` + list + `]}`,
		"blanks":        "\n{ \"layers\"\t:\r\n[ " + list + " ] } ",
		"another kind":  `{"label": [1,2,{"x":1}], "layers":[` + list + `]}`,
		"broken off":    `{"layers":[` + list,
	} {
		m := &meter{ctx: t.Context(), most: 1 << 30}
		m.body(s, []byte(text))
		assert.GreaterOrEqual(t, m.spent, least, name)
		assert.Less(t, m.spent, 2*least, name)
	}
}

func FuzzMeasure(f *testing.F) {
	for _, wire := range hostile() {
		f.Add(wire[:min(len(wire), 1<<10)])
	}
	for _, text := range []string{`{"items":[{"bearing":{"label":"x"}},{}]}`, `{"items":[{`, `{"items":[[1],"a\"",{}]}`, `{"it\u0065ms":[1,2`} {
		f.Add([]byte(text))
	}
	s := shapeOf((&footwardv1.CheckManyRequest{}).ProtoReflect().Descriptor())
	f.Fuzz(func(t *testing.T, b []byte) {
		m := &meter{ctx: t.Context(), most: 1 << 20}
		m.wire(s, b, 0)
		got := &footwardv1.CheckManyRequest{}
		if proto.Unmarshal(b, got) == nil {
			require.GreaterOrEqual(t, m.spent, min(len(got.GetItems()), 100)*s.batch.message.bytes)
			require.Equal(t, uint64(len(got.GetItems())), count(b, s.batch.number))
		}
		j := &meter{ctx: t.Context(), most: 1 << 20}
		items := j.body(s, b)
		if protojson.Unmarshal(b, got) == nil {
			require.Equal(t, uint64(len(got.GetItems())), items)
		}
	})
}
