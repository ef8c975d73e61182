package plate

import (
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

func byUS(clause string) [basis.Count]string {
	return [basis.Count]string{basis.USLRFD: clause, basis.USASD: clause}
}

// The limit states, in the order of an answer.
var (
	equilibrium = &limit.Kind{
		ID: "plate_equilibrium", Title: "Equilibrium of the plate on its support", Measure: limit.Ratio,
		Clause: [basis.Count]string{basis.Eurocode: "statics; " + clauseMoment, basis.USLRFD: clauseBlock, basis.USASD: clauseBlock},
	}
	compression = &limit.Kind{
		ID: "plate_compression", Title: "Plate and bearing under compression", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseCompression},
	}
	flange = &limit.Kind{
		ID: "plate_compression_flange", Title: "Plate and bearing under the pressed flange", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseMoment},
	}
	stub = &limit.Kind{
		ID: "plate_tension_tstub", Title: "Plate and rods on the lifted side (T-stub)", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseTStub},
	}
	columnPressed = &limit.Kind{
		ID: "column_flange_compression", Title: "Flange and web of the column in compression at the plate", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseColumnPressed},
	}
	columnPulled = &limit.Kind{
		ID: "column_web_tension", Title: "Web of the column in tension at the plate", Measure: limit.Force,
		Clause: [basis.Count]string{basis.Eurocode: clauseColumnPulled},
	}
	cantilever = &limit.Kind{
		ID: "plate_cantilever", Title: "Plate in bending on the pressed side", Measure: limit.UnitMoment,
		Clause: byUS(clauseCantilever),
	}
	lifted = &limit.Kind{
		ID: "plate_tension_cantilever", Title: "Plate in bending between rods and flange", Measure: limit.UnitMoment,
		Clause: byUS(clauseTension),
	}
	middle = &limit.Kind{
		ID: "plate_centre", Title: "Plate in bending under a soft footprint", Measure: limit.UnitMoment, Model: true,
		Clause: [basis.Count]string{basis.Eurocode: clauseCentre, basis.USLRFD: clauseCentre, basis.USASD: clauseCentre},
	}
)

// Kinds returns the limit states of the part in order.
func Kinds() []*limit.Kind {
	return []*limit.Kind{equilibrium, compression, flange, stub, columnPressed, columnPulled, cantilever, lifted, pressedAt, pulledAt, middle}
}

// Why a state does not apply.
const (
	idle      = "no action presses or lifts the plate"
	noMoment  = "there is no moment and no uplift"
	hasMoment = "a moment or an uplift acts: the pressed flange is checked instead"
	noLift    = "no side of the plate lifts"
	noPress   = "no side of the plate is pressed"
	noRods    = "a side of the plate lifts and there are no rods to hold it"
	unbalance = "no equilibrium was found"
	noSteel   = "the steel of the section is not given: its flange and web are not checked"
	slender   = "the section is of class 4, whose effective section is not computed"
)

// States appends the limit states in their fixed order.
func (r *Result) States(l *limit.List) {
	r.clauses(l)
	l.Add(r.pressedState(l))
	l.Add(r.pulledState(l))
	l.Add(r.centreState(l))
}

// clauses appends those of the clauses' own patterns.
func (r *Result) clauses(l *limit.List) {
	l.Add(r.balanced(r.equilibrium()))
	if r.in.Design.Basis == basis.Eurocode {
		l.Add(r.compressionState(l))
		l.Add(r.flangeState(l))
		l.Add(r.stubState(l))
		l.Add(r.columnPressedState())
		l.Add(r.columnPulledState())
	} else {
		l.Add(r.cantileverState(l))
		l.Add(r.liftedState(l))
	}
}

func (r *Result) equilibrium() limit.State {
	u, e := &r.US, &r.EC
	us, rods := r.in.Design.Basis.US(), len(r.in.Rods.At) > 0
	switch {
	case r.Case == Idle:
		return limit.Skip(equilibrium, idle)
	case r.Case == Concentric && us:
		return limit.Evaluate(equilibrium, r.P/(u.Q*r.frame.L), 1)
	case r.Case == Concentric:
		return limit.Skip(equilibrium, noMoment)
	case us && r.P >= u.Q*r.frame.L:
		s := limit.Evaluate(equilibrium, r.P/(u.Q*r.frame.L), 1)
		s.Verdict, s.Reason = limit.Fail, "the compression alone takes up all that the support can bear"
		return s
	case r.Loose:
		return r.loose()
	case r.Misfit != Fits && !u.Small && u.Fp == 0:
		return r.beyondClause(equilibrium)
	case us && u.Small && rods:
		return limit.Evaluate(equilibrium, r.P/(u.Q*r.frame.L), 1) // rods would hold the rest
	case us && u.Small:
		return limit.Evaluate(equilibrium, max(u.E/u.Ecrit, r.P/(u.Q*(r.frame.L-2*u.E))), 1)
	case e.Pressed && !e.Lifted && rods:
		return limit.Skip(equilibrium, "the compression alone balances the moment")
	case us && u.Need > 0:
		s := limit.Evaluate(equilibrium, u.Need/u.Have, 1)
		if s.Verdict == limit.Fail {
			s.Reason = "the plate is too small for the moment: no block of pressure balances it"
		}
		return s
	case e.Pressed && !e.Lifted:
		return limit.Evaluate(equilibrium, r.M/(r.P*e.Zc), 1)
	}
	return limit.Skip(equilibrium, "the rods balance what the compression does not")
}

