package bearing

const (
	clausePartial = "EN 1992-1-1:2004 6.7(2)"
	clauseJoint   = "EN 1993-1-8:2005 6.2.5(7)"
)

const (
	spreadCap   = 3.0  // greatest sqrt(A_c1/A_c0); EN 1992-1-1:2004 6.7(2)
	groutShare  = 0.2  // least grout strength over f_ck, and greatest thickness over the plate's width; EN 1993-1-8:2005 6.2.5(7)
	thickGrout  = 50.0 // mm; above it the grout must be as strong as the concrete; EN 1993-1-8:2005 6.2.5(7)
	greatestFck = 90.0 // MPa; EN 1992-1-1:2004 3.1.2(2)
)

// eurocode computes the resistance of a partially loaded area and of the joint.
//
//	f_cd = alpha_cc f_ck / gamma_C
//	F_Rdu = A_c0 f_cd sqrt(A_c1/A_c0) <= 3 f_cd A_c0
//	f_jd = beta_j F_Rdu / A_c0
//
// Source: EN 1992-1-1:2004 3.1.6(1), 6.7(2); EN 1993-1-8:2005 6.2.5(7).
func (c *ConcreteStrength) eurocode(in *Input, ex, ey float64) {
	f := &in.Design.EC
	c.spread(in, ex, ey, in.Block.Height)
	c.Fcd = f.AlphaCC * in.Block.Concrete.Strength / f.GammaC
	a := c.X * c.Y
	c.FRdu = a * c.Fcd * min(c.Scale, spreadCap)
	c.Fjd = f.BetaJ * c.FRdu / a
	c.GroutReason = groutReason(in)
}

// groutReason says why the grout does not allow beta_j; empty: it does.
func groutReason(in *Input) string {
	b := &in.Block
	switch {
	case b.GroutThick == 0:
		return ""
	case b.GroutThick > thickGrout && b.GroutStrength < b.Concrete.Strength:
		return "grout thicker than 50 mm must be at least as strong as the concrete for beta_j to hold"
	case b.GroutStrength < groutShare*b.Concrete.Strength:
		return "grout weaker than 0.2 of the concrete's strength: beta_j does not hold"
	case b.GroutThick > groutShare*min(in.SizeX, in.SizeY):
		return "grout thicker than 0.2 of the plate's smaller side: beta_j does not hold"
	}
	return ""
}
