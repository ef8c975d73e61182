package base

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/weld"
)

// Case is a combination of actions on a column base.
type Case struct {
	Name    string
	Stage   int // counted from 1; 0: none
	Actions geom.Actions
	// Weights are the factors on the weight of a concrete pad in this combination
	// [-]; none: the greatest and the least of any.
	Weights []float64
	Lasting Lasting
	// Factors are those of each of the input's actions, of which Actions is the sum [-];
	// none: the case was made ready.
	Factors []float64
}

// Action is one of the actions of which the cases are combined.
type Action struct {
	Name   string
	Forces geom.Actions
}

// ColumnInput is a whole column base under its combinations.
type ColumnInput struct {
	Base     PlateInput // its actions are those of the cases
	HasWeld  bool
	Weld     weld.Spec
	Modulus  float64 // k of the bed [N/mm3]; 0: a plastic block
	Preload  float64 // of each rod, certain to last [N]
	Friction bool    // whether friction takes shear before the rods
	Mu       float64 // its coefficient, US bases [-]
	// Whether the coefficient was not given.
	MuAssumed bool
	// What holds the rods below; NotHeld: not checked.
	Anchorage Anchorage
	Below     Substructure
	Cases     []Case
	Actions   []Action // of which Cases are combined; none: they were made ready
	// What the combinations leave out, and the notices that go with them.
	Unproved      Unproved
	NoPersistent  bool // the accidental situation alone
	NoEquilibrium bool // and rods hold down
	Table         bool // whether rows have the contact and the forces of rods
	ReadyService  bool // whether characteristic combinations are as the caller made them
	Remarks       []*limit.Notice
	NoSizes       bool // whether required sizes are not wanted, which saves their search
	// Stop is asked before every case; an error ends the check. nil: never.
	Stop func() error
}

// MostCases is the most combinations of one check.
const MostCases = 20000

// ValidateColumn adds to faults everything about the input that does not fit.
func ValidateColumn(in *ColumnInput, faults *limit.Faults) {
	whole, stack := in.whole()
	whole.validate(stack, faults)
}

func (in *ColumnInput) validate(stack *ring.Result, faults *limit.Faults) {
	if in.Below.HasStack && stack == nil {
		// What a stack that is wrong would tell of the base is not missing.
		defer func() {
			*faults = slices.DeleteFunc(*faults, func(f limit.Invalid) bool {
				return f.Fault == limit.Missing && (f.Field == "base.support" || f.Field == "base.sharing.subgrade_modulus_n_mm3") ||
					f.Field == "base.anchorage.through.height_mm" && in.Anchorage.Through.Height == 0
			})
		}()
	}
	var found limit.Faults
	b := in.Base
	b.Plate.Actions, b.Support.Actions = geom.Actions{}, geom.Actions{}
	ValidatePlate(&b, &found)
	if in.HasWeld {
		w := in.weldInput(geom.Actions{})
		weld.Validate(&w, &found)
	}
	for _, f := range found {
		if !strings.HasPrefix(f.Field, "basis.") {
			f.Field = "base." + strings.Replace(f.Field, "footprint_weld_throat_mm", "weld", 1)
		}
		if !known(*faults, f.Field) {
			*faults = append(*faults, f)
		}
	}
	in.agree(faults)
	in.oneBlock(faults)
	s := &in.Base.Support
	switch {
	case !(in.Modulus >= 0 && in.Modulus <= 1e6):
		faults.Range("base.sharing.subgrade_modulus_n_mm3", in.Modulus, 0, 1e6, 1, " N/mm3")
	case in.Modulus == 0 && in.Base.HasRods && s.Medium == bearing.Given && s.Given.Granular:
		faults.Add(limit.Missing, "base.sharing.subgrade_modulus_n_mm3",
			"is needed on granular fill: on a soft bed the rods get more than on a stiff one")
	}
	if !(in.Preload >= 0 && in.Preload <= geom.GreatestForce) {
		faults.Range("base.sharing.preload_kn", in.Preload, 0, geom.GreatestForce, 1e3, " kN")
	} else if in.Preload > 0 && !in.Base.HasRods {
		faults.Add(limit.Conflict, "base.sharing.preload_kn", "needs rods")
	}
	in.validateAnchorage(faults)
	in.validateBelow(stack, faults)
	if !(in.Mu >= 0 && in.Mu <= 1) {
		faults.Add(limit.OutOfRange, "basis.us_lrfd.friction_coefficient", "must be from 0 to 1")
	}
	if n := len(in.Cases); n < 1 || n > MostCases {
		faults.Add(limit.Number, "load_cases.cases", fmt.Sprintf("has %d combinations; must have 1 to %d", n, MostCases))
	}
	for i := range in.Cases {
		if a := &in.Cases[i].Actions; !a.Computable() {
			a.Range(fmt.Sprintf("load_cases.cases[%d].forces", i), faults)
		}
	}
}

