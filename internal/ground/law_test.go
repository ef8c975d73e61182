package ground_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
)

// resistances are those of every row of bearing. The printed i_c gets below 0
// where the inclined force uses up the base; there more cohesion takes away, and
// the row is -1 and left out.
func resistances(t require.TestingT, in ground.Input) []float64 {
	r, _ := check(t, in)
	var out []float64
	for i := range r.Bearing {
		if b := &r.Bearing[i]; b.I.C >= 0 {
			out = append(out, b.Resistance)
		} else {
			out = append(out, -1)
		}
	}
	return out
}

// TestBetterGroundBearsMore holds for drained and undrained ground by itself.
func TestBetterGroundBearsMore(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*ground.Input)
	}{
		{"wider", func(in *ground.Input) { in.SizeX *= 1.1; in.SizeY *= 1.1; in.Diameter *= 1.1 }},
		{"more friction", func(in *ground.Input) {
			if in.Soil.Friction > 0 {
				in.Soil.Friction += 0.5 * degree
			}
		}},
		{"more cohesion", func(in *ground.Input) {
			if in.Soil.Friction > 0 {
				in.Soil.Cohesion += 0.002
			}
			in.Soil.Undrained *= 1.1
		}},
		{"deeper", func(in *ground.Input) { in.Depth *= 1.2 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				in := law(t)
				before := resistances(t, in)
				c.change(&in)
				after := resistances(t, in)
				require.Len(t, after, len(before))
				for i := range before {
					if before[i] >= 0 && after[i] >= 0 {
						assert.GreaterOrEqual(t, after[i], before[i]*(1-1e-9))
					}
				}
			})
		})
	}
}

// law is a footing with one action, so that one combination governs.
func law(t *rapid.T) ground.Input {
	in := random(t)
	in.Layer, in.Presumptive = ground.Layer{}, ground.Presumptive{}
	in.Permanent.N, in.Variable, in.Weight = -rapid.Float64Range(300e3, 900e3).Draw(t, "press"), geom.Actions{}, 0
	in.Soil.Dry = true
	in.Height = 0
	if in.Soil.Friction > 0 && in.Soil.Undrained > 0 {
		in.Soil.Undrained = 0
	}
	in.Permanent.Vx, in.Permanent.Vy = 0, 0
	if in.Author != ground.Terzaghi && rapid.Bool().Draw(t, "pushed") {
		in.Permanent.Vy = rapid.Float64Range(0, 20e3).Draw(t, "push")
	}
	in.Approaches = []ground.Approach{ground.DA2}
	return in
}

func TestWorseLoadIsNeverBorneBetter(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*ground.Input)
	}{
		{"more eccentric along x", func(in *ground.Input) { in.Permanent.My += math.Copysign(5e6, in.Permanent.My) }},
		{"more eccentric along y", func(in *ground.Input) { in.Permanent.Mx += math.Copysign(5e6, in.Permanent.Mx) }},
		{"more inclined", func(in *ground.Input) { in.Permanent.Vy += 5e3 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				in := law(t)
				if c.name == "more inclined" && in.Author == ground.Terzaghi {
					in.Author = ground.Meyerhof
				}
				before := resistances(t, in)
				c.change(&in)
				after := resistances(t, in)
				for i := range before {
					if before[i] >= 0 {
						assert.LessOrEqual(t, after[i], before[i]*(1+1e-9))
					}
				}
			})
		})
	}
}