// loose is the equilibrium of a plate that lifts without rods.
func (r *Result) loose() limit.State {
	var have float64
	if r.in.Design.Basis.US() {
		have = r.P * r.US.Ecrit
	} else {
		have = r.P * r.EC.Zc
	}
	s := limit.State{Kind: equilibrium, Verdict: limit.Fail}
	if have > 0 {
		s = limit.Evaluate(equilibrium, r.M/have, 1)
	}
	s.Reason = noRods
	return s
}

// settled returns the state of a kind that cannot be evaluated, and why.
func (r *Result) settled(k *limit.Kind, otherwise string) limit.State {
	switch {
	case r.Case == Idle:
		return limit.Skip(k, idle)
	case r.Misfit != Fits:
		return r.beyondClause(k)
	case r.Loose:
		return limit.Skip(k, noRods)
	}
	return limit.Skip(k, otherwise)
}

func (r *Result) compressionState(l *limit.List) limit.State {
	switch r.Case {
	case Concentric:
		s := limit.Evaluate(compression, r.P, r.EC.FcRd)
		return s.Need(limit.PlateThickness, r.spreadThickness(l))
	case Idle:
		return limit.Skip(compression, idle)
	}
	return limit.Skip(compression, hasMoment)
}

func (r *Result) flangeState(l *limit.List) limit.State {
	e := &r.EC
	if e.Pressed && r.Misfit == Fits {
		s := limit.Evaluate(flange, e.Fc, e.FcFlange)
		return s.Need(limit.PlateThickness, r.spreadThickness(l))
	}
	if r.Case == Concentric {
		return limit.Skip(flange, noMoment)
	}
	return r.settled(flange, noPress)
}

// spreadThickness returns the thickness that spreads the pressure far enough
// [mm].
func (r *Result) spreadThickness(l *limit.List) float64 {
	if l.NoSizes {
		return 0
	}
	c := r.compressionNeed()
	if c == 0 {
		return 0
	}
	d := &r.in.Design.EC
	return r.in.Plate.Needed(func(fy, _ float64) float64 {
		return c * math.Sqrt(3*r.in.Bearing.Pressure*d.GammaM0/fy)
	})
}

func (r *Result) stubState(l *limit.List) limit.State {
	e := &r.EC
	if !e.Lifted {
		if r.Case == Concentric {
			return limit.Skip(stub, noLift)
		}
		return r.settled(stub, noLift)
	}
	s := limit.Evaluate(stub, e.Ft, e.TStub.FtRd)
	if l.NoSizes {
		return s
	}
	return s.Need(limit.PlateThickness, r.in.Plate.Needed(func(fy, _ float64) float64 {
		return orNever(r.stubNeed(fy / r.in.Design.EC.GammaM0))
	}))
}

// orNever makes a thickness that does not exist one that is never reached.
func orNever(t float64) float64 {
	if t > 0 {
		return t
	}
	return math.Inf(1)
}

func (r *Result) cantileverState(l *limit.List) limit.State {
	u := &r.US
	if u.Fp > 0 {
		return limit.Evaluate(cantilever, u.Mu, u.Rm).Need(limit.PlateThickness, r.plastic(u.Mu, l))
	}
	if r.Case == Uniaxial && r.Misfit == Fits && !r.Loose && (u.Need <= 0 || u.Bent) && u.Lifted || r.Case == Uplift {
		return r.settled(cantilever, noPress)
	}
	return r.settled(cantilever, unbalance)
}

func (r *Result) liftedState(l *limit.List) limit.State {
	u := &r.US
	if u.Lifted {
		return limit.Evaluate(lifted, u.Mt, u.Rm).Need(limit.PlateThickness, r.plastic(u.Mt, l))
	}
	if r.Case == Concentric || u.Small {
		return limit.Skip(lifted, noLift)
	}
	return r.settled(lifted, unbalance)
}

// plastic returns the thickness whose plastic section carries a moment per
// width [mm].
func (r *Result) plastic(m float64, l *limit.List) float64 {
	if l.NoSizes {
		return 0
	}
	phi := basis.Flexure.Factor(r.in.Design.Basis)
	return r.in.Plate.Needed(func(fy, _ float64) float64 { return math.Sqrt(4 * m / (phi * fy)) })
}

func (r *Result) centreState(l *limit.List) limit.State {
	switch {
	case r.in.Footprint.Stiff:
		return limit.Skip(middle, "the footprint is stated to be stiff")
	case r.Case == Idle || r.Case == Uplift:
		return limit.Skip(middle, noPress)
	case !r.Centre.Done:
		return limit.Beyond(middle, "under a moment a soft footprint is covered only where two plates bring the moment in across their gap and no side lifts")
	}
	c := &r.Centre
	s := limit.Evaluate(middle, c.M, c.Rm)
	switch {
	case l.NoSizes:
		return s
	case r.in.Design.Basis.US():
		return s.Need(limit.PlateThickness, r.plastic(c.M, l))
	}
	d := &r.in.Design.EC
	return s.Need(limit.PlateThickness, r.in.Plate.Needed(func(fy, _ float64) float64 {
		return math.Sqrt(6 * c.M * d.GammaM0 / fy)
	}))
}
