package material_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/material"
)

const (
	ksi = 6.894757293168361 // MPa
	in  = 25.4              // mm
)

// TestSteelsByThickness: EN 10025-2:2019 Tables 7 and 8 (from memory): f_y and f_u at
// each thickness and just above the one before.
func TestSteelsByThickness(t *testing.T) {
	upTo := []float64{16, 40, 63, 80, 100, 150, 200, 250}
	for name, row := range map[string][2][]float64{
		"EN 10025-2 S235": {{235, 225, 215, 215, 215, 195, 185, 175}, {360, 360, 360, 360, 360, 350, 340, 340}},
		"EN 10025-2 S275": {{275, 265, 255, 245, 235, 225, 215, 205}, {410, 410, 410, 410, 410, 400, 380, 380}},
		"EN 10025-2 S355": {{355, 345, 335, 325, 315, 295, 285, 275}, {470, 470, 470, 470, 470, 450, 450, 450}},
	} {
		s, ok := material.SteelByName(name)
		require.True(t, ok, name)
		before := 3.0
		for i, to := range upTo {
			for _, thick := range []float64{before + 0.1, to} {
				of := material.Steel{Grade: s}
				fy, fu, ok := of.At(thick)
				require.True(t, ok, "%s %g", name, thick)
				assert.InDelta(t, row[0][i], fy, 0, "%s f_y at %g", name, thick)
				assert.InDelta(t, row[1][i], fu, 0, "%s f_u at %g", name, thick)
			}
			before = to
		}
	}
}

// TestSteelsOfTable31: EN 1993-1-1:2005 Table 3.1, up to 40 and 80 mm, and beta_w of EN
// 1993-1-8 Table 4.1. Nothing is known beyond the last thickness.
func TestSteelsOfTable31(t *testing.T) {
	for name, c := range map[string]struct{ fy, fu, fyThick, fuThick, beta float64 }{
		"S235": {235, 360, 215, 360, 0.80}, "S275": {275, 430, 255, 410, 0.85}, "S355": {355, 490, 335, 470, 0.90},
	} {
		s, ok := material.SteelByName("EN 1993-1-1 " + name)
		require.True(t, ok, name)
		assert.InDelta(t, c.beta, s.BetaW, 0, name)
		of := material.Steel{Grade: s}
		for thick, want := range map[float64][2]float64{5: {c.fy, c.fu}, 40: {c.fy, c.fu}, 40.1: {c.fyThick, c.fuThick}, 80: {c.fyThick, c.fuThick}} {
			fy, fu, ok := of.At(thick)
			require.True(t, ok, "%s %g", name, thick)
			assert.InDelta(t, want[0], fy, 0, "%s f_y at %g", name, thick)
			assert.InDelta(t, want[1], fu, 0, "%s f_u at %g", name, thick)
		}
		_, _, ok = of.At(80.1)
		assert.False(t, ok, name)
		s, ok = material.SteelByName("EN 10025-2 " + name)
		require.True(t, ok, name)
		assert.InDelta(t, c.beta, s.BetaW, 0, name)
		of = material.Steel{Grade: s}
		_, _, ok = of.At(250.1)
		assert.False(t, ok, name)
	}
}

// TestRodsByClass: ISO 898-1, a class x.y has f_u 100 x and f_y 10 x y. ASTM F1554 and A193
// from memory [ksi, in].
func TestRodsByClass(t *testing.T) {
	for name, c := range map[string][2]float64{
		"4.6": {400, 240}, "4.8": {400, 320}, "5.6": {500, 300}, "5.8": {500, 400}, "6.8": {600, 480}, "8.8": {800, 640}, "10.9": {1000, 900},
	} {
		s, ok := material.RodSteelByName("ISO 898-1 "+name, 20)
		require.True(t, ok, name)
		assert.InDelta(t, c[0], s.Fu, 0, name)
		assert.InDelta(t, c[1], s.Fy, 0, name)
	}
	for _, c := range []struct {
		name      string
		d, fy, fu float64
		known     bool
	}{
		{"ASTM F1554 Gr 36", 4, 36, 58, true}, {"ASTM F1554 Gr 36", 4.01, 0, 0, false},
		{"ASTM F1554 Gr 55", 4, 55, 75, true}, {"ASTM F1554 Gr 55", 4.01, 0, 0, false},
		{"ASTM F1554 Gr 105", 3, 105, 125, true}, {"ASTM F1554 Gr 105", 3.01, 0, 0, false},
		{"ASTM A193 Gr B7", 2.5, 105, 125, true}, {"ASTM A193 Gr B7", 2.51, 95, 115, true},
		{"ASTM A193 Gr B7", 4, 95, 115, true}, {"ASTM A193 Gr B7", 4.01, 0, 0, false},
		{"ASTM A36 rod", 8, 36, 58, true}, {"ASTM A36 rod", 8.01, 0, 0, false},
	} {
		s, ok := material.RodSteelByName(c.name, c.d*in)
		require.Equal(t, c.known, ok, "%s %g", c.name, c.d)
		if ok {
			assert.InDelta(t, c.fy*ksi, s.Fy, 1e-9, c.name)
			assert.InDelta(t, c.fu*ksi, s.Fu, 1e-9, c.name)
		}
	}
}

