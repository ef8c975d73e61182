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

// terms returns what follows the standard's name in each combination.
func terms(t *testing.T, in *load.Input) []string {
	t.Helper()
	var out []string
	for _, n := range names(t, in) {
		out = append(out, n[strings.Index(n, ": ")+2:])
	}
	return out
}

func american(b basis.Basis, actions ...load.Action) *load.Input {
	return &load.Input{Basis: b, Stages: []string{"in use"}, Actions: actions}
}

// TestPartsOfOneWindLeadTogether has uplift and side force of one wind given apart:
// both 1.5, or both 0.9 beside leading snow, each also absent (EN 1990 6.10, Table A1.1:
// psi_0 of wind 0.6, of snow up to 1000 m 0.5).
func TestPartsOfOneWindLeadTogether(t *testing.T) {
	g, s, up, side := action("G", load.Permanent), action("S", load.Snow), action("up", load.Wind), action("side", load.Wind)
	s.Site = load.Low
	got := terms(t, eurocode(load.Strength, g, s, up, side))
	for _, want := range []string{
		"1.35 G + 1.5 up + 1.5 side", "1 G + 1.5 up + 1.5 side", "1 G + 1.5 up", "1 G + 1.5 side",
		"1.35 G + 1.5 S + 0.9 up + 0.9 side", "1.35 G + 0.75 S + 1.5 up + 1.5 side", "1.35 G + 1.5 S + 0.9 side",
	} {
		assert.Contains(t, got, want)
	}
	for _, n := range got {
		assert.NotContains(t, n, "1.5 up + 0.9 side", "one part accompanies the other")
		assert.NotContains(t, n, "0.9 up + 1.5 side", "one part accompanies the other")
	}
	// Permanent 2 ways; of snow and wind: none, S; three sets of wind alone; beside snow
	// each leads or snow does: 2 x (1 + 1 + 3 + 3 x 2).
	assert.Len(t, got, 2*(1+1+3+3*2))
	assert.Contains(t, terms(t, eurocode(load.Frequent, g, s, up, side)), "1 G + 0.2 up + 0.2 side")
	a := action("A", load.Accidental)
	in := eurocode(load.AccidentalCase, g, up, side, a)
	in.Factors.AccidentalFrequent = true
	assert.Contains(t, terms(t, in), "1 G + 0.2 up + 0.2 side + 1 A")
}

// TestTwoSnowsOfOneRoofAddInFull holds 1.5 + 1.5 (EN 1990) and 1.0 + 1.0 with 1.2 D
// (ASCE 7-22 2.3.1 (3)), 0.7 + 0.7 (2.4.1 (3)): 1.2 x 10 + 20 + 20 = 52 kN.
func TestTwoSnowsOfOneRoofAddInFull(t *testing.T) {
	d, a, b := action("D", load.Permanent), action("drift", load.Snow), action("even", load.Snow)
	d.Forces.N, a.Forces.N, b.Forces.N = -10e3, -20e3, -20e3
	assert.Contains(t, terms(t, eurocode(load.Strength, d, a, b)), "1.35 D + 1.5 drift + 1.5 even")
	assert.Contains(t, terms(t, american(basis.USASD, d, a, b)), "1 D + 0.7 drift + 0.7 even")
	r, err := load.Combine(american(basis.USLRFD, d, a, b))
	require.NoError(t, err)
	assert.InDelta(t, -52e3, r.Combinations[r.Envelopes[0].Extremes[0].Least].Sum.N, 1e-6)
}

// TestUpliftAndSideForceOfOneWindActTogetherInTheUS has 0.9 D + 1.0 W with both parts:
// 0.9 x (-10) + 30 = 21 kN with 5 kN and 8 kNm.
func TestUpliftAndSideForceOfOneWindActTogetherInTheUS(t *testing.T) {
	d, up, side := action("D", load.Permanent), action("up", load.Wind), action("side", load.Wind)
	d.Forces.N, up.Forces.N, side.Forces = -10e3, 30e3, geom.Actions{Vx: 5e3, My: 8e6}
	r, err := load.Combine(american(basis.USLRFD, d, up, side))
	require.NoError(t, err)
	found := false
	for _, c := range r.Combinations {
		if math.Abs(c.Sum.N-21e3) < 1e-6 && math.Abs(c.Sum.Vx-5e3) < 1e-6 && math.Abs(c.Sum.My-8e6) < 1e-3 {
			found = true
		}
	}
	assert.True(t, found)
	assert.Contains(t, terms(t, american(basis.USASD, d, up, side)), "0.6 D + 0.6 up + 0.6 side")
}

