package record_test

import (
	"errors"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/record"
)

func TestRecordThatDoesNotFitIsRefused(t *testing.T) {
	for field, change := range map[string]func(*record.Input){
		"plate":                                func(in *record.Input) { in.Diameter = 0 },
		"stages":                               func(in *record.Input) { in.Plunged, in.Stages = true, in.Stages[:1] },
		"stages[1].load_kn":                    func(in *record.Input) { in.Stages[1].Load = math.NaN() },
		"stages[1].phase":                      func(in *record.Input) { in.Stages[1].Phase = 0 },
		"stages[2].readings":                   func(in *record.Input) { in.Stages[2].Readings = nil },
		"stages[2].readings[0].settlements_mm": func(in *record.Input) { in.Stages[2].Readings[0].Gauges = []float64{1, 2} },
		"damage.stage":                         func(in *record.Input) { in.Damaged = 7 },
		"clamp":                                func(in *record.Input) { in.Clamp.Asked = true },
		"preload_record[1].minutes":            func(in *record.Input) { in.PreloadRecord = []record.Force{{2, 1}, {1, 1}} },
		"stages[0].readings[1].minutes":        func(in *record.Input) { r := &in.Stages[0].Readings; *r = append(*r, (*r)[0]) },
	} {
		in := curve(600, settled, borne)
		change(in)
		_, err := record.Read(in)
		var faults limit.Faults
		require.True(t, errors.As(err, &faults), field)
		var fields []string
		for _, f := range faults {
			fields = append(fields, f.Field)
		}
		assert.Contains(t, fields, field)
	}
}

func TestNoCriterionMetIsALowerBound(t *testing.T) {
	r := read(t, curve(600, settled, borne))
	assert.False(t, r.Failed())
	assert.Equal(t, 219e3, r.Resistance)
	assert.True(t, r.Hyperbola.Known)
}

func TestLeastCriterionGoverns(t *testing.T) {
	// 45 kN/mm at first, then 180 kN + 2.5 kN/mm: the lines meet at 190.6 kN.
	s := []float64{1, 2, 3, 4, 10, 20, 30, 70}
	var p []float64
	for _, v := range s {
		p = append(p, min(45*v, 180+2.5*v)*1e3)
	}
	in := curve(600, s, p)
	r := read(t, in)
	assert.Equal(t, record.Tangents, r.Governing)
	assert.InDelta(t, record.TangentLoad(45, 180, 2.5)*1e3, r.Resistance, 0.5)
	assert.InDelta(t, 190.6e3, r.Resistance, 50)
	tenth := r.Criteria[1]
	assert.True(t, tenth.Met)
	assert.InDelta(t, (180+2.5*60)*1e3, tenth.Load, 1)
	in.Plunged, in.Damaged, in.Damage = true, 3, "upper ring split"
	r = read(t, in)
	assert.Equal(t, record.Damage, r.Governing)
	assert.InDelta(t, 90e3, r.Resistance, 1e-6)
	assert.Equal(t, "upper ring split", r.Criteria[4].Reason)
	assert.InDelta(t, p[6], r.Criteria[0].Load, 1e-6)
}

func TestReloadBeyondATenthOfTheWidthIsFailure(t *testing.T) {
	in := curve(600, settled, borne)
	in.Stages = append(in.Stages,
		record.Stage{Phase: record.Unloading, Load: 0, Readings: []record.Reading{{Gauges: []float64{12}}}},
		record.Stage{Phase: record.Reloading, Load: 240e3, Readings: []record.Reading{{Gauges: []float64{65}}}})
	r := read(t, in)
	assert.Equal(t, record.TenthOfWidth, r.Governing)
	assert.Equal(t, 219e3, r.Resistance)
}

func TestRodsGoingSlackAreNoFailure(t *testing.T) {
	c := clamped()
	slack := record.SlackLoad(c)
	var s, p []float64
	for _, load := range []float64{10e3, 20e3, 30e3, 40e3, 60e3, 80e3, 100e3} {
		p = append(p, load)
		s = append(s, min(load, slack)/(c.Fill+c.Rods)+max(0, load-slack)/c.Fill)
	}
	in := curve(600, s, p)
	assert.Equal(t, record.Tangents, read(t, in).Governing)
	in.Clamp = *c
	r := read(t, in)
	assert.False(t, r.Failed())
	assert.True(t, r.SlackBreak)
	assert.InDelta(t, 45.72e3, r.Slack, 20)
	assert.Contains(t, r.Hyperbola.Reason, "")
	assert.False(t, r.Hyperbola.Known)
}

func TestFewStagesGiveNoFit(t *testing.T) {
	r := read(t, curve(300, settled[:4], borne[:4]))
	assert.False(t, r.FirstLoading.Known)
	assert.Contains(t, r.FirstLoading.Reason, "fewer than 5")
	assert.Contains(t, r.Hyperbola.Reason, "fewer than 5")
}

func TestSofteningCurveHasNoModulus(t *testing.T) {
	r := read(t, curve(300, []float64{1, 2.1, 3.4, 5, 6.9, 9.2}, []float64{10e3, 20e3, 30e3, 40e3, 50e3, 60e3}))
	assert.False(t, r.FirstLoading.Known)
	assert.Contains(t, r.FirstLoading.Reason, "grows faster than load")
}

func TestSeatingHasNoModulus(t *testing.T) {
	r := read(t, curve(300, []float64{1, 2, 4, 7, 11, 16}, []float64{10e3, 18e3, 28e3, 36e3, 42e3, 46e3}))
	assert.False(t, r.FirstLoading.Known)
	assert.Contains(t, r.FirstLoading.Reason, "seating")
}

