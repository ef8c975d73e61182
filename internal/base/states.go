package base

import (
	"math"
	"strconv"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/contact"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/friction"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const clauseSharing = "statics: rigid plate on a bed without tension, rods in tension only"

func everywhere(clause string) [basis.Count]string {
	return [basis.Count]string{basis.Eurocode: clause, basis.USLRFD: clause, basis.USASD: clause}
}

// The limit states of the whole, in the order of an answer.
var (
	balance = &limit.Kind{
		ID: "base_equilibrium", Title: "Equilibrium of the base between support and rods", Measure: limit.Stress,
		Clause: everywhere(clauseSharing),
	}
	pressure = &limit.Kind{
		ID: "base_pressure", Title: "Greatest pressure of the elastic bed", Measure: limit.Stress,
		Clause: everywhere(clauseSharing),
	}
	torsion = &limit.Kind{
		ID: "base_shear_path", Title: "Shear and torsion without rods", Measure: limit.Force,
		Clause: [basis.Count]string{
			basis.Eurocode: friction.ClauseEC,
			basis.USLRFD:   friction.ClauseUS,
			basis.USASD:    friction.ClauseUS,
		},
	}
)

// ColumnKinds returns the limit states of the whole in order; those of the parts
// are the parts' own.
func ColumnKinds() []*limit.Kind { return append(shares[:len(shares):len(shares)], underside) }

// shares are the limit states of how support and rods share.
var shares = []*limit.Kind{balance, pressure, torsion}

// balance evaluates how support and rods balance a case.
//
// On a plastic block the demand is the least strength of the bed with which there
// is a balance.
func (c *column) balance(solved *shared) {
	defer c.shearPath(solved)
	if !solved.Found {
		c.list.Add(limit.State{Kind: balance, Verdict: limit.Fail, Reason: solved.Reason})
		c.list.Add(limit.Skip(pressure, solved.Reason))
		return
	}
	available := c.strength.Pressure
	if c.in.Modulus > 0 {
		c.list.Add(limit.Skip(balance, "the elastic bed and the rods balance; see base_pressure"))
		c.list.Add(limit.Evaluate(pressure, solved.highest, available))
		return
	}
	c.list.Add(limit.Evaluate(balance, c.leastStrength(solved, available), available))
	// What rods are checked with is found with this pressure, not with the least.
	s := limit.Skip(pressure, "the bed is a plastic block, which presses with up to its full strength; the demand is what it presses where rods and plate are checked")
	s.Demand = solved.highest
	c.list.Add(s)
}

// halvings of the search for the least strength of a bed: to 1e-4 of that
// available.
const halvings = 14

// probeSteps bounds the search for a balance near the least strength, where it is
// slow; what it does not find in time is taken as none, on the safe side.
const probeSteps = 40

// leastStrength returns the least strength of a plastic bed that balances the
// case [MPa], on the safe side.
//
// Source: statics; a stronger bed balances whatever a weaker one does.
func (c *column) leastStrength(solved *shared, available float64) float64 {
	a, p := &c.bed.Actions, &c.in.Base.Plate.Plate
	if a.N == 0 && a.Mx == 0 && a.My == 0 {
		return 0
	}
	if !solved.pulls() {
		// The rectangle about the resultant, as in bearing.
		return -a.N / ((p.SizeX - 2*math.Abs(a.My/a.N)) * (p.SizeY - 2*math.Abs(a.Mx/a.N)))
	}
	low, high := 0.0, available
	bed := c.bed.Bed
	defer func() { c.bed.Bed = bed }()
	for range halvings {
		middle := (low + high) / 2
		c.bed.Bed.Strength = middle
		if r, err := c.probe.Solve(&c.bed); err == nil && r.Found {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// shearPath holds the shear of a base without rods against friction.
func (c *column) shearPath(solved *shared) {
	a := &c.bed.Actions
	v := math.Hypot(a.Vx, a.Vy)
	switch {
	case c.in.Base.HasRods:
		c.list.Add(limit.Skip(torsion, "the rods carry it"))
	case v == 0 && a.T == 0:
		c.list.Add(limit.Skip(torsion, "there is no shear and no torsion"))
	case a.T != 0:
		c.list.Add(limit.State{Kind: torsion, Verdict: limit.Fail, Reason: "torsion acts and there are no rods to carry it"})
	case c.foot.stack != nil:
		c.list.Add(limit.Skip(torsion, "friction and shear key of the plate on its stack carry it: see ring_sliding"))
	case !c.in.Friction:
		c.list.Add(limit.State{Kind: torsion, Verdict: limit.Fail, Demand: v, Reason: "shear acts, there are no rods, and friction is not counted"})
	default:
		c.list.Add(limit.Evaluate(torsion, v, c.friction(a, solved).Take))
	}
}

// rubs returns what friction takes of the shear of a case, on a stack by the lesser
// coefficient of plate and fill [N].
func (c *column) rubs(a *geom.Actions, solved *shared) float64 {
	f := c.friction(a, solved).Take
	if c.foot.stack != nil {
		f = min(f, c.foot.stack.Rubs()*max(0, -a.N))
	}
	return f
}

// friction returns what friction takes of the shear of a case. The contact is the
// rectangle about the resultant or, where rods pull, what the sharing presses.
//
// Source: internal/friction; statics.
func (c *column) friction(a *geom.Actions, solved *shared) friction.Result {
	p, s := &c.in.Base.Plate, &c.in.Base.Support
	in := friction.Input{Compression: max(0, -a.N), Coefficient: c.in.Mu, Assumed: c.in.MuAssumed}
	if s.Medium == bearing.Concrete || s.Medium == bearing.Given && !s.Given.Granular {
		in.Area = p.Plate.SizeX * p.Plate.SizeY
		if s.Medium == bearing.Concrete {
			in.Strength = s.Block.Concrete.Strength
			if s.Block.GroutThick > 0 {
				in.Strength = min(in.Strength, s.Block.GroutStrength)
			}
		}
	}
	switch {
	case in.Area == 0 || a.N >= 0:
	case !solved.pulls():
		in.Area = max(1, friction.Pressed(p.Plate.SizeX, p.Plate.SizeY, a.My/a.N, a.Mx/a.N))
	case solved.Area > 0:
		in.Area = min(in.Area, solved.Area)
	}
	return friction.Find(&p.Design, in)
}

// The notices of the whole, in the order of an answer.
var (
	rigid = &limit.Notice{Code: "base_rigid_plate", Severity: limit.Assumption,
		Text: "Support and rods share the actions under a rigid plate; a thin plate presses less at its edges and pulls more at its near rods."}
	block = &limit.Notice{Code: "base_plastic_block", Severity: limit.Assumption,
		Text: "The bed is a plastic block of its bearing strength. On a softer bed the lever arm is shorter and the rods get more: give its modulus."}
	elastic = &limit.Notice{Code: "base_elastic_bed", Severity: limit.Info,
		Text: "The bed is elastic, and its greatest pressure is held against its strength."}
	preload = &limit.Notice{Code: "base_preload", Severity: limit.Caution,
		Text: "Preload is counted: it must last in spite of settlement, creep and relaxation."}
	tightened = &limit.Notice{Code: "base_tightened", Severity: limit.Info,
		Text: "Rods, nuts, plates and bed are checked with the preload to which the rods are tightened, and with what the actions make of it."}
	leverArm = &limit.Notice{Code: "base_shear_lever", Severity: limit.Info,
		Text: "Shear acts at the plate's upper face. Its moment down to the underside of plate and grout is added to the others by amounts, for support, plate, rods and anchorage; the weld has none of it."}
	plateOwn = &limit.Notice{Code: "base_plate_own_sharing", Severity: limit.Info,
		Text: "Plate, rods and anchorage have the greater of what the sharing and the plate's own method, by its own lever arms, give them."}
	anchorage = &limit.Notice{Code: "base_anchorage_not_checked", Severity: limit.Caution,
		Text: "What holds the rods below is not part of this check."}
)

// ColumnRemarks returns the notices of the whole in order; those of the parts are
// the parts' own.
func ColumnRemarks() []*limit.Notice {
	return []*limit.Notice{rigid, block, elastic, preload, tightened, leverArm, plateOwn, anchorage,
		padRest, wholePath, spreadPlan, within, persistent, byStack, ringWeight, steelBelow, softBed, weldOfBase,
		ownDuration, oneDuration, persistentLeft, equilibriumLeft, readyService, accidentalGround}
}

func (c *column) remark(k *Case, l *limit.Notices) {
	if _, changed := c.in.weldOf(); c.in.HasWeld && changed {
		l.Add(weldOfBase)
	}
	l.Add(rigid)
	if k.Actions.Vx != 0 || k.Actions.Vy != 0 {
		l.Add(leverArm)
	}
	if c.in.Modulus > 0 {
		l.Add(elastic)
	} else {
		l.Add(block)
	}
	if c.in.Preload > 0 {
		l.Add(preload)
	}
	if c.in.Base.HasRods && c.preload() > 0 {
		l.Add(tightened)
	}
	if a := &c.bed.Actions; c.in.Friction && a.N < 0 && a.T == 0 && (a.Vx != 0 || a.Vy != 0) {
		rub := c.friction(a, &shared{})
		rub.Notices(l)
	}
	if c.in.Base.HasRods {
		l.Add(plateOwn)
		if c.in.Anchorage.Kind == NotHeld {
			l.Add(anchorage)
		}
	}
}

// deriveFriction writes what friction takes of the shear, and what it leaves.
func (c *column) deriveFriction(k *Case, solved *shared, s *derive.Sheet) {
	a := k.Actions
	v := math.Hypot(a.Vx, a.Vy)
	if !c.in.Friction || a.T != 0 || v == 0 {
		return
	}
	rub := c.friction(&a, solved)
	rub.Derive(s)
	if !c.in.Base.HasRods {
		return
	}
	takes := "F_f,Rd"
	if c.in.Base.Plate.Design.Basis.US() {
		takes = "F_f"
	}
	if c.foot.stack != nil {
		s.Given("mu_s", c.foot.stack.Rubs(), "", "plate on the fill, its factor included: see ring_sliding")
		s.Given("N_s", max(0, -a.N), "N", "compression that acts with the shear")
		s.Step("F_s", "min("+takes+", mu_s N_s)", c.rubs(&a, solved), "N", "the lesser coefficient of one interface")
		takes = "F_s"
	}
	s.Given("V_x", a.Vx, "N", "along x")
	s.Given("V_y", a.Vy, "N", "along y")
	s.Step("V", "sqrt(V_x^2 + V_y^2)", v, "N", "statics")
	s.Step("k_V", "max(0, 1 - "+takes+" / V)", max(0, 1-c.rubs(&a, solved)/v), "", "share of the shear that friction leaves to the rods")
}

// States appends the worst of each limit state.
func (r *ColumnResult) States(l *limit.List) {
	for i := range r.worst {
		l.Add(r.worst[i])
	}
}

// Notices appends the notices of all cases.
func (r *ColumnResult) Notices(l *limit.Notices) {
	for _, n := range r.notices.All() {
		l.Add(n)
	}
}

// Derive writes the calculation of the case that governs.
func (r *ColumnResult) Derive(s *derive.Sheet) {
	c := &column{in: r.whole, given: r.in, strength: r.strength, probe: contact.Solver{Limit: probeSteps}, foot: r.foot}
	c.prepare()
	var unused limit.Notices
	k := &r.in.Cases[r.governs]
	s.Given("case", float64(r.governs+1), "", "combination that governs: "+k.Name)
	c.list.Reset()
	_, _ = c.check(k, &unused, s)
	c.deriveBelow(s)
}

// deriveSharing writes the actions at the level of contact and what support and rods
// make of them.
func (c *column) deriveSharing(s *derive.Sheet, k *Case, at *geom.Actions, solved *shared) {
	if a := &k.Actions; a.Vx != 0 || a.Vy != 0 {
		s.Given("t", c.in.Base.Plate.Plate.Thickness, "mm", "plate")
		s.Given("t_g", c.in.lever()-c.in.Base.Plate.Plate.Thickness, "mm", "grout")
		s.Step("h_v", "t + t_g", c.in.lever(), "mm", "from the plate's upper face, where the actions act, to what it presses on")
		for _, v := range [...]struct {
			m, v       string
			moment, by float64
			sum        float64
		}{{"M_x", "V_y", a.Mx, a.Vy, at.Mx}, {"M_y", "V_x", a.My, a.Vx, at.My}} {
			s.Given(v.m, math.Abs(v.moment), "Nmm", "of the case, by its amount")
			s.Given(v.v, math.Abs(v.by), "N", "of the case, by its amount")
			s.Step(v.m+",h", v.m+" + "+v.v+" h_v", math.Abs(v.sum), "Nmm", "statics; amounts add, so that no sign helps")
		}
	}
	if !solved.Found {
		return
	}
	s.Given("p_max", solved.highest, "MPa", clauseSharing)
	for i, t := range solved.most {
		rod := "T_rod#" + strconv.Itoa(i+1)
		s.Given(rod, t, "N", clauseSharing)
		if c.pull[i] > t {
			s.Given(rod, c.pull[i], "N", "the plate's own method, which pulls this rod more; see there")
		}
	}
	c.deriveFriction(k, solved, s)
}