// validateAnchorage adds to faults everything about the anchorage that does not fit.
func (in *ColumnInput) validateAnchorage(faults *limit.Faults) {
	a := &in.Anchorage
	if a.Kind == NotHeld {
		return
	}
	if !in.Base.HasRods {
		faults.Add(limit.Conflict, "base.anchorage", "needs rods")
		return
	}
	if a.Kind == Headed && a.BlockOfSupport && in.Base.Support.Medium != bearing.Concrete {
		faults.Add(limit.Missing, "base.anchorage.headed.block", "is needed where the support is no concrete")
		return
	}
	var found limit.Faults
	rods := in.Base.rods()
	c := in.carried(&rods, &Case{}, make([]rod.Force, len(rods.At)))
	in.anchorage().validate(&c, &found)
	for _, f := range found {
		f.Field = "base." + f.Field
		if !known(*faults, f.Field) {
			*faults = append(*faults, f)
		}
	}
}

// anchorage returns the anchorage with what it takes from the base.
func (in *ColumnInput) anchorage() *Anchorage {
	a := in.Anchorage
	if a.BlockOfSupport {
		a.Headed.Block = blockOf(&in.Base.Support)
	}
	a.Through.Needed = max(a.Through.Needed, in.Preload)
	a.Through.Held = max(in.Preload, a.Through.Preload) // the sharing has both in its tensions
	return &a
}

// carried returns what the rods hand on to their anchorage in a case.
func (in *ColumnInput) carried(rods *rod.Input, k *Case, each []rod.Force) carried {
	c := carried{rods: rods, each: each, stretch: in.Base.Stretch, actions: k.Actions, level: level(&k.Actions)}
	if b := &in.Base.Support.Block; in.Base.Support.Medium == bearing.Concrete {
		c.grout = grout{b.GroutThick, b.GroutStrength}
	}
	if in.Anchorage.Kind == Headed && !in.Anchorage.BlockOfSupport {
		// Rods stand free in whatever lies on their own block.
		c.grout = c.grout.worse(grout{in.Anchorage.Headed.Under.GroutThick, in.Anchorage.Headed.Under.GroutStrength})
	}
	return c
}

// weldInput returns the weld of the column; its first part is the plate, with what
// the plate loses.
func (in *ColumnInput) weldInput(a geom.Actions) weld.Input {
	f := &in.Base.Plate.Footprint
	w, _ := in.weldOf()
	return weld.Input{Design: in.Base.Plate.Design, Weld: w,
		Group: weld.Group{Segments: weldLines(f), Actions: a, Continuous: f.Shape == plate.Pipe}}
}

// Row is what a column base does under one combination.
type Row struct {
	Verdict     limit.Verdict
	Governing   string  // id of the limit state that governs; empty: none
	Rated       bool    // whether it has a utilization
	Utilization float64 // [-]
	Peak        float64 // greatest pressure [MPa]
	Tensions    []float64
	Contact     *Contact    // nil: not asked for, or no balance
	Forces      []rod.Force // of each rod; nil as Contact
}

// Contact is where a plate presses, with bed and rods as they are given.
type Contact struct {
	Area    float64 // [mm2]
	Outline []geom.Point
	// The plane by which the plate sinks: A + B x + C y [mm].
	A, B, C float64
	Peak    float64 // [MPa]
}

// ColumnResult holds the worst of each limit state and a row for every case.
type ColumnResult struct {
	Rows []Row

	in       *ColumnInput // as given
	strength bearing.Strength
	worst    []limit.State
	from     []int // case of each, counted from 0; -1: none of them
	at       map[*limit.Kind]int
	notices  limit.Notices
	governs  int // case that governs strength, counted from 0
	whole    *ColumnInput
	foot     below
}

