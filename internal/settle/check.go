package settle

import (
	"fmt"
	"math"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
)

// Shape is the plan of a footing.
type Shape uint8

// The shapes. The zero value is none of them.
const (
	NoShape Shape = iota
	Rectangle
	Circle
)

// Spread is how the stress of consolidation goes down into the ground.
type Spread uint8

// The spreads.
const (
	Boussinesq Spread = iota // under the centre
	TwoToOne                 // the mean, 2 down to 1 across
)

// Stage is a state of load, in the order of time.
type Stage struct {
	Name string
	// Net is the mean pressure on the base, net of the ground that the
	// excavation took away [MPa]; 0 where N is given.
	Net float64
	N   float64 // force on the base, net likewise, compression positive [N]
	Mx  float64 // moment about x [Nmm]
	My  float64 // moment about y [Nmm]
	// Above is what stands on the ground settles by itself, such as a stack of
	// rings; it adds to settlements [mm].
	Above float64
	TurnX float64 // how far it turns about x by itself, which adds to the tilt [rad]
	TurnY float64 // about y [rad]
}

// Layer is a layer of the ground, of which everything but the thickness may be
// unknown.
type Layer struct {
	Thickness float64 // [mm]
	Modulus   float64 // of elasticity, drained for the whole settlement [MPa]; 0: not known
	Poisson   float64 // [-]
	Weight    float64 // unit weight, wet [N/mm3]; 0: not known
	Oedometer Oedometer
	N60       float64 // blow count at 60 % of the energy [-]; 0: not known
	Cone      float64 // cone resistance q_c [MPa]; 0: not known
}

// Limits are the movements that the structure stands.
type Limits struct {
	Total      float64 // settlement [mm]; 0: 50
	Distortion float64 // angular distortion between neighbours [-]; 0: 1/500
	Tilt       float64 // of the footing [rad]; 0: no limit
}

// Neighbour is a footing beside this one.
type Neighbour struct {
	Distance   float64 // between the centres [mm]
	Settlement float64 // of the neighbour [mm]
}

// Input is a footing, the ground below its base, and its stages.
type Input struct {
	Design     basis.Design
	Shape      Shape
	SizeX      float64 // of a rectangle [mm]
	SizeY      float64 // of a rectangle [mm]
	Diameter   float64 // of a circle [mm]
	Rigid      bool
	Depth      float64 // of the base below the surface [mm]
	Above      float64 // unit weight of the ground above the base [N/mm3]; 0: not known
	Embedment  float64 // depth factor I_f of the elastic settlement [-]; 0: 1, the safe side
	Water      float64 // depth of the water below the surface [mm]; 0: at the surface
	Dry        bool    // no water down to the last layer
	Layers     []Layer // from the base down
	HalfSpace  bool    // the last layer goes down without end; else rigid ground follows
	Preloaded  float64 // greatest effective stress that the sand below the base has known [MPa]; 0: not preloaded
	Spread     Spread
	Simpson    bool    // one Simpson mean per layer, as hand calculations do, not thin slices
	Years      float64 // after which the settlement is wanted [years]; 0: without creep
	Stages     []Stage
	Limits     Limits
	Neighbours []Neighbour
}

// Settled is what one stage comes to. A method that the data do not allow, for
// the reason in Result, stays 0.
type Settled struct {
	Name          string
	Above         float64 // settlement of what stands on the ground [mm]
	Pressure      float64 // net [MPa]
	Centre        float64 // elastic settlement of the centre of a flexible footing [mm]
	Elastic       float64 // elastic settlement of the footing as it is, rigid or flexible [mm]
	Schmertmann   float64 // sand by cone resistance [mm]
	Burland       float64 // sand by blow count, Burland and Burbidge [mm]
	BlowCount     float64 // sand by blow count, Meyerhof and Bowles: a figure beside [mm]
	Consolidation float64 // clay [mm]
	Total         Total   // what different methods find of different layers, added
	TiltX         float64 // rotation about x [rad]
	TiltY         float64 // rotation about y [rad]
	Tilt          float64 // the steepest [rad]
}

// Result holds every intermediate value of a check.
type Result struct {
	in *Input

	Width     float64    // the lesser side, or the diameter [mm]
	Length    float64    // the greater side, or the diameter [mm]
	Area      float64    // of the base [mm2]
	Factor    float64    // settlement over that of the flexible centre [-]
	Embedment float64    // I_f [-]
	Influence []float64  // of each layer, elastic [-]
	Give      float64    // (1 - nu^2)/E of the softest layer within one width [mm2/N]
	Radii     [2]float64 // of the circles that turn as the footing does about x and y [mm]
	Sand      Sand
	Stages    []Settled

	// Why a method was left out; empty where it was not.
	NoElastic, NoSchmertmann, NoBurland, NoConsolidation string
	NoTilt                                               string // likewise of the tilt: a layer within one width has no modulus

	Total      float64 // limit of the settlement [mm]
	Distortion float64 // limit of the angular distortion [-]
	Worst      Uneven  // the worst neighbour

	whole       plan
	flexibility float64 // sum of Influence/E
	softest     int
}

