package guard

import (
	"fmt"
	"sync"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// bases is a set of design bases.
type bases uint8

const (
	eurocode bases = 1 << footwardv1.Basis_BASIS_EUROCODE
	lrfd     bases = 1 << footwardv1.Basis_BASIS_US_LRFD
	asd      bases = 1 << footwardv1.Basis_BASIS_US_ASD
	us             = lrfd | asd
)

func (b bases) String() string {
	switch b {
	case eurocode:
		return "the Eurocode"
	case lrfd:
		return "US LRFD"
	case asd:
		return "US ASD"
	}
	return "the US bases"
}

// bound are the factors and choices that belong to some design bases only. One of
// another basis would change nothing, and its sender would believe that it had. What
// a material or a site is may be said to every basis.
var bound = map[protoreflect.FullName]bases{
	"footward.v1.TimberBearing.load_duration":           eurocode,
	"footward.v1.TimberBearing.load_duration_factor":    asd,
	"footward.v1.TimberBearing.time_effect_factor":      lrfd,
	"footward.v1.PinnedTimber.load_duration":            eurocode,
	"footward.v1.PinnedTimber.k_mod":                    eurocode,
	"footward.v1.PinnedTimber.load_duration_factor":     asd,
	"footward.v1.PinnedTimber.time_effect_factor":       lrfd,
	"footward.v1.PinnedTimber.wet_factor":               us,
	"footward.v1.PinLayout.group_factor":                us,
	"footward.v1.HeadedAnchorage.pry_out_factor":        eurocode,
	"footward.v1.CheckFootingRequest.design_approaches": eurocode,
	"footward.v1.CheckFootingRequest.bearing_author":    us,
	"footward.v1.CheckFootingRequest.permanent_apart":   eurocode,
	"footward.v1.GroundBelow.design_approaches":         eurocode,
	"footward.v1.GroundBelow.bearing_author":            us,
	"footward.v1.GroundBelow.permanent_apart":           eurocode,
	"footward.v1.PadReinforcement.size_effect":          us,
	"footward.v1.PadOffer.size_effect":                  us,
}

// plan is where in a message bound fields may stand.
type plan struct {
	fields []boundField
	below  []belowField
}

func (p *plan) empty() bool { return len(p.fields)+len(p.below) == 0 }

type boundField struct {
	d  protoreflect.FieldDescriptor
	of bases
}

type belowField struct {
	d    protoreflect.FieldDescriptor
	plan *plan
}

// plans are those of the requests, made once.
var plans = sync.OnceValue(func() map[protoreflect.FullName]*plan {
	made := map[protoreflect.FullName]*plan{}
	for _, m := range requests() {
		makePlan(m.ProtoReflect().Descriptor(), made)
	}
	return made
})

func makePlan(d protoreflect.MessageDescriptor, made map[protoreflect.FullName]*plan) *plan {
	if p, ok := made[d.FullName()]; ok {
		return p
	}
	p := &plan{}
	made[d.FullName()] = p
	for i := range d.Fields().Len() {
		f := d.Fields().Get(i)
		if of, ok := bound[f.FullName()]; ok {
			p.fields = append(p.fields, boundField{f, of})
		}
		if f.Message() != nil && !f.IsMap() {
			if below := makePlan(f.Message(), made); !below.empty() {
				p.below = append(p.below, belowField{f, below})
			}
		}
	}
	return p
}

// Foreign returns the fields of a request that belong to another design basis than
// its own, or nil.
func Foreign(m proto.Message) []*footwardv1.FieldViolation {
	r, ok := m.(interface {
		GetBasis() *footwardv1.DesignBasis
	})
	if !ok {
		return nil
	}
	is := r.GetBasis().Basis()
	if is <= 0 || is > footwardv1.Basis_BASIS_US_ASD {
		return nil
	}
	var out []*footwardv1.FieldViolation
	if p := plans()[m.ProtoReflect().Descriptor().FullName()]; p != nil {
		p.look(m.ProtoReflect(), 1<<is, "", &out)
	}
	return out
}

func (p *plan) look(m protoreflect.Message, is bases, path string, out *[]*footwardv1.FieldViolation) {
	for _, f := range p.fields {
		if f.of&is == 0 && m.Has(f.d) {
			*out = append(*out, &footwardv1.FieldViolation{
				Field: path + string(f.d.Name()), Reason: footwardv1.FieldReason_FIELD_REASON_CONFLICT,
				Description: fmt.Sprintf("goes with %s only; leave it out", f.of),
			})
		}
	}
	for _, f := range p.below {
		if !m.Has(f.d) {
			continue
		}
		if !f.d.IsList() {
			f.plan.look(m.Get(f.d).Message(), is, path+string(f.d.Name())+".", out)
			continue
		}
		list := m.Get(f.d).List()
		for i := range list.Len() {
			f.plan.look(list.Get(i).Message(), is, fmt.Sprintf("%s%s[%d].", path, f.d.Name(), i), out)
		}
	}
}
