package api_test

import (
	"math"
	"net"
	"strings"
	"sync"
	"testing"

	"buf.build/gen/go/bufbuild/protovalidate/protocolbuffers/go/buf/validate"
	"buf.build/go/protovalidate"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	"footward.example/footward/client"
	"footward.example/footward/service/server"
)

// wrong is one way to make a field of a request wrong.
type wrong struct {
	path string // of the field that must be named
	how  string
	put  func(protoreflect.Message)
}

// within goes from a message to the one that holds a field.
type within func(protoreflect.Message) protoreflect.Message

// everyField lists what can be wrong with every field below a message, found in
// its descriptor alone.
func everyField(t *testing.T, d protoreflect.MessageDescriptor, prefix string, reach within) []wrong {
	t.Helper()
	var out []wrong
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		rules, err := protovalidate.ResolveFieldRules(f)
		require.NoError(t, err)
		path := prefix + string(f.Name())
		add := func(at, how string, v protoreflect.Value, list bool) {
			out = append(out, wrong{at, how, func(m protoreflect.Message) {
				switch in := reach(m); {
				case list:
					l := in.NewField(f).List()
					l.Append(v)
					in.Set(f, protoreflect.ValueOfList(l))
				case v.IsValid():
					in.Set(f, v)
				default:
					in.Clear(f)
				}
			}})
		}
		own, at, list := rules, path, f.IsList()
		if list {
			r := rules.GetRepeated()
			own, at = r.GetItems(), path+"[0]"
			if r.GetMinItems() > 0 {
				add(path, "empty", protoreflect.Value{}, false)
			}
			if most := r.GetMaxItems(); assert.Positive(t, most, "%s has no greatest number", path) {
				out = append(out, wrong{path, "too many", func(m protoreflect.Message) {
					in := reach(m)
					l := in.NewField(f).List()
					for range most + 1 {
						l.Append(l.NewElement())
					}
					in.Set(f, protoreflect.ValueOfList(l))
				}})
			}
			if own.GetIgnore() == validate.Ignore_IGNORE_ALWAYS {
				continue // answered in their places
			}
		}
		if f.Message() != nil {
			if own.GetRequired() && f.ContainingOneof() == nil && !list {
				add(path, "missing", protoreflect.Value{}, false)
			}
			out = append(out, everyField(t, f.Message(), at+".", func(m protoreflect.Message) protoreflect.Message {
				in := reach(m)
				if !list {
					return in.Mutable(f).Message()
				}
				l := in.Mutable(f).List()
				if l.Len() == 0 {
					return l.AppendMutable().Message()
				}
				return l.Get(0).Message()
			})...)
			continue
		}
		for how, v := range values(f, own) {
			add(at, how, v, list)
		}
	}
	return out
}

// values are what a field may not be, by its kind and rules.
func values(f protoreflect.FieldDescriptor, rules *validate.FieldRules) map[string]protoreflect.Value {
	out := map[string]protoreflect.Value{}
	switch f.Kind() {
	case protoreflect.DoubleKind:
		for how, v := range map[string]float64{
			"NaN": math.NaN(), "Inf": math.Inf(1), "-Inf": math.Inf(-1), "huge": 1e300, "hugely negative": -1e300,
		} {
			out[how] = protoreflect.ValueOfFloat64(v)
		}
		r := rules.GetDouble()
		if r.HasGt() && r.GetGt() >= 0 || r.HasGte() && r.GetGte() >= 0 {
			out["negative"] = protoreflect.ValueOfFloat64(-1)
		}
		if r.HasGt() && r.GetGt() == 0 && rules.GetIgnore() == validate.Ignore_IGNORE_UNSPECIFIED {
			out["zero"] = protoreflect.ValueOfFloat64(0)
		}
	case protoreflect.EnumKind:
		out["unknown"] = protoreflect.ValueOfEnum(9999)
		if len(rules.GetEnum().GetNotIn()) > 0 {
			out["unspecified"] = protoreflect.ValueOfEnum(0)
		}
	case protoreflect.StringKind:
		out["too long"] = protoreflect.ValueOfString(strings.Repeat("x", int(rules.GetString().GetMaxLen())+1))
		if rules.GetString().GetMinLen() > 0 {
			out["empty"] = protoreflect.ValueOfString("")
		}
	case protoreflect.Uint32Kind:
		out["huge"] = protoreflect.ValueOfUint32(math.MaxUint32)
	}
	return out
}

// TestEveryWrongFieldIsNamed goes through a socket and everything that stands
// before a handler. A request is one that was published, or an empty one, with one
// field more that is wrong.
func TestEveryWrongFieldIsNamed(t *testing.T) {
	s, err := server.New(server.Options{AtOnce: 8, Waiting: 64})
	require.NoError(t, err)
	l, err := net.Listen("tcp", "127.0.0.1:0")
	require.NoError(t, err)
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	c, err := client.Dial(l.Addr().String(), patient)
	require.NoError(t, err)
	defer func() {
		assert.NoError(t, c.Close())
		s.Stop()
		assert.NoError(t, <-ended)
	}()

	whole := map[protoreflect.FullName]proto.Message{}
	for _, i := range requests(t) {
		m := requestOf(i)
		whole[m.ProtoReflect().Descriptor().FullName()] = m
	}
	type question struct {
		method string
		output protoreflect.FullName
		m      proto.Message
		wrong
	}
	todo := make(chan question)
	var all sync.WaitGroup
	for range 8 {
		all.Go(func() {
			for q := range todo {
				answer, err := protoregistry.GlobalTypes.FindMessageByName(q.output)
				if !assert.NoError(t, err) {
					return
				}
				err = c.Conn().Invoke(t.Context(), q.method, q.m, answer.New().Interface())
				if assert.Equal(t, codes.InvalidArgument, status.Code(err), "%s: %s is %s: %v", q.method, q.path, q.how, err) {
					var named []string
					for _, v := range client.Violations(err) {
						named = append(named, v.GetField())
					}
					assert.Contains(t, named, q.path, "%s: %s", q.method, q.how)
				}
			}
		})
	}
	n := map[string]int{}
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(file protoreflect.FileDescriptor) bool {
		for i := range file.Services().Len() {
			if file.Services().Get(i).Name() == "CatalogService" {
				continue // takes nothing that could be wrong
			}
			methods := file.Services().Get(i).Methods()
			for k := range methods.Len() {
				d := methods.Get(k)
				if d.IsStreamingClient() {
					continue // its items are those of CheckMany
				}
				method := "/" + string(d.Parent().FullName()) + "/" + string(d.Name())
				for _, w := range everyField(t, d.Input(), "", func(m protoreflect.Message) protoreflect.Message { return m }) {
					m := whole[d.Input().FullName()]
					if m == nil {
						empty, err := protoregistry.GlobalTypes.FindMessageByName(d.Input().FullName())
						require.NoError(t, err)
						m = empty.New().Interface()
					}
					m = proto.Clone(m)
					w.put(m.ProtoReflect())
					todo <- question{method, d.Output().FullName(), m, w}
					n[method]++
				}
			}
		}
		return true
	})
	close(todo)
	all.Wait()
	total := 0
	for _, k := range n {
		total += k
	}
	assert.Greater(t, total, 2000)
	t.Logf("%d wrong fields of %d methods, all named", total, len(n))
}
