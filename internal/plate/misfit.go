package plate

// Misfit is why the clauses' own pattern does not fit a plate, so that it is beyond
// them.
type Misfit uint8

// The misfits. The zero value: the pattern fits.
const (
	Fits        Misfit = iota
	NoFlange           // nothing straight stands across the direction
	NoRow              // no rods outside the footprint on the side that lifts
	ManyRows           // more than one row there
	OffMiddle          // the row is not symmetrical about the column
	RoundCorner        // rods further beyond the flange's ends than off its face
	OnWeld             // rods on the weld of the footprint
	OtherNumber        // other than two rods in a T-stub
)

var misfits = [...]string{
	NoFlange:    "a moment or an uplift is covered only where flanges, walls or plates stand across its direction; an I-section about its web's axis, a pipe and a solid footprint are not",
	NoRow:       "no rods stand outside the footprint on the side that lifts",
	ManyRows:    "the rods outside the footprint on the side that lifts stand in more than one row",
	OffMiddle:   "the row of rods on the side that lifts is not symmetrical about the column",
	RoundCorner: "the rods stand further beyond the ends of the flange than off its face: the plate would bend round the corner, which is not covered",
	OnWeld:      "the rods stand on the weld of the footprint",
	OtherNumber: "the T-stub has two rods in its row; other numbers are not covered",
}

// Reason says it in words; empty: the pattern fits.
func (m Misfit) Reason() string {
	if int(m) < len(misfits) {
		return misfits[m]
	}
	return ""
}
