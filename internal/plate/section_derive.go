package plate

import (
	"fmt"
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// The notices of the sections.
var (
	sectionModel = &limit.Notice{Code: "plate_sections", Severity: limit.Caution,
		Text: "The clauses' own pattern does not fit all that acts here: the plate is held by straight sections at any angle, with what presses and pulls beyond them, an engineering model by statics. It does not cover stiffeners; an engineer must judge."}
	sectionAlone = &limit.Notice{Code: "plate_axes_apart", Severity: limit.Info,
		Text: "Moments act about both axes: the clauses' own states hold one of them with the axial force alone; the sections at any angle hold both together."}
	sectionBay = &limit.Notice{Code: "plate_rods_between_flanges", Severity: limit.Info,
		Text: "Rods between flanges, or between two plates, bend the plate as if it were held along the web or the nearer plate alone, on the safe side."}
	sectionPrying = &limit.Notice{Code: "plate_section_prying", Severity: limit.Caution,
		Text: "The rods are so short that prying develops (L_b not above L_b*): the force in them and in what holds them is higher than their tension found for the sections. The plate is not credited with it."}
	sectionLeft = &limit.Notice{Code: "plate_rods_left_out", Severity: limit.Caution,
		Text: "Rods on the weld of the footprint, or inside a hollow or solid one, are left out where actions are shared for the sections."}
)

func (r *Result) noticesSections(l *limit.Notices) {
	s := &r.Sections
	if !s.Known {
		return
	}
	l.Add(sectionModel)
	if r.Biaxial {
		l.Add(sectionAlone)
	}
	for i, p := range r.in.Rods.At {
		if _, ok := r.in.inBay(p); ok {
			l.Add(sectionBay)
		} else if !r.Counts(i) {
			l.Add(sectionLeft)
		}
	}
	l.Add(columnApart)
	if s.Mt > 0 {
		l.Add(rodsToo)
		for i := range s.Contact.Tensions {
			if r.sectionPull(i) > s.Contact.Tensions[i] {
				l.Add(sectionPrying)
			}
		}
		if r.in.Design.Basis == basis.Eurocode && r.in.WeldThroat == 0 {
			l.Add(weldless)
		}
		if r.in.Design.Basis.US() {
			l.Add(pryingUS)
		}
	}
	if s.Mp > 0 && r.in.Design.Basis.US() {
		l.Add(bearingApart)
	}
}

// deriveSections writes the sections that govern.
func (r *Result) deriveSections(s *derive.Sheet) {
	c := &r.Sections
	if !c.Known || !c.Contact.Found {
		return
	}
	in, us := r.in, r.in.Design.Basis.US()
	for i, v := range c.Contact.Tensions {
		if r.Counts(i) && v > 0 {
			s.Given(fmt.Sprintf("T_i#%d", i+1), v, "N", "tension of a rod from the contact of plate and support; statics")
		}
	}
	switch {
	case !(c.Mp > 0):
	case !us:
		s.Given("f_req", c.Contact.Need*in.Bearing.Pressure, "MPa", "least strength within c of the footprint that balances the actions; statics of a plastic block")
		s.Step("m_p,req", "f_req c^2 / 2", c.Mp, "N", clausePressed)
		s.Step("m_p,R", "f_y t^2 / 6 / gamma_M0", c.Rp, "N", "elastic section, as EN 1993-1-8:2005 6.2.5(4)")
		s.Step("u_pa", "m_p,req / m_p,R", c.Mp/c.Rp, "", clausePressed)
	case c.Inside:
		s.Given("m_pa", c.Mp, "N", "of the plate inside the footprint under what presses there; "+clausePressedUS)
		r.deriveSectionR(s)
		s.Step("u_pa", "m_pa / m_aR", c.Mp/c.Rp, "", clausePressedUS)
	default:
		l := &c.Pressed
		s.Given("a_p", l.Angle*180/math.Pi, "deg", "direction of the section that is pressed most, from x")
		s.Given("h_p", l.Offset, "mm", "its distance from the column axis")
		s.Given("M_pa", l.Moment, "Nmm", "moment of the pressure beyond it")
		s.Given("b_pa", l.Length, "mm", "its length within the plate and 45 degrees of what presses")
		s.Step("m_pa", "M_pa / b_pa", c.Mp, "N", clausePressedUS)
		r.deriveSectionR(s)
		s.Step("u_pa", "m_pa / m_aR", c.Mp/c.Rp, "", clausePressedUS)
	}
	if !(c.Mt > 0) {
		return
	}
	l, clause := &c.Pulled, clausePulled
	lengths := "its length: EN 1993-1-8:2005 Table 6.6 turned to its direction, within the plate, less holes"
	if us {
		clause, lengths = clausePulledUS, "its length within the plate and 45 degrees of the rods, less holes"
	}
	s.Given("a_t", l.Angle*180/math.Pi, "deg", "direction of the section that is pulled most, from x")
	s.Given("h_t", l.Offset, "mm", "its distance from the column axis")
	s.Given("n_a", float64(l.Count), "", "rods that bend it")
	s.Given("M_ta", l.Moment, "Nmm", "sum of their tensions times their distances from it")
	s.Given("b_ta", l.Length, "mm", lengths)
	s.Step("m_ta", "M_ta / b_ta", c.Mt, "N", clause)
	if us {
		if !(c.Mp > 0) {
			r.deriveSectionR(s)
		}
		s.Step("u_ta", "m_ta / m_aR", c.Mt/c.Rt, "", clause)
		return
	}
	s.Step("m_t,R", "f_y t^2 / 4 / gamma_M0", c.Rt, "N", "plastic section")
	s.Step("u_ta", "m_ta / m_t,R", c.Mt/c.Rt, "", clause)
}

func (r *Result) deriveSectionR(s *derive.Sheet) {
	if r.in.Design.Basis == basis.USLRFD {
		s.Step("m_aR", "phi_b f_y t^2 / 4", r.Sections.Rp, "N", "AISC 360-22 F11; per width")
	} else {
		s.Step("m_aR", "f_y t^2 / 4 / Omega_b", r.Sections.Rp, "N", "AISC 360-22 F11; per width")
	}
}