// Settled returns the settlement of the ground, or nil where it was not predicted.
func (r *ColumnResult) Settled() *settle.Result { return r.foot.settled }

// SettledIn returns the stage of the actions, counted from 1, of each stage of Settled.
func (r *ColumnResult) SettledIn() []int { return r.foot.stages }

// take keeps a state if it is the worst of its kind; from is its case, or -1.
func (r *ColumnResult) take(s limit.State, from int) {
	k, seen := r.at[s.Kind]
	switch {
	case !seen:
		r.at[s.Kind] = len(r.worst)
		r.worst, r.from = append(r.worst, s), append(r.from, from)
	case worse(&s, &r.worst[k]):
		r.worst[k], r.from[k] = s, from
	}
}

// column checks one case after another and reuses its memory.
type column struct {
	in       *ColumnInput // with what the parts tell of each other
	given    *ColumnInput
	foot     below
	strength bearing.Strength
	solver   contact.Solver
	probe    contact.Solver // so that the answer of the other holds
	other    contact.Solver // for the other ways to share
	bed      contact.Input
	ways     []way   // to share, the given one first
	tight    float64 // greatest preload of a rod at any time [N]
	tightest float64 // pressure when all rods have it and nothing acts [MPa]
	shares   []share
	most     []float64
	pull     []float64 // tension that each rod is checked with [N]
	each     []rod.Force
	list     limit.List
}

// CheckColumn verifies a column base under every combination.
//
// Errors: limit.Faults; *limit.Scope where the support has no strength by the
// basis; that of Stop.
func CheckColumn(in *ColumnInput) (*ColumnResult, error) {
	var faults limit.Faults
	whole, stack := in.whole()
	whole.validate(stack, &faults)
	if len(faults) > 0 {
		return nil, faults
	}
	own := *whole // whose support changes with the combination
	whole = &own
	c := &column{in: whole, given: in, probe: contact.Solver{Limit: probeSteps}, foot: below{stack: stack}}
	var err error
	if c.strength, err = bearing.Available(&whole.Base.Support); err != nil {
		return nil, err
	}
	c.prepare()
	r := &ColumnResult{in: in, whole: whole, strength: c.strength, Rows: make([]Row, len(in.Cases)), at: map[*limit.Kind]int{}}
	var used *limit.State
	for i := range in.Cases {
		if err := in.stopped(); err != nil {
			return nil, err
		}
		c.list.Reset()
		c.list.NoSizes = true
		solved, err := c.check(&in.Cases[i], &r.notices, nil)
		if err != nil {
			return nil, err
		}
		in.unproved(c.list.All())
		r.Rows[i] = row(&c.list, &solved, c.pull)
		if in.Table && solved.Found {
			r.Rows[i].Contact = &Contact{solved.Area, slices.Clone(solved.Zone), solved.A, solved.B, solved.C, solved.Peak}
			if in.Base.HasRods {
				r.Rows[i].Forces = slices.Clone(c.each)
			}
		}
		for _, s := range c.list.All() {
			s.Combination, s.Stage = in.Cases[i].Name, in.Cases[i].Stage
			r.take(s, i)
		}
		if s := strongest(c.list.All()); s != nil && (used == nil || s.Utilization > used.Utilization) {
			state := *s
			used, r.governs = &state, i
		}
	}
	if !in.NoSizes {
		if err := c.sizes(r); err != nil {
			return nil, err
		}
	}
	if err := c.below(r); err != nil {
		return nil, err
	}
	in.unprovedBelow(r.worst)
	in.remarkCases(&r.notices)
	c.reword(&r.notices)
	r.foot = c.foot
	r.sort()
	return r, nil
}

func (in *ColumnInput) stopped() error {
	if in.Stop == nil {
		return nil
	}
	return in.Stop()
}