// TestOneKindLiesOnTheRoofAtATime keeps roof live load, snow and rain apart, whatever
// parts each has (ASCE 7-22 2.3.1: L_r or S or R).
func TestOneKindLiesOnTheRoofAtATime(t *testing.T) {
	in := american(basis.USLRFD, action("D", load.Permanent), action("Lr1", load.ImposedRoof), action("Lr2", load.ImposedRoof),
		action("S1", load.Snow), action("S2", load.Snow), action("R", load.Rain))
	got := terms(t, in)
	assert.Contains(t, got, "1.2 D + 1.6 Lr1 + 1.6 Lr2")
	assert.Contains(t, got, "1.2 D + 1 S1 + 1 S2")
	for _, n := range got {
		kinds := 0
		for _, k := range []string{"Lr", "S", "R"} {
			if strings.Contains(n, " "+k) {
				kinds++
			}
		}
		assert.LessOrEqual(t, kinds, 1, n)
	}
}

// TestAlternativesOfTwoKindsNeverMeet has a crane that stands still in wind.
func TestAlternativesOfTwoKindsNeverMeet(t *testing.T) {
	crane, wind, snow := action("crane", load.Imposed), action("wind", load.Wind), action("snow", load.Snow)
	crane.Category, crane.Group, wind.Group = 5, "storm", "storm"
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := american(b, action("D", load.Permanent), crane, wind, snow)
		in.Factors = load.Recommended()
		in.Situations = []load.Situation{load.Strength}
		both := 0
		for _, n := range terms(t, in) {
			assert.False(t, strings.Contains(n, "crane") && strings.Contains(n, "wind"), n)
			if strings.Contains(n, "crane") && strings.Contains(n, "snow") {
				both++
			}
		}
		assert.Positive(t, both)
	}
}

// TestPartsOfAWholeExcludeTheOtherWhole has two winds of two parts each: parts of one
// side act together, none with those of the other.
func TestPartsOfAWholeExcludeTheOtherWhole(t *testing.T) {
	var actions []load.Action
	for _, side := range []string{"east", "west"} {
		for _, part := range []string{" up", " side"} {
			a := action(side+part, load.Wind)
			a.Group, a.Part = "wind", side
			actions = append(actions, a)
		}
	}
	for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
		in := american(b, append([]load.Action{action("D", load.Permanent)}, actions...)...)
		in.Factors, in.Situations = load.Recommended(), []load.Situation{load.Strength}
		all := strings.Join(terms(t, in), "\n")
		assert.Regexp(t, `east up \+ \S+ east side`, all)
		for _, n := range strings.Split(all, "\n") {
			assert.False(t, strings.Contains(n, "east") && strings.Contains(n, "west"), n)
		}
	}
}

// TestDifferentWholesAreIndependent has 1.5 of one and 0.7 x 1.5 of the other (EN 1990
// Table A1.1, category A), and a part without a whole go with either.
func TestDifferentWholesAreIndependent(t *testing.T) {
	a, b, c := action("a", load.Imposed), action("b", load.Imposed), action("c", load.Imposed)
	for _, q := range []*load.Action{&a, &b, &c} {
		q.Category = 1
	}
	a.Part, b.Part = "tank", "floor"
	got := terms(t, eurocode(load.Strength, a, b))
	assert.ElementsMatch(t, []string{"1.5 a + 1.05 b", "1.05 a + 1.5 b", "1.5 a", "1.5 b"}, got)
	got = terms(t, eurocode(load.Strength, a, b, c))
	assert.Contains(t, got, "1.5 a + 1.05 b + 1.5 c")
	assert.Contains(t, got, "1.05 a + 1.5 b + 1.5 c")
	assert.NotContains(t, got, "1.5 a + 1.5 b + 1.5 c")
	assert.NotContains(t, got, "1.5 a + 1.5 b")
	b.Category = 5
	b.Part, a.Part = "", ""
	assert.Contains(t, terms(t, eurocode(load.Strength, a, b)), "1.5 a + 1.5 b", "psi_0 of storage is 1")
	b.Category = 3
	assert.Contains(t, terms(t, eurocode(load.Strength, a, b)), "1.5 a + 1.05 b", "categories differ")
	assert.Contains(t, remarks(t, eurocode(load.Strength, a, b))["load_parts_independent"], ": a + b.")
	// One whole of two categories, and what says nothing goes with its own: psi_0 0.7 each.
	a.Part, b.Part, c.Category = "floors", "floors", 3
	got = terms(t, eurocode(load.Strength, a, b, c))
	assert.Contains(t, got, "1.5 a + 1.5 b + 1.5 c")
	assert.Contains(t, got, "1.5 a + 1.5 b")
	assert.NotContains(t, got, "1.5 a + 1.05 b")
	assert.Contains(t, got, "1.5 b + 1.5 c")
	assert.ElementsMatch(t, []string{"1.5 a + 1.05 c", "1.05 a + 1.5 c"}, pick(got, "a", "c"))
}

