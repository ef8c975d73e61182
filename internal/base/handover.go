package base

// Handover is what one part of a column base hands to the next: the demand of the
// receiver's limit state is at least that of the giver's, under every combination.
type Handover struct {
	From, To string // parts
	What     string // quantity
	Unit     string
	Gives    string // limit state of the giver
	Takes    string // limit state of the receiver
	// Rods of a side that share what is given, instead of each having it.
	Row bool
}

// Handovers returns what the parts of a column base hand on, down the load path.
func Handovers() []Handover {
	return []Handover{
		{From: "plate", To: "rods", What: "tension of the lifted side", Unit: "N", Gives: "plate_tension_tstub", Takes: "rod_tension", Row: true},
		{From: "plate", To: "headed anchorage", What: "tension of the lifted side", Unit: "N", Gives: "plate_tension_tstub", Takes: "anchor_rod_tension", Row: true},
		{From: "plate", To: "anchorage through a stack", What: "tension of the lifted side", Unit: "N", Gives: "plate_tension_tstub", Takes: "tie_plate_punching", Row: true},
		{From: "rods", To: "plate", What: "tension under a nut", Unit: "N", Gives: "rod_tension", Takes: "plate_punching"},
		{From: "rods", To: "headed anchorage", What: "tension of a rod", Unit: "N", Gives: "rod_tension", Takes: "anchor_rod_tension"},
		{From: "rods", To: "headed anchorage", What: "shear of a rod", Unit: "N", Gives: "rod_shear", Takes: "anchor_rod_shear"},
		{From: "rods", To: "anchorage through a stack", What: "tension of a rod", Unit: "N", Gives: "rod_tension", Takes: "tie_plate_punching"},
		{From: "sharing", To: "stack", What: "pressure of the plate", Unit: "MPa", Gives: "base_pressure", Takes: "ring_edge_stress"},
		{From: "stack", To: "settlement", What: "settlement of the stack", Unit: "mm", Gives: "ring_settlement", Takes: "settle_elastic"},
	}
}
