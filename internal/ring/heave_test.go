package ring_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ring"
)

// TestHeaveSeesTheGreatestStressWithinATier: the mean of top and bottom would miss it.
func TestHeaveSeesTheGreatestStressWithinATier(t *testing.T) {
	in := stack(basis.Eurocode)
	in.Actions, in.Shoe = geom.Actions{N: -60e3, Vx: 30e3}, ring.Shoe{SizeX: 300, SizeY: 300}
	in.Tiers = []ring.Tier{tier(ring.Steel, 700, 300, 150e3)}
	in.Service = in.Actions
	r, _ := check(t, in)
	out := &r.Tiers[0]
	require.Positive(t, out.Within.Edge)
	needed := func(f ring.Face) float64 { return ring.Needed(f.Edge, out.Phi, out.C) }
	share := float64(out.Within.Level) / 8
	want := (needed(out.Top)+needed(out.Within))/2*share + (needed(out.Within)+needed(out.Bottom))/2*(1-share)
	assert.InEpsilon(t, want, r.Heave.Needed, 1e-12)
	assert.Greater(t, r.Heave.Needed, (needed(out.Top)+needed(out.Bottom))/2)
	var sheet derive.Sheet
	r.Derive(&sheet)
	assert.NoError(t, derive.Verify(sheet.Steps))
}
