package plate

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
)

func (r *Result) deriveUS(s *derive.Sheet) {
	u := &r.US
	s.Step("q_max", "f_B B", u.Q, "N/mm", clauseBlock)
	if r.Case == Uniaxial && r.P > 0 {
		s.Step("e", "M / P", u.E, "mm", "statics")
		s.Step("e_crit", "L / 2 - P / (2 q_max)", u.Ecrit, "mm", clauseBlock)
		switch l := r.frame.L; {
		case u.Small && len(r.in.Rods.At) > 0:
			s.Step("u_e", "P / (q_max L)", r.P/(u.Q*l), "", "strength of the bed under the compression alone")
		case u.Small:
			s.Step("u_e", "max(e / e_crit, P / (q_max (L - 2 e)))", max(u.E/u.Ecrit, r.P/(u.Q*(l-2*u.E))), "", "eccentricity, and pressure over its strength")
		}
	}
	l := &r.lifts
	if l.row[first].Count > 0 && (u.Fp > 0 || u.Lifted) && !u.Small && r.Case != Concentric {
		s.Given("f", l.row[first].S, "mm", "row of rods outside the footprint")
		if r.Case == Uplift {
			s.Given("M", 0, "Nmm", "no moment")
		}
		s.Step("M_f", "M - N_Ed f", u.Need, "Nmm", "moment about the rods")
		if u.Need > 0 {
			s.Step("M_f,max", "q_max (f + L / 2)^2 / 2", u.Have, "Nmm", "greatest moment of the pressure about the rods")
		}
	}
	switch {
	case u.Fp == 0:
	case u.Bent:
		r.deriveBent(s)
	case r.Case == Concentric:
		s.Step("f_p", "P / (L B)", u.Fp, "MPa", clauseCantilever)
		s.Given("Y", u.Y, "mm", "pressed over the whole length")
	case u.Small:
		s.Step("Y", "L - 2 e", u.Y, "mm", clauseBlock)
		s.Step("f_p", "P / (B Y)", u.Fp, "MPa", clauseBlock)
	default:
		s.Step("Y", block, u.Y, "mm", clauseBlock)
		s.Step("f_p", "f_B", u.Fp, "MPa", clauseBlock)
	}
	r.deriveResistance(s)
	if u.Fp > 0 {
		r.derivePress(s)
	}
	if !u.Lifted {
		return
	}
	if r.Both {
		s.Given("f_2", l.row[other].S, "mm", "row of rods on the other side, which lifts too")
	}
	switch shown := r.frame.Side == l.side; {
	case u.Shared:
		s.Given("T", u.Tu, "N", "from the sharing of the base, which is more than of the block")
	case r.Both && shown:
		s.Step("T", "(N_Ed f_2 + M) / (f + f_2)", u.Tu, "N", "statics: both sides lift")
	case r.Both:
		s.Step("T", "(N_Ed f - M) / (f + f_2)", u.Tu, "N", "statics: both sides lift")
	default:
		if u.Bent {
			s.Step("Y_0", block, u.Block, "mm", clauseBlock)
			s.Step("T", "max(0, q_max Y_0 + N_Ed)", u.Tu, "N", clauseBlock)
			break
		}
		s.Step("T", "max(0, q_max Y + N_Ed)", u.Tu, "N", clauseBlock)
	}
	s.Given("f_r", r.Row.S, "mm", "row of rods that governs")
	s.Step("x", "f_r - h / 2 + t_f / 2", u.Arm, "mm", clauseTension)
	s.Given("b_45", u.Wide, "mm", "width at 45 degrees of the rod that has the least")
	s.Step("m_f", "f_r - h / 2", r.Row.S-r.frame.H/2, "mm", "from the flange to the rods")
	u.Corner.derive(r, s, "m_f")
	s.Step("b_r", "min(b_45, h_y x / n_r)", u.Width, "mm", clauseTension+"; not above the yield line")
	s.Step("m_t", "T / n_r x / b_r", u.Mt, "N", clauseTension)
	s.Step("u_t", "m_t / m_R", u.Mt/u.Rm, "", clauseTension)
}

// block is the length of the block that balances with the rods.
const block = "f + L / 2 - sqrt((f + L / 2)^2 - 2 M_f / q_max)"

