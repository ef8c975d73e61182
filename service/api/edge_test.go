package api_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// seen is an answer as far as edges go: the verdict, and which states apply.
type seen struct {
	refused bool
	verdict footwardv1.Verdict
	used    float64 // greatest utilization of what applies
	applies string  // id and whether it applies and why not, of every state
	reasons map[string]string
	told    map[string]bool // which of the kernel's reasons, by state
}

func look(s *api.Check, m proto.Message, kernel *reasons) seen {
	r, err := call(s, m)
	if err != nil {
		return seen{refused: true, applies: err.Error()}
	}
	out := seen{verdict: r.GetVerdict(), reasons: map[string]string{}, told: map[string]bool{}}
	var b strings.Builder
	for _, text := range kernel.in(r.GetReason()) {
		out.told[": "+text], kernel.told[text] = true, true
		b.WriteString(text)
	}
	for _, l := range r.GetLimitStates() {
		b.WriteString(l.GetId())
		switch l.GetVerdict() {
		case footwardv1.Verdict_VERDICT_NOT_APPLICABLE, footwardv1.Verdict_VERDICT_OUT_OF_SCOPE:
			b.WriteString(l.GetVerdict().String())
			out.reasons[l.GetId()] = l.GetReason()
			for _, text := range kernel.in(l.GetReason()) {
				out.told[l.GetId()+": "+text], kernel.told[text] = true, true
				b.WriteString(text)
			}
		default:
			for _, text := range kernel.in(l.GetReason()) {
				kernel.judged[text] = true
			}
			out.used = max(out.used, l.GetUtilization())
		}
		b.WriteByte(' ')
	}
	out.applies = b.String()
	return out
}

// flips tells whether one side of an edge passes, by more than what is just kept, what
// the other fails.
func flips(a, b seen) bool {
	if a.verdict == fail {
		a, b = b, a
	}
	return a.verdict == pass && b.verdict == fail && a.used < 1-1e-3
}

