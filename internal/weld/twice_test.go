package weld_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/weld"
)

// TestOneLineOfWeldHasTwoFaces takes segments that lie on one another, wholly or in
// part, and neighbours that do not: both faces of a plate, lines end to end, crossings,
// corners, and chords of a small pipe.
func TestOneLineOfWeldHasTwoFaces(t *testing.T) {
	seg := func(x1, y1, x2, y2 float64) geom.Segment {
		return geom.Segment{A: geom.Point{X: x1, Y: y1}, B: geom.Point{X: x2, Y: y2}}
	}
	refused := func(closed bool, s ...geom.Segment) bool {
		in := fillet(basis.Eurocode, 0, 4, 235, 360, 0.8)
		in.Group.Segments, in.Group.Continuous = s, closed
		in.Group.Actions.Vx = 1e3
		var f limit.Faults
		weld.Validate(&in, &f)
		return len(f) > 0
	}
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(0, 0, 200, 0)), "both faces drawn as a line")
	assert.True(t, refused(false, seg(0, 0, 200, 0), seg(0, 0, 200, 0), seg(0, 0, 200, 0)), "three times the same")
	assert.True(t, refused(false, seg(0, 0, 200, 0), seg(200, 0, 0, 0), seg(100, 0, 300, 0)), "three over 100 mm")
	assert.True(t, refused(false, seg(-50, -50, 50, 50), seg(0, 0.05, 20, 20.05), seg(0, 0, 9, 9)), "askew, off by a hair")
	assert.True(t, refused(true, seg(0, 0, 200, 0), seg(200, 0, 0, 0)), "closed, to and fro")

	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(0, 0, 100, 0), seg(100, 0, 200, 0)), "one face in two pieces")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(200, 0, 300, 0)), "end to end")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(199.8, 0, 300, 0)), "end to end with rounding")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(250, 0, 300, 0)), "apart on one line")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(0, 1, 200, 1)), "both faces of a sheet")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(100, -50, 100, 50)), "crossing")
	assert.False(t, refused(false, seg(0, 0, 200, 0), seg(0, -5, 200, 5), seg(0, 5, 200, -5)), "crossing at a small angle")
	assert.False(t, refused(true, seg(0, 0, 200, 0), seg(200, 0, 200, 100), seg(200, 100, 0, 100), seg(0, 100, 0, 0)), "round a tube")
	said := func(s ...geom.Segment) []string {
		in := fillet(basis.Eurocode, 0, 4, 235, 360, 0.8)
		in.Group.Segments, in.Group.Actions.Vx = s, 1e3
		r, _ := check(t, &in)
		return codes(&r)
	}
	assert.Contains(t, said(seg(0, 0, 200, 0), seg(150, 0, 0, 0)), "weld_segments_coincide")
	assert.NotContains(t, said(seg(0, 0, 200, 0), seg(0, 8, 200, 8)), "weld_segments_coincide")
	assert.False(t, refused(true, circle(48, 20)...), "chords of a pipe")
}

// circle is the round weld of a pipe of a diameter, as chords.
func circle(diameter float64, chords int) []geom.Segment {
	at := func(i int) geom.Point {
		a := 2 * math.Pi * float64(i%chords) / float64(chords)
		return geom.Point{X: diameter / 2 * math.Cos(a), Y: diameter / 2 * math.Sin(a)}
	}
	var s []geom.Segment
	for i := range chords {
		s = append(s, geom.Segment{A: at(i), B: at(i + 1)})
	}
	return s
}