// deriveBent writes what the base was found to press.
func (r *Result) deriveBent(s *derive.Sheet) {
	u := &r.US
	if u.Fp == r.in.Shared.Peak {
		s.Given("f_p", u.Fp, "MPa", "greatest pressure, from the sharing of the base")
		s.Given("Y", u.Y, "mm", "taken over the whole length")
		return
	}
	_, sum, _ := r.sharing()
	s.Given("T_all", sum, "N", "tension of all rods, from the sharing of the base")
	s.Step("f_p", "f_B", u.Fp, "MPa", clauseBlock)
	s.Step("Y", "min(L, max(0, T_all - N_Ed) / q_max)", u.Y, "mm", "block that presses as much as rods and actions pull")
}

// deriveResistance writes the available moment per width, in N since Nmm/mm is
// N.
func (r *Result) deriveResistance(s *derive.Sheet) {
	if r.in.Design.Basis == basis.USLRFD {
		s.Step("m_R", "phi_b f_y t^2 / 4", r.US.Rm, "N", "AISC 360-22 F11; per width")
	} else {
		s.Step("m_R", "f_y t^2 / 4 / Omega_b", r.US.Rm, "N", "AISC 360-22 F11; per width")
	}
}

func (r *Result) derivePress(s *derive.Sheet) {
	u, f, in := &r.US, &r.frame, r.in
	along, across := depthLine, depthLine
	switch in.Footprint.Shape {
	case Pipe:
		along, across = widthLine, widthLine
	case ISection:
		if f.AlongY {
			across = widthLine
		} else {
			along = widthLine
		}
	}
	s.Given("k_1", along, "", "bending line along "+axis(f.AlongY)+"; "+clauseCantilever)
	s.Given("k_2", across, "", "bending line along "+axis(!f.AlongY)+"; "+clauseCantilever)
	s.Step("m", "(L - k_1 h) / 2", u.M1, "mm", clauseCantilever)
	s.Step("n", "(B - k_2 b) / 2", u.N1, "mm", clauseCantilever)
	switch in.Footprint.Shape {
	case ISection:
		if r.Case == Concentric || !in.Shared.Elastic {
			s.Step("X", "4 h b / (h + b)^2 f_p / f_B", u.X, "", clauseCantilever)
			s.Step("lambda", "min(1, 2 sqrt(min(1, X)) / (1 + sqrt(1 - min(1, X))))", u.Lambda, "", clauseCantilever)
		} else {
			s.Given("lambda", u.Lambda, "", "greatest value, on an elastic bed under a moment")
		}
		s.Step("l_i", "lambda sqrt(h b) / 4", u.Inside, "mm", "lambda n'; "+clauseCantilever)
	case Tube:
		s.Step("a", "min(h, b) - 2 t_f", min(f.H, f.W)-2*in.Footprint.Thick, "mm", "inside of the tube")
		s.Step("k", "a / (max(h, b) - 2 t_f)", (min(f.H, f.W)-2*in.Footprint.Thick)/(max(f.H, f.W)-2*in.Footprint.Thick), "", "inside of the tube")
		s.Step("l_i", "a (sqrt(3 + k^2) - k) / sqrt(12)", u.Inside, "mm", "yield lines of a simply supported slab")
	case Pipe:
		s.Step("l_i", "(h - 2 t_f) / 2 / sqrt(3)", u.Inside, "mm", "yield lines of a simply supported slab")
	case TwoPlates:
		clear := "(h - 2 t_f) / 2"
		if f.AlongY {
			clear = "(b - 2 t_f) / 2"
		}
		s.Step("l_i", clear, u.Inside, "mm", "simple span between the plates")
	default:
		s.Given("l_i", 0, "mm", "solid footprint")
	}
	s.Step("m_1", "f_p min(Y, m) (m - min(Y, m) / 2)", u.Along, "N", clauseBlock)
	deriveStrip(s, "m_2", "n", "Y", u.Y, u.N1, f.L, u.Across)
	deriveStrip(s, "m_3", "l_i", "(Y - m)", u.Y-u.M1, u.Inside, f.L-u.M1, u.Under)
	s.Step("m_p", "max(m_1, m_2, m_3)", u.Mu, "N", clauseCantilever)
	s.Step("u_p", "m_p / m_R", u.Mu/u.Rm, "", clauseCantilever)
}

func deriveStrip(s *derive.Sheet, name, lever, length string, y, v, l, moment float64) {
	if strip(y, v, l) == 1 {
		s.Step(name, "f_p "+lever+"^2 / 2", moment, "N", clauseCantilever)
		return
	}
	s.Step(name, "f_p "+lever+"^2 / 2 min(1, max(0, "+length+") / ("+lever+" / 3))", moment, "N",
		clauseCantilever+"; a strip pressed over less than a third of "+lever+" bends that width")
}