// TestEdgesOfScopeChangeNoVerdict moves every number of the requests until a limit
// state begins or ends to apply, and looks at both sides of that edge, a millionth
// apart: neither may pass what the other fails, unless edges says why. Every reason of
// the kernel is seen on one side and not on the other, unless edgeless says why not.
func TestEdgesOfScopeChangeNoVerdict(t *testing.T) {
	if testing.Short() {
		t.Skip("asks for some 50 000 answers")
	}
	s, kernel := service(t), reasonsOf(t)
	done, turned, found := map[string]int{}, map[string]int{}, map[string]string{}
	crossed, excused := map[string]bool{}, map[string]bool{}
	all := corpus(t)
	for _, k := range all {
		m := requestOf(k.item)
		proof.Detail(k.item, footwardv1.Detail_DETAIL_LIMIT_STATES)
		family := proof.FamilyOf(proof.Basis(k.item))
		kind := strings.TrimSuffix(string(m.ProtoReflect().Descriptor().Name()), "Request")
		as := look(s, m, kernel)
		for _, p := range places(m.ProtoReflect(), "") {
			is := p.in.Get(p.d)
			key := kind + "." + p.path + "|" + string(family)
			if turned[key]++; turned[key] <= mostTurns || *everyRequest {
				// A switch, a choice and what may be left out have two sides, but no edge.
				for _, other := range p.turns() {
					other()
					if now := look(s, m, kernel); !now.refused && !as.refused {
						kernel.cross(as.told, now.told)
					}
				}
				p.in.Set(p.d, is)
				for _, d := range p.switches() {
					p.in.Set(d, protoreflect.ValueOfBool(true))
					if now := look(s, m, kernel); !now.refused && !as.refused {
						kernel.cross(as.told, now.told)
					}
					p.in.Clear(d)
				}
			}
			if p.d.Kind() != protoreflect.DoubleKind || is.Float() == 0 {
				continue
			}
			if done[key]++; done[key] > 1 && !*everyRequest {
				continue
			}
			at := func(v float64) seen {
				p.in.Set(p.d, protoreflect.ValueOfFloat64(v))
				return look(s, m, kernel)
			}
			steps := []float64{-1, -1e-7, 1e-7, 0.4, 0.8, 1, 1.25, 2, 4}
			before := at(steps[0] * is.Float())
			for i := 1; i < len(steps); i++ {
				low, high := steps[i-1]*is.Float(), steps[i]*is.Float()
				after := at(high)
				a, b := before, after
				before = after
				if a.refused || b.refused || a.applies == b.applies {
					continue
				}
				for math.Abs(high-low) > 1e-6*math.Abs(is.Float()) {
					middle := (low + high) / 2
					c := at(middle)
					if c.refused {
						break
					}
					if c.applies == a.applies {
						low, a = middle, c
					} else {
						high, b = middle, c
					}
				}
				for id, why := range a.reasons {
					if b.reasons[id] != why {
						crossed[id] = true
					}
				}
				kernel.cross(a.told, b.told)
				if !flips(a, b) {
					continue
				}
				for id := range edges {
					if strings.HasPrefix(key, id) {
						excused[id] = true
					}
				}
				if !slices.ContainsFunc(slices.Collect(maps.Keys(edges)), func(id string) bool { return strings.HasPrefix(key, id) }) {
					found[key] = k.name + ": " + changed(a, b)
				}
			}
			p.in.Set(p.d, is)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(found)) {
		t.Errorf("%s turns the verdict at an edge (%s)", key, found[key])
	}
	for id := range edges {
		assert.True(t, excused[id] || !*everyRequest, "%s turns no verdict any more: take it off the list", id)
	}
	t.Logf("%d limit states were seen on both sides of an edge", len(crossed))
	assert.Greater(t, len(crossed), 40)
	for i := range edgeCases {
		c := &edgeCases[i]
		a, b := c.sides(t, s, all, kernel)
		kernel.cross(a.told, b.told)
		if flips(a, b) && c.turn == "" && c.why == "" {
			t.Errorf("%s turns the verdict at an edge of %s (%s)", c.move, c.from, changed(a, b))
		}
	}
	kernel.assert(t)
}

// mostTurns is in how many requests a switch of one kind is turned.
const mostTurns = 3

// turns are what a place can be but a number: left out, and other choices.
func (p *place) turns() []func() {
	out := []func(){func() { p.in.Clear(p.d) }}
	if p.d.Kind() != protoreflect.DoubleKind {
		for _, v := range p.changes() {
			out = append(out, func() { p.in.Set(p.d, v) })
		}
	}
	return out
}

// switches are those beside a place that are off.
func (p *place) switches() (out []protoreflect.FieldDescriptor) {
	fields := p.in.Descriptor().Fields()
	for i := range fields.Len() {
		if d := fields.Get(i); d.Kind() == protoreflect.BoolKind && !d.IsList() && !p.in.Has(d) {
			out = append(out, d)
		}
	}
	return out
}

// changed names the states that apply on one side only.
func changed(a, b seen) string {
	var out []string
	for id, why := range a.reasons {
		if b.reasons[id] == "" {
			out = append(out, id+" ("+why+")")
		}
	}
	for id, why := range b.reasons {
		if a.reasons[id] == "" {
			out = append(out, id+" ("+why+")")
		}
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

// edges are the numbers whose edges may turn a verdict, by the start of their path,
// each with the reason.
var edges = map[string]string{
	"CheckColumnBase.base.sharing.subgrade_modulus_n_mm3": "on a bed soft enough the plate turns over",
	"CheckColumnBase.action_set.actions[].forces.n":       "a plain pad hangs by nothing once it is lifted",
	"CheckFooting.permanent.n_kn":                         "a footing of no weight is lifted by any uplift",
	"CheckPlateBending.forces":                            "a plate that no rods hold lifts at an edge: there is no balance beyond",
}
