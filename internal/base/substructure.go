package base

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/bed"
	"footward.example/footward/internal/friction"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/settle"
)

// Levelling is a thin granular layer between footing and ground.
type Levelling struct {
	Thickness  float64 // [mm]; 0: none
	UnitWeight float64 // [N/mm3]
}

// Pair is a combination of characteristic actions, as checks of the ground take
// them; with the United States bases those of one combination, all permanent.
type Pair struct {
	Name      string
	Stage     int // counted from 1; 0: none
	Permanent geom.Actions
	Variable  geom.Actions
	Weight    float64 // factor of the combination on weights [-]
	Lift      float64 // of Permanent, what lifts by a source of its own [N]; 0: Permanent.N if it lifts
	// Accidental has 1.0 on actions, with the strength of the ground as ever.
	Accidental bool
}

// Substructure is what carries a base below its plate: a stack of rings, or the
// concrete block that is its support, and the ground. What the base itself tells
// of the parts, such as the plate on a stack, is found from it.
type Substructure struct {
	HasStack      bool
	Stack         ring.Input
	Levelling     Levelling
	SizeEffect    bool              // whether a reinforced pad counts it in shear, ACI
	OtherWeight   float64           // that is not found here, characteristic [N]
	Concrete      float64           // unit weight of a concrete block [N/mm3]; 0: 24 kN/m3, with bars 25
	Blinding      bool              // whether a concrete block is cast on blinding
	Reinforcement pad.Reinforcement // of a concrete block; none: plain concrete
	HasGround     bool
	Ground        ground.Input
	Subgrade      float64 // modulus of subgrade reaction [N/mm3]; 0: not known
	HasSettlement bool
	Settlement    settle.Input

	Service   []Case // combinations of service values
	Factored  []Case // combinations that concrete is held to, ASD; none: not known
	Sustained []Case // permanent actions of each stage, service values
	Pairs     []Pair
	NoService string // why there are no service values; empty: there are
	NoPairs   string // why there are no pairs; empty: there are
}

// Unit weights [N/mm3]: EN 1991-1-1:2002 Tables A.1 and A.4 (from memory).
const (
	plainConcrete = 24e-6
	barsConcrete  = 25e-6
	steelWeight   = 77e-6
)

// nothingLeft is the pressure that a stack bears whose upper ring is eaten away [MPa].
const nothingLeft = 1e-6

// shortestStretch is how much of what rods clamp they must stretch over: nuts may be
// sunk a little.
const shortestStretch = 0.95

const (
	substructurePath = "base.substructure."
	mostOther        = 1e9
)

// plan is what presses on the ground.
type plan struct {
	shape  ground.Shape
	sizeX  float64 // of a rectangle [mm]
	sizeY  float64 // of a rectangle [mm]
	d      float64 // of a circle [mm]
	stack  float64 // circle to which the load spreads in a stack [mm]
	side   float64 // lesser side of a bottom plate that reaches past it [mm]; 0: none does
	height float64 // from the foot of the column to the ground [mm]
	weight float64 // of footing and what else there is [N]
	bed    float64 // of the levelling layer, which presses and holds nothing [N]
	offX   float64 // of the plate from the middle of the footing [mm]
	offY   float64 // [mm]
	rigid  bool
}

func (p *plan) area() float64 {
	if p.shape == ground.Circle {
		return math.Pi / 4 * p.d * p.d
	}
	return p.sizeX * p.sizeY
}

// move returns actions at the middle of the footing.
func (p *plan) move(a geom.Actions) geom.Actions {
	a.My -= a.N * p.offX
	a.Mx += a.N * p.offY
	a.T += p.offX*a.Vy - p.offY*a.Vx
	return a
}

