package load_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
)

func names(t *testing.T, in *load.Input) []string {
	t.Helper()
	r, err := load.Combine(in)
	require.NoError(t, err)
	var out []string
	for _, c := range r.Combinations {
		out = append(out, c.Name)
	}
	return out
}

func eurocode(s load.Situation, actions ...load.Action) *load.Input {
	return &load.Input{Basis: basis.Eurocode, Factors: load.Recommended(), Stages: []string{"in use"},
		Situations: []load.Situation{s}, Actions: actions}
}

func action(name string, k load.Kind) load.Action {
	return load.Action{Name: name, Kind: k, Forces: geom.Actions{N: -1}}
}

// TestEurocodeCombinations writes the whole set out by hand for one permanent
// action, snow below 1000 m (0.5, 0.2, 0) and wind (0.6, 0.2, 0): EN 1990 Table
// A1.1 and A1.2, from memory, confidence high.
func TestEurocodeCombinations(t *testing.T) {
	g, s, w := action("G", load.Permanent), action("S", load.Snow), action("W", load.Wind)
	s.Site = load.Low
	a := action("A", load.Accidental)
	for _, c := range []struct {
		situation load.Situation
		want      []string
	}{
		{load.Strength, []string{
			"1.35 G + 1.5 S + 0.9 W", "1.35 G + 0.75 S + 1.5 W", "1.35 G + 1.5 S", "1.35 G + 1.5 W", "1.35 G",
			"1 G + 1.5 S + 0.9 W", "1 G + 0.75 S + 1.5 W", "1 G + 1.5 S", "1 G + 1.5 W", "1 G",
		}},
		{load.Ground, []string{
			"1 G + 1.3 S + 0.78 W", "1 G + 0.65 S + 1.3 W", "1 G + 1.3 S", "1 G + 1.3 W", "1 G",
		}},
		{load.Equilibrium, []string{
			"1.1 G + 1.5 S + 0.9 W", "1.1 G + 0.75 S + 1.5 W", "1.1 G + 1.5 S", "1.1 G + 1.5 W", "1.1 G",
			"0.9 G + 1.5 S + 0.9 W", "0.9 G + 0.75 S + 1.5 W", "0.9 G + 1.5 S", "0.9 G + 1.5 W", "0.9 G",
		}},
		{load.StrengthAB, []string{
			"1.35 G + 0.75 S + 0.9 W", "1.35 G + 0.75 S", "1.35 G + 0.9 W", "1.35 G",
			"1 G + 0.75 S + 0.9 W", "1 G + 0.75 S", "1 G + 0.9 W", "1 G",
			"1.1475 G + 1.5 S + 0.9 W", "1.1475 G + 0.75 S + 1.5 W", "1.1475 G + 1.5 S", "1.1475 G + 1.5 W", "1.1475 G",
			"1 G + 1.5 S + 0.9 W", "1 G + 0.75 S + 1.5 W", "1 G + 1.5 S", "1 G + 1.5 W",
		}},
		{load.Characteristic, []string{"1 G + 1 S + 0.6 W", "1 G + 0.5 S + 1 W", "1 G + 1 S", "1 G + 1 W", "1 G"}},
		{load.Frequent, []string{"1 G + 0.2 S", "1 G + 0.2 W", "1 G"}},
		{load.QuasiPermanent, []string{"1 G"}},
		{load.AccidentalCase, []string{"1 G + 1 A"}},
	} {
		var got []string
		for _, n := range names(t, eurocode(c.situation, g, s, w, a)) {
			assert.Contains(t, n, "EN 1990 (6.1")
			got = append(got, n[strings.Index(n, ": ")+2:])
		}
		assert.Equal(t, c.want, got)
	}
}

// TestASCECombinations holds ASCE 7-22 2.3.1 and 2.4.1 (from memory, confidence
// high): every combination with all its terms.
func TestASCECombinations(t *testing.T) {
	d, l, lr := action("D", load.Permanent), action("L", load.Imposed), action("Lr", load.ImposedRoof)
	s, r, w := action("S", load.Snow), action("R", load.Rain), action("W", load.Wind)
	for b, want := range map[basis.Basis][]string{
		basis.USLRFD: {
			"2.3.1 (1): 1.4 D", "(2): 1.2 D + 1.6 L + 0.5 Lr", "(2): 1.2 D + 1.6 L + 0.3 S", "(2): 1.2 D + 1.6 L + 0.5 R",
			"(3a): 1.2 D + 1 L + 1.6 Lr", "(3a): 1.2 D + 1 L + 1 S", "(3a): 1.2 D + 1 L + 1.6 R",
			"(3b): 1.2 D + 1.6 Lr + 0.5 W", "(3b): 1.2 D + 1 S + 0.5 W", "(3b): 1.2 D + 1.6 R + 0.5 W",
			"(4): 1.2 D + 1 L + 0.5 Lr + 1 W", "(4): 1.2 D + 1 L + 0.3 S + 1 W", "(4): 1.2 D + 1 L + 0.5 R + 1 W",
			"(5): 0.9 D + 1 W",
		},
		basis.USASD: {
			"2.4.1 (1): 1 D", "(2): 1 D + 1 L", "(3): 1 D + 1 Lr", "(3): 1 D + 0.7 S", "(3): 1 D + 1 R",
			"(4): 1 D + 0.75 L + 0.75 Lr", "(4): 1 D + 0.75 L + 0.525 S", "(4): 1 D + 0.75 L + 0.75 R", "(5): 1 D + 0.6 W",
			"(6): 1 D + 0.75 L + 0.75 Lr + 0.45 W", "(6): 1 D + 0.75 L + 0.525 S + 0.45 W", "(6): 1 D + 0.75 L + 0.75 R + 0.45 W",
			"(7): 0.6 D + 0.6 W",
		},
	} {
		got := strings.Join(names(t, &load.Input{Basis: b, Stages: []string{"in use"}, Actions: []load.Action{d, l, lr, s, r, w}}), "\n") + "\n"
		for _, n := range want {
			assert.Contains(t, got, n+"\n")
		}
	}
}

