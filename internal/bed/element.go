package bed

import "math"

// hermite returns the four cubics of an element of length h at a share s of it,
// for value and slope at its start, value and slope at its end.
func hermite(s, h float64) [4]float64 {
	r := 1 - s
	return [4]float64{(1 + 2*s) * r * r, h * s * r * r, s * s * (3 - 2*s), -h * s * s * r}
}

// bends returns their second derivatives.
func bends(s, h float64) [4]float64 {
	return [4]float64{(12*s - 6) / (h * h), (6*s - 4) / h, (6 - 12*s) / (h * h), (6*s - 2) / h}
}

// Gauss points of three on a length of one.
var (
	gaussAt = [3]float64{0.5 - 0.5*math.Sqrt(0.6), 0.5, 0.5 + 0.5*math.Sqrt(0.6)}
	gaussOf = [3]float64{5. / 18, 8. / 18, 5. / 18}
)

// line is one direction of an element: integrals of products of the cubics along
// it, and their values at the Gauss points.
type line struct {
	h          float64
	f00        [4][4]float64 // of f_i f_j
	f11        [4][4]float64 // of f_i' f_j'
	f22        [4][4]float64 // of f_i'' f_j''
	f02        [4][4]float64 // of f_i f_j''
	at         [3][4]float64
	worth      [3]float64 // weight of a Gauss point times h
	start, end float64    // along the plate
}

// newLine returns the integrals in closed form.
func newLine(start, end float64) line {
	h := end - start
	l := line{h: h, start: start, end: end}
	a, b := 1/(h*h*h), 1/(30*h)
	c := h / 420
	l.f22 = [4][4]float64{
		{12 * a, 6 * h * a, -12 * a, 6 * h * a}, {6 * h * a, 4 * h * h * a, -6 * h * a, 2 * h * h * a},
		{-12 * a, -6 * h * a, 12 * a, -6 * h * a}, {6 * h * a, 2 * h * h * a, -6 * h * a, 4 * h * h * a},
	}
	l.f11 = [4][4]float64{
		{36 * b, 3 * h * b, -36 * b, 3 * h * b}, {3 * h * b, 4 * h * h * b, -3 * h * b, -h * h * b},
		{-36 * b, -3 * h * b, 36 * b, -3 * h * b}, {3 * h * b, -h * h * b, -3 * h * b, 4 * h * h * b},
	}
	l.f00 = [4][4]float64{
		{156 * c, 22 * h * c, 54 * c, -13 * h * c}, {22 * h * c, 4 * h * h * c, 13 * h * c, -3 * h * h * c},
		{54 * c, 13 * h * c, 156 * c, -22 * h * c}, {-13 * h * c, -3 * h * h * c, -22 * h * c, 4 * h * h * c},
	}
	for i := range 4 {
		for j := range 4 {
			l.f02[i][j] = -l.f11[i][j] // by parts
		}
	}
	l.f02[0][1]--
	l.f02[2][3]++
	for g := range 3 {
		l.at[g] = hermite(gaussAt[g], h)
		l.worth[g] = gaussOf[g] * h
	}
	return l
}

// integral returns the integrals of the cubics and of (x - about) times them
// from a to b, by Gauss points that are exact for it.
func (l *line) integral(a, b, about float64) (f, first [4]float64) {
	a, b = max(a, l.start), min(b, l.end)
	if !(b > a) {
		return f, first
	}
	for g := range 3 {
		x := a + gaussAt[g]*(b-a)
		w := gaussOf[g] * (b - a)
		v := hermite((x-l.start)/l.h, l.h)
		for i := range 4 {
			f[i] += w * v[i]
			first[i] += w * v[i] * (x - about)
		}
	}
	return f, first
}

// matrix is the lower half of a symmetric matrix of an element by its freedoms.
type matrix [16][16]float64

// side returns which cubic along x and along y a freedom of an element is, in
// the order node (0,0), (0,1), (1,0), (1,1), of each w, w_x, w_y, w_xy.
func side(i int) (x, y int) {
	return i>>3<<1 | i&1, i>>2&1<<1 | i>>1&1
}

// plateMatrix returns the bending stiffness of an element of unit rigidity.
func plateMatrix(x, y *line, nu float64) matrix {
	var k matrix
	for i := range 16 {
		a, b := side(i)
		for j := range i + 1 {
			c, d := side(j)
			k[i][j] = x.f22[a][c]*y.f00[b][d] + x.f00[a][c]*y.f22[b][d] +
				nu*(x.f02[c][a]*y.f02[b][d]+x.f02[a][c]*y.f02[d][b]) +
				2*(1-nu)*x.f11[a][c]*y.f11[b][d]
		}
	}
	return k
}

func (k *matrix) times(by float64) {
	for i := range k {
		for j := range i + 1 {
			k[i][j] *= by
		}
	}
}

// sum returns the sum of the freedoms of an element, each times its cubics.
func sum(u *[16]float64, x, y *[4]float64) float64 {
	v := 0.0
	for a := range 4 {
		i := a>>1<<3 | a&1
		v += x[a] * (u[i]*y[0] + u[i+2]*y[1] + u[i+4]*y[2] + u[i+6]*y[3])
	}
	return v
}

// spread adds to the freedoms of an element by times its cubics.
func spread(u *[16]float64, x, y *[4]float64, by float64) {
	for a := range 4 {
		i, f := a>>1<<3|a&1, by*x[a]
		u[i] += f * y[0]
		u[i+2] += f * y[1]
		u[i+4] += f * y[2]
		u[i+6] += f * y[3]
	}
}

// bedMatrix returns the stiffness of a bed that has shares of its modulus, times
// their weights, at the Gauss points.
func bedMatrix(x, y *line, share *[3][3]float64) matrix {
	var k matrix
	for g := range 3 {
		var inner [4][4]float64
		for h := range 3 {
			for b := range 4 {
				for d := range b + 1 {
					inner[b][d] += share[g][h] * y.at[h][b] * y.at[h][d]
				}
			}
		}
		for i := range 16 {
			a, b := side(i)
			for j := range i + 1 {
				c, d := side(j)
				k[i][j] += x.at[g][a] * x.at[g][c] * inner[max(b, d)][min(b, d)]
			}
		}
	}
	return k
}
