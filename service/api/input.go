package api

import (
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/plate"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func (r *reader) bearingInput(m *footwardv1.CheckBearingRequest) bearing.Input {
	in := bearing.Input{
		Design: r.design(m.GetBasis()),
		SizeX:  m.GetContact().GetSizeXMm(), SizeY: m.GetContact().GetSizeYMm(),
		Actions: actions(m.GetForces()),
	}
	r.support(m.GetSupport(), &in)
	return in
}

// support fills in the medium, which every check on a support shares.
func (r *reader) support(s *footwardv1.Support, in *bearing.Input) {
	switch s.GetMedium().(type) {
	case *footwardv1.Support_Concrete:
		c := s.GetConcrete()
		in.Medium = bearing.Concrete
		in.Block = bearing.Block{
			Concrete: r.concrete(c.GetConcrete(), "support.concrete.concrete"),
			SizeX:    c.GetSizeXMm(), SizeY: c.GetSizeYMm(), Height: c.GetHeightMm(),
			OffsetX: c.GetOffsetXMm(), OffsetY: c.GetOffsetYMm(),
			GroutThick: c.GetGrout().GetThicknessMm(), GroutStrength: c.GetGrout().GetStrengthMpa(),
		}
	case *footwardv1.Support_Timber:
		t := s.GetTimber()
		in.Medium = bearing.Timber
		in.Timber = bearing.TimberBearing{
			Timber:       r.timber(t.GetTimber(), "support.timber.timber", in.Design.Basis),
			Direction:    bearing.Grain(t.GetDirection()),
			ServiceClass: bearing.ServiceClass(t.GetServiceClass()),
			Duration:     bearing.Duration(t.GetLoadDuration()),
			LoadDuration: t.GetLoadDurationFactor(), TimeEffect: t.GetTimeEffectFactor(),
			Support:     bearing.AcrossSupport(t.GetAcrossSupport()),
			GrainAlongY: t.GetGrainAlongY(), EndDistance: t.GetEndDistanceMm(),
			HasNeighbour: t.ClearSpacingMm != nil, ClearSpacing: t.GetClearSpacingMm(),
			Depth: t.GetDepthMm(),
		}
	case *footwardv1.Support_Given:
		g := s.GetGiven()
		in.Medium = bearing.Given
		in.Given = bearing.GivenPressure{
			Pressure: g.GetPressureKpa() * megaPa, Source: g.GetSource(),
			Granular: g.GetMedium() == footwardv1.GivenMedium_GIVEN_MEDIUM_GRANULAR_FILL,
		}
	}
}

func (r *reader) plateInput(m *footwardv1.CheckPlateBendingRequest) base.PlateInput {
	design := r.design(m.GetBasis())
	in := base.PlateInput{
		Plate: plate.Input{
			Design: design, Plate: r.plate(m.GetPlate()),
			Footprint: r.footprint(m.GetFootprint()), Actions: actions(m.GetForces()),
			WeldThroat: m.GetFootprintWeldThroatMm(), WeldLost: r.lost.Throat(false),
		},
		Support: bearing.Input{
			Design: design, SizeX: m.GetPlate().GetSizeXMm(), SizeY: m.GetPlate().GetSizeYMm(),
			Actions: actions(m.GetForces()),
		},
	}
	r.support(m.GetSupport(), &in.Support)
	if m.GetRods() != nil {
		in.HasRods = true
		in.Rod = r.rod(m.GetRods().GetRod())
		in.Stretch = m.GetRods().GetRod().GetStretchLengthMm()
		in.At = positions(m.GetRods())
		in.Holes = holes(m.GetRods().GetHoles())
	}
	return in
}