func TestStagesAlternativesAndEnvelope(t *testing.T) {
	frame, ballast := action("frame", load.Permanent), action("ballast", load.Permanent)
	frame.Forces.N, ballast.Forces.N, ballast.First = -20e3, -39e3, 2
	east, west := action("east", load.Wind), action("west", load.Wind)
	east.Forces, west.Forces = geom.Actions{N: 24e3, Vx: 6e3, My: 3e6}, geom.Actions{N: 10e3, Vx: -8e3, My: -4e6}
	east.Group, west.Group = "wind", "wind"
	crane := action("crane", load.Imposed)
	crane.Category, crane.First, crane.Last, crane.Forces.N = 5, 1, 1, -5e3
	in := eurocode(load.Strength, frame, ballast, east, west, crane)
	in.Stages = []string{"frame up", "ballast on"}
	r, err := load.Combine(in)
	require.NoError(t, err)
	for _, c := range r.Combinations {
		assert.False(t, c.Factors[2] != 0 && c.Factors[3] != 0, "%s: two winds at once", c.Name)
		assert.Equal(t, c.Stage == 1, c.Factors[1] == 0, "%s: ballast", c.Name)
		assert.False(t, c.Stage == 2 && c.Factors[4] != 0, "%s: crane is gone", c.Name)
	}
	e := r.Envelopes[0]
	lift := r.Combinations[e.Extremes[0].Greatest]
	assert.Equal(t, 1, lift.Stage, "wind lifts most before the ballast is on")
	assert.InDelta(t, -20e3+1.5*24e3, lift.Sum.N, 1e-6)
	assert.InDelta(t, -1.35*(20e3+39e3), r.Combinations[e.Extremes[0].Least].Sum.N, 1e-6)
	assert.InDelta(t, 9e3, r.Combinations[e.Extremes[1].Greatest].Sum.Vx, 1e-6)
	assert.InDelta(t, -12e3, r.Combinations[e.Extremes[1].Least].Sum.Vx, 1e-6)
	assert.InDelta(t, 4.5e6, r.Combinations[e.Extremes[4].Greatest].Sum.My, 1e-3)
}

// TestPsiFactors holds EN 1990 Table A1.1 (from memory, confidence high).
func TestPsiFactors(t *testing.T) {
	for _, c := range []struct {
		kind       load.Kind
		category   load.Category
		site       load.Site
		p0, p1, p2 float64
	}{
		{load.Imposed, 1, 0, 0.7, 0.5, 0.3}, {load.Imposed, 2, 0, 0.7, 0.5, 0.3}, {load.Imposed, 3, 0, 0.7, 0.7, 0.6},
		{load.Imposed, 4, 0, 0.7, 0.7, 0.6}, {load.Imposed, 5, 0, 1, 0.9, 0.8}, {load.Imposed, 6, 0, 0.7, 0.7, 0.6},
		{load.Imposed, 7, 0, 0.7, 0.5, 0.3}, {load.ImposedRoof, 0, 0, 0, 0, 0}, {load.Snow, 0, load.Low, 0.5, 0.2, 0},
		{load.Snow, 0, load.High, 0.7, 0.5, 0.2}, {load.Snow, 0, load.Nordic, 0.7, 0.5, 0.2}, {load.Snow, 0, 0, 0.7, 0.5, 0.2},
		{load.Wind, 0, 0, 0.6, 0.2, 0}, {load.Temperature, 0, 0, 0.6, 0.5, 0},
	} {
		q, lead := action("Q", c.kind), action("lead", load.Imposed)
		q.Category, q.Site = c.category, c.site
		lead.OwnPsi = true
		least := func(s load.Situation) float64 {
			r, err := load.Combine(eurocode(s, q, lead))
			require.NoError(t, err)
			for _, n := range r.Combinations {
				if n.Factors[1] == 1 || s == load.QuasiPermanent {
					return n.Factors[0]
				}
			}
			return 0
		}
		assert.Equal(t, c.p0, least(load.Characteristic), "%+v", c)
		assert.Equal(t, c.p2, least(load.QuasiPermanent), "%+v", c)
		r, err := load.Combine(eurocode(load.Frequent, q))
		require.NoError(t, err)
		if c.p1 > 0 {
			assert.Equal(t, c.p1, r.Combinations[0].Factors[0], "%+v", c)
		}
	}
}

