package material_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/material"
)

func TestEveryRowIsWhole(t *testing.T) {
	seen := map[string]bool{}
	row := func(name, source string, positive ...float64) {
		t.Helper()
		assert.NotEmpty(t, name)
		assert.NotEmpty(t, source, name)
		for _, v := range positive {
			assert.Positive(t, v, name)
		}
		seen[name] = true
	}
	for _, s := range material.Steels() {
		row(s.Name, s.Source)
		last := 0.0
		for _, b := range s.Bands {
			assert.Greater(t, b.UpTo, last, s.Name)
			assert.Greater(t, b.Fu, b.Fy, s.Name)
			last = b.UpTo
		}
	}
	for _, r := range material.RodSteels() {
		row(r.Name, r.Source, r.Fy, r.Fu-r.Fy)
	}
	for _, r := range material.Threads() {
		row(r.Name, r.Source, r.Diameter, r.Pitch, r.StressArea, math.Pi/4*r.Diameter*r.Diameter-r.StressArea)
	}
	for _, w := range material.Weights() {
		row(w.Name, w.Source, w.Least)
		assert.GreaterOrEqual(t, w.Most, w.Least, w.Name)
	}
	for _, r := range material.WeldMetals() {
		row(r.Name, r.Source, r.Strength)
	}
	for _, r := range material.Concretes() {
		row(r.Name, r.Source, r.Strength)
	}
	for _, r := range material.Timbers() {
		row(r.Name, r.Source, r.Timber.Along, r.Timber.Across)
	}
	rows := len(material.Steels()) + len(material.RodSteels()) + len(material.Threads()) +
		len(material.WeldMetals()) + len(material.Concretes()) + len(material.Timbers()) + len(material.Weights())
	assert.Len(t, seen, rows-1, "only ASTM A193 Gr B7 has two rows")
}

// TestSteelStrengthAtBandEdges holds the bands of EN 10025-2:2019 (from memory).
func TestSteelStrengthAtBandEdges(t *testing.T) {
	grade, ok := material.SteelByName("EN 10025-2 S355")
	require.True(t, ok)
	steel := material.Steel{Grade: grade}
	for _, c := range []struct{ thickness, fy, fu float64 }{
		{16, 355, 470}, {16.1, 345, 470}, {40, 345, 470}, {63, 335, 470}, {250, 275, 450},
	} {
		fy, fu, ok := steel.At(c.thickness)
		require.True(t, ok)
		assert.Equal(t, c.fy, fy)
		assert.Equal(t, c.fu, fu)
	}
	_, _, ok = steel.At(250.1)
	assert.False(t, ok)
	assert.Equal(t, 0.9, steel.Correlation())
	assert.Equal(t, 1.0, (&material.Steel{Fy: 300, Fu: 400}).Correlation())
}

// TestUnifiedStressAreas holds printed areas of ASME B1.1 (from memory), in2.
func TestUnifiedStressAreas(t *testing.T) {
	for name, area := range map[string]float64{
		"1/2-13 UNC": 0.142, "5/8-11 UNC": 0.226, "3/4-10 UNC": 0.334, "7/8-9 UNC": 0.462,
		"1-8 UNC": 0.606, "1 1/8-7 UNC": 0.763, "1 1/4-7 UNC": 0.969,
	} {
		th, ok := material.ThreadByName(name)
		require.True(t, ok, name)
		assert.InDelta(t, area, th.StressArea/(25.4*25.4), 0.0006, name)
	}
}

// TestMetricStressAreasFollowTheFormula holds the printed areas of ISO 898-1
// against pi/4 (d - 0.9382 P)^2, to the printed digits.
func TestMetricStressAreasFollowTheFormula(t *testing.T) {
	for _, r := range material.Threads() {
		if r.Name[0] == 'M' {
			want := math.Pi / 4 * math.Pow(r.Diameter-0.9382*r.Pitch, 2)
			assert.InDelta(t, want, r.StressArea, 0.56, r.Name)
		}
	}
}

func TestRodSteelFollowsDiameter(t *testing.T) {
	thin, ok := material.RodSteelByName("ASTM A193 Gr B7", 25.4)
	require.True(t, ok)
	thick, ok := material.RodSteelByName("ASTM A193 Gr B7", 76)
	require.True(t, ok)
	assert.Greater(t, thin.Fu, thick.Fu)
	_, ok = material.RodSteelByName("ASTM A193 Gr B7", 150)
	assert.False(t, ok)
}