// TestNamesSayTheirNumbers: concretes, electrodes and inch threads are named by them.
func TestNamesSayTheirNumbers(t *testing.T) {
	seen := 0
	for _, c := range material.Concretes() {
		var v, cube float64
		if n, _ := fmt.Sscanf(c.Name, "C%f/%f", &v, &cube); n == 2 {
			assert.InDelta(t, v, c.Strength, 0, c.Name)
			seen++
		} else if n, _ := fmt.Sscanf(c.Name, "f'c %f psi", &v); n == 1 {
			assert.InDelta(t, v*ksi/1000, c.Strength, 1e-9, c.Name)
			seen++
		}
	}
	assert.Len(t, material.Concretes(), seen)
	for _, w := range material.WeldMetals() {
		var v float64
		if n, _ := fmt.Sscanf(w.Name, "AWS E%f", &v); n == 1 {
			assert.InDelta(t, v*ksi, w.Strength, 1e-9, w.Name)
		}
	}
	// EN ISO 2560-A Table 1 (from memory).
	for name, v := range map[string]float64{"E 35": 440, "E 38": 470, "E 42": 500, "E 46": 530, "E 50": 560} {
		for _, w := range material.WeldMetals() {
			if w.Name == "EN ISO 2560 "+name {
				assert.InDelta(t, v, w.Strength, 0, name)
			}
		}
	}
}

// TestInchThreads: ASME B1.1, diameter [in] and threads to the inch.
func TestInchThreads(t *testing.T) {
	for name, c := range map[string][2]float64{
		"3/8-16 UNC": {0.375, 16}, "1/2-13 UNC": {0.5, 13}, "5/8-11 UNC": {0.625, 11}, "3/4-10 UNC": {0.75, 10},
		"7/8-9 UNC": {0.875, 9}, "1-8 UNC": {1, 8}, "1 1/8-7 UNC": {1.125, 7}, "1 1/4-7 UNC": {1.25, 7}, "1 3/8-6 UNC": {1.375, 6},
		"1 1/2-6 UNC": {1.5, 6}, "1 3/4-5 UNC": {1.75, 5}, "2-4.5 UNC": {2, 4.5}, "2 1/4-4.5 UNC": {2.25, 4.5}, "2 1/2-4 UNC": {2.5, 4},
		"2 3/4-4 UNC": {2.75, 4}, "3-4 UNC": {3, 4}, "3 1/2-4 UNC": {3.5, 4}, "4-4 UNC": {4, 4},
	} {
		th, ok := material.ThreadByName(name)
		require.True(t, ok, name)
		assert.InDelta(t, c[0]*in, th.Diameter, 1e-9, name)
		assert.InDelta(t, 0.7854*(c[0]-0.9743/c[1])*(c[0]-0.9743/c[1])*in*in, th.StressArea, 1e-3*th.StressArea, name)
	}
}

// TestTimbers: f_c,0 and f_c,90 of EN 338:2016 and EN 14080:2013 [MPa], F_c and F_c,perp of
// the NDS 2018 Supplement [psi]; from memory.
func TestTimbers(t *testing.T) {
	const psi = ksi / 1000
	want := map[string][2]float64{
		"EN 338 C16": {17, 2.2}, "EN 338 C18": {18, 2.2}, "EN 338 C24": {21, 2.5}, "EN 338 C30": {24, 2.7},
		"EN 14080 GL24h": {24, 2.5}, "EN 14080 GL24c": {21.5, 2.5}, "EN 14080 GL28h": {28, 2.5}, "EN 14080 GL30h": {30, 2.5},
		"EN 14080 GL32h": {32, 2.5}, "NDS Douglas Fir-Larch No. 1": {1500 * psi, 625 * psi}, "NDS Hem-Fir No. 2": {1300 * psi, 405 * psi},
		"NDS Spruce-Pine-Fir No. 1/No. 2": {1150 * psi, 425 * psi},
	}
	found := 0
	for _, r := range material.Timbers() {
		if c, ok := want[r.Name]; ok {
			found++
			assert.InDelta(t, c[0], r.Timber.Along, 1e-9, r.Name)
			assert.InDelta(t, c[1], r.Timber.Across, 1e-9, r.Name)
		}
	}
	assert.Len(t, want, found)
}