// Uneven is the settlement of the footing against that of a neighbour.
type Uneven struct {
	Neighbour  int     // counted from 1; 0: none
	Settlement float64 // of the footing by the method that is worst here [mm]
	Difference float64 // [mm]
	Ratio      float64 // difference over distance [-]
}

const onePart = "no method leaves a layer to another: nothing is to be added"

const noWeights = "a unit weight that the initial stress needs is missing"

func nameless(i int, field string) string {
	return fmt.Sprintf("layers[%d] has no %s", i, field)
}

// Check predicts the settlement of every stage by every method that the data
// allow.
//
// Source: EN 1997-1:2004 6.6, Annexes F and H; the methods as each says.
func Check(in *Input) (*Result, error) {
	var faults limit.Faults
	Validate(in, &faults)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	r := &Result{in: in, Total: 50, Distortion: 1.0 / 500}
	if in.Limits.Total > 0 {
		r.Total = in.Limits.Total
	}
	if in.Limits.Distortion > 0 {
		r.Distortion = in.Limits.Distortion
	}
	r.Width, r.Length = min(in.SizeX, in.SizeY), max(in.SizeX, in.SizeY)
	r.Area = in.SizeX * in.SizeY
	if in.Shape == Circle {
		r.Width, r.Length = in.Diameter, in.Diameter
		r.Area = math.Pi / 4 * in.Diameter * in.Diameter
	}
	r.Radii = r.radii()
	r.elastic()
	r.schmertmann()
	r.burland()
	r.consolidation()
	for i := range in.Stages {
		r.Stages = append(r.Stages, r.settle(&in.Stages[i]))
	}
	r.whole = r.plan()
	for i := range r.Stages {
		r.Stages[i].Total = r.totalOf(&r.Stages[i])
	}
	r.uneven()
	return r, nil
}

func (r *Result) settle(s *Stage) Settled {
	q := s.Net
	if q == 0 {
		q = s.N / r.Area
	}
	out := Settled{
		Name: s.Name, Above: s.Above, Pressure: q,
		Schmertmann: r.schmertmannOf(q), Burland: r.burlandOf(q), Consolidation: r.consolidationOf(q),
	}
	if r.NoBurland == "" {
		out.BlowCount = BlowCount(q, r.Width, r.in.Depth, r.Sand.Blows)
	}
	if r.NoElastic == "" {
		out.Centre = q * r.Width * r.Embedment * r.flexibility
		out.Elastic = r.Factor * out.Centre
	}
	if r.NoTilt == "" {
		out.TiltX = r.bends() * TiltOfCircle(math.Abs(s.Mx), r.Radii[0], 1/r.Give, 0)
		out.TiltY = r.bends() * TiltOfCircle(math.Abs(s.My), r.Radii[1], 1/r.Give, 0)
	}
	out.TiltX, out.TiltY = out.TiltX+s.TurnX, out.TiltY+s.TurnY
	out.Tilt = math.Hypot(out.TiltX, out.TiltY)
	return out
}

// method is a way to predict, with its figure in a stage.
type method struct {
	reason string
	of     func(*Settled) float64
}

// methods returns the ways to predict in the order of the limit states; the last
// adds what others find of different layers.
func (r *Result) methods() [5]method {
	added := r.whole.gap
	if r.whole.parts < 2 && added == "" {
		added = onePart
	}
	return [5]method{
		{r.NoElastic, func(s *Settled) float64 { return s.Elastic + s.Above }},
		{r.NoSchmertmann, func(s *Settled) float64 { return s.Schmertmann + s.Above }},
		{r.NoBurland, func(s *Settled) float64 { return s.Burland + s.Above }},
		{r.NoConsolidation, func(s *Settled) float64 { return s.Consolidation + s.Above }},
		{added, func(s *Settled) float64 { return s.Total.Sum + s.Above }},
	}
}

// NoTotal says why nothing is added; empty: it is.
func (r *Result) NoTotal() string { return r.methods()[4].reason }

// greatest returns the stage, counted from 0, with the greatest figure; of
// equals, the last, for that is what stays.
func (r *Result) greatest(of func(*Settled) float64) int {
	best := 0
	for i := range r.Stages {
		if of(&r.Stages[i]) >= of(&r.Stages[best]) {
			best = i
		}
	}
	return best
}

// uneven finds the worst neighbour, by whichever method makes it worst.
func (r *Result) uneven() {
	for _, m := range r.methods() {
		if m.reason != "" {
			continue
		}
		s := m.of(&r.Stages[r.greatest(m.of)])
		for i, n := range r.in.Neighbours {
			d := math.Abs(s - n.Settlement)
			if ratio := d / n.Distance; r.Worst.Neighbour == 0 || ratio > r.Worst.Ratio {
				r.Worst = Uneven{Neighbour: i + 1, Settlement: s, Difference: d, Ratio: ratio}
			}
		}
	}
}
