package web_test

import (
	"math"
	"math/rand/v2"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// spoil makes something wrong somewhere in a message.
func spoil(random *rand.Rand, m protoreflect.Message) {
	fields := m.Descriptor().Fields()
	f := fields.Get(random.IntN(fields.Len()))
	deeper := m.Has(f) && random.IntN(4) > 0
	switch {
	case f.IsList() && f.Message() != nil:
		list := m.Mutable(f).List()
		switch {
		case list.Len() > 0 && deeper:
			spoil(random, list.Get(random.IntN(list.Len())).Message())
		case random.IntN(2) == 0:
			m.Clear(f)
		default:
			list.AppendMutable()
		}
	case f.IsList():
		list := m.Mutable(f).List()
		for range random.IntN(70) {
			list.Append(wrong(random, f))
		}
	case f.Message() != nil && deeper:
		spoil(random, m.Mutable(f).Message())
	case f.Message() != nil && random.IntN(2) == 0:
		m.Mutable(f)
	case random.IntN(4) == 0 || f.Message() != nil:
		m.Clear(f)
	default:
		m.Set(f, wrong(random, f))
	}
}

// wrong is a value that most fields may not have.
func wrong(random *rand.Rand, f protoreflect.FieldDescriptor) protoreflect.Value {
	switch f.Kind() {
	case protoreflect.DoubleKind:
		all := []float64{-1, 0, 0.5, 1e9, -1e9, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, math.SmallestNonzeroFloat64}
		return protoreflect.ValueOfFloat64(all[random.IntN(len(all))])
	case protoreflect.EnumKind:
		all := []protoreflect.EnumNumber{0, 1, 99, -1}
		return protoreflect.ValueOfEnum(all[random.IntN(len(all))])
	case protoreflect.StringKind:
		all := []string{"", "S236", strings.Repeat("ü", 301), "a \"b\" \\ \u2028 <c>"}
		return protoreflect.ValueOfString(all[random.IntN(len(all))])
	case protoreflect.BoolKind:
		return protoreflect.ValueOfBool(random.IntN(2) == 0)
	default:
		return protoreflect.ValueOfUint32([]uint32{0, 1, 1000, math.MaxUint32}[random.IntN(4)])
	}
}

// TestWrongRequestsAreToldAsByGRPC: the same fields, in the same words, whether a
// request stands alone or in a batch.
func TestWrongRequestsAreToldAsByGRPC(t *testing.T) {
	p := produce(t)
	random := rand.New(rand.NewPCG(1, 2))
	all := demo(t)
	many := &footwardv1.CheckManyRequest{}
	rounds := 60
	if testing.Short() {
		rounds = 10
	}
	refused := 0
	for range rounds {
		for _, i := range all {
			i = proto.CloneOf(i)
			for range 1 + random.IntN(4) {
				spoil(random, check(i).ProtoReflect())
			}
			if i.GetColumnBase() == nil { // which takes long where nothing is wrong
				many.Items = append(many.Items, i)
			}
			request := check(i)
			for _, m := range methods() {
				if m.Input().FullName() != request.ProtoReflect().Descriptor().FullName() || i.GetColumnBase() != nil && random.IntN(4) > 0 {
					continue
				}
				want := empty(t, m.Output())
				err := p.grpc.Conn().Invoke(t.Context(), pathOf(m), request, want)
				body, broken := protojson.Marshal(request)
				require.NoError(t, broken)
				r := p.post(t, pathOf(m), string(body))
				if err == nil {
					assert.Equal(t, http.StatusOK, r.StatusCode, r.body)
					continue
				}
				refused++
				assert.Equal(t, http.StatusBadRequest, r.StatusCode, "%s", body)
				assert.True(t, proto.Equal(status.Convert(err).Proto(), r.status(t).Proto()), "%v\n%s", err, r.body)
			}
		}
	}
	assert.Greater(t, refused, rounds)
	want, err := p.grpc.CheckMany(t.Context(), many)
	require.NoError(t, err)
	body, err := protojson.Marshal(many)
	require.NoError(t, err)
	r := p.post(t, manyPath, string(body))
	require.Equal(t, http.StatusOK, r.StatusCode, r.body)
	got := &footwardv1.CheckManyResponse{}
	require.NoError(t, protojson.Unmarshal([]byte(r.body), got))
	assert.True(t, proto.Equal(want, got))
}
