package settle_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/settle"
)

// TestBlowCountOfSmallFootings: Meyerhof as changed by Bowles: 1.25 q/(N60 F_d) up to 1.22 m,
// 2 q/(N60 F_d) (B/(B + 0.3))^2 above; F_d = 1 + 0.33 D/B <= 1.33. 120 kPa, N60 10.
func TestBlowCountOfSmallFootings(t *testing.T) {
	for _, c := range [][3]float64{
		{1000, 0, 15}, {1210, 0, 15},
		{1230, 0, 15.5110}, // 24 (1.23/1.53)^2
		{1400, 0, 16.2768}, // 24 (1.4/1.7)^2
		{1000, 500, 12.8755}, {1000, 1000, 11.2782}, {1000, 3000, 11.2782},
	} {
		assert.InDelta(t, c[2], settle.BlowCount(0.120, c[0], c[1], 10), 5e-4, "%v", c)
	}
}

// TestReachOfBurlandAndBurbidge: B^0.75 in m where the blow counts do not fall with depth,
// 2 B where they do. B = 2 m: 1.6818 or 4 m. By the reach the mean of 20 to 1.2 m and of
// 30 or 10 below.
func TestReachOfBurlandAndBurbidge(t *testing.T) {
	for below, want := range map[float64][2]float64{
		30: {1681.79, (20*1.2 + 30*0.48179) / 1.68179},
		10: {4000, (20*1.2 + 10*2.8) / 4},
	} {
		in := settle.Input{
			Design: basis.Design{Basis: basis.USASD}, Shape: settle.Rectangle, SizeX: 2000, SizeY: 2000, Dry: true,
			Layers: []settle.Layer{{Thickness: 1200, Weight: 20e-6, N60: 20}, {Thickness: 9000, Weight: 20e-6, N60: below}},
			Stages: []settle.Stage{{Net: 0.1}},
		}
		r, _ := check(t, in)
		assert.InDelta(t, want[0], r.Sand.Reach, 0.01)
		assert.InDelta(t, want[1], r.Sand.Blows, 0.001)
		assert.InDelta(t, 100*math.Pow(2, 0.7)*1.71/math.Pow(want[1], 1.4), last(r).Burland, 1e-3)
	}
}

// TestCreepBeginsAfterATenthOfAYear: Schmertmann, C_2 = 1 + 0.2 lg(t/0.1), never less than 1.
func TestCreepBeginsAfterATenthOfAYear(t *testing.T) {
	for years, want := range map[float64]float64{0: 1, 0.05: 1, 0.09: 1, 0.11: 1.008279, 1: 1.2} {
		in := pad(basis.Eurocode)
		in.Years = years
		r, _ := check(t, in)
		assert.InDelta(t, want, r.Sand.Creep, 1e-6, years)
	}
}

// TestTheWorstNeighbourIsShown, whatever its place in the list.
func TestTheWorstNeighbourIsShown(t *testing.T) {
	for i := range 3 {
		in := pad(basis.Eurocode)
		in.Neighbours = []settle.Neighbour{{Distance: 9000}, {Distance: 9000}, {Distance: 9000}}
		in.Neighbours[i].Distance = 3000
		r, _ := check(t, in)
		assert.Equal(t, i+1, r.Worst.Neighbour)
	}
}
