package base

import (
	"slices"
	"strings"

	"footward.example/footward/internal/anchor"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/tie"
)

// Hold is the kind of anchorage.
type Hold uint8

// The kinds. The zero value is none that is known.
const (
	NotHeld Hold = iota
	Headed
	Through
)

// Anchorage is what holds rods below. Rods, forces, basis and, where it is the
// support's, the block come from where it is used.
type Anchorage struct {
	Kind           Hold
	Headed         anchor.Input
	BlockOfSupport bool
	Through        tie.Input
}

// AnchorageInput is a group of rods with what holds it below.
type AnchorageInput struct {
	Rods      rod.Input
	Stretch   float64 // length of rods that stretches [mm]
	Anchorage Anchorage
}

// AnchorageResult is the outcome of CheckAnchorage.
type AnchorageResult struct {
	part
	rods  rod.Result
	bends bool // whether the rods' bending is told beside the anchorage
}

// carried is what rods hand on to their anchorage.
type carried struct {
	rods    *rod.Input
	each    []rod.Force
	reason  string // why the forces are not known
	stretch float64
	grout   grout   // under the plate
	holds   float64 // design tension resistance of a rod [N]; 0: not known
	actions geom.Actions
	level   bool // whether neither tension nor a moment is known to act on the plate
}

// grout is a layer of it.
type grout struct{ thick, strength float64 }

// worse returns the thicker of two layers with the strength of the weaker.
func (g grout) worse(than grout) grout {
	switch {
	case g.thick == 0:
		return than
	case than.thick == 0:
		return g
	}
	return grout{max(g.thick, than.thick), min(g.strength, than.strength)}
}

// headed returns the input of rods with heads.
func (a *Anchorage) headed(c *carried) anchor.Input {
	in, r := a.Headed, c.rods
	in.Design, in.Thread, in.Steel, in.Corrosion = r.Design, r.Rod.Thread, r.Rod.Steel, r.Rod.Corrosion
	in.At, in.ShareReason = r.At, c.reason
	in.Under = anchor.Under{
		GroutThick: c.grout.thick, GroutStrength: c.grout.strength, Plate: r.Plate.Thickness,
		Gap: r.StandOff.Gap, Clamped: r.StandOff.ClampedAtSurface, Level: c.level,
		HoldsRotation: r.StandOff.Gap == 0 && r.Holes.HoldsRotation || r.StandOff.Gap > 0 && r.StandOff.PlateHoldsRotation,
	}
	if bare := rod.Oversized(r); bare && r.Holes.WeldedWashers {
		in.Under.Washer = rod.WasherThickness(r)
	} else {
		in.Under.Loose = bare
	}
	in.Each = make([]anchor.Force, len(c.each))
	for i, f := range c.each {
		in.Each[i] = anchor.Force(f)
	}
	return in
}

// through returns the input of rods through a stack.
func (a *Anchorage) through(c *carried) tie.Input {
	in, r := a.Through, c.rods
	in.Design, in.At, in.ShareReason, in.Hole = r.Design, r.At, c.reason, r.Holes.Diameter
	in.Nut = r.Rod.NutWidth
	if in.Nut == 0 {
		in.Nut = 1.5 * r.Rod.Thread.Diameter
	}
	in.Cover = max(in.Nut, r.Holes.WasherSide)
	in.RodArea, in.Modulus, in.Length = r.Rod.Thread.NetArea(r.Rod.Corrosion), rodModulus(r.Design.Basis), c.stretch
	in.Actions, in.RodStrength, in.Top = c.actions, c.holds, r.Plate
	in.Each = make([]float64, len(c.each))
	for i, f := range c.each {
		in.Each[i] = f.Tension
	}
	return in
}

// validate adds to faults everything about the anchorage that does not fit.
func (a *Anchorage) validate(c *carried, faults *limit.Faults) {
	var found limit.Faults
	switch a.Kind {
	case Headed:
		in := a.headed(c)
		anchor.Validate(&in, &found)
	case Through:
		in := a.through(c)
		tie.Validate(&in, &found)
	}
	for _, f := range found {
		// The support's block is refused by its own name.
		if a.BlockOfSupport && strings.HasPrefix(f.Field, "anchorage.headed.block") {
			continue
		}
		if !known(*faults, f.Field) {
			*faults = append(*faults, f)
		}
	}
}

