package bed

import "math"

// band is the lower half of a symmetric matrix whose elements further than width
// from the diagonal are zero. Row i holds the columns i - width to i.
type band struct {
	n, width int
	a        []float64
}

// reset makes the matrix zero, of n rows.
func (b *band) reset(n, width int) {
	b.n, b.width = n, width
	size := n * (width + 1)
	if cap(b.a) < size {
		b.a = make([]float64, size)
	}
	b.a = b.a[:size]
	clear(b.a)
}

func (b *band) row(i int) []float64 {
	w := b.width + 1
	return b.a[i*w : i*w+w : i*w+w]
}

func (b *band) copy(from *band) {
	b.reset(from.n, from.width)
	copy(b.a, from.a)
}

// add adds to the element in row i and column j, j <= i.
func (b *band) add(i, j int, v float64) { b.a[i*(b.width+1)+j-i+b.width] += v }

// leastPivot is the share of a diagonal below which a pivot is rounding.
const leastPivot = 1e-14

// factor replaces the matrix by its factor of Cholesky, with the inverse of its
// diagonal; it reports whether the matrix is positive definite.
func (b *band) factor() bool {
	w := b.width
	for i := range b.n {
		ri := b.row(i)
		first := max(0, i-w)
		for j := first; j < i; j++ {
			rj := b.row(j)
			from := max(first, j-w)
			sum := ri[j-i+w] - dot(ri[from-i+w:j-i+w], rj[from-j+w:w])
			ri[j-i+w] = sum * rj[w]
		}
		have := ri[w]
		left := have - dot(ri[first-i+w:w], ri[first-i+w:w])
		if !(left > leastPivot*have) {
			return false
		}
		ri[w] = 1 / math.Sqrt(left)
	}
	return true
}

// dot returns the sum of products of two slices of the same length.
func dot(x, y []float64) float64 {
	y = y[:len(x)]
	var a, b, c, d float64
	i := 0
	for ; i+4 <= len(x); i += 4 {
		p, q := x[i:i+4:i+4], y[i:i+4:i+4]
		a += p[0] * q[0]
		b += p[1] * q[1]
		c += p[2] * q[2]
		d += p[3] * q[3]
	}
	for ; i < len(x); i++ {
		a += x[i] * y[i]
	}
	return (a + b) + (c + d)
}

// solve replaces v by the solution for it, of a factored matrix.
func (b *band) solve(v []float64) {
	w := b.width
	for i := range b.n {
		ri, first := b.row(i), max(0, i-w)
		v[i] = (v[i] - dot(ri[first-i+w:w], v[first:i])) * ri[w]
	}
	for i := b.n - 1; i >= 0; i-- {
		ri, first := b.row(i), max(0, i-w)
		v[i] *= ri[w]
		f := v[i]
		row, part := ri[first-i+w:w], v[first:i]
		part = part[:len(row)]
		for j, a := range row {
			part[j] -= f * a
		}
	}
}

// times adds to out the product with v.
func (b *band) times(v, out []float64) {
	w := b.width
	for i := range b.n {
		ri, first := b.row(i), max(0, i-w)
		row, part, to := ri[first-i+w:w], v[first:i], out[first:i]
		part, to = part[:len(row)], to[:len(row)]
		f, sum := v[i], ri[w]*v[i]
		for j, a := range row {
			sum += a * part[j]
			to[j] += a * f
		}
		out[i] += sum
	}
}
