package bearing

import (
	"footward.example/footward/internal/basis"
)

const (
	clauseJ8   = "AISC 360-22 J8"
	crush      = 0.85 // share of f'c; AISC 360-22 J8
	confineCap = 2.0  // greatest sqrt(A2/A1); AISC 360-22 J8
	// frustum is how far the spread area may grow in all for each unit of
	// height: 2 horizontal to 1 vertical on both sides; ACI 318-19 22.8.3.2.
	frustum = 4.0
)

// us computes the bearing strength of concrete.
//
//	P_p = 0.85 f'c A1 sqrt(A2/A1) <= 1.7 f'c A1
//
// Source: AISC 360-22 J8, with A2 by ACI 318-19 22.8.3.2.
func (c *ConcreteStrength) us(in *Input, ex, ey float64) {
	c.spread(in, ex, ey, frustum*in.Block.Height)
	a := c.X * c.Y
	c.Pp = crush * in.Block.Concrete.Strength * a * min(c.Scale, confineCap)
	c.Rc = c.Pp * basis.ConcreteBearing.Factor(in.Design.Basis)
	c.Fp = c.Rc / a
}