// whole returns the input with what the stack and the base tell of each other,
// and the stack under the greatest compression in service.
func (in *ColumnInput) whole() (*ColumnInput, *ring.Result) {
	s := &in.Below
	if !s.HasStack {
		return in, nil
	}
	out := *in
	stack := &out.Below.Stack
	top := &out.Base.Plate.Plate
	stack.Design = out.Base.Plate.Design
	stack.Shoe.SizeX, stack.Shoe.SizeY, stack.Shoe.Round = top.SizeX, top.SizeY, false
	if out.Friction {
		stack.Shoe.Rubs = friction.Find(&stack.Design, friction.Input{Compression: 1, Coefficient: out.Mu}).Take
	}
	if i := heaviest(s.Service); i >= 0 {
		stack.Service = lowered(s.Service[i].Actions, top.Thickness)
	}
	through := &out.Anchorage.Through
	if out.Base.HasRods && out.Base.Stretch == 0 && out.Anchorage.Kind == Through {
		out.Base.Stretch = out.clampedHeight()
	}
	if out.Base.HasRods {
		r := &out.Base.Rod
		stack.Rods = ring.Rods{
			Count: len(out.Base.At), Area: r.Thread.NetArea(r.Corrosion), Modulus: rodModulus(stack.Design.Basis),
			Length: StretchLength(&out.Base), Preload: through.Preload, Creep: through.Settlement,
			Stack: through.Stack, Needed: max(through.Needed, out.Preload), Relaxed: through.Relaxed, Load: out.greatestLoad(),
		}
	}
	pressed := *stack
	if i := heaviest(s.Service); i >= 0 {
		pressed.Shoe.Loaded = out.circle(&stack.Service)
	} else if i := heaviest(in.Cases); i >= 0 {
		at := lowered(in.Cases[i].Actions, top.Thickness)
		pressed.Shoe.Loaded = out.circle(&at)
	}
	first, err := ring.Check(&pressed)
	if err != nil {
		return &out, nil // its faults are named by ValidateColumn
	}
	strength := first.Tiers[0].Strength
	if first.Tiers[0].Left == 0 && stack.Tiers[0].Ring.Capacity > 0 {
		strength = max(strength, nothingLeft) // so that every part says that it fails
	}
	if support := &out.Base.Support; support.Medium == 0 && strength > 0 {
		support.Medium = bearing.Given
		support.Given = bearing.GivenPressure{Pressure: strength, Granular: true, Found: true, Source: "confined fill of the top tier"}
	}
	if out.Modulus == 0 {
		out.Modulus = first.Subgrade()
	}
	if out.Anchorage.Kind == Through {
		out.tieTo(first)
	}
	if out.Base.HasRods {
		// Stack and rods tell of one preload by the same springs.
		stack.Rods.Creep, stack.Rods.Stack = through.Settlement, through.Stack
		pressed.Rods = stack.Rods
		if again, err := ring.Check(&pressed); err == nil {
			first = again
		}
	}
	return &out, first
}

// tieTo gives rods through the stack what it is.
func (in *ColumnInput) tieTo(stack *ring.Result) {
	t := &in.Anchorage.Through
	if t.Height == 0 {
		t.Height = in.Base.Plate.Plate.Thickness + stack.Height + t.Plate.Thickness
	}
	if t.Clamped == 0 {
		t.Clamped, t.ClampedFound = in.clamped(), true
	}
	if t.Settlement == 0 && stack.NoService == "" {
		t.Settlement = stack.Settles.After
	}
	t.Load = in.Below.Stack.Rods.Load
	if t.PressX == 0 && t.PressY == 0 && t.PressDiameter == 0 {
		t.PressDiameter = in.Below.Stack.Tiers[len(in.Below.Stack.Tiers)-1].Diameter
	}
	if t.Stack == 0 {
		t.Stack = stack.Springs.Stack
	}
}

// greatestLoad returns the greatest compression in service, or of the combinations where
// there are no service values [N].
func (in *ColumnInput) greatestLoad() float64 {
	cases := in.Below.Service
	if len(cases) == 0 {
		cases = in.Cases
	}
	if i := heaviest(cases); i >= 0 {
		return -cases[i].Actions.N
	}
	return 0
}

