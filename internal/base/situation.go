package base

import (
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/pad"
)

// Lasting is how long a combination lasts, for timber. Zero values: not known.
type Lasting struct {
	Class        bearing.Duration // Eurocode
	LoadDuration float64          // C_D, ASD [-]
	TimeEffect   float64          // lambda, LRFD [-]
}

// support returns a support as it is under a case: timber is as strong as the
// combination lasts, and no stronger than is said of the timber itself.
//
// Source: EN 1995-1-1:2004 3.1.3(2); NDS 2018 2.3.2.2, N.3.3.
func (k *Case) support(b bearing.Input) bearing.Input {
	t, l := &b.Timber, &k.Lasting
	if l.Class != 0 && (t.Duration == 0 || l.Class < t.Duration) {
		t.Duration = l.Class
	}
	t.LoadDuration, t.TimeEffect = lesser(t.LoadDuration, l.LoadDuration), lesser(t.TimeEffect, l.TimeEffect)
	return b
}

// lesser returns the lesser of two factors of which zero is not given [-].
func lesser(a, b float64) float64 {
	if a == 0 || b == 0 {
		return a + b
	}
	return min(a, b)
}

// during has the support as it is under a case.
func (c *column) during(k *Case) error {
	if c.in.Base.Support.Medium != bearing.Timber {
		return nil
	}
	var err error
	c.in.Base.Support = k.support(c.given.Base.Support)
	if c.strength, err = bearing.Available(&c.in.Base.Support); err == nil && c.in.Modulus == 0 {
		c.bed.Bed.Strength = c.strength.Pressure
	}
	return err
}

// Unproved says what the combinations do not prove, and why. Empty: they do.
type Unproved struct {
	Strength    string
	Equilibrium string // of what hangs on weight alone
}

// hangs are the limit states of static equilibrium: EN 1990:2002 6.4.1(1)a.
var hangs = map[string]bool{"ring_overturning": true, "tie_uplift": true, "tie_overturning": true}

// unproved leaves to an engineer what passes under combinations that do not prove it.
func (in *ColumnInput) unproved(all []limit.State) {
	for i := range all {
		why := in.Unproved.Strength
		if hangs[all[i].Kind.ID] {
			why = in.Unproved.Equilibrium
		}
		if why != "" {
			open(all[i:i+1], why)
		}
	}
}

// unprovedBelow does so for what of the substructure is held to the combinations.
func (in *ColumnInput) unprovedBelow(all []limit.State) {
	for _, kinds := range [][]*limit.Kind{pad.Kinds(), {underside}} {
		for _, k := range kinds {
			for i := range all {
				if all[i].Kind == k {
					in.unproved(all[i : i+1])
				}
			}
		}
	}
}

// partials returns the factors on actions of a pair.
//
// Source: EN 1997-1:2004 2.4.7.1(3), 1.0 in accidental situations.
func (k *Pair) partials(given ground.Partials) ground.Partials {
	if !k.Accidental {
		return given
	}
	return ground.Partials{GSup: 1, GInf: 1, Q: 1, QC: 1, GDst: 1, GStb: 1}
}

// Actions returns a footing on the ground under a pair.
func (k *Pair) Actions(g ground.Input) ground.Input {
	g.Permanent, g.Variable, g.Lift, g.Partials = k.Permanent, k.Variable, k.Lift, k.partials(g.Partials)
	return g
}

// The notices of the combinations, in the order of an answer.
var (
	ownDuration = &limit.Notice{Code: "base_duration_by_combination", Severity: limit.Assumption,
		Text: "Timber has k_mod (C_D, lambda) of each combination by that of its actions which is there for the shortest time, and no better than is said of the timber. Where an action states no duration it is that of its kind, of snow and roofs by the Eurocode the longer, medium-term; a national annex may say otherwise."}
	oneDuration = &limit.Notice{Code: "base_duration_for_all", Severity: limit.Caution,
		Text: "Load cases without a load duration have that of the timber: it is right only for cases with an action that lasts no longer."}
	persistentLeft = &limit.Notice{Code: "base_persistent_left_out", Severity: limit.Caution,
		Text: "The kinds asked for hold the accidental situation and not strength: the persistent situation is not verified."}
	equilibriumLeft = &limit.Notice{Code: "base_equilibrium_left_out", Severity: limit.Caution,
		Text: "The kinds asked for leave out equilibrium: rods that hold down have less than 0.9 of the permanent with 1.5 of the variable actions asks for (EN 1990 Table A1.2(A))."}
	readyService = &limit.Notice{Code: "base_characteristic_given", Severity: limit.Caution,
		Text: "Ground, settlement and rings are checked under the characteristic load cases as given. Whether these hold all that acts, at every stage and in every direction, with permanent actions favourable and not, is for whoever made them."}
	accidentalGround = &limit.Notice{Code: "base_ground_accidental", Severity: limit.Assumption,
		Text: "In the accidental situation the ground has 1.0 on actions and the partial factors of the persistent situation on its strength (EN 1997-1 2.4.7.1(3) leaves them to the case)."}
)

// remarkCases appends the notices of the combinations.
func (in *ColumnInput) remarkCases(l *limit.Notices) {
	if in.Base.Support.Medium == bearing.Timber {
		own, none := false, false
		for i := range in.Cases {
			known := in.Cases[i].Lasting != Lasting{}
			own, none = own || known, none || !known
		}
		if own {
			l.Add(ownDuration)
		}
		if none && len(in.Cases) > 1 {
			l.Add(oneDuration)
		}
	}
	if in.NoPersistent {
		l.Add(persistentLeft)
	}
	if in.NoEquilibrium {
		l.Add(equilibriumLeft)
	}
	if in.ReadyService && (in.Below.HasGround || in.Below.HasStack) {
		l.Add(readyService)
	}
	for i := range in.Below.Pairs {
		if in.Below.HasGround && in.Below.Pairs[i].Accidental {
			l.Add(accidentalGround)
		}
	}
	for _, n := range in.Remarks {
		l.Add(n)
	}
}
