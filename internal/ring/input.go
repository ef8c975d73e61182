package ring

import (
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/geom"
)

// RingKind is what a ring is made of.
type RingKind uint8

// The kinds of ring. The zero value is none of them.
const (
	NoKind RingKind = iota
	Steel
	Concrete
	Geocell
	Tyre
	Other
)

// extensible reports whether a ring strains so much that its stiffness, not only
// its strength, limits what it confines.
func (k RingKind) extensible() bool { return k == Geocell || k == Tyre }

// Grade is how well the fill is compacted, as the table of constrained moduli has
// it.
type Grade uint8

// The grades. The zero value is none of them: a modulus is given, or none is known.
const (
	NoGrade Grade = iota
	Sn100
	Sn95
	Sn90
	Sn85
)

// Shoe is the plate on top of the stack.
type Shoe struct {
	SizeX float64 // [mm]; of a round plate its diameter
	SizeY float64 // [mm]; of a round plate its diameter
	Round bool
	// Loaded is the diameter d_0 of the circle through which the plate presses
	// [mm]; 0: the circle inscribed, the lesser side. A circle of equal area,
	// limited by the outstand that bending allows, is the caller's to find.
	Loaded float64
	// Rubs is the most that a force on top of the fill may rub against sliding of the
	// shoe, factor included [-]: another coefficient of that interface; 0: none.
	Rubs float64
}

// Ring is what holds the fill of a tier together.
type Ring struct {
	Kind RingKind
	// Capacity is T_k, the characteristic hoop force of the ring over the whole
	// height of its tier [N]: the force in one cut through its wall. 0: not known.
	Capacity float64
	// Stiffness is M, the hoop force per height of ring and per unit of hoop
	// strain, E times the thickness of the wall [N/mm]. 0: not known.
	Stiffness  float64
	Strain     float64 // axial strain e_a allowed of the fill in an extensible ring [-]; 0: 0.02
	Durability float64 // share of T_k left by creep, damage and ageing [-]; 0: by the kind
	Joint      float64 // share of T_k that the joint carries [-]; 0: by the kind
	Partial    float64 // partial or safety factor on T_k [-]; 0: by kind and basis
	EdgeLoad   float64 // design vertical load that the edge is rated for [N]; 0: not rated
	Tested     bool    // T_k is from a test of rings of this type
	Yields     float64 // hoop strain that it stood while it held T_k [-]; 0: by Stiffness
	// What corrosion eats of a steel ring, as built [mm]; 0: not given, and of the joint
	// none that loses more than the wall.
	Wall float64 // thickness of the wall [mm]
	Bolt float64 // diameter of the bolts of the joint [mm]
	Lug  float64 // least thickness of lugs and welds of the joint [mm]
}

// Fill is the granular fill of a tier.
type Fill struct {
	UnitWeight float64 // [N/mm3]
	Phi        float64 // characteristic angle of friction [rad]
	Cohesion   float64 // characteristic, effective; 0 unless measured [MPa]
	Modulus    float64 // constrained modulus M_s [MPa]; 0: by Grade
	Grade      Grade
	Compaction float64 // horizontal stress locked in by compaction [MPa]
	Tested     bool    // density and friction were measured on the fill as placed
}

// Tier is a ring with its fill.
type Tier struct {
	Diameter float64 // inner, of the ring [mm]
	Height   float64 // [mm]
	Ring     Ring
	Fill     Fill
}

// Rods clamp the stack between shoe and bottom plate.
type Rods struct {
	Count   int     // 0: none
	Area    float64 // stress area of each [mm2]
	Modulus float64 // of elasticity [MPa]
	Length  float64 // that stretches [mm]
	Preload float64 // of each when tightened [N]
	Creep   float64 // shortening of the stack after tightening [mm]
	Stack   float64 // stiffness of the stack [N/mm]; 0: from the moduli of the fill
	Needed  float64 // preload of each that somebody counts on [N]; 0: none
	Relaxed float64 // share of the preload that relaxation takes [-]
	Load    float64 // compression after tightening [N]; 0: that in service
}

// Safety are the factors of the fill and of the stack as a whole.
type Safety struct {
	GammaPhi     float64 // Eurocode, on tan(phi) and c [-]; 0: 1.25
	Fill         float64 // ASD, factor of safety of the fill [-]; 0: 3
	PhiB         float64 // LRFD, resistance factor of the fill [-]; 0: not given
	Stability    float64 // ASD, factor of safety of sliding and overturning [-]; 0: 1.5
	PhiSliding   float64 // LRFD, resistance factor of sliding [-]; 0: not given
	Unfavourable float64 // on the weight where it presses [-]; 0: by the basis
	Favourable   float64 // on the weight where it holds [-]; 0: by the basis
}

// Input is a stack and what stands on it.
type Input struct {
	Design  basis.Design
	Actions geom.Actions // design values at the top of the stack
	Service geom.Actions // service values there; all zero: not given
	Shoe    Shoe
	Tiers   []Tier // from the top down, 1 to 8
	Safety  Safety
	Rods    Rods
	// Clamp is the tension of rods that presses shoe and tiers together, which
	// rubs between them but not on what is below [N].
	Clamp float64
	// Key is the design resistance of a bearing path for shear from the shoe to
	// the rings, proven elsewhere [N]; 0: friction alone.
	Key float64

	LoadTested bool    // a stack of this build was loaded, as eccentrically as it will be
	LoadTest   float64 // compression reached in that test [N]

	// TestShoe is the lesser side of the plate of that test [mm]; 0: that of Shoe.
	TestShoe float64
	// Cover is what is surely held down on the fill beside the shoe [MPa]; 0: it is open.
	Cover float64

	Exposed bool    // whether what corrosion takes is known
	Face    float64 // of one face of steel, over the design life [mm]

	Settlement float64 // of the stack that is allowed [mm]; 0: no limit
	Bedding    float64 // allowance for bedding of shoe and tiers [mm]

	Repeated bool // repeated or machine load
	Sloping  bool // on or near a slope
	Flooded  bool // water stands above the base of the stack
}