// clampedHeight returns the height of what rods through the stack clamp [mm].
func (in *ColumnInput) clampedHeight() float64 {
	sum := in.Base.Plate.Plate.Thickness + in.Anchorage.Through.Plate.Thickness
	for i := range in.Below.Stack.Tiers {
		sum += in.Below.Stack.Tiers[i].Height
	}
	return sum
}

// clamped returns the weight of the fill straight above the bottom plate, within
// its inscribed circle, and of that plate [N].
func (in *ColumnInput) clamped() float64 {
	p := &in.Anchorage.Through.Plate
	sum := steelWeight * p.SizeX * p.SizeY * p.Thickness
	for i := range in.Below.Stack.Tiers {
		t := &in.Below.Stack.Tiers[i]
		d := min(t.Diameter, p.SizeX, p.SizeY)
		sum += t.Fill.UnitWeight * math.Pi / 4 * d * d * t.Height
	}
	return sum
}

// heaviest returns the place of the case that presses most, or -1.
func heaviest(cases []Case) int {
	at := -1
	for i := range cases {
		if cases[i].Actions.N < 0 && (at < 0 || cases[i].Actions.N < cases[at].Actions.N) {
			at = i
		}
	}
	return at
}

// spread returns the circle to which the load of a circle spreads in the stack [mm].
//
//	d_i = min(D_i, d_(i-1) + h_i)
//
// Source: as of the tiers, 2 to 1.
func (s *Substructure) spread(d float64) float64 {
	for i := range s.Stack.Tiers {
		t := &s.Stack.Tiers[i]
		d = min(t.Diameter, min(d, t.Diameter)+t.Height)
	}
	return d
}

// plan returns what presses on the ground; stack is nil without one, narrow is the
// least circle through which the plate presses on it [mm].
func (in *ColumnInput) plan(stack *ring.Result, narrow float64) plan {
	s := &in.Below
	var p plan
	if stack == nil {
		b := &in.Base.Support.Block
		p = plan{shape: ground.Rectangle, sizeX: b.SizeX, sizeY: b.SizeY, offX: b.OffsetX, offY: b.OffsetY, rigid: true}
		p.height = in.Base.Plate.Plate.Thickness + b.GroutThick + b.Height
		p.weight = s.concrete() * b.SizeX * b.SizeY * b.Height
	} else {
		p = plan{shape: ground.Circle, rigid: s.Settlement.Rigid}
		p.stack = s.spread(narrow)
		p.d = p.stack
		p.height = in.Base.Plate.Plate.Thickness + stack.Height
		p.weight = stack.Weight
		if in.Anchorage.Kind == Through {
			b := &in.Anchorage.Through.Plate
			p.height += b.Thickness
			p.weight += steelWeight * b.SizeX * b.SizeY * b.Thickness
			p.under(b, s.Subgrade, in.Base.Plate.Design.Basis)
		}
	}
	p.height += s.Levelling.Thickness
	p.weight += s.OtherWeight
	p.bed = s.Levelling.UnitWeight * s.Levelling.Thickness * p.area()
	return p
}

// Height returns the height of the foot of the column above the underside of the
// footing and its levelling layer [mm].
//
// Source: geometry.
func Height(in *ColumnInput) float64 {
	whole, stack := in.whole()
	p := whole.plan(stack, whole.across(whole.outstand()))
	return p.height
}

// under has a bottom plate press on the ground past the fill, as far as it is
// stiff on ground of a modulus.
func (p *plan) under(b *geom.Plate, subgrade float64, basis basis.Basis) {
	side := min(b.SizeX, b.SizeY)
	if side <= p.stack || subgrade == 0 {
		return
	}
	p.side = side
	l := bed.RelativeStiffness(thin(b, basis), subgrade)
	p.d = min(side, p.stack+2*bed.StiffReach*l)
}

// thin returns a plate as it bends on a bed.
func thin(b *geom.Plate, basis basis.Basis) *bed.Plate {
	return &bed.Plate{SizeX: b.SizeX, SizeY: b.SizeY, Thickness: b.Net(), E: rodModulus(basis), Nu: poisson}
}