func TestFaultsAreNamed(t *testing.T) {
	bad := func(change func(*load.Input)) []string {
		in := eurocode(load.Strength, action("G", load.Permanent), action("W", load.Wind))
		in.Stages = []string{"one", "two"}
		change(in)
		_, err := load.Combine(in)
		var faults limit.Faults
		require.ErrorAs(t, err, &faults)
		var fields []string
		for _, f := range faults {
			fields = append(fields, f.Field)
		}
		return fields
	}
	for want, change := range map[string]func(*load.Input){
		"actions[1].name":            func(in *load.Input) { in.Actions[1].Name = "G" },
		"actions[0].kind":            func(in *load.Input) { in.Actions[0].Kind = 99 },
		"actions[1].kind":            func(in *load.Input) { in.Actions[1].Kind = load.Rain },
		"actions[1].category":        func(in *load.Input) { in.Actions[1].Kind = load.Imposed },
		"actions[1].last_stage":      func(in *load.Input) { in.Actions[1].First, in.Actions[1].Last = 2, 1 },
		"actions[1].first_stage":     func(in *load.Input) { in.Actions[1].First = 3 },
		"actions[0].psi":             func(in *load.Input) { in.Actions[0].OwnPsi = true },
		"actions[0].exclusive_group": func(in *load.Input) { in.Actions[0].Group = "a" },
		"actions[1].forces.n_kn":     func(in *load.Input) { in.Actions[1].Forces.N = math.NaN() },
		"kinds[0]":                   func(in *load.Input) { in.Basis = basis.USASD; in.Situations[0] = load.Frequent },
		"stages":                     func(in *load.Input) { in.Stages = nil },
		"factors":                    func(in *load.Input) { in.Factors.Q = 0 },
		"actions": func(in *load.Input) {
			for i := range 14 {
				in.Actions = append(in.Actions, action(strings.Repeat("x", i+1), load.Permanent))
			}
		},
	} {
		assert.Contains(t, bad(change), want)
	}
}

// TestEveryCombinationIsTheSumOfItsTerms and lies within its envelope; no two of
// one stage and situation are alike.
func TestEveryCombinationIsTheSumOfItsTerms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string) float64 { return rapid.Float64Range(-1e5, 1e5).Draw(t, name) }
		in := &load.Input{Basis: rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"),
			Factors: load.Recommended(), Stages: []string{"a", "b"}}
		kinds := []load.Kind{load.Permanent, load.Imposed, load.ImposedRoof, load.Snow, load.Wind}
		for i := range rapid.IntRange(1, 6).Draw(t, "actions") {
			a := action(string(rune('a'+i)), rapid.SampledFrom(kinds).Draw(t, "kind"))
			a.Forces = geom.Actions{N: number("N"), Vx: number("Vx"), Vy: number("Vy"), Mx: number("Mx"), My: number("My"), T: number("T")}
			if a.Kind == load.Imposed {
				a.Category = load.Category(rapid.IntRange(1, 7).Draw(t, "category"))
			}
			a.First = rapid.IntRange(0, 2).Draw(t, "first")
			in.Actions = append(in.Actions, a)
		}
		r, err := load.Combine(in)
		if err != nil {
			t.Fatal(err)
		}
		seen := map[string]bool{}
		for _, c := range r.Combinations {
			var n, my float64
			for i, f := range c.Factors {
				n += f * in.Actions[i].Forces.N
				my += f * in.Actions[i].Forces.My
			}
			if math.Abs(n-c.Sum.N) > 1e-6 || math.Abs(my-c.Sum.My) > 1e-6 {
				t.Fatalf("%s: N %g M_y %g", c.Name, n, my)
			}
			key := string(rune('0'+c.Stage)) + string(rune('0'+c.Situation)) + c.Name[strings.Index(c.Name, ": "):]
			if seen[key] {
				t.Fatalf("%s stands twice", c.Name)
			}
			seen[key] = true
		}
		for _, e := range r.Envelopes {
			for _, c := range r.Combinations {
				if c.Situation == e.Situation && (c.Sum.N > r.Combinations[e.Extremes[0].Greatest].Sum.N ||
					c.Sum.My < r.Combinations[e.Extremes[4].Least].Sum.My) {
					t.Fatalf("%s lies outside its envelope", c.Name)
				}
			}
		}
	})
}