// pick returns the combinations of exactly these actions.
func pick(all []string, names ...string) (out []string) {
	for _, n := range all {
		has := strings.Count(n, " + ") == len(names)-1
		for _, name := range names {
			has = has && strings.Contains(n, " "+name)
		}
		if has {
			out = append(out, n)
		}
	}
	return out
}

// TestAnAlternativeToAnImpactNeverMeetsIt holds the group of an accidental action.
func TestAnAlternativeToAnImpactNeverMeetsIt(t *testing.T) {
	g, w, s, a := action("G", load.Permanent), action("W", load.Wind), action("S", load.Snow), action("A", load.Accidental)
	w.OwnPsi, w.Psi = true, load.Psi{Combination: 0.6, Frequent: 0.3, QuasiPermanent: 0.2}
	w.Group, a.Group = "gate", "gate"
	assert.ElementsMatch(t, []string{"1 G + 0.2 S + 1 A", "1 G + 1 A"}, terms(t, eurocode(load.AccidentalCase, g, w, s, a)))
}

// TestAnAccidentalActionJoinsWhatIsUsual also by default.
func TestAnAccidentalActionJoinsWhatIsUsual(t *testing.T) {
	in := eurocode(0, action("G", load.Permanent), action("A", load.Accidental))
	in.Situations = nil
	assert.Contains(t, names(t, in), "EN 1990 (6.11b): 1 G + 1 A")
	in = eurocode(0, action("G", load.Permanent), action("W", load.Wind))
	in.Situations = nil
	assert.NotContains(t, strings.Join(names(t, in), "\n"), "(6.11b)")
}

func remarks(t *testing.T, in *load.Input) map[string]string {
	t.Helper()
	r, err := load.Combine(in)
	require.NoError(t, err)
	var l limit.Notices
	r.Notices(&l)
	out := map[string]string{}
	for _, n := range l.All() {
		out[n.Code] = n.Text
	}
	return out
}

// TestTheAnswerSaysWhatWasAddedToWhat and what was left out.
func TestTheAnswerSaysWhatWasAddedToWhat(t *testing.T) {
	up, side, east := action("up", load.Wind), action("side", load.Wind), action("impact", load.Accidental)
	got := remarks(t, eurocode(load.Strength, action("G", load.Permanent), up, side, east))
	assert.Contains(t, got["load_parts_of_one_action"], ": up + side.")
	assert.Contains(t, got["load_action_not_combined"], ": impact.")
	assert.NotContains(t, got, "load_parts_independent")
	side.Part = "other"
	up.Part = "one"
	got = remarks(t, eurocode(load.Strength, up, side))
	assert.Contains(t, got["load_parts_independent"], ": up + side.")
	assert.NotContains(t, got, "load_parts_of_one_action")
	assert.NotContains(t, got, "load_action_not_combined")
	up.Part, side.Part, up.Group, side.Group = "", "", "wind", "wind"
	assert.NotContains(t, remarks(t, eurocode(load.Strength, up, side)), "load_parts_of_one_action")
	assert.Contains(t, remarks(t, american(basis.USLRFD, action("S1", load.Snow), action("S2", load.Snow)))["load_parts_of_one_action"], "S1 + S2")
	assert.NotContains(t, remarks(t, eurocode(load.Strength, action("G", load.Permanent))), "load_whole_or_absent")
}

