package guard

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestFieldsOfAnotherBasisAreRefused(t *testing.T) {
	factor := 0.8
	m := &footwardv1.CheckColumnBaseRequest{
		Basis: footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Base: &footwardv1.ColumnBase{
			Support: &footwardv1.Support{Medium: &footwardv1.Support_Timber{Timber: &footwardv1.TimberBearing{
				LoadDuration: footwardv1.LoadDuration_LOAD_DURATION_PERMANENT, TimeEffectFactor: &factor,
			}}},
			Substructure: &footwardv1.Substructure{Ground: &footwardv1.GroundBelow{Method: footwardv1.BearingAuthor_BEARING_AUTHOR_VESIC}},
		},
	}
	for basis, want := range map[footwardv1.Basis]map[string]string{
		footwardv1.Basis_BASIS_EUROCODE: {
			"base.support.timber.time_effect_factor": "goes with US LRFD only; leave it out",
			"base.substructure.ground.method":        "goes with the US bases only; leave it out",
		},
		footwardv1.Basis_BASIS_US_LRFD: {
			"base.support.timber.load_duration": "goes with the Eurocode only; leave it out",
		},
		footwardv1.Basis_BASIS_US_ASD: {
			"base.support.timber.load_duration":      "goes with the Eurocode only; leave it out",
			"base.support.timber.time_effect_factor": "goes with US LRFD only; leave it out",
		},
	} {
		m.Basis = footwardv1.On(basis)
		got := map[string]string{}
		for _, v := range Foreign(m) {
			assert.Equal(t, footwardv1.FieldReason_FIELD_REASON_CONFLICT, v.GetReason())
			got[v.GetField()] = v.GetDescription()
		}
		assert.Equal(t, want, got, basis)
	}
	m.Basis = &footwardv1.DesignBasis{}
	assert.Empty(t, Foreign(m), "the schema tells of a basis that is not stated")
	m.Basis = nil
	assert.Empty(t, Foreign(m))
}

func TestBoundFieldsExist(t *testing.T) {
	for name := range bound {
		d, err := protoregistry.GlobalFiles.FindDescriptorByName(name)
		require.NoError(t, err, name)
		_, is := d.(protoreflect.FieldDescriptor)
		assert.True(t, is, name)
	}
}

func BenchmarkForeign(b *testing.B) {
	m := &footwardv1.CheckPlateBendingRequest{
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Concrete{Concrete: &footwardv1.ConcreteBlock{}}},
	}
	b.ReportAllocs()
	for b.Loop() {
		if Foreign(m) != nil {
			b.Fatal("refused")
		}
	}
}