// sizes finds the required sizes of the worst states, each in its own case.
func (c *column) sizes(r *ColumnResult) error {
	var unused limit.Notices
	done := map[int]bool{}
	for _, i := range r.from {
		if i < 0 || done[i] {
			continue
		}
		done[i] = true
		if err := c.in.stopped(); err != nil {
			return err
		}
		c.list.Reset()
		c.list.NoSizes = false
		if _, err := c.check(&c.in.Cases[i], &unused, nil); err != nil {
			return err
		}
		for _, s := range c.list.All() {
			for k := range r.worst {
				if r.from[k] != i || r.worst[k].Kind != s.Kind {
					continue
				}
				r.worst[k].Size, r.worst[k].Required = s.Size, s.Required
				if a := &c.in.Cases[i].Actions; s.Size == limit.PlateThickness && s.Verdict == limit.Fail && (a.Vx != 0 || a.Vy != 0) {
					if err := c.thickness(&r.worst[k], i); err != nil {
						return err
					}
				}
			}
		}
	}
	return nil
}

// sort puts the limit states in the order of the load path.
func (r *ColumnResult) sort() {
	order := map[*limit.Kind]int{}
	for _, kinds := range [][]*limit.Kind{shares, bearing.Kinds(), plate.Kinds(), weld.Kinds(), rod.Kinds(),
		AnchorageKinds(), ring.Kinds(), {underside}, pad.Kinds(), ground.Kinds(), settle.Kinds()} {
		for _, k := range kinds {
			order[k] = len(order)
		}
	}
	sorted := make([]limit.State, 0, len(r.worst))
	for n := range len(order) {
		for i := range r.worst {
			if order[r.worst[i].Kind] == n {
				sorted = append(sorted, r.worst[i])
			}
		}
	}
	r.worst = sorted
}

func rank(v limit.Verdict) int {
	switch v {
	case limit.Fail:
		return 3
	case limit.OutOfScope:
		return 2
	case limit.Pass:
		return 1
	}
	return 0
}

// worse reports whether a state outranks another of its kind: a failure without
// numbers, then by verdict, then by utilization.
func worse(s, than *limit.State) bool {
	if a, b := rank(s.Verdict), rank(than.Verdict); a != b {
		return a > b
	}
	if s.Rated != than.Rated {
		return !s.Rated && s.Verdict == limit.Fail || s.Rated && s.Verdict != limit.Fail
	}
	if !s.Rated {
		return s.Demand > than.Demand
	}
	return s.Utilization > than.Utilization
}

// strongest returns the state of strength that is used most, or nil. A rule of sizes
// is the same under every combination, and a state without a number has no calculation
// to show.
func strongest(all []limit.State) *limit.State {
	var most *limit.State
	for i := range all {
		s := &all[i]
		if s.Rated && s.Verdict != limit.NotApplicable && s.Kind.Measure != limit.Length && !pad.Detailing(s.Kind) &&
			(most == nil || s.Utilization > most.Utilization) {
			most = s
		}
	}
	return most
}

func row(l *limit.List, s *shared, pull []float64) Row {
	r := Row{Verdict: l.Verdict(), Peak: s.highest, Tensions: append([]float64(nil), pull...)}
	if g := l.Governing(); g != nil {
		r.Governing, r.Rated, r.Utilization = g.Kind.ID, g.Rated, g.Utilization
	}
	return r
}

// Elastic modulus of the rods [MPa]: EN 1993-1-1:2005 3.2.6; AISC 360-22
// (29 000 ksi).
const (
	rodModulusEC = 210000.0
	rodModulusUS = 199948.0
)

func rodModulus(b basis.Basis) float64 {
	if b.US() {
		return rodModulusUS
	}
	return rodModulusEC
}

// StretchLength returns the length over which the rods stretch [mm].
//
// Source: EN 1993-1-8:2005 Table 6.2 where it is not given.
func StretchLength(b *PlateInput) float64 {
	if b.Stretch > 0 {
		return b.Stretch
	}
	return plate.CastInLength(b.Rod.Thread.Diameter, b.Support.Block.GroutThick, b.Plate.Plate.Thickness, b.Holes.WasherThickness)
}

// WeldLength returns the length of the weld all round the footprint [mm].
//
// Source: geometry.
func WeldLength(b *PlateInput) float64 {
	sum := 0.0
	for _, s := range weldLines(&b.Plate.Footprint) {
		sum += s.Length()
	}
	return sum
}

