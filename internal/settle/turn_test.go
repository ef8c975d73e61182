package settle_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// TestFlexibleFootingTurnsOnSoftGroundToo: a moment turns what stands on the ground,
// whether it is stiff or not. Under p_1 x/a with p_1 = 4 M/(pi a^3) the mean rotation is
//
//	8 p_1 (1 - nu^2)/E Int J_2(t)^2/t^2 dt
//
// here summed in 200 000 steps; a rigid circle turns by 3 M (1 - nu^2)/(4 a^3 E).
func TestFlexibleFootingTurnsOnSoftGroundToo(t *testing.T) {
	sum, step := 0.0, 0.002
	for i := range 200_000 {
		x := (float64(i) + 0.5) * step
		j := math.Jn(2, x)
		sum += j * j / (x * x) * step
	}
	more := 8 * 4 / math.Pi * sum / 0.75

	in := sandOverClay(bases[0])
	in.Layers = in.Layers[:1]
	in.Layers[0].Modulus, in.Layers[0].Poisson, in.HalfSpace = 5, 0.3, true
	in.Stages[0].Mx, in.Stages[0].My, in.Limits.Tilt = 6e6, 8e6, 1e-3
	rigid, _ := check(t, in)
	in.Rigid = false
	flexible, got := check(t, in)
	a := in.Diameter / 2
	assert.InEpsilon(t, 3*10e6*(1-0.09)/(4*a*a*a*5), rigid.Stages[0].Tilt, 1e-9)
	assert.InEpsilon(t, more, flexible.Stages[0].Tilt/rigid.Stages[0].Tilt, 1e-4)
	assert.Equal(t, limit.Fail, got["settle_tilt"].Verdict)
	var sheet derive.Sheet
	flexible.Derive(&sheet)
	require.NoError(t, derive.Verify(sheet.Steps))
}
