package record

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// Line is a straight line by least squares.
type Line struct {
	Slope, Intercept float64 // [unit of y per x], [unit of y]
	Error            float64 // standard error of the slope [unit of the slope]; 0 below 3 points
	Rest             float64 // sum of the squares left [square of y]
	mean, squares    float64
	n                int
}

// LineOf returns the line through points, false where x does not vary.
//
// Source: least squares, x centred.
func LineOf(x, y []float64) (l Line, ok bool) {
	l.n = len(x)
	if l.n < 2 {
		return l, false
	}
	var my float64
	for i := range x {
		l.mean += x[i] / float64(l.n)
		my += y[i] / float64(l.n)
	}
	var xy float64
	for i := range x {
		l.squares += (x[i] - l.mean) * (x[i] - l.mean)
		xy += (x[i] - l.mean) * (y[i] - my)
	}
	if !(l.squares > 0) {
		return l, false
	}
	l.Slope = xy / l.squares
	l.Intercept = my - l.Slope*l.mean
	for i := range x {
		r := y[i] - l.Intercept - l.Slope*x[i]
		l.Rest += r * r
	}
	if l.n > 2 {
		l.Error = math.Sqrt(l.Rest / float64(l.n-2) / l.squares)
	}
	return l, true
}

// upper is the one-sided 95 % bound of the slope; it needs 3 points.
func (l Line) upper() float64 {
	return l.Slope + student(float64(l.n-2))*l.Error
}

func student(dof float64) float64 {
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: dof}.Quantile(0.95)
}

// Break is where two lines meet.
type Break struct {
	At           float64 // [unit of x]
	Value        float64 // [unit of y]
	Before, Past Line
	Split        int // points of the first line
}

// BreakOf returns where two lines through the points meet, of all splits with at
// least two points a side the one with the least sum of squares; false below four
// points, or where the lines do not meet between the points.
//
// Source: least squares.
func BreakOf(x, y []float64) (b Break, ok bool) {
	least := math.Inf(1)
	for k := 2; k <= len(x)-2; k++ {
		before, one := LineOf(x[:k], y[:k])
		past, two := LineOf(x[k:], y[k:])
		if one && two && before.Rest+past.Rest < least {
			least = before.Rest + past.Rest
			b = Break{Before: before, Past: past, Split: k}
			ok = before.Slope != past.Slope
		}
	}
	if !ok {
		return b, false
	}
	b.At = (b.Past.Intercept - b.Before.Intercept) / (b.Before.Slope - b.Past.Slope)
	b.Value = b.Before.Intercept + b.Before.Slope*b.At
	return b, b.At >= x[0] && b.At <= x[len(x)-1]
}

// Parabola is y = A0 + A1 x + A2 x^2 by least squares.
type Parabola struct {
	A0, A1, A2 float64 // [unit of y], per x, per square of x
}

// ParabolaOf returns the parabola through points, false where they do not settle
// it.
//
// Source: least squares, x scaled to its greatest.
func ParabolaOf(x, y []float64) (p Parabola, ok bool) {
	var scale float64
	for _, v := range x {
		scale = max(scale, math.Abs(v))
	}
	if !(scale > 0) || len(x) < 3 {
		return p, false
	}
	var m [3][4]float64
	for i := range x {
		u := x[i] / scale
		row := [3]float64{1, u, u * u}
		for j := range row {
			for k := range row {
				m[j][k] += row[j] * row[k]
			}
			m[j][3] += row[j] * y[i]
		}
	}
	for i := range m {
		best := i
		for j := i + 1; j < 3; j++ {
			if math.Abs(m[j][i]) > math.Abs(m[best][i]) {
				best = j
			}
		}
		m[i], m[best] = m[best], m[i]
		if !(math.Abs(m[i][i]) > 1e-12*float64(len(x))) {
			return p, false
		}
		for j := range m {
			if j == i {
				continue
			}
			f := m[j][i] / m[i][i]
			for k := i; k < 4; k++ {
				m[j][k] -= f * m[i][k]
			}
		}
	}
	return Parabola{m[0][3] / m[0][0], m[1][3] / m[1][1] / scale, m[2][3] / m[2][2] / scale / scale}, true
}
