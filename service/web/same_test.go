package web_test

import (
	"net/http"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// methods are those of the contract that are no streams.
func methods() []protoreflect.MethodDescriptor {
	var out []protoreflect.MethodDescriptor
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(f protoreflect.FileDescriptor) bool {
		for i := range f.Services().Len() {
			all := f.Services().Get(i).Methods()
			for j := range all.Len() {
				if m := all.Get(j); !m.IsStreamingClient() && !m.IsStreamingServer() {
					out = append(out, m)
				}
			}
		}
		return true
	})
	return out
}

func pathOf(m protoreflect.MethodDescriptor) string {
	return "/" + string(m.Parent().FullName()) + "/" + string(m.Name())
}

func empty(t testing.TB, m protoreflect.MessageDescriptor) proto.Message {
	t.Helper()
	kind, err := protoregistry.GlobalTypes.FindMessageByName(m.FullName())
	require.NoError(t, err)
	return kind.New().Interface()
}

// same asks by gRPC and by HTTP, with the fields under either of their names,
// and holds the answers to be equal.
func same(t *testing.T, p *production, request proto.Message) {
	t.Helper()
	for _, m := range methods() {
		if m.Input().FullName() != request.ProtoReflect().Descriptor().FullName() {
			continue
		}
		want := empty(t, m.Output())
		require.NoError(t, p.grpc.Conn().Invoke(t.Context(), pathOf(m), request, want))
		for _, names := range []bool{true, false} {
			body, err := protojson.MarshalOptions{UseProtoNames: names, Multiline: !names}.Marshal(request)
			require.NoError(t, err)
			r := p.post(t, pathOf(m), string(body))
			require.Equal(t, http.StatusOK, r.StatusCode, r.body)
			got := empty(t, m.Output())
			require.NoError(t, protojson.Unmarshal([]byte(r.body), got))
			assert.True(t, proto.Equal(want, got), "%s: %s", m.FullName(), r.body)
		}
		return
	}
	t.Fatalf("no method takes %s", request.ProtoReflect().Descriptor().FullName())
}

// demo returns the checks of the demo.
func demo(t testing.TB) []*footwardv1.CheckItem {
	t.Helper()
	files, err := filepath.Glob("../../testdata/demo/*.yaml")
	require.NoError(t, err)
	var out []*footwardv1.CheckItem
	for _, path := range files {
		f, err := os.Open(path)
		require.NoError(t, err)
		items, err := reading.Read(f)
		require.NoError(t, err)
		require.NoError(t, f.Close())
		for _, i := range items {
			require.NotNil(t, i.Check, path)
			out = append(out, i.Check)
		}
	}
	require.GreaterOrEqual(t, len(out), 5)
	return out
}

// check is the request that stands in an item.
func check(i *footwardv1.CheckItem) proto.Message {
	m := i.ProtoReflect()
	return m.Get(m.WhichOneof(m.Descriptor().Oneofs().ByName("check"))).Message().Interface()
}

func TestTheDemoIsAnsweredAsByGRPC(t *testing.T) {
	p := produce(t)
	items := demo(t)
	for _, i := range items {
		for _, d := range []footwardv1.Detail{
			footwardv1.Detail_DETAIL_GOVERNING, footwardv1.Detail_DETAIL_LIMIT_STATES, footwardv1.Detail_DETAIL_DERIVATION,
		} {
			m := check(i).ProtoReflect()
			m.Set(m.Descriptor().Fields().ByName("detail"), protoreflect.ValueOfEnum(d.Number()))
			same(t, p, m.Interface())
		}
	}
	same(t, p, &footwardv1.CheckManyRequest{Items: append(items, &footwardv1.CheckItem{})})
	for name, m := range map[string]proto.Message{
		"actions": &footwardv1.CombineActionsRequest{}, "sizes": &footwardv1.SizeColumnBaseRequest{},
	} {
		f, err := os.Open("../../testdata/demo-more/" + name + ".yaml")
		require.NoError(t, err)
		faults, err := reading.One(f, m)
		require.NoError(t, err)
		require.Empty(t, faults)
		require.NoError(t, f.Close())
		same(t, p, m)
	}
}

// TestEveryMethodHasAPath: none of the contract is left out; what has no demo is
// asked for nothing, and answers or refuses as by gRPC.
func TestEveryMethodHasAPath(t *testing.T) {
	p := produce(t)
	all := methods()
	require.GreaterOrEqual(t, len(all), 23)
	for _, m := range all {
		want := empty(t, m.Output())
		err := p.grpc.Conn().Invoke(t.Context(), pathOf(m), empty(t, m.Input()), want)
		r := p.post(t, pathOf(m), "{}")
		if err != nil {
			assert.Equal(t, http.StatusBadRequest, r.StatusCode, r.body)
			assert.Equal(t, err.Error(), r.status(t).Err().Error(), m.FullName())
			continue
		}
		got := empty(t, m.Output())
		require.NoError(t, protojson.Unmarshal([]byte(r.body), got), r.body)
		assert.True(t, proto.Equal(want, got), m.FullName())
	}
}

// TestAnswersNameEveryField: what is zero or empty is there, what has no value
// is not, and letters are UTF-8.
func TestAnswersNameEveryField(t *testing.T) {
	p := produce(t)
	r := p.post(t, bearingPath, `{"label": "Stütze B2, \u00e9tai", `+bearing[1:])
	require.Equal(t, http.StatusOK, r.StatusCode, r.body)
	for _, text := range []string{`"label":"Stütze B2, étai"`, `"verdict":"VERDICT_PASS"`, `"demand":0,`, `"derivation":[]`, `"governing_utilization":0.75`} {
		assert.Contains(t, r.body, text)
	}
	assert.NotContains(t, r.body, "null")
}