// check verifies the anchorage.
func (a *Anchorage) check(c *carried) (part, error) {
	if a.Kind == Through {
		in := a.through(c)
		return tie.Check(&in)
	}
	in := a.headed(c)
	return anchor.Check(&in)
}

// ValidateAnchorage adds to faults everything about the input that does not fit.
func ValidateAnchorage(in *AnchorageInput, faults *limit.Faults) {
	rod.Validate(&in.Rods, faults)
	if in.Anchorage.Kind == NotHeld {
		return // the schema says so
	}
	c := carried{rods: &in.Rods, stretch: in.Stretch, actions: in.Rods.Actions, grout: in.grout(),
		each: make([]rod.Force, len(in.Rods.At))}
	in.Anchorage.validate(&c, faults)
}

// grout returns the grout of the block in which the rods stand.
func (in *AnchorageInput) grout() grout {
	u := &in.Anchorage.Headed.Under
	return grout{u.GroutThick, u.GroutStrength}
}

// level reports whether actions neither pull at a plate nor bend it.
func level(a *geom.Actions) bool { return a.N <= 0 && a.Mx == 0 && a.My == 0 }

// CheckAnchorage verifies what holds a group of rods below. Errors: limit.Faults.
func CheckAnchorage(in *AnchorageInput) (*AnchorageResult, error) {
	var faults limit.Faults
	ValidateAnchorage(in, &faults)
	if in.Anchorage.Kind == NotHeld {
		faults.Add(limit.Missing, "anchorage", "needs headed or through")
	}
	if len(faults) > 0 {
		return nil, faults
	}
	r := &AnchorageResult{}
	var err error
	if r.rods, err = rod.Check(&in.Rods); err != nil {
		return nil, err
	}
	c := carried{rods: &in.Rods, stretch: in.Stretch, actions: in.Rods.Actions, grout: in.grout(), level: level(&in.Rods.Actions) && len(in.Rods.Each) == 0,
		reason: r.rods.TensionReason, holds: strength(&r.rods)}
	if c.reason == "" {
		c.reason = r.rods.ShearReason
	}
	if c.reason == "" {
		for i := range in.Rods.At {
			c.each = append(c.each, r.rods.Force(i))
		}
	}
	if len(in.Rods.Each) > 0 {
		for _, f := range in.Rods.Each {
			c.actions.N += f.Tension
		}
	}
	r.bends = in.Anchorage.Kind == Headed && in.Rods.Design.Basis.US()
	r.part, err = in.Anchorage.check(&c)
	return r, err
}

// strength returns the tension resistance of a rod, 0 where the basis knows none.
func strength(r *rod.Result) float64 {
	if r.EC.TooHard {
		return 0
	}
	return r.FtRd
}

// States appends those of the anchorage, and with ACI 318, which leaves it out, how
// the rods bend.
func (r *AnchorageResult) States(l *limit.List) {
	r.part.States(l)
	if r.bends {
		state := r.rods.BendState()
		state.Kind = rodBending
		l.Add(state)
	}
}

// Derive writes how the rods share the actions, then the anchorage.
func (r *AnchorageResult) Derive(s *derive.Sheet) {
	r.rods.DeriveForces(s)
	r.part.Derive(s)
	if r.bends {
		r.rods.DeriveBending(s)
	}
}

// rodBending is how anchored rods bend, which ACI 318 leaves out.
var rodBending = &limit.Kind{ID: "anchor_rod_bending", Title: "Anchored rod in tension and bending", Measure: limit.Stress,
	Clause: [basis.Count]string{basis.USLRFD: rod.ClauseBend, basis.USASD: rod.ClauseBend}}

// AnchorageKinds returns the limit states in order: with heads, then through.
func AnchorageKinds() []*limit.Kind {
	return slices.Concat(anchor.Kinds(), []*limit.Kind{rodBending}, tie.Kinds())
}

// AnchorageRemarks returns the notices in order: with heads, then through.
func AnchorageRemarks() []*limit.Notice { return append(anchor.Remarks(), tie.Remarks()...) }

// blockOf returns the block of the support for rods anchored in it.
func blockOf(s *bearing.Input) anchor.Block {
	b := &s.Block
	return anchor.Block{Concrete: b.Concrete, SizeX: b.SizeX, SizeY: b.SizeY, Height: b.Height, OffsetX: b.OffsetX, OffsetY: b.OffsetY}
}
