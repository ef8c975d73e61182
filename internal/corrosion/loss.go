package corrosion

import (
	"fmt"

	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
)

// Ground is what the steel lies in.
type Ground uint8

// The kinds of ground of the table. The zero value is none of them.
const (
	NoGround                Ground = iota
	UndisturbedNatural             // sand, silt, clay, schist
	PollutedNatural                // and industrial sites
	AggressiveNatural              // swamp, marsh, peat
	LooseFill                      // not compacted, not aggressive: clay, schist, sand, silt
	LooseAggressiveFill            // not compacted: ashes, slag
	CompactedFill                  // half of LooseFill
	CompactedAggressiveFill        // half of LooseAggressiveFill
)

// Exposure is what acts on the steel and for how long: Ground or Rate.
type Exposure struct {
	Years  float64 // design life [years]
	Ground Ground  // NoGround: by Rate
	Rate   float64 // loss of a face [mm/year]
}

// columns of the table [years].
var columns = [...]float64{5, 25, 50, 75, 100}

// table is the loss of a face [mm].
//
// Source: EN 1993-5:2007 Table 4-1 (from memory).
var table = [...][len(columns)]float64{
	UndisturbedNatural:  {0.00, 0.30, 0.60, 0.90, 1.20},
	PollutedNatural:     {0.15, 0.75, 1.50, 2.25, 3.00},
	AggressiveNatural:   {0.20, 1.00, 1.75, 2.50, 3.25},
	LooseFill:           {0.18, 0.70, 1.20, 1.70, 2.20},
	LooseAggressiveFill: {0.50, 2.00, 3.25, 4.50, 5.75},
}

// compacted is what the figures are divided by in compacted fill: EN 1993-5:2007
// Table 4-1, note (from memory).
const compacted = 2

const (
	longest  = 100.0 // years, of the table
	greatest = 10.0  // mm/year
)

// PerFace returns the loss of one face [mm]. What lies between columns of the
// table comes by a straight line; below five years, the figure of five years.
//
// Source: EN 1993-5:2007 Table 4-1.
func (e Exposure) PerFace() float64 {
	if e.Ground == NoGround || e.Ground > CompactedAggressiveFill {
		return e.Rate * e.Years
	}
	ground, share := e.Ground, 1.0
	switch e.Ground {
	case CompactedFill:
		ground, share = LooseFill, compacted
	case CompactedAggressiveFill:
		ground, share = LooseAggressiveFill, compacted
	}
	row := &table[ground]
	for i, y := range columns {
		if e.Years > y {
			continue
		}
		if i == 0 {
			return row[0] / share
		}
		part := (e.Years - columns[i-1]) / (y - columns[i-1])
		return (row[i-1] + part*(row[i]-row[i-1])) / share
	}
	return row[len(row)-1] / share
}

// Plate returns the thickness that a plate loses on both faces together [mm].
//
// Source: geometry.
func (e Exposure) Plate() float64 { return 2 * e.PerFace() }

// Rod returns the diameter that a rod loses [mm].
//
// Source: geometry.
func (e Exposure) Rod() float64 { return 2 * e.PerFace() }

// Throat returns the throat that a weld loses [mm]: of a fillet one face, of a
// weld through the plate both.
//
// Source: geometry.
func (e Exposure) Throat(through bool) float64 {
	if through {
		return 2 * e.PerFace()
	}
	return e.PerFace()
}

// Validate adds to faults everything about the exposure that does not fit.
func (e Exposure) Validate(path string, faults *limit.Faults) {
	if !(e.Years > 0 && e.Years <= longest) {
		faults.Add(limit.OutOfRange, path+".design_life_years", fmt.Sprintf("must be over 0 and at most %g years", longest))
	}
	rate := path + ".rate_mm_per_year"
	switch {
	case e.Ground > CompactedAggressiveFill:
		faults.Add(limit.UnknownValue, path+".ground", "is none of the kinds of ground")
	case !(e.Rate >= 0 && e.Rate <= greatest):
		faults.Add(limit.OutOfRange, rate, fmt.Sprintf("must be from 0 to %g mm a year", greatest))
	case e.Ground == NoGround && e.Rate == 0:
		faults.Add(limit.Missing, path+".ground", "needs the ground that the steel lies in, or rate_mm_per_year")
	case e.Ground != NoGround && e.Rate > 0:
		faults.Add(limit.Conflict, rate, "give the ground or the rate, not both")
	}
}

// Remark is the notice of every answer that takes an exposure into account.
var Remark = &limit.Notice{Code: "corrosion_by_exposure", Severity: limit.Assumption,
	Text: "Plates lose the exposure's loss on both faces, rods all round, fillet welds on their face, unless a part states its own allowance. The table is for bare steel in soil, away from stray currents, other metals and the splash of sea water; steel rings lose it where they state their wall, pins not at all."}

// Derive writes where the loss comes from.
func (e Exposure) Derive(s *derive.Sheet) {
	s.Given("t_life", e.Years, "", "design life in years")
	if e.Ground == NoGround {
		s.Given("rate_corr", e.Rate, "mm", "loss of a face in a year, given in the request")
		s.Step("Delta_face", "rate_corr t_life", e.PerFace(), "mm", "steady loss")
		return
	}
	s.Given("Delta_face", e.PerFace(), "mm", "EN 1993-5:2007 Table 4-1, loss of one face")
}
