package api_test

import (
	"testing"

	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// BenchmarkHandlers measures the handlers with the wire format on both sides, and
// without a network.
func BenchmarkHandlers(b *testing.B) {
	s, all := service(b), requests(b)
	for _, detail := range []footwardv1.Detail{
		footwardv1.Detail_DETAIL_GOVERNING, footwardv1.Detail_DETAIL_LIMIT_STATES, footwardv1.Detail_DETAIL_DERIVATION,
	} {
		seen := map[string]bool{}
		for _, i := range all {
			m := requestOf(i)
			name := string(m.ProtoReflect().Descriptor().Name())
			if seen[name] || basisOf(m).Basis() != footwardv1.Basis_BASIS_EUROCODE {
				continue
			}
			seen[name] = true
			proof.Detail(i, detail)
			wire, err := proto.Marshal(m)
			require.NoError(b, err)
			fresh := m.ProtoReflect().New().Interface()
			b.Run(name+"/"+detail.String(), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					request := fresh.ProtoReflect().New().Interface()
					if err := proto.Unmarshal(wire, request); err != nil {
						b.Fatal(err)
					}
					r, err := call(s, request)
					if err != nil {
						b.Fatal(err)
					}
					if _, err := proto.Marshal(r); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