// check evaluates one case into the list; sheet, when not nil, takes the
// derivation.
func (c *column) check(k *Case, notices *limit.Notices, sheet *derive.Sheet) (shared, error) {
	if err := c.during(k); err != nil {
		return shared{}, err
	}
	at := lowered(k.Actions, c.in.lever())
	solved, err := c.share(at)
	if err != nil {
		return solved, err
	}
	c.balance(&solved)
	parts, err := c.parts(k, &at, &solved)
	if err != nil {
		return solved, err
	}
	if sheet != nil {
		c.deriveSharing(sheet, k, &at, &solved)
		c.in.deriveClamped(sheet)
	}
	for _, p := range parts {
		p.States(&c.list)
		p.Notices(notices)
		if sheet != nil {
			p.Derive(sheet)
		}
	}
	c.remark(k, notices)
	return solved, nil
}

// part is what every checked part answers with.
type part interface {
	States(*limit.List)
	Notices(*limit.Notices)
	Derive(*derive.Sheet)
}

// parts checks the parts under one case; at are its actions at the level of contact.
func (c *column) parts(k *Case, at *geom.Actions, solved *shared) ([]part, error) {
	b := &c.in.Base
	beneath, err := c.bearing(at, solved)
	if err != nil {
		return nil, err
	}
	out := []part{beneath}
	in := *b
	in.Plate.Actions, in.Support.Actions = c.in.onPlate(k.Actions, *at), *at
	in.Plate.Shared = plate.Shared{Known: solved.Found, Elastic: c.in.Modulus > 0, Peak: solved.highest, Tensions: solved.most,
		Pressure: c.pressure(solved)}
	p, err := CheckPlate(&in)
	if err != nil {
		return nil, err
	}
	out = append(out, p)
	if c.in.HasWeld {
		w := c.in.weldInput(k.Actions)
		r, err := weld.Check(&w)
		if err != nil {
			return nil, err
		}
		out = append(out, &r)
	}
	c.pull = append(c.pull[:0], solved.Rods...)
	if solved.Found {
		c.pull = c.pull[:0]
	}
	for i, t := range solved.most {
		c.pull = append(c.pull, max(t, p.Plate.RodPull(i)))
	}
	if b.HasRods && solved.Found {
		in := b.rods()
		in.Each = c.forces(k, solved)
		in.Anchored = c.in.Anchorage.Kind != NotHeld
		r, err := rod.Check(&in)
		if err != nil {
			return nil, err
		}
		out = append(out, &r)
		if in.Anchored {
			held := c.in.carried(&in, k, in.Each)
			held.holds = strength(&r)
			a, err := c.in.anchorage().check(&held)
			if err != nil {
				return nil, err
			}
			c.outside(a)
			out = append(out, a)
		}
	}
	if c.in.Below.HasStack {
		p, err := c.stackUnder(&k.Actions, solved)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	return out, nil
}

// bearing checks the support under the plate. A base that rods hold has no resultant
// on the plate: pressure and rods come from the sharing.
func (c *column) bearing(at *geom.Actions, solved *shared) (part, error) {
	in := c.in.Base.Support
	in.Actions = *at
	if !solved.pulls() {
		r, err := bearing.Check(&in)
		return &r, err
	}
	in.Actions = geom.Actions{N: -1}
	r, err := bearing.Check(&in)
	return apart{&r}, err
}

// apart is a support whose pressure comes from the sharing with rods.
type apart struct{ *bearing.Result }

const byTheSharing = "rods pull: the pressure comes from their sharing with the support, see base_pressure and base_equilibrium"

func (p apart) States(l *limit.List) {
	var own limit.List
	own.NoSizes = true
	p.Result.States(&own)
	for _, s := range own.All() {
		l.Add(limit.Skip(s.Kind, byTheSharing))
	}
}

func (p apart) Derive(*derive.Sheet) {}

// forces returns the force of each rod: the greatest tension that the sharing or the
// plate's own method finds in it, and what friction leaves of the shear by the
// elastic method.
func (c *column) forces(k *Case, solved *shared) []rod.Force {
	in, a := c.in, k.Actions
	left := 1.0
	if v := math.Hypot(a.Vx, a.Vy); in.Friction && a.T == 0 && v > 0 {
		left = max(0, 1-c.rubs(&a, solved)/v)
	}
	share := geom.PointGroup(in.Base.At).Share(&geom.Actions{Vx: a.Vx * left, Vy: a.Vy * left, T: a.T})
	for i, at := range in.Base.At {
		f := &c.each[i]
		f.Tension = c.pull[i]
		f.ShearX, f.ShearY = share.Shear(at)
	}
	return c.each
}
