package size

import (
	"fmt"
	"strings"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/ring"
)

// Plan is a plan of the plate with the places of its rods.
type Plan struct {
	SizeX float64      // [mm]
	SizeY float64      // [mm]
	At    []geom.Point // nil: as in the base
}

// Rod is a rod that may be chosen.
type Rod struct {
	Thread material.Thread
	Steel  material.RodSteel // without strength: that of the base
	OwnKg  bool              // whether PerKg takes the place of Rates.RodKg
	PerKg  float64           // for each kg of this rod [1/kg]
}

// BottomPlate is a bottom plate that may be chosen, of the base's own steel.
type BottomPlate struct {
	SizeX     float64 // [mm]
	SizeY     float64 // [mm]
	Thickness float64 // [mm]
}

// Stack is a stack of rings that may be chosen.
type Stack struct {
	Tiers      []ring.Tier
	RingsCost  float64 // in the unit of the rates [-]
	LoadTested bool    // whether a stack of this build was loaded; one like the base's own has its test
	LoadTest   float64 // compression reached [N]
}

// Rates are what a choice costs, in any one unit.
type Rates struct {
	PlateKg float64 // for each kg of plate [1/kg]
	RodKg   float64 // for each kg of rod [1/kg]
	EachRod float64 // for each rod [-]
	WeldKg  float64 // for each kg of weld metal [1/kg]
	FillKg  float64 // for each kg of fill [1/kg]
}

// Mass is what every kg costs when the mass itself is sought.
var Mass = Rates{PlateKg: 1, RodKg: 1, WeldKg: 1, FillKg: 1}

// Input is a base with what may be chosen of it. An empty list leaves the base's
// own value.
type Input struct {
	Base      base.ColumnInput
	Plans     []Plan
	Thickness []float64 // of the plate [mm]
	Rods      []Rod
	Throats   []float64 // of the weld [mm]
	Bottoms   []BottomPlate
	Stacks    []Stack
	Rates     Rates
	Most      float64 // greatest utilization that passes [-]
	// Stop is asked before every check, every case of it and while choices are
	// listed; an error ends the search. nil: never.
	Stop func() error
}

// MostChoices is the most that one search may have.
const MostChoices = 200000

// Validate adds to faults everything about the offer that does not fit; what does
// not fit of the base shows in every choice.
func Validate(in *Input, faults *limit.Faults) {
	choices := 1
	for _, n := range in.offered() {
		if choices *= max(1, n); choices > MostChoices {
			faults.Add(limit.Number, "offer", fmt.Sprintf("makes more than %d choices", MostChoices))
			return
		}
	}
	if len(in.Rods) > 0 && !in.Base.Base.HasRods {
		faults.Add(limit.Conflict, "offer.rods", "needs base.rods")
	}
	if len(in.Throats) > 0 && (!in.Base.HasWeld || in.Base.Weld.Throat == 0) {
		faults.Add(limit.Conflict, "offer.throat_mm", "needs base.weld with a throat")
	}
	validateBelow(in, faults)
	positive := func(field string, list []float64) {
		for i, v := range list {
			if !(v > 0 && v <= 1e4) {
				faults.Add(limit.OutOfRange, fmt.Sprintf("%s[%d]", field, i), "must be a positive length")
			}
		}
	}
	positive("offer.thickness_mm", in.Thickness)
	positive("offer.throat_mm", in.Throats)
	for i, p := range in.Plans {
		if !(p.SizeX > 0 && p.SizeX <= 1e5 && p.SizeY > 0 && p.SizeY <= 1e5) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("offer.plans[%d]", i), "needs positive lengths")
		}
		if len(p.At) > 0 && !in.Base.Base.HasRods {
			faults.Add(limit.Conflict, fmt.Sprintf("offer.plans[%d].positions", i), "needs base.rods")
		}
	}
	if !(in.Most > 0 && in.Most <= 1) {
		faults.Add(limit.OutOfRange, "max_utilization", "must be over 0 and at most 1")
	}
	for i, v := range in.Rods {
		faults.Range(fmt.Sprintf("offer.rods[%d].per_kg", i), v.PerKg, 0, 1e9, 1, "")
	}
	r := &in.Rates
	for _, v := range []float64{r.PlateKg, r.RodKg, r.EachRod, r.WeldKg, r.FillKg} {
		faults.Range("rates", v, 0, 1e9, 1, "")
	}
}

// validateBelow adds to faults what does not fit of bottom plates and stacks.
func validateBelow(in *Input, faults *limit.Faults) {
	t := &in.Base.Anchorage.Through
	if len(in.Bottoms) > 0 && in.Base.Anchorage.Kind != base.Through {
		faults.Add(limit.Conflict, "offer.bottom_plates", "needs base.anchorage.through")
	}
	if len(in.Stacks) > 0 && !in.Base.Below.HasStack {
		faults.Add(limit.Conflict, "offer.stacks", "needs base.substructure.stack")
	}
	if len(in.Bottoms)+len(in.Stacks) > 0 && (t.Height > 0 || t.Clamped > 0) && in.Base.Below.HasStack {
		faults.Add(limit.Conflict, "base.anchorage.through.height_mm",
			"and clamped_weight_kn must be left out where bottom plates or stacks are offered, for they differ")
	}
	for i, p := range in.Bottoms {
		if !(p.SizeX > 0 && p.SizeX <= 1e5 && p.SizeY > 0 && p.SizeY <= 1e5 && p.Thickness > 0 && p.Thickness <= 1e4) {
			faults.Add(limit.OutOfRange, fmt.Sprintf("offer.bottom_plates[%d]", i), "needs positive lengths")
		}
	}
	for i := range in.Stacks {
		k := &in.Stacks[i]
		faults.Range(fmt.Sprintf("offer.stacks[%d].rings_cost", i), k.RingsCost, 0, 1e12, 1, "")
		if k.LoadTest != 0 && !k.LoadTested {
			faults.Add(limit.Conflict, fmt.Sprintf("offer.stacks[%d].load_test_kn", i), "goes with load_tested only")
		}
		stack := in.Base.Below.Stack
		stack.Tiers, stack.LoadTested, stack.LoadTest = k.Tiers, k.LoadTested, k.LoadTest
		var own limit.Faults
		ring.Validate(&stack, &own)
		for _, f := range own {
			if strings.HasPrefix(f.Field, "tiers") || f.Field == "load_test_kn" {
				f.Field = fmt.Sprintf("offer.stacks[%d].", i) + f.Field
				*faults = append(*faults, f)
			}
		}
	}
}