// poisson is Poisson's ratio of steel: EN 1993-1-1:2005 3.2.6.
const poisson = 0.3

// ground returns the input of the footing on the ground under a pair.
func (in *ColumnInput) ground(p *plan, k *Pair) ground.Input {
	g := in.Below.Ground
	g.Design = in.Base.Plate.Design
	g.Shape, g.SizeX, g.SizeY, g.Diameter = p.shape, p.sizeX, p.sizeY, p.d
	if in.onSteel() {
		g.Interface.Share = min(g.Interface.Share, smoothSteel)
	}
	g.Height, g.Linked, g.Weight, g.Bed = p.height, true, (p.weight+p.bed)*k.Weight, p.bed*k.Weight
	g.Permanent, g.Variable, g.Lift = p.move(k.Permanent), p.move(k.Variable), k.Lift
	g.Partials = k.partials(g.Partials)
	return g
}

// settlement returns the input of the settlement of the footing, and the stage of
// the actions of each of its stages: permanent actions alone, then the combinations
// of service values that press and that turn most, less what the excavation took
// away. What stands on the ground settles and turns by itself besides: above adds it.
func (in *ColumnInput) settlement(p *plan, above func(k *Case, s *settle.Stage)) (settle.Input, []int) {
	s := &in.Below
	out := s.Settlement
	out.Design = in.Base.Plate.Design
	out.Shape, out.SizeX, out.SizeY, out.Diameter = settle.Shape(p.shape), p.sizeX, p.sizeY, p.d
	out.Rigid = p.rigid
	soil := &s.Ground.Soil
	out.Depth, out.Above, out.Water, out.Dry = s.Ground.Depth, soil.Above, soil.Water, soil.Dry
	relief := soil.Above * s.Ground.Depth * p.area()
	var stages []int
	add := func(k *Case) {
		a := p.move(k.Actions)
		stage := settle.Stage{
			Name: k.Name, N: max(0, p.weight+p.bed-a.N-relief),
			Mx: math.Abs(a.Mx) + math.Abs(a.Vy)*p.height, My: math.Abs(a.My) + math.Abs(a.Vx)*p.height,
		}
		above(k, &stage)
		out.Stages = append(out.Stages, stage)
		stages = append(stages, k.Stage)
	}
	var built []int // stages, as they come; their numbers may be of any size
	for i := range s.Service {
		built = append(built, s.Service[i].Stage)
	}
	for i := range s.Sustained {
		built = append(built, s.Sustained[i].Stage)
	}
	slices.Sort(built)
	for _, stage := range slices.Compact(built) {
		for i := range s.Sustained {
			if s.Sustained[i].Stage == stage {
				add(&s.Sustained[i])
			}
		}
		before := -1
		for _, of := range [...]func(*geom.Actions) float64{
			func(a *geom.Actions) float64 { return -a.N },
			func(a *geom.Actions) float64 { return turns(a, p.height) },
		} {
			most := -1
			for i := range s.Service {
				if s.Service[i].Stage == stage && (most < 0 || of(&s.Service[i].Actions) > of(&s.Service[most].Actions)) {
					most = i
				}
			}
			if most != before {
				add(&s.Service[most])
			}
			before = most
		}
	}
	return out, stages
}

// turns returns the moment of actions at a depth [Nmm].
func turns(a *geom.Actions, depth float64) float64 {
	return math.Hypot(math.Abs(a.Mx)+math.Abs(a.Vy)*depth, math.Abs(a.My)+math.Abs(a.Vx)*depth)
}