func (r *reader) footprint(f *footwardv1.Footprint) plate.Footprint {
	out := plate.Footprint{
		Stiff:       f.GetStiffness() == footwardv1.FootprintStiffness_FOOTPRINT_STIFFNESS_STIFF,
		StiffStated: f.GetStiffness() != footwardv1.FootprintStiffness_FOOTPRINT_STIFFNESS_UNSPECIFIED,
	}
	switch f.GetShape().(type) {
	case *footwardv1.Footprint_ISection:
		s := f.GetISection()
		out.Shape, out.SizeX, out.SizeY = plate.ISection, s.GetWidthMm(), s.GetDepthMm()
		out.Thick, out.Web = s.GetFlangeMm(), s.GetWebMm()
	case *footwardv1.Footprint_Tube:
		s := f.GetTube()
		out.Shape, out.SizeX, out.SizeY, out.Thick = plate.Tube, s.GetSizeXMm(), s.GetSizeYMm(), s.GetWallMm()
	case *footwardv1.Footprint_Pipe:
		s := f.GetPipe()
		out.Shape, out.SizeX, out.SizeY, out.Thick = plate.Pipe, s.GetDiameterMm(), s.GetDiameterMm(), s.GetWallMm()
	case *footwardv1.Footprint_Rectangle:
		s := f.GetRectangle()
		out.Shape, out.SizeX, out.SizeY = plate.Rectangle, s.GetSizeXMm(), s.GetSizeYMm()
	case *footwardv1.Footprint_TwoPlates:
		s := f.GetTwoPlates()
		out.Shape, out.SizeY, out.Thick = plate.TwoPlates, s.GetLengthMm(), s.GetThicknessMm()
		out.SizeX = s.GetGapMm() + 2*s.GetThicknessMm()
	}
	if f.GetSteel() != nil {
		out.Steel, out.SteelKnown = r.steel(f.GetSteel(), "footprint.steel"), true
	}
	return out
}

func (r *reader) rod(m *footwardv1.Rod) rod.Rod {
	thread := r.thread(m.GetThread(), "rods.rod.thread")
	return rod.Rod{
		Thread: thread, Steel: r.rodSteel(m.GetSteel(), thread.Diameter, "rods.rod.steel"),
		Making: rod.Making(m.GetThreadMaking()), ShankInPlane: m.GetShankInShearPlane(),
		Countersunk: m.GetCountersunk(), NutWidth: m.GetNutMeanWidthMm(),
		Corrosion: allowance(m != nil && m.CorrosionAllowanceMm != nil, m.GetCorrosionAllowanceMm(), r.lost.Rod()),
	}
}

func positions(g *footwardv1.RodGroup) []geom.Point {
	out := make([]geom.Point, len(g.GetPositions()))
	for i, p := range g.GetPositions() {
		out[i] = geom.Point{X: p.GetXMm(), Y: p.GetYMm()}
	}
	return out
}

func holes(h *footwardv1.Holes) rod.Holes {
	return rod.Holes{
		Diameter: h.GetDiameterMm(), Tolerance: h.GetPositionToleranceMm(),
		WeldedWashers: h.GetWeldedWashers(), WasherThickness: h.GetWasherThicknessMm(),
		WasherSide: h.GetWasherSideMm(), WasherFy: h.GetWasherFyMpa(), HoldsRotation: h.GetPlateHoldsRotation(),
	}
}

// defaultFriction is the coefficient of the US bases where none is given: steel on
// grout or concrete as in AISC Design Guide 1, 3rd ed., Example 4.7-8.
const defaultFriction = 0.4

