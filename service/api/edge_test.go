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
	applies string  // id and whether it applies, of every state
	reasons map[string]string
}

func look(s *api.Check, m proto.Message) seen {
	r, err := call(s, m)
	if err != nil {
		return seen{refused: true}
	}
	out := seen{verdict: r.GetVerdict(), reasons: map[string]string{}}
	var b strings.Builder
	for _, l := range r.GetLimitStates() {
		b.WriteString(l.GetId())
		switch l.GetVerdict() {
		case footwardv1.Verdict_VERDICT_NOT_APPLICABLE, footwardv1.Verdict_VERDICT_OUT_OF_SCOPE:
			b.WriteString(l.GetVerdict().String())
			out.reasons[l.GetId()] = l.GetReason()
		default:
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
// apart: neither may pass what the other fails, unless edges says why.
func TestEdgesOfScopeChangeNoVerdict(t *testing.T) {
	if testing.Short() {
		t.Skip("asks for some 50 000 answers")
	}
	s := service(t)
	done, found := map[string]int{}, map[string]string{}
	crossed, excused := map[string]bool{}, map[string]bool{}
	for _, k := range corpus(t) {
		m := requestOf(k.item)
		proof.Detail(k.item, footwardv1.Detail_DETAIL_LIMIT_STATES)
		family := proof.FamilyOf(proof.Basis(k.item))
		kind := strings.TrimSuffix(string(m.ProtoReflect().Descriptor().Name()), "Request")
		for _, p := range places(m.ProtoReflect(), "") {
			is := p.in.Get(p.d)
			if p.d.Kind() != protoreflect.DoubleKind || is.Float() == 0 {
				continue
			}
			key := kind + "." + p.path + "|" + string(family)
			if done[key]++; done[key] > 1 && !*everyRequest {
				continue
			}
			at := func(v float64) seen {
				p.in.Set(p.d, protoreflect.ValueOfFloat64(v))
				return look(s, m)
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
	"CheckColumnBase.base.sharing.modulus_n_mm3":    "on a bed soft enough the plate turns over",
	"CheckColumnBase.action_set.actions[].forces.n": "a plain pad hangs by nothing once it is lifted",
	"CheckFooting.permanent.n_kn":                   "a footing of no weight is lifted by any uplift",
	"CheckPlateBending.forces":                      "a plate that no rods hold lifts at an edge: there is no balance beyond",
}
