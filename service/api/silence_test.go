package api_test

import (
	"flag"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

var everyRequest = flag.Bool("every-request", false, "look for silent inputs in every request, not in one for each field")

// place is a number, choice or switch of a request with its path.
type place struct {
	spot
	path string
}

// places returns what stands in a message, the places of a list under one path.
func places(m protoreflect.Message, path string) []place {
	var out []place
	fields := m.Descriptor().Fields()
	for i := range fields.Len() {
		d := fields.Get(i)
		if !m.Has(d) {
			continue
		}
		at := strings.TrimPrefix(path+"."+string(d.Name()), ".")
		switch {
		case d.Message() != nil && d.IsList():
			list := m.Get(d).List()
			for i := range list.Len() {
				out = append(out, places(list.Get(i).Message(), at+"[]")...)
			}
		case d.IsList():
		case d.Message() != nil:
			out = append(out, places(m.Get(d).Message(), at)...)
		case d.Kind() == protoreflect.DoubleKind, d.Kind() == protoreflect.EnumKind, d.Kind() == protoreflect.BoolKind:
			out = append(out, place{spot{m, d}, at})
		}
	}
	return out
}

// changes are other values of a place: a number a little and a lot, a switch turned,
// every other choice.
func (p *place) changes() []protoreflect.Value {
	is := p.in.Get(p.d)
	switch p.d.Kind() {
	case protoreflect.BoolKind:
		return []protoreflect.Value{protoreflect.ValueOfBool(!is.Bool())}
	case protoreflect.EnumKind:
		var out []protoreflect.Value
		for v := range p.d.Enum().Values().Len() {
			if n := p.d.Enum().Values().Get(v).Number(); n != is.Enum() && n != 0 {
				out = append(out, protoreflect.ValueOfEnum(n))
			}
		}
		return out
	}
	var out []protoreflect.Value
	for _, by := range []float64{1.02, 0.5, 2} {
		out = append(out, protoreflect.ValueOfFloat64(is.Float()*by))
	}
	return out
}

// whole is an answer as bytes, all but the echo of the label.
func whole(t *testing.T, s *api.Check, m proto.Message) (string, bool) {
	t.Helper()
	r, err := call(s, m)
	if err != nil {
		return err.Error(), false
	}
	text, err := proto.MarshalOptions{Deterministic: true}.Marshal(r)
	require.NoError(t, err)
	return string(text), true
}

// TestNoInputFallsAwayInSilence changes every number, switch and choice of the
// requests, one at a time: something in the answer must move, or the change is
// refused, or a pattern of silent gives the reason.
func TestNoInputFallsAwayInSilence(t *testing.T) {
	if testing.Short() {
		t.Skip("asks for some 20 000 answers")
	}
	used := map[int]bool{}
	t.Run("given", func(t *testing.T) { noneOfTheGiven(t, used) })
	t.Run("left out", func(t *testing.T) { noneOfTheAbsent(t, used) })
	for i, s := range silent {
		assert.True(t, used[i], "nothing is silent by %s any more: take it off the list", s.path)
	}
}

func noneOfTheGiven(t *testing.T, used map[int]bool) {
	s := service(t)
	tried, found := map[string]bool{}, map[string]string{}
	for _, k := range corpus(t) {
		m := requestOf(k.item)
		proof.Detail(k.item, footwardv1.Detail_DETAIL_DERIVATION)
		family := proof.FamilyOf(proof.Basis(k.item))
		before, ok := whole(t, s, m)
		require.True(t, ok, "%s: %s", k.name, before)
		kind := string(m.ProtoReflect().Descriptor().Name())
		for _, p := range places(m.ProtoReflect(), "") {
			if p.path == "detail" || p.d.Kind() == protoreflect.DoubleKind && p.in.Get(p.d).Float() == 0 {
				continue
			}
			path := strings.TrimSuffix(kind, "Request") + "." + p.path
			key := path + "|" + string(family)
			if !*everyRequest && tried[key] {
				continue
			}
			is := p.in.Get(p.d)
			moved := false
			for _, v := range p.changes() {
				p.in.Set(p.d, v)
				after, _ := whole(t, s, m)
				moved = moved || after != before
			}
			p.in.Set(p.d, is)
			if moved {
				tried[key] = true
				continue
			}
			if i := quiet(path); i >= 0 {
				used[i] = true
			} else {
				found[key] = k.name
			}
		}
	}
	// One request that lets a field fall away is enough, unless another shows it moves.
	for _, key := range slices.Sorted(maps.Keys(found)) {
		if !*everyRequest && tried[key] {
			continue
		}
		t.Errorf("%s changes nothing (%s)", key, found[key])
	}
}

// absent returns the numbers, switches and choices that a message leaves out.
func absent(m protoreflect.Message, path string) []place {
	var out []place
	fields := m.Descriptor().Fields()
	for i := range fields.Len() {
		d := fields.Get(i)
		at := strings.TrimPrefix(path+"."+string(d.Name()), ".")
		choice := d.ContainingOneof() != nil && !d.ContainingOneof().IsSynthetic()
		switch {
		case d.Message() != nil && d.IsList():
			list := m.Get(d).List()
			for i := range list.Len() {
				out = append(out, absent(list.Get(i).Message(), at+"[]")...)
			}
		case d.IsList():
		case d.Message() != nil:
			if m.Has(d) {
				out = append(out, absent(m.Get(d).Message(), at)...)
			}
		case m.Has(d) || choice:
		case d.Kind() == protoreflect.DoubleKind, d.Kind() == protoreflect.EnumKind, d.Kind() == protoreflect.BoolKind:
			out = append(out, place{spot{m, d}, at})
		}
	}
	return out
}

// tries are values that a field may take.
func (p *place) tries() []protoreflect.Value {
	switch p.d.Kind() {
	case protoreflect.DoubleKind:
		var out []protoreflect.Value
		for _, v := range []float64{0.05, 0.4, 0.9, 1.1, 1.4, 3, 12, 35, 150, 700, 5000} {
			out = append(out, protoreflect.ValueOfFloat64(v))
		}
		return out
	}
	return p.changes()
}

// noneOfTheAbsent gives what the requests leave out, one field at a time: it is
// refused, or something in the answer moves.
func noneOfTheAbsent(t *testing.T, used map[int]bool) {
	s := service(t)
	heard, found := map[string]bool{}, map[string]string{}
	for _, k := range corpus(t) {
		m := requestOf(k.item)
		proof.Detail(k.item, footwardv1.Detail_DETAIL_DERIVATION)
		family := proof.FamilyOf(proof.Basis(k.item))
		before, ok := whole(t, s, m)
		require.True(t, ok, "%s: %s", k.name, before)
		kind := strings.TrimSuffix(string(m.ProtoReflect().Descriptor().Name()), "Request")
		for _, p := range absent(m.ProtoReflect(), "") {
			key := kind + "." + p.path + "|" + string(family)
			if heard[key] {
				continue
			}
			taken := false
			for _, v := range p.tries() {
				p.in.Set(p.d, v)
				after, answered := whole(t, s, m)
				taken = taken || answered
				heard[key] = heard[key] || answered && after != before
			}
			p.in.Clear(p.d)
			if !taken || heard[key] {
				continue
			}
			if i := quiet(kind + "." + p.path); i >= 0 {
				used[i] = true
			} else {
				found[key] = k.name
			}
		}
	}
	for _, key := range slices.Sorted(maps.Keys(found)) {
		if !heard[key] {
			t.Errorf("%s changes nothing (%s)", key, found[key])
		}
	}
}

// silence is a pattern of paths whose input may change nothing, with the reason.
type silence struct{ path, why string }

// silent is asked in order; family is "" for both.
var silent = []silence{
	{`basis\.(eurocode|us_lrfd|us_asd)\.`, "a parameter of a material or part that is not in this check; the basis is one message for all"},
	{`steel\.properties\.beta_w`, "welds by the Eurocode alone have it; a property of the steel"},
	{`CheckBearing\.forces\.v_[xy]_kn`, "shear is not part of bearing, which a notice says"},
	{`support\.concrete\.grout\.strength_mpa`, "it enters by the threshold of 0.2 f_ck alone"},
	{`headed\.block\.grout\.(strength_mpa|thickness_mm)`, "ACI 318-19 17.7.1.2.1 asks whether there is grout"},
	{`support\.timber\.(across_support|clear_spacing_mm|depth_mm|end_distance_mm|grain_along_y)`,
		"bearing across the grain alone has it, or it is beyond what the rule counts; a square contact is the same both ways"},
	{`rods\.rod\.stretch_length_mm`, "stretch enters prying by the Eurocode and the sharing on a bed"},
	{`rods\.rod\.thread_making`, "EN 1993-1-8 3.6.1(3); AISC 360 and EN 1992-4 have no such factor"},
	{`rods\.rod\.(shank_in_shear_plane|countersunk|nut_mean_width_mm|corrosion_allowance_mm)`,
		"of the rods' own check: plate and anchorage do not rest on it"},
	{`rods\.holes\.`, "of the rods' own check, or of washers that are not there"},
	{`through\.(fill_settlement_mm|relaxation|stack_stiffness_kn_mm)`, "no preload is counted that could be lost"},
	{`footprint_weld_throat_mm`, "the lever arm of a T-stub by the Eurocode has it"},
	{`snow_site`, "the psi factors of the Eurocode; the site of a load may be said to every basis"},
	{`substructure\.blinding_mm`, "ACI 318-19 Table 20.5.1.3.1 asks 3 in. for concrete cast against ground, blinding or not"},
	{`reinforcement\.bend_mm`, "hooked bars are out of scope by ACI, and say so"},
	{`concrete_unit_weight_kn_m3`, "there is no block of concrete"},
	{`soil\.dry$`, "a stated depth of water counts beside it"},
	{`base_contact\.sealed`, "undrained ground alone is asked"},
	{`subgrade_modulus_n_mm3`, "a bottom plate alone is bent on the ground"},
	{`limits\.angular_distortion`, "there is no neighbour"},
	{`(preloaded_kpa|stress_spread|years)$`, "a sand method or a layer of clay has it, and none is given"},
	{`load_test_kn`, "it counts with load_tested only; without it the states say that strength is not proven"},
	{`shear_key_kn`, "no shear acts"},
	{`ring\.wall_thickness_mm`, "the capacity is that of the ring as made; the wall counts where it corrodes"},
	{`shoe\.round`, "a square shoe counts by the circle in it"},
	{`weld\.own_section`, "runs that stand apart have the thickness to themselves"},
	{`weld_along_edge`, "a complete-penetration weld has no edge; a fillet smaller than the edge is not limited by it"},
	{`full_size_to_ends`, "EN 1993-1-8 4.5.1(1); AISC has no such deduction"},
	{`CheckWeld\.group\.method`, "the Eurocode has the elastic method alone"},
	{`CheckFooting\.variable_actions_simultaneous`, "one of the two actions has no part that helps"},
	{`CheckPin\.timber\.(compression_across_mpa|density_kg_m3|modulus_mpa|specific_gravity)`, "a property of the timber that the other family has, or no rope effect"},
	{`CheckPin\.pin\.(fy_bending_mpa|washer_diameter_mm)`, "NDS has the one, the rope effect of EN 1995-1-1 the other"},
	{`CheckPin\.plates\.dowel_bearing_strength_mpa`, "NDS alone has it"},
	{`CheckSettlement\.(layers\[\]\.(poisson|unit_weight_kn_m3)|unit_weight_above_kn_m3|water_depth_mm|dry)|settlement\.rigid|CheckSettlement\.rigid`,
		"elasticity has the one, sand and clay methods the others"},
}

var silences = func() []*regexp.Regexp {
	out := make([]*regexp.Regexp, len(silent))
	for i, s := range silent {
		out[i] = regexp.MustCompile(s.path)
	}
	return out
}()

// quiet returns which pattern excuses a path, or -1.
func quiet(path string) int {
	return slices.IndexFunc(silences, func(r *regexp.Regexp) bool { return r.MatchString(path) })
}
