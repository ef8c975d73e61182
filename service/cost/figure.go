package cost

import "time"

// The figures are medians over the demo and the published figures at Go 1.26 on one
// core of an Intel Xeon [us]; TestEstimatesAreNearTheWork holds them to a factor of
// three, by ratio, so that they hold on another machine too.

// by is what a part takes by how much is told of it [us].
type by struct{ governing, states, derivation float64 }

var (
	ofBearing   = by{3, 6, 21}
	ofPlate     = by{5, 8, 60}
	ofPulled    = by{60, 100, 150} // a plate with rods, besides
	ofWeld      = by{4, 6, 65}
	ofRods      = by{5, 9, 45}
	ofAnchorage = by{7, 14, 60}
	ofPin       = by{5, 25, 100}
	ofFooting   = by{4, 10, 90}
	ofRings     = by{6, 60, 300}
	ofSettling  = by{7, 13, 40}
	ofBase      = by{50, 150, 350}
)

const (
	// Of load tests and their records, of which the derivation is most.
	evidenceRead = 40.0
	oneTest      = 3.0
	oneStage     = 5.0

	emptyItem = 1.0 // an item without a check, which is refused

	// Beside that, of each part.
	rodOfPlate   = 2.0
	rodOfRods    = 0.2
	rodOfHeads   = 0.5
	pairOfRods   = 5.0 // rods through a stack, for each pair of them
	onePin       = 1.0
	sizedPin     = 5.0 // where required sizes are searched for
	lineElastic  = 1.0 // of a group of welds
	lineCentre   = 15.0
	firstCentre  = 250.0 // the search for the centre beside its lines
	tier         = 3.0
	approach     = 2.0
	stageOfLayer = 0.15 // of each stage and layer, or neighbour
	clayOfLayer  = 4.0  // the same where a layer consolidates

	// A whole base.
	ofSubsoil    = 40.0   // ground below it, once
	tilted       = 150.0  // pressed by an elastic bed without rods, once
	bottomPlate  = 6000.0 // a bottom plate on the ground, once
	caseAlone    = 5.0    // a combination without rods
	caseElastic  = 30.0   // with rods on an elastic bed
	rodElastic   = 20.0   // each of them besides
	pairThrough  = 2.0    // each pair of rods through a stack
	casePlastic  = 350.0  // with rods on a plastic bed
	rodPlastic   = 20.0
	sizedCases   = 6.0 // as many combinations are checked again for the required sizes
	combination  = 1.2 // writing one out
	padTried     = 12.0
	caseOfPad    = 4.0 // of a pad that is sized, each combination on each pad
	padsTried    = 0.1 // share of the pads that are tried
	comparing    = 300.0
	choiceListed = 0.4
)

// triesPerRoot times the root of the choices are tried by a search: those that are
// cheaper than the best, but for what is known to fail.
const triesPerRoot = 4.0

func us(v float64) time.Duration { return time.Duration(v * float64(time.Microsecond)) }
