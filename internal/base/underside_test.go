package base_test

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/geom"
)

// TestBottomPlateIsBentByWhatActsTogether: the greatest compression holds a plate down
// that a lesser one with its own moment lifts and bends more. No combination that is left
// out bends it more than those that are solved.
func TestBottomPlateIsBentByWhatActsTogether(t *testing.T) {
	in := through(basis.Eurocode, 1000, 10)
	in.Cases = nil
	for i, a := range []geom.Actions{
		{N: -40e3, My: 1e6}, {N: -35e3, My: 4e6}, {N: -20e3, My: 6e6}, {N: -9e3, My: 5.8e6}, {N: -12e3, My: 3e6, Mx: 3e6}, {N: -25e3, My: 5e6},
	} {
		in.Cases = append(in.Cases, base.Case{Name: strconv.Itoa(i), Actions: a})
	}
	_, got := check(t, in)
	s := got["bottom_plate_on_ground"]
	require.True(t, s.Rated, s.Reason)
	weight := math.Pi/4*700*700*600*20e-6 + 77e-6*1000*1000*10 + 2e3
	side := 700 * math.Sqrt(math.Pi) / 2
	var solver bed.Solver
	want, by := 0.0, ""
	for _, c := range in.Cases {
		for _, factor := range []float64{1.35, 0.9} {
			r, err := solver.Solve(&bed.Input{
				Plate: bed.Plate{SizeX: 1000, SizeY: 1000, Thickness: 10, E: 210000, Nu: 0.3}, Modulus: 0.05,
				Patches: []bed.Patch{{SizeX: side, SizeY: side, N: c.Actions.N - factor*weight, Mx: c.Actions.Mx, My: c.Actions.My}},
			})
			require.NoError(t, err)
			for _, v := range []bed.Bending{r.X, r.Y} {
				if m := max(math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), v.Most); m > want {
					want, by = m, c.Name
				}
			}
		}
	}
	assert.InEpsilon(t, want, s.Demand, 1e-9)
	assert.Equal(t, by, s.Combination)
}

// TestPlateOnABedIsBentMostAtTheEnds of a row of compressions with one moment, and more
// by a greater moment: combinations between others need not be solved.
func TestPlateOnABedIsBentMostAtTheEnds(t *testing.T) {
	var solver bed.Solver
	bent := func(n, mx, my float64, at bed.Plate, side float64) float64 {
		r, err := solver.Solve(&bed.Input{Plate: at, Modulus: 0.05, Patches: []bed.Patch{{SizeX: side, SizeY: side, N: -n, Mx: mx, My: my}}})
		require.NoError(t, err)
		m := 0.0
		for _, v := range []bed.Bending{r.X, r.Y} {
			m = max(m, math.Abs(v.Sag.Unit), math.Abs(v.Hog.Unit), v.Most)
		}
		return m
	}
	for _, at := range []bed.Plate{
		{SizeX: 800, SizeY: 800, Thickness: 20, E: 210000, Nu: 0.3},
		{SizeX: 1000, SizeY: 900, Thickness: 10, E: 210000, Nu: 0.3},
	} {
		for _, share := range []float64{0, 1} {
			for _, side := range []float64{300, 620} {
				const my = 8e6
				first, row := 0.0, []float64{}
				for _, n := range []float64{27e3, 35e3, 60e3, 160e3} {
					m := bent(n, share*my, my, at, side)
					row = append(row, m)
					first = max(first, m)
					assert.GreaterOrEqual(t, m, bent(n, 0.9*share*my, 0.9*my, at, side)*(1-1e-9))
				}
				assert.InEpsilon(t, max(row[0], row[len(row)-1]), first, 1e-12, "%v: %v", at, row)
			}
		}
	}
}