func (r *reader) rodInput(m *footwardv1.CheckAnchorRodsRequest) rod.Input {
	in := rod.Input{
		Design: r.design(m.GetBasis()), Plate: r.plate(m.GetPlate()),
		Rod: r.rod(m.GetRods().GetRod()), At: positions(m.GetRods()),
		Holes: holes(m.GetRods().GetHoles()), Actions: actions(m.GetForces()),
		StandOff: rod.StandOff{
			Gap:                m.GetStandOff().GetGapMm(),
			ClampedAtSurface:   m.GetStandOff().GetClampedAtSurface(),
			PlateHoldsRotation: m.GetStandOff().GetPlateHoldsRotation(),
		},
	}
	if f := m.GetFriction(); f != nil {
		in.Friction = rod.Friction{
			Counted: true, Compression: f.GetCompressionKn() * newton, Strength: f.GetConcreteStrengthMpa(),
		}
		in.Friction.Coefficient, in.Friction.Assumed = frictionOf(m.GetBasis())
		if f.ConcreteStrengthMpa != nil && in.Design.Basis.Valid() && !in.Design.Basis.US() {
			r.faults.Add(limit.Conflict, "friction.concrete_strength_mpa", "goes with the US bases only")
		}
	}
	switch each := m.GetRodForces(); {
	case len(each) > 0 && m.GetForces() != nil:
		r.faults.Add(limit.Conflict, "rod_forces", "give forces or rod_forces, not both")
	case len(each) == 0 && m.GetForces() == nil:
		r.faults.Add(limit.Missing, "forces", "needs forces, shared among the rods, or rod_forces, one for each")
	case len(each) > 0:
		in.Each = make([]rod.Force, len(each))
		for i, f := range each {
			in.Each[i] = rod.Force{
				Tension: f.GetTensionKn() * newton,
				ShearX:  f.GetShearXKn() * newton, ShearY: f.GetShearYKn() * newton,
			}
		}
	}
	return in
}

func (r *reader) weldInput(m *footwardv1.CheckWeldRequest) weld.Input {
	in := weld.Input{Design: r.design(m.GetBasis()), Weld: r.weldSpec(m.GetWeld())}
	switch m.GetLayout().(type) {
	case *footwardv1.CheckWeldRequest_Run:
		run := m.GetRun()
		in.Run = weld.Run{
			Length: run.GetLengthMm(), Count: int(run.GetCount()),
			Along: run.GetAlongKn() * newton, Across: run.GetAcrossKn() * newton,
			Normal: run.GetNormalKn() * newton, EndLoaded: run.GetEndLoaded(),
		}
	case *footwardv1.CheckWeldRequest_Group:
		in.Group = weldGroup(m.GetGroup())
	}
	return in
}

func (r *reader) weldSpec(w *footwardv1.WeldSpec) weld.Spec {
	out := weld.Spec{
		Type: weld.Type(w.GetKind()), Leg: w.GetLegMm(), Throat: w.GetThroatMm(),
		Filler:    r.filler(w.GetFiller(), "weld.filler"),
		Corrosion: allowance(w != nil && w.CorrosionAllowanceMm != nil, w.GetCorrosionAllowanceMm(), r.lost.Throat(w.GetKind() != footwardv1.WeldKind_WELD_KIND_FILLET)),
		FullSize:  w.GetFullSizeToEnds(), OwnSection: w.GetOwnSection(),
	}
	for i, p := range w.GetParts() {
		if i >= len(out.Parts) {
			break
		}
		out.Parts[i] = weld.Part{
			Thickness: p.GetThicknessMm(), Steel: r.steel(p.GetSteel(), partSteel[i]),
			AlongEdge: p.GetWeldAlongEdge(), Corrosion: allowance(p.CorrosionAllowanceMm != nil, p.GetCorrosionAllowanceMm(), r.lost.Plate()),
		}
	}
	return out
}

// partSteel are the paths of the steels of the two parts of a weld.
var partSteel = [2]string{"weld.parts[0].steel", "weld.parts[1].steel"}

func weldGroup(g *footwardv1.WeldGroup) weld.Group {
	out := weld.Group{
		Segments: make([]geom.Segment, len(g.GetSegments())),
		Actions:  actions(g.GetForces()),
		AtX:      g.GetAtXMm(), AtY: g.GetAtYMm(), AtZ: g.GetAtZMm(),
		Method: weld.Method(g.GetMethod()), EndLoaded: g.GetEndLoaded(), Continuous: g.GetContinuous(),
	}
	for i, s := range g.GetSegments() {
		out.Segments[i] = geom.Segment{
			A: geom.Point{X: s.GetX1Mm(), Y: s.GetY1Mm()},
			B: geom.Point{X: s.GetX2Mm(), Y: s.GetY2Mm()},
		}
	}
	return out
}
