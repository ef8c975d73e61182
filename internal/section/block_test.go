package section_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/section"
)

// TestLeastBlockOfARectangle holds P/(B (L - 2 e)) for one eccentricity, the triangle
// at a corner, 2 P/(9 x y) with the resultant at x and y from the sides, and the
// block with rods by moments about them.
func TestLeastBlockOfARectangle(t *testing.T) {
	bed := &section.Bed{Outline: rectangle(600, 400)}
	for _, e := range []float64{0, 50, 150, 250, 290} {
		b, ok := section.LeastBlock(bed, nil, &geom.Actions{N: -1e5, My: 1e5 * e})
		require.True(t, ok)
		assert.InEpsilon(t, 1e5/400/(600-2*e), b.Pressure, 1e-6, "%g", e)
	}
	b, ok := section.LeastBlock(bed, nil, &geom.Actions{N: -1e5, My: 1e5 * 260, Mx: -1e5 * 170})
	require.True(t, ok)
	assert.InEpsilon(t, 2*1e5/(9*40*30), b.Pressure, 1e-6)
	_, ok = section.LeastBlock(bed, nil, &geom.Actions{N: -1e5, My: 1e5 * 301})
	assert.False(t, ok, "overturns")
	_, ok = section.LeastBlock(bed, nil, &geom.Actions{N: 1e5})
	assert.False(t, ok, "is lifted")

	// Rods at x = -250: f (550)^2/2 400 = M + P 250.
	rods := []geom.Point{{X: -250, Y: -150}, {X: -250, Y: 150}}
	b, ok = section.LeastBlock(bed, rods, &geom.Actions{N: -1e5, My: 1e5 * 400})
	require.True(t, ok)
	assert.InEpsilon(t, 1e5*(400+250)/(400*550*550/2), b.Pressure, 1e-6)
	b, ok = section.LeastBlock(bed, append(rods, geom.Point{X: 250, Y: 150}, geom.Point{X: 250, Y: -150}), &geom.Actions{N: 1e5, My: 1e6})
	require.True(t, ok)
	assert.Zero(t, b.Pressure, "the rods alone balance it")
	// Of an H only the strips press.
	h := &section.Bed{Outline: rectangle(300, 400), Cuts: [][]geom.Point{
		{{X: -150, Y: -150}, {X: -10, Y: -150}, {X: -10, Y: 150}, {X: -150, Y: 150}},
		{{X: 10, Y: -150}, {X: 150, Y: -150}, {X: 150, Y: 150}, {X: 10, Y: 150}}}}
	b, ok = section.LeastBlock(h, nil, &geom.Actions{N: -1e5, Mx: 1e5 * 175})
	require.True(t, ok)
	assert.InEpsilon(t, 1e5/(300*50), b.Pressure, 1e-5)
	b, ok = section.LeastBlock(h, nil, &geom.Actions{N: -1e5})
	require.True(t, ok)
	assert.InEpsilon(t, 1e5/(2*300*50+20*300), b.Pressure, 1e-9)
	_ = math.Pi
}

func BenchmarkLeastBlock(b *testing.B) {
	bed := &section.Bed{Outline: rectangle(600, 400)}
	for b.Loop() {
		section.LeastBlock(bed, nil, &geom.Actions{N: -1e5, My: 1e7, Mx: 2e6})
	}
}
