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
			Substructure: &footwardv1.Substructure{Ground: &footwardv1.GroundBelow{BearingAuthor: footwardv1.BearingAuthor_BEARING_AUTHOR_VESIC}},
		},
	}
	for basis, want := range map[footwardv1.Basis]map[string]string{
		footwardv1.Basis_BASIS_EUROCODE: {
			"base.support.timber.time_effect_factor":  "goes with US LRFD only; leave it out",
			"base.substructure.ground.bearing_author": "goes with the US bases only; leave it out",
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

// TestFieldOfAnotherFamilyIsRefused: each field that is bound to a family, at each of its
// places in each request, with each other family.
func TestFieldOfAnotherFamilyIsRefused(t *testing.T) {
	tried := map[protoreflect.FullName]bool{}
	for _, of := range requests() {
		d := of.ProtoReflect().Descriptor()
		if d.Fields().ByName("basis") == nil {
			continue // holds requests with bases of their own
		}
		eachBound(plans()[d.FullName()], nil, func(path []protoreflect.FieldDescriptor, of bases) {
			for _, b := range []footwardv1.Basis{footwardv1.Basis_BASIS_EUROCODE, footwardv1.Basis_BASIS_US_LRFD, footwardv1.Basis_BASIS_US_ASD} {
				m := fresh(d)
				m.Set(d.Fields().ByName("basis"), protoreflect.ValueOfMessage(footwardv1.On(b).ProtoReflect()))
				at, spelled := m, ""
				for _, f := range path[:len(path)-1] {
					if f.IsList() {
						at = at.Mutable(f).List().AppendMutable().Message()
						spelled += string(f.Name()) + "[0]."
						continue
					}
					at = at.Mutable(f).Message()
					spelled += string(f.Name()) + "."
				}
				last := path[len(path)-1]
				switch {
				case last.IsList():
					at.Mutable(last).List().Append(protoreflect.ValueOfEnum(1))
				case last.Message() != nil:
					at.Mutable(last)
				case last.Kind() == protoreflect.EnumKind:
					at.Set(last, protoreflect.ValueOfEnum(1))
				case last.Kind() == protoreflect.BoolKind:
					at.Set(last, protoreflect.ValueOfBool(true))
				default:
					at.Set(last, protoreflect.ValueOfFloat64(1))
				}
				got := Foreign(m.Interface())
				if of&(1<<b) != 0 {
					assert.Empty(t, got, "%s with %s", spelled+string(last.Name()), b)
				} else if assert.Len(t, got, 1, "%s with %s", spelled+string(last.Name()), b) {
					assert.Equal(t, spelled+string(last.Name()), got[0].GetField())
				}
			}
			tried[path[len(path)-1].FullName()] = true
		})
	}
	for name := range bound {
		assert.True(t, tried[name], "%s stands in no request", name)
	}
}

// fresh is an empty message.
func fresh(d protoreflect.MessageDescriptor) protoreflect.Message {
	kind, err := protoregistry.GlobalTypes.FindMessageByName(d.FullName())
	if err != nil {
		panic(err)
	}
	return kind.New()
}

// eachBound visits the bound fields of a plan by their paths.
func eachBound(p *plan, path []protoreflect.FieldDescriptor, visit func([]protoreflect.FieldDescriptor, bases)) {
	if p == nil {
		return
	}
	with := func(f protoreflect.FieldDescriptor) []protoreflect.FieldDescriptor {
		return append(append([]protoreflect.FieldDescriptor{}, path...), f)
	}
	for _, f := range p.fields {
		visit(with(f.d), f.of)
	}
	for _, f := range p.below {
		eachBound(f.plan, with(f.d), visit)
	}
}
