package trial

// Mode is the way in which a test ended.
type Mode uint8

// The modes. The zero value is none: the test was stopped without failure.
const (
	NoMode Mode = iota
	RingBurst
	FillCrushed
	PlateBent
	RodFailed
	GroundFailed
	OtherMode
)

// Knowledge is what is known of the coefficient of variation.
type Knowledge uint8

// The kinds of knowledge.
const (
	Unknown Knowledge = iota // the sample alone tells
	Known                    // agreed beforehand
	Prior                    // a deviation of earlier tests, with the trust put in it
)

// Test is one load test.
type Test struct {
	Specimen   string  // what was tested; tests of one name are alike
	Ground     string  // the ground below
	Date       string  // ISO 8601, or empty
	Load       float64 // at failure, or the greatest held [N]
	Failed     bool
	Mode       Mode
	Size       float64 // outer diameter [mm]; 0: not given
	Predicted  float64 // resistance by the model, r_t [N]; 0: no model
	Deflection float64 // load at the deflection limit [N]; 0: not given
	Removed    string  // recorded physical cause to leave it out; empty: counts
}

// Variation is what is known of the coefficient of variation beforehand.
type Variation struct {
	Knowledge  Knowledge
	Value      float64 // coefficient of variation [-]
	Comparable int     // tests that it was found from
	Degrees    float64 // degrees of freedom that a prior counts as [-]
	Source     string
}

// Correlation is the route of EN 1997-1 7.6.2.2(8).
type Correlation struct {
	Mean, Least float64 // xi1, xi2 [-]; 0: Table A.9
	Stiff       bool    // the structure can shift load
	Factor      float64 // gamma_t [-]; 0: none
	Source      string
	// FactorSource is where gamma_t comes from.
	FactorSource string
}

// States are the inputs of the United States' routes.
type States struct {
	Beta        float64 // target reliability beta0 [-]
	Material    float64 // V_M [-]
	Fabrication float64 // V_F [-]
	DeadLive    float64 // dead over live load [-]
	HasDeadLive bool    // else C_phi 1.52 and V_Q 0.21
}

// Family is the design size of a family of sizes.
type Family struct {
	Asked     bool
	Predicted float64 // resistance of the design size by the model at mean values [N]
	Variation float64 // V_rt of the model's inputs [-]
	Source    string
}

// Conversion is one conversion factor of eta_d.
type Conversion struct {
	Value  float64 // [-]
	Reason string
}

// Input is a population of tests.
type Input struct {
	Tests       []Test
	Mode        Mode // whose resistance is asked
	Variation   Variation
	LogNormal   bool    // stated by the caller, with a reason
	Confidence  float64 // of the bounds without failure [-]
	Conversions []Conversion
	Factor      float64 // gamma_M [-]; 0: none given
	Source      string  // of gamma_M
	Correlation Correlation
	States      States
	Family      Family
}
