package api_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestEveryFactorOfABasisIsHeard: the basis is one message in every check, so a factor
// may change nothing in most; in some it changes the answer.
func TestEveryFactorOfABasisIsHeard(t *testing.T) {
	s := service(t)
	whys := map[string]string{
		"gamma_cu": "no request of the corpus has undrained ground under set M2; internal/ground hears it",
		"xi":       "no column base has the combinations (6.10b); internal/load and CombineActions hear it",
	}
	items := corpus(t)
	for _, b := range []footwardv1.Basis{footwardv1.Basis_BASIS_EUROCODE, footwardv1.Basis_BASIS_US_LRFD, footwardv1.Basis_BASIS_US_ASD} {
		heard := 0
		for _, factor := range factorsOf(footwardv1.On(b).ProtoReflect()) {
			name := string(factor[len(factor)-1].Name())
			if whys[name] != "" {
				continue
			}
			moved := false
			for _, k := range items {
				m := requestOf(k.item)
				if moved || proof.Basis(k.item) != b {
					continue
				}
				proof.Detail(k.item, footwardv1.Detail_DETAIL_LIMIT_STATES)
				before, ok := whole(t, s, m)
				require.True(t, ok, "%s: %s", k.name, before)
				for _, v := range []float64{1.7, 0.8, 0.45} {
					restore := setFactor(m.ProtoReflect(), factor, v)
					after, answered := whole(t, s, m)
					moved = moved || answered && after != before
					restore()
				}
			}
			assert.True(t, moved, "%s of %s moves nothing in any check", name, b)
			heard++
		}
		assert.GreaterOrEqual(t, heard, 4, b)
	}
}

// factorsOf are the paths of the numbers in a basis, from its family down.
func factorsOf(basis protoreflect.Message) (out [][]protoreflect.FieldDescriptor) {
	var in func(protoreflect.MessageDescriptor, []protoreflect.FieldDescriptor)
	in = func(d protoreflect.MessageDescriptor, path []protoreflect.FieldDescriptor) {
		for i := range d.Fields().Len() {
			f := d.Fields().Get(i)
			at := append(append([]protoreflect.FieldDescriptor{}, path...), f)
			switch {
			case f.Message() != nil:
				in(f.Message(), at)
			case f.Kind() == protoreflect.DoubleKind:
				out = append(out, at)
			}
		}
	}
	family := basis.WhichOneof(basis.Descriptor().Oneofs().ByName("family"))
	in(family.Message(), []protoreflect.FieldDescriptor{family})
	return out
}

// basisIn is the basis of a request.
func basisIn(request protoreflect.Message) protoreflect.Message {
	return request.Mutable(request.Descriptor().Fields().ByName("basis")).Message()
}

// setFactor states a factor, and returns how it is put back.
func setFactor(request protoreflect.Message, path []protoreflect.FieldDescriptor, v float64) func() {
	m := basisIn(request)
	last := len(path) - 1
	for _, f := range path[:last] {
		m = m.Mutable(f).Message()
	}
	had, was := m.Has(path[last]), m.Get(path[last])
	m.Set(path[last], protoreflect.ValueOfFloat64(v))
	return func() {
		if m.Clear(path[last]); had {
			m.Set(path[last], was)
		}
	}
}
