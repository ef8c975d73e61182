package load_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/load"
)

// apart reports whether two variable actions of a set never act together.
func apart(a, b *load.Action) bool {
	return a.Group != "" && a.Group == b.Group && (a.Part == "" || a.Part != b.Part)
}

// drawn is a set of variable actions with wholes and alternatives.
func drawn(t *rapid.T) []load.Action {
	var out []load.Action
	for i := range rapid.IntRange(1, 6).Draw(t, "actions") {
		a := action(string(rune('a'+i)), rapid.SampledFrom([]load.Kind{load.Snow, load.Wind}).Draw(t, "kind"))
		a.Site = 0
		if a.Kind == load.Snow {
			a.Site = load.Low
		}
		if a.Kind == load.Wind && rapid.Bool().Draw(t, "whole") {
			a.Part = rapid.SampledFrom([]string{"east", "west"}).Draw(t, "part")
			a.Group = "wind"
		}
		out = append(out, a)
	}
	winds := map[string]bool{}
	for i := range out {
		if out[i].Group != "" {
			winds[out[i].Part] = true
		}
	}
	if len(winds) < 2 {
		for i := range out {
			out[i].Group = "" // nothing to exclude
		}
	}
	return out
}

// TestPartsOfOneActionAllLeadOrAllAccompany: 1.5 of every part that is there or 1.5 psi_0
// of every one (EN 1990 6.10), one action leads, and every set of actions that do not
// exclude each other is led by each kind in it.
func TestPartsOfOneActionAllLeadOrAllAccompany(t *testing.T) {
	accompanies := map[load.Kind]float64{load.Snow: 1.5 * 0.5, load.Wind: 1.5 * 0.6}
	rapid.Check(t, func(t *rapid.T) {
		actions := drawn(t)
		r, err := load.Combine(eurocode(load.Strength, actions...))
		if err != nil {
			t.Fatal(err)
		}
		type found struct {
			set  int
			lead load.Kind
		}
		seen := map[found]bool{}
		for _, c := range r.Combinations {
			f := found{}
			for i, v := range c.Factors {
				if v == 0 {
					continue
				}
				f.set |= 1 << i
				switch {
				case v == 1.5:
					if f.lead != 0 && f.lead != actions[i].Kind {
						t.Fatalf("%s: two kinds lead", c.Name)
					}
					f.lead = actions[i].Kind
				case math.Abs(v-accompanies[actions[i].Kind]) < 1e-12:
				default:
					t.Fatalf("%s: factor %g", c.Name, v)
				}
			}
			for i, v := range c.Factors {
				if v != 0 && actions[i].Kind == f.lead && v != 1.5 {
					t.Fatalf("%s: a part of what leads accompanies", c.Name)
				}
			}
			seen[f] = true
		}
		for set := 1; set < 1<<len(actions); set++ {
			able := true
			kinds := map[load.Kind]bool{}
			for i := range actions {
				for j := range i {
					able = able && !(set>>i&1 == 1 && set>>j&1 == 1 && apart(&actions[i], &actions[j]))
				}
				if set>>i&1 == 1 {
					kinds[actions[i].Kind] = true
				}
			}
			for k := range kinds {
				if seen[found{set, k}] != able {
					t.Fatalf("set %b led by kind %d: %v, possible %v", set, k, !able, able)
				}
			}
		}
	})
}
