package main

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestFigure(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0", 1: "1.000", 13.333: "13.33", 0.12344: "0.1234", 123456: "123456", 1e-5: "1.000e-05",
		99999.5: "100000", 2e9: "2.000e+09", -4.5: "-4.500", math.Inf(1): "?",
	} {
		assert.Equal(t, want, figure(v))
	}
	assert.Equal(t, "?", figure(math.NaN()))
	assert.Equal(t, "?", tidy(math.NaN()))
}

func TestUtilizationNeverRoundsAFailureToAPass(t *testing.T) {
	assert.Equal(t, "1.001", utilization(1.00001))
	assert.Equal(t, "1.000", utilization(1))
	assert.Equal(t, "0.999", utilization(0.9994))
	assert.Equal(t, "12.35", utilization(12.345678))
}

func TestSizeIsRoundedUp(t *testing.T) {
	assert.Equal(t, "4.1", size(4.01))
	assert.Equal(t, "4", size(4))
	assert.Equal(t, "4.1", size(4.1))
}

func TestProduct(t *testing.T) {
	for numbers, want := range map[string]string{
		"0.9 800 245 / 1.25":           "0.9 * 800 * 245 / 1.25",
		"max(1, 2) 3 (-4)":             "max(1, 2) * 3 * (-4)",
		"2 sqrt(3) + 1.5e-05 2 - 3 ^2": "2 * sqrt(3) + 1.5e-05 * 2 - 3 ^2",
		"":                             "",
	} {
		assert.Equal(t, want, product(numbers))
	}
}

// TestWrapLosesNothing holds for any text and width.
func TestWrapLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		width := rapid.IntRange(leastColumn, 60).Draw(t, "width")
		letters := func(s string) (n int) {
			for _, r := range printable(s) {
				if r != ' ' {
					n++
				}
			}
			return n
		}
		got := 0
		for _, l := range wrap(text, width) {
			if length(l) > width {
				t.Fatalf("%q is wider than %d", l, width)
			}
			got += letters(l)
		}
		if got != letters(text) {
			t.Fatalf("%d of %d letters are left", got, letters(text))
		}
	})
}
