package record_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/record"
	"footward.example/footward/testdata/evidence"
)

// curve is the record of a plate by loads [N] and settlements [mm], one reading a
// stage.
func curve(diameter float64, s, p []float64) *record.Input {
	in := &record.Input{Diameter: diameter, Poisson: 0.3, SubgradeAt: 1.25}
	for i := range s {
		in.Stages = append(in.Stages, record.Stage{Phase: record.First, Load: p[i], Readings: []record.Reading{{Gauges: []float64{s[i]}}}})
	}
	return in
}

func read(t testing.TB, in *record.Input) *record.Result {
	t.Helper()
	r, err := record.Read(in)
	require.NoError(t, err)
	return r
}

func times(all []float64, by float64) (out []float64) {
	for _, v := range all {
		out = append(out, v*by)
	}
	return out
}

var (
	settled = []float64{1, 2, 4, 7, 11, 16}
	borne   = []float64{42e3, 76e3, 119e3, 163e3, 193e3, 219e3}

	plateArea = math.Pi * 300 * 300 / 4
	stresses  = []float64{.08, .16, .25, .33, .42, .50}
	sinking   = []float64{.90, 1.62, 2.27, 2.78, 3.28, 3.66}
)

// twice is a plate of 300 mm loaded, unloaded and loaded again.
func twice() *record.Input {
	in := curve(300, sinking, times(stresses, plateArea))
	x, y := []float64{.01, .08, .16, .25, .33, .42, .50}, []float64{2.60, 2.95, 3.19, 3.39, 3.53, 3.64, 3.75}
	for i := range x {
		phase := record.Reloading
		if i == 0 {
			phase = record.Unloading
		}
		in.Stages = append(in.Stages, record.Stage{Phase: phase, Load: x[i] * plateArea, Readings: []record.Reading{{Gauges: []float64{y[i]}}}})
	}
	return in
}

// held is a stage with a hold of an hour.
func held() *record.Input {
	in := curve(600, []float64{3.61}, []float64{100e3})
	s := &in.Stages[0]
	s.Readings = nil
	for i, at := range []float64{1, 2, 5, 10, 20, 60} {
		s.Readings = append(s.Readings, record.Reading{Minutes: at, Gauges: []float64{[]float64{3.10, 3.18, 3.30, 3.38, 3.47, 3.61}[i]}})
	}
	in.Years = 50
	return in
}

// clamped is fill of 600 mm held by four rods.
func clamped() *record.Clamp {
	return &record.Clamp{Asked: true, Fill: 60 * math.Pi * 600 * 600 / 4 / 900, Rods: 4 * 210000 * 157 / 1000, Preload: 40e3, Embedment: 0.5}
}

// creeping is a record whose holds creep by what is given.
func creeping(loads, alphas []float64) *record.Input {
	in := &record.Input{Diameter: 600, Poisson: 0.3, SubgradeAt: 1.25}
	for i, p := range loads {
		s := record.Stage{Phase: record.First, Load: p}
		for _, at := range []float64{1, 10, 100} {
			s.Readings = append(s.Readings, record.Reading{Minutes: at, Gauges: []float64{float64(2*i) + 1 + alphas[i]*math.Log10(at)}})
		}
		in.Stages = append(in.Stages, s)
	}
	return in
}

// TestFiguresOfRecords holds the kernel against every figure of testdata.
func TestFiguresOfRecords(t *testing.T) {
	loaded, reloaded, hold := read(t, curve(600, settled, borne)), read(t, twice()), read(t, held())
	c := clamped()
	first := &reloaded.FirstLoading
	four, ok := record.HyperbolaOf([]float64{.5, 1, 2, 3}, times([]float64{1 - math.Exp(-.5/3), 1 - math.Exp(-1./3), 1 - math.Exp(-2./3), 1 - math.Exp(-1)}, 200))
	require.True(t, ok)
	gauges := curve(600, []float64{0}, []float64{1e3})
	gauges.Stages[0].Readings[0].Gauges = []float64{3.2, 3.6, 4.1}
	broken := read(t, creeping([]float64{40e3, 80e3, 120e3, 160e3, 200e3, 240e3}, []float64{.05, .08, .12, .16, .42, .75}))
	got := map[string]float64{
		"B-chin-k0": loaded.Hyperbola.Initial / 1e3, "B-chin-se": loaded.Hyperbola.Error / 1e3, "B-chin-10pct": loaded.Hyperbola.Tenth / 1e3,
		"B-chin-cap": loaded.Hyperbola.Bound / 1e3, "B-chin-trap-4": four.Ultimate,
		"B-din-a0": first.Fit.A0, "B-din-a1": first.Fit.A1, "B-din-a2": first.Fit.A2, "B-din-Ev2": reloaded.Reload.Ev,
		"B-din-ratio": reloaded.Reload.Ev / first.Ev, "B-din-secant": first.Ev, "B-eplt": first.Eplt,
		"B-terzaghi-600": record.SandScale(600, 300), "B-terzaghi-900": record.SandScale(900, 300), "B-terzaghi-1500": record.SandScale(1500, 300),
		"B-ks-scale": 110132 / record.SandScale(900, 300), "B-slack-load": record.SlackLoad(c) / 1e3, "B-preload-loss": record.PreloadLoss(c) / 1e3,
		"B-creep-se": hold.Creep[0].Error, "B-creep-cycles": hold.Creep[0].Cycles, "B-creep-50y": hold.Creep[0].Life,
		"B-creep-load": broken.CreepLoad / 1e3, "B-gauges-mean": read(t, gauges).Points[0].Settlement,
	}
	all, err := evidence.Loads()
	require.NoError(t, err)
	for _, f := range all {
		if !strings.HasPrefix(f.ID, "B-") {
			continue
		}
		v, has := got[f.ID]
		require.True(t, has, "nothing is held against %s", f.ID)
		assert.InDelta(t, f.Expect[0], v, f.Tolerance+1e-12, f.ID)
		delete(got, f.ID)
	}
	assert.Empty(t, got, "figures that testdata lacks")
}
