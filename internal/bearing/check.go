package bearing

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Result holds every intermediate value of a check.
type Result struct {
	in         *Input
	Compressed bool    // whether N presses at all
	P          float64 // compression, a magnitude [N]
	Ex         float64 // eccentricity of the resultant along x [mm]
	Ey         float64 // along y [mm]
	Ratio      float64 // greater of 2|e_x|/B and 2|e_y|/L [-]
	OnBase     bool    // whether the resultant lies inside the contact area
	X          float64 // effective size along x [mm]
	Y          float64 // effective size along y [mm]
	A          float64 // effective area [mm2]
	Q          float64 // pressure on the effective area [MPa]

	Concrete ConcreteStrength // on the effective area
	Timber   TimberStrength
}

// Check verifies a contact area on its support. Errors: limit.Faults.
func Check(in *Input) (Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Result{}, faults
	}
	r := Result{in: in, Compressed: in.Actions.N < 0}
	if !r.Compressed {
		return r, nil
	}
	r.P = -in.Actions.N
	r.Ex, r.Ey = in.Actions.My/r.P, -in.Actions.Mx/r.P
	r.Ratio = max(2*math.Abs(r.Ex)/in.SizeX, 2*math.Abs(r.Ey)/in.SizeY)
	r.OnBase = r.Ratio < 1
	if !r.OnBase {
		return r, nil
	}
	r.X, r.Y = in.SizeX-2*math.Abs(r.Ex), in.SizeY-2*math.Abs(r.Ey)
	r.A = r.X * r.Y
	r.Q = r.P / r.A
	switch in.Medium {
	case Concrete:
		r.Concrete = concreteStrength(in, r.X, r.Y, r.Ex, r.Ey)
	case Timber:
		r.Timber = timberStrength(in, r.X, r.Y)
	}
	return r, nil
}

// Strength is the pressure that a support offers over the whole contact area
// under a concentric load.
type Strength struct {
	in       *Input
	Pressure float64 // available pressure [MPa]
	Clause   string
	Concrete ConcreteStrength
	Timber   TimberStrength
}

// Available returns the pressure that the support offers over the whole contact
// area: f_jd (Eurocode on concrete), phi f_p or f_p/Omega (US on concrete), the
// design strength of timber, or the pressure given.
//
// Errors: limit.Faults; *limit.Scope where the basis has no value.
//
// Source: EN 1993-1-8:2005 6.2.5(7); AISC 360-22 J8; as the medium says.
func Available(in *Input) (Strength, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if len(faults) > 0 {
		return Strength{}, faults
	}
	s := Strength{in: in}
	switch in.Medium {
	case Concrete:
		s.Concrete = concreteStrength(in, in.SizeX, in.SizeY, 0, 0)
		if s.Concrete.GroutReason != "" {
			return s, &limit.Scope{Clause: clauseJoint, Reason: s.Concrete.GroutReason}
		}
		s.Pressure, s.Clause = s.Concrete.Fjd, clauseJoint
		if in.Design.Basis.US() {
			s.Pressure, s.Clause = s.Concrete.Fp, clauseJ8
		}
	case Timber:
		s.Timber = timberStrength(in, in.SizeX, in.SizeY)
		s.Pressure, s.Clause = s.Timber.Pressure(), timberClause(in)
	case Given:
		s.Pressure, s.Clause = in.Given.Pressure, "given in the request"
	}
	return s, nil
}

// ConcreteStrength is the strength of concrete under a loaded rectangle.
type ConcreteStrength struct {
	X, Y        float64 // loaded sizes [mm]
	RoomX       float64 // to which the loaded area may grow along x [mm]
	RoomY       float64 // [mm]
	Scale       float64 // sqrt(A_c1/A_c0) or sqrt(A2/A1), before the cap [-]
	Fcd         float64 // design strength of the concrete, Eurocode [MPa]
	FRdu        float64 // resistance of the loaded area, Eurocode [N]
	Fjd         float64 // design bearing strength of the joint, Eurocode [MPa]
	GroutReason string  // why beta_j may not be used; empty: it may
	Pp          float64 // nominal strength, US [N]
	Rc          float64 // phi P_p or P_p/Omega [N]
	Fp          float64 // phi f_p or f_p/Omega [MPa]
}

func concreteStrength(in *Input, x, y, ex, ey float64) ConcreteStrength {
	c := ConcreteStrength{X: x, Y: y}
	if in.Design.Basis == basis.Eurocode {
		c.eurocode(in, ex, ey)
	} else {
		c.us(in, ex, ey)
	}
	return c
}

// spread finds the scale by which the loaded rectangle can grow inside the block,
// similar and concentric, when each side may grow by at most reach [mm] in all.
func (c *ConcreteStrength) spread(in *Input, ex, ey, reach float64) {
	b := &in.Block
	c.RoomX = min(b.SizeX-2*math.Abs(b.OffsetX+ex), c.X+reach)
	c.RoomY = min(b.SizeY-2*math.Abs(b.OffsetY+ey), c.Y+reach)
	c.Scale = min(c.RoomX/c.X, c.RoomY/c.Y)
}
