package load_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
)

func lasting(t *testing.T, in *load.Input) map[string]load.Lasting {
	t.Helper()
	r, err := load.Combine(in)
	require.NoError(t, err)
	out := map[string]load.Lasting{}
	for _, c := range r.Combinations {
		out[c.Name[strings.Index(c.Name, ": ")+2:]] = c.Lasting
	}
	return out
}

// TestACombinationLastsAsItsShortestAction holds EN 1995-1-1 3.1.3(2) with the classes
// of Table 2.2 (from memory): self-weight permanent, storage long, floors and snow
// medium, wind short-term, impact instantaneous.
func TestACombinationLastsAsItsShortestAction(t *testing.T) {
	store, floor := action("store", load.Imposed), action("floor", load.Imposed)
	store.Category, floor.Category = 5, 2
	in := eurocode(load.Strength, action("G", load.Permanent), store, floor, action("S", load.Snow), action("W", load.Wind), action("A", load.Accidental))
	in.Situations = append(in.Situations, load.AccidentalCase)
	got := lasting(t, in)
	for name, want := range map[string]load.Duration{
		"1.35 G": load.Lifelong, "1.35 G + 1.5 store": load.LongTerm, "1.35 G + 1.5 store + 1.05 floor": load.MediumTerm,
		"1.35 G + 1.5 S": load.MediumTerm, "1.35 G + 1.5 S + 0.9 W": load.ShortTerm, "1 G + 1.5 W": load.ShortTerm,
		"1 G + 0.8 store + 0.3 floor + 0.2 S + 1 A": load.Instantaneous,
	} {
		if assert.Contains(t, got, name) {
			assert.Equal(t, want, got[name].Class, name)
		}
	}
	in.Actions[4].Duration = load.Instantaneous
	assert.Equal(t, load.Instantaneous, lasting(t, in)["1 G + 1.5 W"].Class)
	in.Actions[3].Duration = load.ShortTerm
	assert.Equal(t, load.ShortTerm, lasting(t, in)["1.35 G + 1.5 S"].Class)
}

// TestTimeEffectFollowsTheCombination holds lambda of NDS 2018 Table N3 and C_D of Table
// 2.3.2 (from memory).
func TestTimeEffectFollowsTheCombination(t *testing.T) {
	store := action("store", load.Imposed)
	store.Category = 5
	actions := []load.Action{action("D", load.Permanent), action("L", load.Imposed), store,
		action("Lr", load.ImposedRoof), action("S", load.Snow), action("R", load.Rain), action("W", load.Wind)}
	lrfd := lasting(t, american(basis.USLRFD, actions...))
	for name, want := range map[string]float64{
		"1.4 D": 0.6, "1.2 D": 0.6, "0.9 D": 0.6, "1.2 D + 1.6 L": 0.8, "1.2 D + 1.6 store": 0.7, "1.2 D + 1 S": 0.8,
		"1.2 D + 1.6 Lr": 0.8, "1.2 D + 1 S + 0.5 W": 0.8, "1.2 D + 0.5 W": 0.8, "1.2 D + 1 L + 0.3 S + 1 W": 1, "0.9 D + 1 W": 1,
		"1.2 D + 1 W": 1, "1.2 D + 1 L": 0.8, "1.2 D + 1.6 R": 0.8,
	} {
		if assert.Contains(t, lrfd, name) {
			assert.Equal(t, want, lrfd[name].TimeEffect, name)
		}
	}
	asd := lasting(t, american(basis.USASD, actions...))
	for name, want := range map[string]float64{
		"1 D": 0.9, "1 D + 1 L": 1, "1 D + 1 store": 1, "1 D + 0.7 S": 1.15, "1 D + 1 Lr": 1.25, "1 D + 1 R": 1, "1 D + 0.6 W": 1.6,
		"1 D + 0.75 L + 0.525 S": 1.15, "1 D + 0.75 L + 0.525 S + 0.45 W": 1.6, "0.6 D": 0.9, "0.6 D + 0.6 W": 1.6,
	} {
		if assert.Contains(t, asd, name) {
			assert.Equal(t, want, asd[name].LoadDuration, name)
		}
	}
	actions[6].Duration = load.ShortTerm
	assert.Equal(t, 1.25, lasting(t, american(basis.USASD, actions...))["1 D + 0.6 W"].LoadDuration)
	assert.Equal(t, 0.8, lasting(t, american(basis.USLRFD, actions...))["0.9 D + 1 W"].TimeEffect)
}

// TestLongerStatedIsNeverStronger holds C_D and lambda in the order of the classes.
func TestLongerStatedIsNeverStronger(t *testing.T) {
	for d := load.Lifelong; d < load.Instantaneous; d++ {
		long, short := d.Factors(), (d + 1).Factors()
		assert.Less(t, long.LoadDuration, short.LoadDuration)
		assert.LessOrEqual(t, long.TimeEffect, short.TimeEffect)
	}
}

// TestWhatStaysIsNotThereForAMoment: self-weight of a permanent or a temporary building,
// ballast that is taken off again, and self-weight that would last like a gust.
func TestWhatStaysIsNotThereForAMoment(t *testing.T) {
	for _, c := range []struct {
		lasts load.Duration
		last  int
		taken bool
	}{
		{0, 0, true}, {load.Lifelong, 0, true}, {load.LongTerm, 0, true}, {load.MediumTerm, 0, true},
		{load.ShortTerm, 0, false}, {load.Instantaneous, 0, false}, {load.Instantaneous, 2, false},
		{load.ShortTerm, 1, true},
	} {
		for _, b := range []basis.Basis{basis.Eurocode, basis.USLRFD, basis.USASD} {
			g := action("G", load.Permanent)
			g.Duration, g.Last = c.lasts, c.last
			in := eurocode(load.Strength, g, action("W", load.Wind))
			in.Basis, in.Stages = b, []string{"tried", "used"}
			var f limit.Faults
			load.Validate(in, &f)
			assert.Equal(t, c.taken, len(f) == 0, "%+v: %v", c, f)
		}
	}
}