// validateBelow adds to faults everything about the substructure that does not
// fit.
func (in *ColumnInput) validateBelow(stack *ring.Result, faults *limit.Faults) {
	s := &in.Below
	for _, f := range [...]struct {
		field string
		v     float64
		most  float64
	}{
		{"other_weight_kn", s.OtherWeight, mostOther}, {"concrete_unit_weight_kn_m3", s.Concrete, 1e-3},
		{"levelling.thickness_mm", s.Levelling.Thickness, 1e5}, {"levelling.unit_weight_kn_m3", s.Levelling.UnitWeight, 1e-3},
		{"ground.subgrade_modulus_n_mm3", s.Subgrade, 1e3},
	} {
		if !(f.v >= 0 && f.v <= f.most) {
			faults.Add(limit.OutOfRange, substructurePath+f.field, fmt.Sprintf("must be from 0 to %g in N and mm", f.most))
		}
	}
	if s.Blinding && (s.HasStack || !s.HasGround) {
		faults.Add(limit.Conflict, substructurePath+"blinding_mm", "goes with a concrete block on the ground, which is checked")
	}
	add := func(found limit.Faults, field func(string) string) {
		for _, f := range found {
			if f.Field = field(f.Field); f.Field != "" && !known(*faults, f.Field) {
				*faults = append(*faults, f)
			}
		}
	}
	if s.HasStack && in.Base.HasRods && in.Anchorage.Kind == Through {
		if least := shortestStretch * in.clampedHeight(); in.Base.Stretch < least {
			faults.Add(limit.Conflict, "base.rods.rod.stretch_length_mm", fmt.Sprintf(
				"of %g mm is less than the %g mm that the rods run through; 0 takes that", in.Base.Stretch, in.clampedHeight()))
		}
	}
	if s.HasStack && in.Anchorage.Kind == Through {
		in.validateThrough(faults)
	}
	if s.HasStack {
		var found limit.Faults
		ring.Validate(&s.Stack, &found)
		add(found, func(field string) string {
			switch part, _, _ := strings.Cut(field, "."); {
			case field == "shoe.loaded_diameter_mm":
				return substructurePath + "stack.loaded_diameter_mm"
			case part == "shoe" || part == "rods" || part == "basis" || strings.HasSuffix(part, "forces"):
				return "" // those of the base, which have been looked at
			}
			return substructurePath + "stack." + field
		})
		if stack == nil {
			return
		}
	}
	if s.Reinforcement != (pad.Reinforcement{}) && !s.HasGround && !s.HasSettlement {
		faults.Add(limit.Missing, substructurePath+"ground", "is needed for the reinforcement: a block is checked as a pad on its ground")
	}
	if !s.HasGround && !s.HasSettlement {
		return
	}
	switch {
	case !s.HasStack && in.Base.Support.Medium != bearing.Concrete:
		faults.Add(limit.Missing, substructurePath+"stack", "is needed where the support is no concrete block")
		return
	case s.HasSettlement && !s.HasGround:
		faults.Add(limit.Missing, substructurePath+"ground", "is needed for the settlement")
		return
	}
	p := in.plan(stack, in.across(in.outstand()))
	if !s.HasStack {
		b := in.pad(&p, &Case{}, 1, 0)
		var found limit.Faults
		pad.Validate(&b, &found)
		add(found, func(field string) string {
			if strings.HasPrefix(field, "reinforcement") {
				return substructurePath + "reinforcement"
			}
			return "" // those of the base, which have been looked at
		})
	}
	g := in.ground(&p, &Pair{Weight: 1})
	var found limit.Faults
	ground.Validate(&g, &found)
	add(found, func(field string) string {
		field = strings.TrimPrefix(field, "footing.")
		switch part, _, _ := strings.Cut(field, "."); part {
		case "rectangle", "circle", "plan", "height_mm", "weight_kn", "permanent", "variable", "basis":
			return ""
		}
		return substructurePath + "ground." + field
	})
	if s.HasSettlement {
		var found limit.Faults
		f, _ := in.settlement(&p, func(*Case, *settle.Stage) {})
		f.Stages = []settle.Stage{{N: 1}}
		settle.Validate(&f, &found)
		add(found, func(field string) string {
			switch part, _, _ := strings.Cut(field, "."); part {
			case "footing", "unit_weight_above_kn_m3", "water_depth_mm", "basis":
				return ""
			}
			return substructurePath + "settlement." + field
		})
	}
}
