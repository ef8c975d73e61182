package pin_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pin"
)

// magnitude draws a number evenly over its orders of magnitude.
func magnitude(t *rapid.T, low, high float64, label string) float64 {
	return math.Exp(rapid.Float64Range(math.Log(low), math.Log(high)).Draw(t, label))
}

// wide draws from all that the contract allows, put together so that most fit.
func wide(t *rapid.T) *pin.Input {
	in := random(t)
	d := magnitude(t, 1, 200, "wide d")
	in.Pin.Diameter, in.Pin.Washer = d, 0
	in.Pin.Fu = magnitude(t, 100, 2000, "f_u")
	in.Pin.Fy = in.Pin.Fu * rapid.Float64Range(0.5, 1).Draw(t, "f_y")
	in.Pin.Fyb = in.Pin.Fy
	in.Plates.Hole = d * rapid.Float64Range(1, 2).Draw(t, "hole")
	in.Plates.Thickness = magnitude(t, 0.1, 300, "wide t")
	in.Plates.Corrosion = in.Plates.Thickness * rapid.SampledFrom([]float64{0, 0.5, 0.99}).Draw(t, "wide loss")
	fy := magnitude(t, 100, 1000, "plate f_y")
	in.Plates.Steel = material.Steel{Fy: fy, Fu: fy * rapid.Float64Range(1, 2).Draw(t, "plate f_u")}
	in.Plates.Gap = rapid.SampledFrom([]float64{0, 0, 1, 1000}).Draw(t, "wide gap")
	l := &in.Layout
	l.Rows, l.InRow = rapid.IntRange(1, 16).Draw(t, "wide rows"), rapid.IntRange(1, 32).Draw(t, "wide in row")
	l.SpacingAlong = in.Plates.Hole * magnitude(t, 1, 20, "wide a1")
	l.SpacingAcross = in.Plates.Hole * magnitude(t, 1, 20, "wide a2")
	l.EndDistance = d * magnitude(t, 0.5, 30, "wide a3")
	l.EdgeDistance = d * magnitude(t, 0.5, 30, "wide a4")
	across := float64(l.Rows-1) * l.SpacingAcross
	in.Timber.AcrossPin = across + 2*l.EdgeDistance*magnitude(t, 1, 10, "wide h")
	in.Timber.AlongPin = magnitude(t, 10, 10000, "wide b")
	in.Timber.Duration = pin.Duration(rapid.IntRange(0, 5).Draw(t, "duration"))
	in.Plates.Width = across + in.Plates.Hole*magnitude(t, 1.001, 20, "wide w")
	in.Plates.EndDistance = d * magnitude(t, 0.1, 30, "wide e1")
	in.Plates.Arm = float64(l.InRow)*l.SpacingAlong/2 + magnitude(t, 0.1, 5000, "wide arm")
	in.Plates.Eccentricity = 0
	if in.Plates.Arrangement == pin.Outside {
		in.Plates.Eccentricity = in.Timber.AlongPin / 2 * rapid.SampledFrom([]float64{0, 0.1, 0.999}).Draw(t, "wide e")
	}
	sign := rapid.SampledFrom([]float64{-1, 0, 1})
	in.Actions = pin.Actions{
		N: sign.Draw(t, "sign N") * magnitude(t, 1, 1e8, "wide N"), V: sign.Draw(t, "sign V") * magnitude(t, 1, 1e8, "wide V"),
		M: sign.Draw(t, "sign M") * magnitude(t, 1, 1e11, "wide M"),
	}
	return in
}

// TestAllThatTheContractAllowsIsAnsweredOrRefused: what Validate lets pass has an
// answer of finite numbers that can be followed; nothing else is refused later.
func TestAllThatTheContractAllowsIsAnsweredOrRefused(t *testing.T) {
	answered := 0
	rapid.Check(t, func(t *rapid.T) {
		in := wide(t)
		var faults limit.Faults
		pin.Validate(in, &faults)
		r, err := pin.Check(in)
		var refused limit.Faults
		if errors.As(err, &refused) {
			assert.NotEmpty(t, faults, "refused, but not by Validate")
			return
		}
		assert.NoError(t, err)
		assert.Empty(t, faults)
		answered++
		var states limit.List
		r.States(&states)
		for _, s := range states.All() {
			finite(t, map[string]limit.State{s.Kind.ID: s})
			if s.Size != limit.NoSize {
				assert.NotEqual(t, limit.Fail, verdict(*in, s.Kind.ID, s.Size, s.Required), "%s, size %d of %g mm", s.Kind.ID, s.Size, s.Required)
			}
		}
		var sheet derive.Sheet
		r.Derive(&sheet)
		assert.NoError(t, derive.Verify(sheet.Steps))
	})
	assert.Positive(t, answered)
}
