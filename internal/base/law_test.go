package base_test

import (
	"maps"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/ring"
)

// stronger are changes that only add strength: nothing that is handed on may grow by
// them. Not here: thickness and plan of plate, block and rings, which add height, weight
// and stiffness; diameter of rods, which attracts force; throat, which shortens the arm of
// the T-stub's prying; modulus of fill.
var stronger = map[string]func(*base.ColumnInput, float64){
	"rods": func(in *base.ColumnInput, by float64) { in.Base.Rod.Steel.Fy *= by; in.Base.Rod.Steel.Fu *= by },
	"rings": func(in *base.ColumnInput, by float64) {
		in.Below.Stack.Tiers = append([]ring.Tier(nil), in.Below.Stack.Tiers...)
		for i := range in.Below.Stack.Tiers {
			in.Below.Stack.Tiers[i].Ring.Capacity *= by
		}
	},
	"key":              func(in *base.ColumnInput, by float64) { in.Below.Stack.Key *= by },
	"load test":        func(in *base.ColumnInput, by float64) { in.Below.Stack.LoadTest *= by },
	"bottom plate":     func(in *base.ColumnInput, by float64) { in.Anchorage.Through.Plate.Steel.Fy *= by },
	"friction of soil": func(in *base.ColumnInput, by float64) { in.Below.Ground.Soil.Friction *= 1 + (by-1)/10 },
	"weld": func(in *base.ColumnInput, by float64) {
		in.Weld.Filler = material.WeldMetal{Strength: in.Weld.Filler.Strength * by}
	},
}

// withTheArm is by how much a stronger bed may change what rods pull and press: the lever
// arm of EN 1993-1-8 6.2.8.3 goes with the spread c, which it shortens.
const withTheArm = 0.02

// nearNothing is a change of utilization that no verdict hangs on: a bottom plate that
// four rods pull at, two of them hardly, is bent by less than one that two pull at.
const nearNothing = 2e-3

// TestStrongerIsNeverWorse of whole bases, per limit state: none that held turns, and none
// is used more. How far beyond its strength a state is that never held, goes with the arm
// too, where the circle that presses on a stack is small many times as much.
func TestStrongerIsNeverWorse(t *testing.T) {
	names := slices.Sorted(maps.Keys(stronger))
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, err := base.CheckColumn(in)
		if err != nil {
			return
		}
		more := *in
		stronger[rapid.SampledFrom(names).Draw(t, "of what")](&more, rapid.Float64Range(1.01, 1.5).Draw(t, "by"))
		o, err := base.CheckColumn(&more)
		if err != nil {
			return
		}
		a, b := states(t, r), states(t, o)
		for id, s := range a {
			now := b[id]
			more := s.Rated && now.Rated && s.Utilization <= 1 && now.Utilization > s.Utilization*(1+withTheArm)+nearNothing
			if s.Verdict == limit.Pass && now.Verdict == limit.Fail || more {
				t.Fatalf("%s: %v %g, then %v %g", id, s.Verdict, s.Utilization, now.Verdict, now.Utilization)
			}
		}
	})
}

// TestNothingAddedChangesNothing: a service case, a pair or a combination more of what is
// there already, and a permanent action of nothing.
func TestNothingAddedChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, err := base.CheckColumn(in)
		if err != nil {
			return
		}
		more := *in
		more.Cases = append(append([]base.Case(nil), in.Cases...), in.Cases...)
		more.Below.Service = append(append([]base.Case(nil), in.Below.Service...), in.Below.Service...)
		more.Below.Pairs = append(append([]base.Pair(nil), in.Below.Pairs...), in.Below.Pairs...)
		o, err := base.CheckColumn(&more)
		if err != nil {
			t.Fatal(err)
		}
		a, b := states(t, r), states(t, o)
		for id, s := range a {
			if now := b[id]; s.Verdict != now.Verdict || !(now.Utilization <= s.Utilization*(1+1e-9)+1e-12 && now.Utilization >= s.Utilization*(1-1e-9)-1e-12) {
				t.Fatalf("%s: %v %g, then %v %g", id, s.Verdict, s.Utilization, now.Verdict, now.Utilization)
			}
		}
	})
}

// TestAnotherCombinationNeverHelps, whatever it is. Not here: the bottom plate on the
// ground, whose greatest compression and moments are those of all combinations together.
func TestAnotherCombinationNeverHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := random(t)
		r, err := base.CheckColumn(in)
		if err != nil {
			return
		}
		number := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
		more := *in
		a := geom.Actions{N: number("N 2", -300e3, 40e3), Vy: number("V_y 2", -20e3, 20e3), Mx: number("M_x 2", -30e6, 30e6)}
		more.Cases = append(append([]base.Case(nil), in.Cases...), base.Case{Name: "other", Actions: a})
		o, err := base.CheckColumn(&more)
		if err != nil {
			t.Fatal(err)
		}
		before, now := states(t, r), states(t, o)
		for id, s := range before {
			if n := now[id]; id == "bottom_plate_on_ground" {
				continue
			} else if s.Verdict == limit.Fail && n.Verdict != limit.Fail || s.Rated && n.Rated && n.Verdict == s.Verdict && n.Utilization < s.Utilization*(1-1e-9) {
				t.Fatalf("%s: %v %g, then %v %g", id, s.Verdict, s.Utilization, n.Verdict, n.Utilization)
			}
		}
	})
}
