package base

import (
	"strconv"
	"strings"

	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
)

// plane is one way to share as the derivation shows it, its symbols ending in mark.
type plane struct {
	contact.Result
	in    *contact.Input
	mark  string
	shown bool
}

// derivePlanes writes what presses most and what each rod pulls, from the plane by which
// the plate sinks in the way to share that makes it so.
func (c *column) derivePlanes(s *derive.Sheet, at *geom.Actions, solved *shared) {
	p := &c.in.Base.Plate.Plate
	s.Given("b_x", p.SizeX, "mm", "plate")
	s.Given("b_y", p.SizeY, "mm", "plate")
	planes := c.planes(at)
	for i := range planes {
		if w := &planes[i]; w.Peak >= solved.highest {
			w.derive(s)
			formula := "k_b@ (A_u@ + abs(B_u@) b_x / 2 + abs(C_u@) b_y / 2)"
			if w.in.Bed.Strength > 0 {
				formula = "min(f_b@, " + formula + ")"
			}
			s.Step("p_max", w.put("max(0, "+formula+")"), solved.highest, "MPa", clauseSharing)
			break
		}
	}
	for i, t := range solved.most {
		rod := "T_rod#" + strconv.Itoa(i+1)
		c.deriveRod(s, planes, i, rod, t)
		if c.pull[i] > t {
			s.Given(rod, c.pull[i], "N", "the plate's own method, which pulls this rod more; see there")
		}
	}
}

// deriveRod writes what a rod pulls, by the way in which it pulls most.
func (c *column) deriveRod(s *derive.Sheet, planes []plane, i int, rod string, t float64) {
	if t == c.tight && t > 0 {
		s.Given("P_t", t, "N", "preload to which the rods are tightened")
		s.Step(rod, "P_t", t, "N", "no rod pulls less than that")
		return
	}
	for k := range planes {
		w := &planes[k]
		if w.Rods[i] < t {
			continue
		}
		w.derive(s)
		of := &w.in.Rods[i]
		s.Given("x_r", of.At.X, "mm", "rod "+strconv.Itoa(i+1))
		s.Given("y_r", of.At.Y, "mm", "rod "+strconv.Itoa(i+1))
		formula := "max(0, 0 - k_r@ (A_u@ + B_u@ x_r + C_u@ y_r))"
		if of.Preload > 0 {
			formula = "max(0, P_r@ + k_r@ (A_u0@ + B_u0@ x_r + C_u0@ y_r - A_u@ - B_u@ x_r - C_u@ y_r))"
		}
		s.Step(rod, w.put(formula), t, "N", clauseSharing)
		return
	}
}

// planes solves every way to share again, and the preload alone where it presses.
func (c *column) planes(at *geom.Actions) []plane {
	var out []plane
	add := func(in contact.Input) {
		if r, err := c.other.Solve(&in); err == nil && r.Found {
			r.Rods = append([]float64(nil), r.Rods...)
			out = append(out, plane{Result: r, in: &in, mark: strconv.Itoa(len(out) + 1)})
		}
	}
	for i := range c.ways {
		w := c.ways[i].in
		w.Actions = *at
		if c.in.Modulus == 0 {
			w.Bed = c.bed.Bed // the strength of the case
		}
		add(w)
	}
	if c.tightest > 0 {
		w := c.ways[len(c.ways)-1].in
		w.Actions = geom.Actions{}
		add(w)
	}
	return out
}

func (w *plane) put(formula string) string { return strings.ReplaceAll(formula, "@", w.mark) }

// derive writes the plane of a way, once.
func (w *plane) derive(s *derive.Sheet) {
	if w.shown {
		return
	}
	w.shown = true
	const sinks = "plane u = A + B x + C y by which the plate sinks, by iteration: bed and rods balance N, M_x and M_y"
	if w.in.Bed.Modulus > 0 {
		s.Given("k_b"+w.mark, w.in.Bed.Modulus, "N/mm3", "bed")
	} else {
		s.Given("k_b"+w.mark, contact.BlockModulus, "N/mm3", "stands for a plastic block")
	}
	if w.in.Bed.Strength > 0 {
		s.Given("f_b"+w.mark, w.in.Bed.Strength, "MPa", "bed")
	}
	s.Given("A_u"+w.mark, w.A, "mm", sinks)
	s.Given("B_u"+w.mark, w.B, "", sinks)
	s.Given("C_u"+w.mark, w.C, "", sinks)
	if len(w.in.Rods) == 0 {
		return
	}
	s.Given("k_r"+w.mark, w.in.Rods[0].Stiffness, "N/mm", "rod, E A_s / L")
	if w.in.Rods[0].Preload > 0 {
		const before = "the same plane under the preload alone"
		s.Given("P_r"+w.mark, w.in.Rods[0].Preload, "N", "preload")
		s.Given("A_u0"+w.mark, w.A0, "mm", before)
		s.Given("B_u0"+w.mark, w.B0, "", before)
		s.Given("C_u0"+w.mark, w.C0, "", before)
	}
}