func TestRecordAfterAGaugeMovedIsNotUsed(t *testing.T) {
	s := append([]float64{}, settled...)
	s[4] = 5
	r := read(t, curve(600, s, borne))
	assert.Equal(t, 5, r.Unread)
	assert.Equal(t, borne[3], r.Resistance)
}

func TestSofterReloadHasNoModulus(t *testing.T) {
	in := twice()
	for i := range in.Stages {
		if in.Stages[i].Phase != record.First {
			g := in.Stages[i].Readings[0].Gauges
			g[0] = 2.6 + (g[0]-2.6)*6
		}
	}
	r := read(t, in)
	assert.False(t, r.Reload.Known)
	assert.Contains(t, r.Reload.Reason, "softer")
}

func TestModulusIsTheSecantOfTheParabola(t *testing.T) {
	r := read(t, twice())
	f := &r.FirstLoading.Fit
	s := func(x float64) float64 { return f.A0 + f.A1*x + f.A2*x*x }
	assert.InEpsilon(t, 0.75*300*0.4*0.5/(s(0.35)-s(0.15)), r.FirstLoading.Ev, 1e-12)
}

func TestShortHoldTellsNoCreep(t *testing.T) {
	in := held()
	in.Stages[0].Readings = in.Stages[0].Readings[:3]
	r := read(t, in)
	assert.Contains(t, r.Creep[0].Reason, "log cycle")
}

func TestFallenLoadIsNoCreepStage(t *testing.T) {
	in := held()
	in.Stages[0].Readings[4].Load = 94e3
	assert.Contains(t, read(t, in).Creep[0].Reason, "5 %")
}

func TestNoMeasurableCreepTakesItsBound(t *testing.T) {
	in := held()
	for i, s := range []float64{3.1, 3.3, 3.0, 3.2, 3.1, 3.15} {
		in.Stages[0].Readings[i].Gauges[0] = s
	}
	c := read(t, in).Creep[0]
	assert.True(t, c.None)
	assert.Greater(t, c.Used, c.Alpha)
	assert.Greater(t, c.Life, 3.15)
}

func TestNoiseNeverNarrowsTheErrorOfCreep(t *testing.T) {
	last := -1.0
	for noise := 0.0; noise < 0.05; noise += 0.01 {
		in := held()
		for i := range in.Stages[0].Readings {
			v := &in.Stages[0].Readings[i]
			v.Gauges[0] = 3 + 0.3*math.Log10(v.Minutes) + noise*[]float64{1, -1, 1, -1, 1, -1}[i]
		}
		c := read(t, in).Creep[0]
		assert.Greater(t, c.Error, last)
		last = c.Error - 1e-12
	}
}

func TestTiltedPlateIsJudgedByItsEdge(t *testing.T) {
	in := curve(600, settled, borne)
	in.GaugeRadius = 250
	for i := range in.Stages {
		g := &in.Stages[i].Readings[0].Gauges
		*g = []float64{settled[i], settled[i], 5 * settled[i]}
	}
	r := read(t, in)
	assert.True(t, r.Tilted)
	assert.True(t, r.Criteria[1].Met, "the edge settles 80 mm, a tenth of the width is 60")
	assert.InDelta(t, 0.002083, record.Tilt([]float64{3.2, 3.6, 4.1}, 250), 5e-7)
}

func TestGreatScaleIsABoundOnly(t *testing.T) {
	in := twice()
	in.Footing.Width = 900
	assert.False(t, read(t, in).Subgrade.BoundOnly)
	in.Footing.Width = 901
	r := read(t, in)
	assert.True(t, r.Subgrade.BoundOnly)
	in.Footing.Width = 1e5
	assert.LessOrEqual(t, read(t, in).Subgrade.Scale, 4.0)
	in.Footing = record.Footing{Width: 900, Clay: true}
	assert.InDelta(t, 3, read(t, in).Subgrade.Scale, 1e-12)
}

func TestPreloadFadesByItsRecord(t *testing.T) {
	in := curve(600, settled, borne)
	in.Years, in.Clamp = 50, *clamped()
	for _, at := range []float64{1, 10, 100, 1000, 10000} {
		in.PreloadRecord = append(in.PreloadRecord, record.Force{Minutes: at, Force: 40e3 - 1e3*math.Log10(at)})
	}
	f := read(t, in).Fade
	assert.True(t, f.Known)
	assert.InDelta(t, 40e3-1e3*math.Log10(50*365.25*1440), f.Left, 1e-3)
	assert.InDelta(t, f.Left, f.Least, 1e-3, "without scatter")
	in.PreloadRecord = in.PreloadRecord[:3]
	assert.Contains(t, read(t, in).Fade.Reason, "4 readings")
}

func TestDerivationOfARecordCanBeFollowed(t *testing.T) {
	full := twice()
	full.Footing.Width, full.Clamp, full.Years = 900, *clamped(), 50
	full.Clamp.Preload = 4e5
	curved := curve(600, settled, borne)
	for name, in := range map[string]*record.Input{
		"plate": full, "hold": held(), "curve": curved,
		"creep": creeping([]float64{40e3, 80e3, 120e3, 160e3, 200e3, 240e3}, []float64{.05, .08, .12, .16, .42, .75}),
	} {
		r := read(t, in)
		var d derive.Sheet
		r.Derive(&d)
		assert.NoError(t, derive.Verify(d.Steps), name)
		assert.NotEmpty(t, d.Steps)
		var n limit.Notices
		r.Notices(&n)
		assert.NotEmpty(t, n.All())
	}
}