func TestWholesThatContradictAreRefused(t *testing.T) {
	for want, change := range map[string]func(a []load.Action){
		"actions[0].part_of":         func(a []load.Action) { a[0].Part = "x" },
		"actions[2].part_of":         func(a []load.Action) { a[1].Part, a[2].Part, a[2].Kind = "x", "x", load.Snow },
		"actions[1].exclusive_group": func(a []load.Action) { a[1].Part, a[2].Part, a[1].Group, a[3].Group = "x", "x", "g", "g" },
		"actions[3].exclusive_group": func(a []load.Action) { a[3].Group, a[2].Group, a[3].Part, a[2].Part = "g", "g", "x", "x" },
		"actions[3].load_duration":   func(a []load.Action) { a[3].Duration = 9 },
	} {
		in := eurocode(load.Strength, action("G", load.Permanent), action("a", load.Wind), action("b", load.Wind), action("c", load.Wind))
		change(in.Actions)
		_, err := load.Combine(in)
		var faults limit.Faults
		require.ErrorAs(t, err, &faults, want)
		var fields []string
		for _, f := range faults {
			fields = append(fields, f.Field)
		}
		assert.Contains(t, fields, want)
	}
}

// TestEnvelopeNamesTheExtremeOfEachComponent has six actions, each of one component in
// both senses, so every extreme lies in another combination.
func TestEnvelopeNamesTheExtremeOfEachComponent(t *testing.T) {
	in := eurocode(load.Strength)
	for k := range 6 {
		for _, sense := range []float64{1, -1} {
			a := action(string(rune('a'+len(in.Actions))), load.Wind)
			a.Group = "wind"
			a.Forces = component(k, sense*float64(k+1))
			in.Actions = append(in.Actions, a)
		}
	}
	r, err := load.Combine(in)
	require.NoError(t, err)
	for k, x := range r.Envelopes[0].Extremes {
		assert.Equal(t, component(k, 1.5*float64(k+1)), r.Combinations[x.Greatest].Sum)
		assert.Equal(t, component(k, -1.5*float64(k+1)), r.Combinations[x.Least].Sum)
	}
}

func component(k int, v float64) (a geom.Actions) {
	*[...]*float64{&a.N, &a.Vx, &a.Vy, &a.Mx, &a.My, &a.T}[k] = v
	return a
}

// TestActionsTurnedByAQuarterMakeTheSameCombinationsTurned holds the sums along y to
// those along x.
func TestActionsTurnedByAQuarterMakeTheSameCombinationsTurned(t *testing.T) {
	turn := func(a geom.Actions) geom.Actions {
		return geom.Actions{N: a.N, Vx: -a.Vy, Vy: a.Vx, Mx: -a.My, My: a.Mx, T: a.T}
	}
	rapid.Check(t, func(t *rapid.T) {
		number := func(name string) float64 { return rapid.Float64Range(-1e5, 1e5).Draw(t, name) }
		in := american(rapid.SampledFrom([]basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD}).Draw(t, "basis"))
		in.Factors = load.Recommended()
		for i := range rapid.IntRange(1, 5).Draw(t, "actions") {
			a := action(string(rune('a'+i)), rapid.SampledFrom([]load.Kind{load.Permanent, load.Snow, load.Wind}).Draw(t, "kind"))
			a.Forces = geom.Actions{N: number("N"), Vx: number("Vx"), Vy: number("Vy"), Mx: number("Mx"), My: number("My"), T: number("T")}
			in.Actions = append(in.Actions, a)
		}
		r, err := load.Combine(in)
		if err != nil {
			t.Fatal(err)
		}
		turned := *in
		turned.Actions = append([]load.Action(nil), in.Actions...)
		for i := range turned.Actions {
			turned.Actions[i].Forces = turn(in.Actions[i].Forces)
		}
		other, err := load.Combine(&turned)
		if err != nil {
			t.Fatal(err)
		}
		if len(other.Combinations) != len(r.Combinations) {
			t.Fatal("another number of combinations")
		}
		for i := range r.Combinations {
			if turn(r.Combinations[i].Sum) != other.Combinations[i].Sum {
				t.Fatalf("%s: %+v is not %+v turned", r.Combinations[i].Name, other.Combinations[i].Sum, r.Combinations[i].Sum)
			}
		}
	})
}
