// Code generated from the rules of the contract by quick_test.go. DO NOT EDIT.

package guard

import (
	"unicode/utf8"

	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// quick reports whether a request surely keeps every rule of its schema.
func quick(m proto.Message) bool {
	switch m := m.(type) {
	case *footwardv1.CheckBearingRequest:
		return m != nil && quickCheckBearingRequest(m)
	case *footwardv1.CheckPlateBendingRequest:
		return m != nil && quickCheckPlateBendingRequest(m)
	case *footwardv1.CheckWeldRequest:
		return m != nil && quickCheckWeldRequest(m)
	case *footwardv1.CheckAnchorRodsRequest:
		return m != nil && quickCheckAnchorRodsRequest(m)
	case *footwardv1.CheckAnchorageRequest:
		return m != nil && quickCheckAnchorageRequest(m)
	case *footwardv1.CheckPinRequest:
		return m != nil && quickCheckPinRequest(m)
	case *footwardv1.CheckSettlementRequest:
		return m != nil && quickCheckSettlementRequest(m)
	case *footwardv1.CheckFootingRequest:
		return m != nil && quickCheckFootingRequest(m)
	case *footwardv1.CheckRingStackRequest:
		return m != nil && quickCheckRingStackRequest(m)
	case *footwardv1.CheckManyRequest:
		return m != nil && quickCheckManyRequest(m)
	case *footwardv1.StreamChecksRequest:
		return m != nil && quickStreamChecksRequest(m)
	case *footwardv1.CombineActionsRequest:
		return m != nil && quickCombineActionsRequest(m)
	case *footwardv1.CheckColumnBaseRequest:
		return m != nil && quickCheckColumnBaseRequest(m)
	case *footwardv1.SizeColumnBaseRequest:
		return m != nil && quickSizeColumnBaseRequest(m)
	case *footwardv1.CompareFootingsRequest:
		return m != nil && quickCompareFootingsRequest(m)
	case *footwardv1.AssessLoadTestsRequest:
		return m != nil && quickAssessLoadTestsRequest(m)
	case *footwardv1.ReadLoadTestRequest:
		return m != nil && quickReadLoadTestRequest(m)
	}
	return false
}

func between(n, least, most int) bool { return n >= least && n <= most }

func quickSteelFactors(m *footwardv1.SteelFactors) bool {
	return (m.BetaJ == nil || m.GetBetaJ() > 0 && m.GetBetaJ() <= 0.6666666666666667) &&
		(m.CFd == nil || m.GetCFd() >= 0 && m.GetCFd() <= 0.5) &&
		(m.GammaM0 == nil || m.GetGammaM0() >= 0.9 && m.GetGammaM0() <= 2) &&
		(m.GammaM1 == nil || m.GetGammaM1() >= 1 && m.GetGammaM1() <= 2) &&
		(m.GammaM2 == nil || m.GetGammaM2() >= 1 && m.GetGammaM2() <= 2)
}

func quickConcreteFactors(m *footwardv1.ConcreteFactors) bool {
	return (m.AlphaCc == nil || m.GetAlphaCc() >= 0.7 && m.GetAlphaCc() <= 1) &&
		(m.AlphaCtPl == nil || m.GetAlphaCtPl() >= 0.1 && m.GetAlphaCtPl() <= 1) &&
		(m.GammaC == nil || m.GetGammaC() >= 1 && m.GetGammaC() <= 3) &&
		(m.GammaS == nil || m.GetGammaS() >= 1 && m.GetGammaS() <= 2)
}

func quickTimberFactors(m *footwardv1.TimberFactors) bool {
	return (m.GammaM == nil || m.GetGammaM() >= 1 && m.GetGammaM() <= 2) &&
		(m.GammaMConnections == nil || m.GetGammaMConnections() >= 1 && m.GetGammaMConnections() <= 2)
}

func quickGroundFactors(m *footwardv1.GroundFactors) bool {
	return (m.GammaCEff == nil || m.GetGammaCEff() >= 1 && m.GetGammaCEff() <= 3) &&
		(m.GammaCu == nil || m.GetGammaCu() >= 1 && m.GetGammaCu() <= 3) &&
		(m.GammaPhi == nil || m.GetGammaPhi() >= 1 && m.GetGammaPhi() <= 3) &&
		(m.GammaPhiFill == nil || m.GetGammaPhiFill() >= 1 && m.GetGammaPhiFill() <= 3) &&
		(m.GammaRH == nil || m.GetGammaRH() >= 1 && m.GetGammaRH() <= 3) &&
		(m.GammaRV == nil || m.GetGammaRV() >= 1 && m.GetGammaRV() <= 3)
}

func quickActionFactors(m *footwardv1.ActionFactors) bool {
	return (m.GammaGInf == nil || m.GetGammaGInf() >= 0.5 && m.GetGammaGInf() <= 1) &&
		(m.GammaGInfEquilibrium == nil || m.GetGammaGInfEquilibrium() >= 0.5 && m.GetGammaGInfEquilibrium() <= 1) &&
		(m.GammaGSup == nil || m.GetGammaGSup() >= 1 && m.GetGammaGSup() <= 2) &&
		(m.GammaGSupEquilibrium == nil || m.GetGammaGSupEquilibrium() >= 1 && m.GetGammaGSupEquilibrium() <= 2) &&
		(m.GammaQ == nil || m.GetGammaQ() >= 1 && m.GetGammaQ() <= 2) &&
		(m.GammaQGround == nil || m.GetGammaQGround() >= 1 && m.GetGammaQGround() <= 2) &&
		(m.Xi == nil || m.GetXi() >= 0.5 && m.GetXi() <= 1)
}

func quickEurocode(m *footwardv1.Eurocode) bool {
	return (m.Actions == nil || quickActionFactors(m.GetActions())) &&
		(m.Concrete == nil || quickConcreteFactors(m.GetConcrete())) &&
		(m.Ground == nil || quickGroundFactors(m.GetGround())) &&
		(m.Steel == nil || quickSteelFactors(m.GetSteel())) &&
		(m.Timber == nil || quickTimberFactors(m.GetTimber())) &&
		between(utf8.RuneCountInString(m.GetAnnex()), 0, 60) &&
		between(utf8.RuneCountInString(m.GetEdition()), 0, 60)
}

func quickUsLrfd(m *footwardv1.UsLrfd) bool {
	return (m.BearingResistanceFactor == nil || m.GetBearingResistanceFactor() >= 0.1 && m.GetBearingResistanceFactor() <= 1) &&
		(m.FillResistanceFactor == nil || m.GetFillResistanceFactor() >= 0.1 && m.GetFillResistanceFactor() <= 1) &&
		(m.FrictionCoefficient == nil || m.GetFrictionCoefficient() >= 0 && m.GetFrictionCoefficient() <= 0.7) &&
		(m.SlidingResistanceFactor == nil || m.GetSlidingResistanceFactor() >= 0.1 && m.GetSlidingResistanceFactor() <= 1) &&
		(m.StabilitySafetyFactor == nil || m.GetStabilitySafetyFactor() >= 1 && m.GetStabilitySafetyFactor() <= 10) &&
		between(utf8.RuneCountInString(m.GetEdition()), 0, 60)
}

func quickUsAsd(m *footwardv1.UsAsd) bool {
	return (m.BearingSafetyFactor == nil || m.GetBearingSafetyFactor() >= 1 && m.GetBearingSafetyFactor() <= 10) &&
		(m.FillSafetyFactor == nil || m.GetFillSafetyFactor() >= 1 && m.GetFillSafetyFactor() <= 20) &&
		(m.FrictionCoefficient == nil || m.GetFrictionCoefficient() >= 0 && m.GetFrictionCoefficient() <= 0.7) &&
		(m.StabilitySafetyFactor == nil || m.GetStabilitySafetyFactor() >= 1 && m.GetStabilitySafetyFactor() <= 10) &&
		between(utf8.RuneCountInString(m.GetEdition()), 0, 60)
}

func quickDesignBasis(m *footwardv1.DesignBasis) bool {
	if !(m.Family != nil) {
		return false
	}
	if c, ok := m.Family.(*footwardv1.DesignBasis_Eurocode); ok && (c == nil || c.Eurocode == nil || !quickEurocode(c.Eurocode)) {
		return false
	}
	if c, ok := m.Family.(*footwardv1.DesignBasis_UsLrfd); ok && (c == nil || c.UsLrfd == nil || !quickUsLrfd(c.UsLrfd)) {
		return false
	}
	if c, ok := m.Family.(*footwardv1.DesignBasis_UsAsd); ok && (c == nil || c.UsAsd == nil || !quickUsAsd(c.UsAsd)) {
		return false
	}
	return true
}

func quickSolidRectangle(m *footwardv1.SolidRectangle) bool {
	return m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 5000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 5000
}

func quickForcesAtFoot(m *footwardv1.ForcesAtFoot) bool {
	return m.GetMXKnm() >= -100000 && m.GetMXKnm() <= 100000 &&
		m.GetMYKnm() >= -100000 && m.GetMYKnm() <= 100000 &&
		m.GetNKn() >= -100000 && m.GetNKn() <= 100000 &&
		m.GetTKnm() >= -100000 && m.GetTKnm() <= 100000 &&
		m.GetVXKn() >= -100000 && m.GetVXKn() <= 100000 &&
		m.GetVYKn() >= -100000 && m.GetVYKn() <= 100000
}

func quickConcreteProperties(m *footwardv1.ConcreteProperties) bool {
	return m.GetStrengthMpa() >= 8 && m.GetStrengthMpa() <= 100
}

func quickConcrete(m *footwardv1.Concrete) bool {
	if !(between(utf8.RuneCountInString(m.GetGrade()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.Concrete_Properties); ok && (c == nil || c.Properties == nil || !quickConcreteProperties(c.Properties)) {
		return false
	}
	return true
}

func quickGrout(m *footwardv1.Grout) bool {
	return m.GetStrengthMpa() >= 1 && m.GetStrengthMpa() <= 150 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 300
}

func quickConcreteBlock(m *footwardv1.ConcreteBlock) bool {
	return (m.Grout == nil || quickGrout(m.GetGrout())) &&
		m.Concrete != nil && quickConcrete(m.GetConcrete()) &&
		m.GetHeightMm() > 0 && m.GetHeightMm() <= 20000 &&
		m.GetOffsetXMm() >= -25000 && m.GetOffsetXMm() <= 25000 &&
		m.GetOffsetYMm() >= -25000 && m.GetOffsetYMm() <= 25000 &&
		m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 50000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 50000
}

func quickTimberProperties(m *footwardv1.TimberProperties) bool {
	return between(int(m.GetKind()), 1, 3) &&
		m.GetCompressionAcrossMpa() >= 0.5 && m.GetCompressionAcrossMpa() <= 50 &&
		m.GetCompressionAlongMpa() >= 1 && m.GetCompressionAlongMpa() <= 100
}

func quickTimber(m *footwardv1.Timber) bool {
	if !(between(utf8.RuneCountInString(m.GetGrade()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.Timber_Properties); ok && (c == nil || c.Properties == nil || !quickTimberProperties(c.Properties)) {
		return false
	}
	return true
}

func quickTimberBearing(m *footwardv1.TimberBearing) bool {
	return (m.ClearSpacingMm == nil || m.GetClearSpacingMm() >= 0 && m.GetClearSpacingMm() <= 50000) &&
		(m.LoadDurationFactor == nil || m.GetLoadDurationFactor() >= 0.9 && m.GetLoadDurationFactor() <= 2) &&
		(m.TimeEffectFactor == nil || m.GetTimeEffectFactor() >= 0.6 && m.GetTimeEffectFactor() <= 1.25) &&
		between(int(m.GetAcrossSupport()), 0, 2) &&
		between(int(m.GetDirection()), 1, 2) &&
		between(int(m.GetLoadDuration()), 0, 5) &&
		between(int(m.GetServiceClass()), 0, 3) &&
		m.GetDepthMm() >= 0 && m.GetDepthMm() <= 5000 &&
		m.GetEndDistanceMm() >= 0 && m.GetEndDistanceMm() <= 50000 &&
		m.Timber != nil && quickTimber(m.GetTimber())
}

func quickGivenPressure(m *footwardv1.GivenPressure) bool {
	return between(int(m.GetMedium()), 1, 2) &&
		between(utf8.RuneCountInString(m.GetSource()), 3, 300) &&
		m.GetPressureKpa() > 0 && m.GetPressureKpa() <= 100000
}

func quickSupport(m *footwardv1.Support) bool {
	if !(m.Medium != nil) {
		return false
	}
	if c, ok := m.Medium.(*footwardv1.Support_Concrete); ok && (c == nil || c.Concrete == nil || !quickConcreteBlock(c.Concrete)) {
		return false
	}
	if c, ok := m.Medium.(*footwardv1.Support_Timber); ok && (c == nil || c.Timber == nil || !quickTimberBearing(c.Timber)) {
		return false
	}
	if c, ok := m.Medium.(*footwardv1.Support_Given); ok && (c == nil || c.Given == nil || !quickGivenPressure(c.Given)) {
		return false
	}
	return true
}

func quickCheckBearingRequest(m *footwardv1.CheckBearingRequest) bool {
	return between(int(m.GetDetail()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Contact != nil && quickSolidRectangle(m.GetContact()) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.Support != nil && quickSupport(m.GetSupport())
}

func quickExposure(m *footwardv1.Exposure) bool {
	return between(int(m.GetGround()), 0, 7) &&
		m.GetDesignLifeYears() > 0 && m.GetDesignLifeYears() <= 100 &&
		m.GetRateMmPerYear() >= 0 && m.GetRateMmPerYear() <= 10
}

func quickSteelProperties(m *footwardv1.SteelProperties) bool {
	return (m.BetaW == nil || m.GetBetaW() >= 0.8 && m.GetBetaW() <= 1) &&
		m.GetFuMpa() >= 100 && m.GetFuMpa() <= 2000 &&
		m.GetFyMpa() >= 100 && m.GetFyMpa() <= 1500
}

func quickSteel(m *footwardv1.Steel) bool {
	if !(between(utf8.RuneCountInString(m.GetGrade()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.Steel_Properties); ok && (c == nil || c.Properties == nil || !quickSteelProperties(c.Properties)) {
		return false
	}
	return true
}

func quickPlate(m *footwardv1.Plate) bool {
	return (m.CorrosionAllowanceMm == nil || m.GetCorrosionAllowanceMm() >= 0 && m.GetCorrosionAllowanceMm() <= 50) &&
		m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 5000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 5000 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 300 &&
		m.Steel != nil && quickSteel(m.GetSteel())
}

func quickISection(m *footwardv1.ISection) bool {
	return m.GetDepthMm() > 0 && m.GetDepthMm() <= 2000 &&
		m.GetFlangeMm() > 0 && m.GetFlangeMm() <= 200 &&
		m.GetWebMm() > 0 && m.GetWebMm() <= 200 &&
		m.GetWidthMm() > 0 && m.GetWidthMm() <= 2000
}

func quickTube(m *footwardv1.Tube) bool {
	return m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 2000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 2000 &&
		m.GetWallMm() > 0 && m.GetWallMm() <= 200
}

func quickPipe(m *footwardv1.Pipe) bool {
	return m.GetDiameterMm() > 0 && m.GetDiameterMm() <= 2000 &&
		m.GetWallMm() > 0 && m.GetWallMm() <= 200
}

func quickTwoPlates(m *footwardv1.TwoPlates) bool {
	return m.GetGapMm() > 0 && m.GetGapMm() <= 2000 &&
		m.GetLengthMm() > 0 && m.GetLengthMm() <= 2000 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 200
}

func quickFootprint(m *footwardv1.Footprint) bool {
	if !((m.Steel == nil || quickSteel(m.GetSteel())) &&
		between(int(m.GetStiffness()), 0, 2) &&
		m.Shape != nil) {
		return false
	}
	if c, ok := m.Shape.(*footwardv1.Footprint_ISection); ok && (c == nil || c.ISection == nil || !quickISection(c.ISection)) {
		return false
	}
	if c, ok := m.Shape.(*footwardv1.Footprint_Tube); ok && (c == nil || c.Tube == nil || !quickTube(c.Tube)) {
		return false
	}
	if c, ok := m.Shape.(*footwardv1.Footprint_Pipe); ok && (c == nil || c.Pipe == nil || !quickPipe(c.Pipe)) {
		return false
	}
	if c, ok := m.Shape.(*footwardv1.Footprint_Rectangle); ok && (c == nil || c.Rectangle == nil || !quickSolidRectangle(c.Rectangle)) {
		return false
	}
	if c, ok := m.Shape.(*footwardv1.Footprint_TwoPlates); ok && (c == nil || c.TwoPlates == nil || !quickTwoPlates(c.TwoPlates)) {
		return false
	}
	return true
}

func quickThreadProperties(m *footwardv1.ThreadProperties) bool {
	return m.GetDiameterMm() >= 3 && m.GetDiameterMm() <= 200 &&
		m.GetStressAreaMm2() >= 1 && m.GetStressAreaMm2() <= 30000
}

func quickThread(m *footwardv1.Thread) bool {
	if !(between(utf8.RuneCountInString(m.GetDesignation()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.Thread_Properties); ok && (c == nil || c.Properties == nil || !quickThreadProperties(c.Properties)) {
		return false
	}
	return true
}

func quickRodSteelProperties(m *footwardv1.RodSteelProperties) bool {
	return m.GetFuMpa() >= 100 && m.GetFuMpa() <= 2000 &&
		m.GetFyMpa() >= 100 && m.GetFyMpa() <= 1500
}

func quickRodSteel(m *footwardv1.RodSteel) bool {
	if !(between(utf8.RuneCountInString(m.GetGrade()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.RodSteel_Properties); ok && (c == nil || c.Properties == nil || !quickRodSteelProperties(c.Properties)) {
		return false
	}
	return true
}

func quickRod(m *footwardv1.Rod) bool {
	return (m.CorrosionAllowanceMm == nil || m.GetCorrosionAllowanceMm() >= 0 && m.GetCorrosionAllowanceMm() <= 20) &&
		between(int(m.GetThreadMaking()), 0, 2) &&
		m.GetNutMeanWidthMm() >= 0 && m.GetNutMeanWidthMm() <= 400 &&
		m.GetStretchLengthMm() >= 0 && m.GetStretchLengthMm() <= 20000 &&
		m.Steel != nil && quickRodSteel(m.GetSteel()) &&
		m.Thread != nil && quickThread(m.GetThread())
}

func quickRodPosition(m *footwardv1.RodPosition) bool {
	return m.GetXMm() >= -2500 && m.GetXMm() <= 2500 &&
		m.GetYMm() >= -2500 && m.GetYMm() <= 2500
}

func quickHoles(m *footwardv1.Holes) bool {
	return (m.WasherFyMpa == nil || m.GetWasherFyMpa() >= 100 && m.GetWasherFyMpa() <= 1500) &&
		m.GetDiameterMm() > 0 && m.GetDiameterMm() <= 300 &&
		m.GetPositionToleranceMm() >= 0 && m.GetPositionToleranceMm() <= 200 &&
		m.GetWasherSideMm() >= 0 && m.GetWasherSideMm() <= 500 &&
		m.GetWasherThicknessMm() >= 0 && m.GetWasherThicknessMm() <= 100
}

func quickRodGroup(m *footwardv1.RodGroup) bool {
	if !(between(len(m.Positions), 1, 64) &&
		m.Holes != nil && quickHoles(m.GetHoles()) &&
		m.Rod != nil && quickRod(m.GetRod())) {
		return false
	}
	for _, e := range m.Positions {
		if e == nil || !quickRodPosition(e) {
			return false
		}
	}
	return true
}

func quickCheckPlateBendingRequest(m *footwardv1.CheckPlateBendingRequest) bool {
	return (m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Rods == nil || quickRodGroup(m.GetRods())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Footprint != nil && quickFootprint(m.GetFootprint()) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.GetFootprintWeldThroatMm() >= 0 && m.GetFootprintWeldThroatMm() <= 100 &&
		m.Plate != nil && quickPlate(m.GetPlate()) &&
		m.Support != nil && quickSupport(m.GetSupport())
}

func quickJoinedPart(m *footwardv1.JoinedPart) bool {
	return (m.CorrosionAllowanceMm == nil || m.GetCorrosionAllowanceMm() >= 0 && m.GetCorrosionAllowanceMm() <= 100) &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 300 &&
		m.Steel != nil && quickSteel(m.GetSteel())
}

func quickWeldMetalProperties(m *footwardv1.WeldMetalProperties) bool {
	return m.GetStrengthMpa() >= 300 && m.GetStrengthMpa() <= 1000
}

func quickWeldMetal(m *footwardv1.WeldMetal) bool {
	if !(between(utf8.RuneCountInString(m.GetGrade()), 0, 60)) {
		return false
	}
	if c, ok := m.Source.(*footwardv1.WeldMetal_Properties); ok && (c == nil || c.Properties == nil || !quickWeldMetalProperties(c.Properties)) {
		return false
	}
	return true
}

func quickWeldSpec(m *footwardv1.WeldSpec) bool {
	if !((m.CorrosionAllowanceMm == nil || m.GetCorrosionAllowanceMm() >= 0 && m.GetCorrosionAllowanceMm() <= 20) &&
		(m.Filler == nil || quickWeldMetal(m.GetFiller())) &&
		between(int(m.GetKind()), 1, 3) &&
		between(len(m.Parts), 2, 2) &&
		m.GetLegMm() >= 0 && m.GetLegMm() <= 100 &&
		m.GetThroatMm() >= 0 && m.GetThroatMm() <= 100) {
		return false
	}
	for _, e := range m.Parts {
		if e == nil || !quickJoinedPart(e) {
			return false
		}
	}
	return true
}

func quickWeldRun(m *footwardv1.WeldRun) bool {
	return m.GetAcrossKn() >= -100000 && m.GetAcrossKn() <= 100000 &&
		m.GetAlongKn() >= -100000 && m.GetAlongKn() <= 100000 &&
		m.GetCount() <= 100 &&
		m.GetLengthMm() > 0 && m.GetLengthMm() <= 50000 &&
		m.GetNormalKn() >= -100000 && m.GetNormalKn() <= 100000
}

func quickWeldSegment(m *footwardv1.WeldSegment) bool {
	return m.GetX1Mm() >= -5000 && m.GetX1Mm() <= 5000 &&
		m.GetX2Mm() >= -5000 && m.GetX2Mm() <= 5000 &&
		m.GetY1Mm() >= -5000 && m.GetY1Mm() <= 5000 &&
		m.GetY2Mm() >= -5000 && m.GetY2Mm() <= 5000
}

func quickWeldGroup(m *footwardv1.WeldGroup) bool {
	if !(between(int(m.GetMethod()), 0, 2) &&
		between(len(m.Segments), 1, 200) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.GetAtXMm() >= -50000 && m.GetAtXMm() <= 50000 &&
		m.GetAtYMm() >= -50000 && m.GetAtYMm() <= 50000 &&
		m.GetAtZMm() >= -50000 && m.GetAtZMm() <= 50000) {
		return false
	}
	for _, e := range m.Segments {
		if e == nil || !quickWeldSegment(e) {
			return false
		}
	}
	return true
}

func quickCheckWeldRequest(m *footwardv1.CheckWeldRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Layout != nil &&
		m.Weld != nil && quickWeldSpec(m.GetWeld())) {
		return false
	}
	if c, ok := m.Layout.(*footwardv1.CheckWeldRequest_Run); ok && (c == nil || c.Run == nil || !quickWeldRun(c.Run)) {
		return false
	}
	if c, ok := m.Layout.(*footwardv1.CheckWeldRequest_Group); ok && (c == nil || c.Group == nil || !quickWeldGroup(c.Group)) {
		return false
	}
	return true
}

func quickRodForce(m *footwardv1.RodForce) bool {
	return m.GetShearXKn() >= -100000 && m.GetShearXKn() <= 100000 &&
		m.GetShearYKn() >= -100000 && m.GetShearYKn() <= 100000 &&
		m.GetTensionKn() >= 0 && m.GetTensionKn() <= 100000
}

func quickStandOff(m *footwardv1.StandOff) bool {
	return m.GetGapMm() > 0 && m.GetGapMm() <= 1000
}

func quickBaseFriction(m *footwardv1.BaseFriction) bool {
	return (m.ConcreteStrengthMpa == nil || m.GetConcreteStrengthMpa() >= 5 && m.GetConcreteStrengthMpa() <= 150) &&
		m.GetCompressionKn() > 0 && m.GetCompressionKn() <= 100000
}

func quickCheckAnchorRodsRequest(m *footwardv1.CheckAnchorRodsRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Forces == nil || quickForcesAtFoot(m.GetForces())) &&
		(m.Friction == nil || quickBaseFriction(m.GetFriction())) &&
		(m.StandOff == nil || quickStandOff(m.GetStandOff())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(len(m.RodForces), 0, 64) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Plate != nil && quickPlate(m.GetPlate()) &&
		m.Rods != nil && quickRodGroup(m.GetRods())) {
		return false
	}
	for _, e := range m.RodForces {
		if e == nil || !quickRodForce(e) {
			return false
		}
	}
	return true
}

func quickRodHead(m *footwardv1.RodHead) bool {
	return m.GetBearingAreaMm2() >= 0 && m.GetBearingAreaMm2() <= 1e+06 &&
		m.GetDiameterMm() >= 0 && m.GetDiameterMm() <= 1000 &&
		m.GetThicknessMm() >= 0 && m.GetThicknessMm() <= 300
}

func quickHeadedAnchorage(m *footwardv1.HeadedAnchorage) bool {
	return (m.Block == nil || quickConcreteBlock(m.GetBlock())) &&
		(m.LightweightFactor == nil || m.GetLightweightFactor() >= 0.75 && m.GetLightweightFactor() <= 1) &&
		(m.PryOutFactor == nil || m.GetPryOutFactor() >= 1 && m.GetPryOutFactor() <= 2) &&
		m.GetEmbedmentMm() > 0 && m.GetEmbedmentMm() <= 5000 &&
		m.Head != nil && quickRodHead(m.GetHead())
}

func quickUpliftGround(m *footwardv1.UpliftGround) bool {
	return between(utf8.RuneCountInString(m.GetSource()), 1, 300) &&
		m.GetAngleDeg() > 0 && m.GetAngleDeg() <= 45 &&
		m.GetDepthMm() > 0 && m.GetDepthMm() <= 20000 &&
		m.GetUnitWeightKnM3() > 0 && m.GetUnitWeightKnM3() <= 30
}

func quickThroughAnchorage(m *footwardv1.ThroughAnchorage) bool {
	return (m.Ground == nil || quickUpliftGround(m.GetGround())) &&
		m.BottomPlate != nil && quickPlate(m.GetBottomPlate()) &&
		m.GetClampedWeightKn() >= 0 && m.GetClampedWeightKn() <= 100000 &&
		m.GetFillSettlementMm() >= 0 && m.GetFillSettlementMm() <= 1000 &&
		m.GetHeightMm() >= 0 && m.GetHeightMm() <= 20000 &&
		m.GetInitialPreloadKn() >= 0 && m.GetInitialPreloadKn() <= 10000 &&
		m.GetMaxStretchMm() >= 0 && m.GetMaxStretchMm() <= 1000 &&
		m.GetNeededPreloadKn() >= 0 && m.GetNeededPreloadKn() <= 10000 &&
		m.GetPressedDiameterMm() >= 0 && m.GetPressedDiameterMm() <= 5000 &&
		m.GetPressedXMm() >= 0 && m.GetPressedXMm() <= 5000 &&
		m.GetPressedYMm() >= 0 && m.GetPressedYMm() <= 5000 &&
		m.GetRelaxation() >= 0 && m.GetRelaxation() <= 1 &&
		m.GetStackStiffnessKnMm() >= 0 && m.GetStackStiffnessKnMm() <= 1e+06
}

func quickAnchorage(m *footwardv1.Anchorage) bool {
	if !(m.Hold != nil) {
		return false
	}
	if c, ok := m.Hold.(*footwardv1.Anchorage_Headed); ok && (c == nil || c.Headed == nil || !quickHeadedAnchorage(c.Headed)) {
		return false
	}
	if c, ok := m.Hold.(*footwardv1.Anchorage_Through); ok && (c == nil || c.Through == nil || !quickThroughAnchorage(c.Through)) {
		return false
	}
	return true
}

func quickCheckAnchorageRequest(m *footwardv1.CheckAnchorageRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Forces == nil || quickForcesAtFoot(m.GetForces())) &&
		(m.Friction == nil || quickBaseFriction(m.GetFriction())) &&
		(m.StandOff == nil || quickStandOff(m.GetStandOff())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(len(m.RodForces), 0, 64) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Anchorage != nil && quickAnchorage(m.GetAnchorage()) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Plate != nil && quickPlate(m.GetPlate()) &&
		m.Rods != nil && quickRodGroup(m.GetRods())) {
		return false
	}
	for _, e := range m.RodForces {
		if e == nil || !quickRodForce(e) {
			return false
		}
	}
	return true
}

func quickPinnedTimber(m *footwardv1.PinnedTimber) bool {
	return (m.KMod == nil || m.GetKMod() >= 0.1 && m.GetKMod() <= 1.1) &&
		(m.LoadDurationFactor == nil || m.GetLoadDurationFactor() >= 0.9 && m.GetLoadDurationFactor() <= 1.6) &&
		(m.TimeEffectFactor == nil || m.GetTimeEffectFactor() >= 0.6 && m.GetTimeEffectFactor() <= 1) &&
		(m.WetFactor == nil || m.GetWetFactor() >= 0.1 && m.GetWetFactor() <= 1) &&
		between(int(m.GetKind()), 1, 3) &&
		between(int(m.GetLoadDuration()), 0, 5) &&
		between(int(m.GetServiceClass()), 0, 3) &&
		m.GetCompressionAcrossMpa() >= 0 && m.GetCompressionAcrossMpa() <= 1000 &&
		m.GetCompressionAlongMpa() > 0 && m.GetCompressionAlongMpa() <= 1000 &&
		m.GetDensityKgM3() >= 0 && m.GetDensityKgM3() <= 1500 &&
		m.GetModulusMpa() >= 0 && m.GetModulusMpa() <= 100000 &&
		m.GetShearStrengthMpa() > 0 && m.GetShearStrengthMpa() <= 1000 &&
		m.GetSizeAcrossPinMm() > 0 && m.GetSizeAcrossPinMm() <= 10000 &&
		m.GetSizeAlongPinMm() > 0 && m.GetSizeAlongPinMm() <= 10000 &&
		m.GetSpecificGravity() >= 0 && m.GetSpecificGravity() <= 1.5 &&
		m.GetTensionAlongMpa() > 0 && m.GetTensionAlongMpa() <= 1000
}

func quickPinSpec(m *footwardv1.PinSpec) bool {
	return between(int(m.GetKind()), 1, 2) &&
		m.GetDiameterMm() > 0 && m.GetDiameterMm() <= 200 &&
		m.GetFuMpa() >= 10 && m.GetFuMpa() <= 3000 &&
		m.GetFyBendingMpa() >= 0 && m.GetFyBendingMpa() <= 3000 &&
		m.GetFyMpa() >= 10 && m.GetFyMpa() <= 3000 &&
		m.GetWasherDiameterMm() >= 0 && m.GetWasherDiameterMm() <= 10000
}

func quickPinnedPlates(m *footwardv1.PinnedPlates) bool {
	return (m.CorrosionAllowanceMm == nil || m.GetCorrosionAllowanceMm() >= 0 && m.GetCorrosionAllowanceMm() <= 100) &&
		(m.DowelBearingStrengthMpa == nil || m.GetDowelBearingStrengthMpa() >= 10 && m.GetDowelBearingStrengthMpa() <= 3000) &&
		between(int(m.GetArrangement()), 1, 3) &&
		m.GetArmMm() > 0 && m.GetArmMm() <= 10000 &&
		m.GetEccentricityMm() >= 0 && m.GetEccentricityMm() <= 5000 &&
		m.GetEndDistanceMm() > 0 && m.GetEndDistanceMm() <= 10000 &&
		m.GetGapMm() >= 0 && m.GetGapMm() <= 1000 &&
		m.GetHoleDiameterMm() > 0 && m.GetHoleDiameterMm() <= 400 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 300 &&
		m.GetWidthMm() > 0 && m.GetWidthMm() <= 10000 &&
		m.Steel != nil && quickSteel(m.GetSteel())
}

func quickPinLayout(m *footwardv1.PinLayout) bool {
	return (m.GroupFactor == nil || m.GetGroupFactor() >= 0.05 && m.GetGroupFactor() <= 1) &&
		m.GetEdgeDistanceMm() > 0 && m.GetEdgeDistanceMm() <= 10000 &&
		m.GetEndDistanceMm() > 0 && m.GetEndDistanceMm() <= 10000 &&
		m.GetPinsPerRow() <= 32 &&
		m.GetPinsPerRow() >= 1 &&
		m.GetRows() <= 16 &&
		m.GetRows() >= 1 &&
		m.GetSpacingAcrossMm() >= 0 && m.GetSpacingAcrossMm() <= 10000 &&
		m.GetSpacingAlongMm() >= 0 && m.GetSpacingAlongMm() <= 10000
}

func quickPinForces(m *footwardv1.PinForces) bool {
	return m.GetMKnm() >= -100000 && m.GetMKnm() <= 100000 &&
		m.GetNKn() >= -100000 && m.GetNKn() <= 100000 &&
		m.GetVKn() >= -100000 && m.GetVKn() <= 100000
}

func quickBracketWeld(m *footwardv1.BracketWeld) bool {
	return between(int(m.GetLines()), 1, 2) &&
		m.Weld != nil && quickWeldSpec(m.GetWeld())
}

func quickCheckPinRequest(m *footwardv1.CheckPinRequest) bool {
	return (m.BracketWeld == nil || quickBracketWeld(m.GetBracketWeld())) &&
		(m.Exposure == nil || quickExposure(m.GetExposure())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Forces != nil && quickPinForces(m.GetForces()) &&
		m.Layout != nil && quickPinLayout(m.GetLayout()) &&
		m.Pin != nil && quickPinSpec(m.GetPin()) &&
		m.Plates != nil && quickPinnedPlates(m.GetPlates()) &&
		m.Timber != nil && quickPinnedTimber(m.GetTimber())
}

func quickFootingRectangle(m *footwardv1.FootingRectangle) bool {
	return m.GetSizeXMm() >= 50 && m.GetSizeXMm() <= 50000 &&
		m.GetSizeYMm() >= 50 && m.GetSizeYMm() <= 50000
}

func quickFootingCircle(m *footwardv1.FootingCircle) bool {
	return m.GetDiameterMm() >= 50 && m.GetDiameterMm() <= 50000
}

func quickFooting(m *footwardv1.Footing) bool {
	if !(m.GetDepthMm() >= 0 && m.GetDepthMm() <= 50000 &&
		m.Plan != nil) {
		return false
	}
	if c, ok := m.Plan.(*footwardv1.Footing_Rectangle); ok && (c == nil || c.Rectangle == nil || !quickFootingRectangle(c.Rectangle)) {
		return false
	}
	if c, ok := m.Plan.(*footwardv1.Footing_Circle); ok && (c == nil || c.Circle == nil || !quickFootingCircle(c.Circle)) {
		return false
	}
	return true
}

func quickOedometer(m *footwardv1.Oedometer) bool {
	return m.GetCompressionIndex() > 0 && m.GetCompressionIndex() <= 10 &&
		m.GetPreconsolidationKpa() >= 0 && m.GetPreconsolidationKpa() <= 100000 &&
		m.GetRecompressionIndex() >= 0 && m.GetRecompressionIndex() <= 10 &&
		m.GetVoidRatio() > 0 && m.GetVoidRatio() <= 20
}

func quickGroundLayer(m *footwardv1.GroundLayer) bool {
	return (m.Oedometer == nil || quickOedometer(m.GetOedometer())) &&
		m.GetConeResistanceMpa() >= 0 && m.GetConeResistanceMpa() <= 200 &&
		m.GetModulusMpa() >= 0 && m.GetModulusMpa() <= 1e+06 &&
		m.GetN60() >= 0 && m.GetN60() <= 200 &&
		m.GetPoisson() >= 0 && m.GetPoisson() <= 0.5 &&
		m.GetThicknessMm() >= 1 && m.GetThicknessMm() <= 100000 &&
		m.GetUnitWeightKnM3() >= 0 && m.GetUnitWeightKnM3() <= 40
}

func quickSettlementStage(m *footwardv1.SettlementStage) bool {
	return between(utf8.RuneCountInString(m.GetName()), 0, 200) &&
		m.GetCompressionKn() >= 0 && m.GetCompressionKn() <= 1e+06 &&
		m.GetMXKnm() >= -1e+06 && m.GetMXKnm() <= 1e+06 &&
		m.GetMYKnm() >= -1e+06 && m.GetMYKnm() <= 1e+06 &&
		m.GetNetPressureKpa() >= 0 && m.GetNetPressureKpa() <= 100000
}

func quickSettlementLimits(m *footwardv1.SettlementLimits) bool {
	return (m.AngularDistortion == nil || m.GetAngularDistortion() > 0 && m.GetAngularDistortion() <= 0.1) &&
		(m.TotalMm == nil || m.GetTotalMm() > 0 && m.GetTotalMm() <= 10000) &&
		m.GetTilt() >= 0 && m.GetTilt() <= 0.1
}

func quickSettlementNeighbour(m *footwardv1.SettlementNeighbour) bool {
	return m.GetDistanceMm() >= 1 && m.GetDistanceMm() <= 1e+06 &&
		m.GetSettlementMm() >= 0 && m.GetSettlementMm() <= 10000
}

func quickCheckSettlementRequest(m *footwardv1.CheckSettlementRequest) bool {
	if !((m.DepthFactor == nil || m.GetDepthFactor() >= 0.5 && m.GetDepthFactor() <= 1) &&
		(m.Limits == nil || quickSettlementLimits(m.GetLimits())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(int(m.GetStressSpread()), 0, 2) &&
		between(len(m.Layers), 1, 50) &&
		between(len(m.Neighbours), 0, 50) &&
		between(len(m.Stages), 1, 100) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Footing != nil && quickFooting(m.GetFooting()) &&
		m.GetCreepYears() >= 0 && m.GetCreepYears() <= 1000 &&
		m.GetPreloadedKpa() >= 0 && m.GetPreloadedKpa() <= 100000 &&
		m.GetUnitWeightAboveKnM3() >= 0 && m.GetUnitWeightAboveKnM3() <= 40 &&
		m.GetWaterDepthMm() >= 0 && m.GetWaterDepthMm() <= 1e+06) {
		return false
	}
	for _, e := range m.Layers {
		if e == nil || !quickGroundLayer(e) {
			return false
		}
	}
	for _, e := range m.Stages {
		if e == nil || !quickSettlementStage(e) {
			return false
		}
	}
	for _, e := range m.Neighbours {
		if e == nil || !quickSettlementNeighbour(e) {
			return false
		}
	}
	return true
}

func quickGroundStrength(m *footwardv1.GroundStrength) bool {
	return m.GetCohesionKpa() >= 0 && m.GetCohesionKpa() <= 10000 &&
		m.GetCriticalAngleDeg() >= 0 && m.GetCriticalAngleDeg() <= 45 &&
		m.GetFrictionAngleDeg() >= 0 && m.GetFrictionAngleDeg() <= 45 &&
		m.GetUndrainedStrengthKpa() >= 0 && m.GetUndrainedStrengthKpa() <= 10000 &&
		m.GetUnitWeightAboveKnM3() >= 0 && m.GetUnitWeightAboveKnM3() <= 40 &&
		m.GetUnitWeightKnM3() >= 0 && m.GetUnitWeightKnM3() <= 40 &&
		m.GetWaterDepthMm() >= 0 && m.GetWaterDepthMm() <= 1e+06
}

func quickBaseContact(m *footwardv1.BaseContact) bool {
	return m.GetFrictionShare() > 0 && m.GetFrictionShare() <= 1
}

func quickGranularLayer(m *footwardv1.GranularLayer) bool {
	return m.GetPunchingCoefficient() > 0 && m.GetPunchingCoefficient() <= 30 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 100000 &&
		m.GetUndrainedStrengthKpa() > 0 && m.GetUndrainedStrengthKpa() <= 10000
}

func quickPresumptivePressure(m *footwardv1.PresumptivePressure) bool {
	return between(utf8.RuneCountInString(m.GetSource()), 1, 300) &&
		m.GetPressureKpa() > 0 && m.GetPressureKpa() <= 100000
}

func quickCheckFootingRequest(m *footwardv1.CheckFootingRequest) bool {
	if !((m.BaseContact == nil || quickBaseContact(m.GetBaseContact())) &&
		(m.Layer == nil || quickGranularLayer(m.GetLayer())) &&
		(m.Presumptive == nil || quickPresumptivePressure(m.GetPresumptive())) &&
		(m.Soil == nil || quickGroundStrength(m.GetSoil())) &&
		(m.Variable == nil || quickForcesAtFoot(m.GetVariable())) &&
		between(int(m.GetBearingAuthor()), 0, 4) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(len(m.DesignApproaches), 0, 4) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Footing != nil && quickFooting(m.GetFooting()) &&
		m.GetHeightMm() >= 0 && m.GetHeightMm() <= 100000 &&
		m.GetWeightKn() >= 0 && m.GetWeightKn() <= 1e+06 &&
		m.HeightMm != nil &&
		m.Permanent != nil && quickForcesAtFoot(m.GetPermanent()) &&
		m.WeightKn != nil) {
		return false
	}
	for _, e := range m.DesignApproaches {
		if !between(int(e), 1, 4) {
			return false
		}
	}
	return true
}

func quickStackShoe(m *footwardv1.StackShoe) bool {
	return m.GetLoadedDiameterMm() >= 0 && m.GetLoadedDiameterMm() <= 100000 &&
		m.GetSizeXMm() >= 10 && m.GetSizeXMm() <= 100000 &&
		m.GetSizeYMm() >= 10 && m.GetSizeYMm() <= 100000
}

func quickContainingRing(m *footwardv1.ContainingRing) bool {
	return (m.AxialStrain == nil || m.GetAxialStrain() >= 0.001 && m.GetAxialStrain() <= 0.2) &&
		(m.DurabilityFactor == nil || m.GetDurabilityFactor() >= 0.01 && m.GetDurabilityFactor() <= 1) &&
		(m.JointBoltMm == nil || m.GetJointBoltMm() >= 1 && m.GetJointBoltMm() <= 100) &&
		(m.JointFactor == nil || m.GetJointFactor() >= 0.01 && m.GetJointFactor() <= 1) &&
		(m.JointThicknessMm == nil || m.GetJointThicknessMm() >= 0.1 && m.GetJointThicknessMm() <= 100) &&
		(m.PartialFactor == nil || m.GetPartialFactor() >= 1 && m.GetPartialFactor() <= 20) &&
		(m.WallThicknessMm == nil || m.GetWallThicknessMm() >= 0.1 && m.GetWallThicknessMm() <= 100) &&
		between(int(m.GetKind()), 1, 5) &&
		m.GetCapacityKn() >= 0 && m.GetCapacityKn() <= 1e+06 &&
		m.GetEdgeLoadKn() >= 0 && m.GetEdgeLoadKn() <= 1e+06 &&
		m.GetStiffnessKnM() >= 0 && m.GetStiffnessKnM() <= 1e+09 &&
		m.GetTestedStrain() >= 0 && m.GetTestedStrain() <= 0.5
}

func quickRingFill(m *footwardv1.RingFill) bool {
	return between(int(m.GetGrade()), 0, 4) &&
		m.GetCohesionKpa() >= 0 && m.GetCohesionKpa() <= 100 &&
		m.GetCompactionStressKpa() >= 0 && m.GetCompactionStressKpa() <= 1000 &&
		m.GetFrictionAngleDeg() >= 20 && m.GetFrictionAngleDeg() <= 50 &&
		m.GetModulusMpa() >= 0 && m.GetModulusMpa() <= 1000 &&
		m.GetUnitWeightKnM3() >= 5 && m.GetUnitWeightKnM3() <= 30
}

func quickRingTier(m *footwardv1.RingTier) bool {
	return m.Fill != nil && quickRingFill(m.GetFill()) &&
		m.GetDiameterMm() >= 50 && m.GetDiameterMm() <= 100000 &&
		m.GetHeightMm() >= 10 && m.GetHeightMm() <= 5000 &&
		m.Ring != nil && quickContainingRing(m.GetRing())
}

func quickStackRods(m *footwardv1.StackRods) bool {
	return m.GetAreaMm2() >= 0 && m.GetAreaMm2() <= 100000 &&
		m.GetCount() <= 64 &&
		m.GetCreepMm() >= 0 && m.GetCreepMm() <= 1000 &&
		m.GetLengthMm() >= 0 && m.GetLengthMm() <= 100000 &&
		m.GetModulusMpa() >= 0 && m.GetModulusMpa() <= 1e+06 &&
		m.GetNeededPreloadKn() >= 0 && m.GetNeededPreloadKn() <= 100000 &&
		m.GetPreloadKn() >= 0 && m.GetPreloadKn() <= 100000 &&
		m.GetRelaxation() >= 0 && m.GetRelaxation() <= 1 &&
		m.GetStackStiffnessKnMm() >= 0 && m.GetStackStiffnessKnMm() <= 1e+06
}

func quickCheckRingStackRequest(m *footwardv1.CheckRingStackRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Rods == nil || quickStackRods(m.GetRods())) &&
		(m.ServiceForces == nil || quickForcesAtFoot(m.GetServiceForces())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(len(m.Tiers), 1, 8) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.GetBeddingMm() >= 0 && m.GetBeddingMm() <= 100000 &&
		m.GetCoverKpa() >= 0 && m.GetCoverKpa() <= 1000 &&
		m.GetLoadTestKn() >= 0 && m.GetLoadTestKn() <= 1e+06 &&
		m.GetLoadTestShoeMm() >= 0 && m.GetLoadTestShoeMm() <= 100000 &&
		m.GetSettlementLimitMm() >= 0 && m.GetSettlementLimitMm() <= 100000 &&
		m.Shoe != nil && quickStackShoe(m.GetShoe())) {
		return false
	}
	for _, e := range m.Tiers {
		if e == nil || !quickRingTier(e) {
			return false
		}
	}
	return true
}

func quickCheckManyRequest(m *footwardv1.CheckManyRequest) bool {
	return between(len(m.Items), 1, 10000)
}

func quickStreamChecksRequest(m *footwardv1.StreamChecksRequest) bool {
	return between(len(m.Items), 1, 1000)
}

func quickStage(m *footwardv1.Stage) bool {
	return between(utf8.RuneCountInString(m.GetName()), 1, 100)
}

func quickPsiFactors(m *footwardv1.PsiFactors) bool {
	return m.GetPsi_0() >= 0 && m.GetPsi_0() <= 1 &&
		m.GetPsi_1() >= 0 && m.GetPsi_1() <= 1 &&
		m.GetPsi_2() >= 0 && m.GetPsi_2() <= 1
}

func quickAction(m *footwardv1.Action) bool {
	return (m.Psi == nil || quickPsiFactors(m.GetPsi())) &&
		between(int(m.GetCategory()), 0, 7) &&
		between(int(m.GetKind()), 1, 8) &&
		between(int(m.GetLoadDuration()), 0, 5) &&
		between(int(m.GetSnowSite()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetExclusiveGroup()), 0, 60) &&
		between(utf8.RuneCountInString(m.GetName()), 1, 60) &&
		between(utf8.RuneCountInString(m.GetPartOf()), 0, 60) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.GetFirstStage() <= 20 &&
		m.GetLastStage() <= 20
}

func quickActionSet(m *footwardv1.ActionSet) bool {
	if !(between(len(m.Actions), 1, 16) &&
		between(len(m.Kinds), 0, 8) &&
		between(len(m.Stages), 0, 20)) {
		return false
	}
	for _, e := range m.Stages {
		if e == nil || !quickStage(e) {
			return false
		}
	}
	for _, e := range m.Actions {
		if e == nil || !quickAction(e) {
			return false
		}
	}
	for _, e := range m.Kinds {
		if !between(int(e), 1, 9) {
			return false
		}
	}
	return true
}

func quickCombineActionsRequest(m *footwardv1.CombineActionsRequest) bool {
	return between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.ActionSet != nil && quickActionSet(m.GetActionSet()) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis())
}

func quickForceSharing(m *footwardv1.ForceSharing) bool {
	return m.GetPreloadKn() >= 0 && m.GetPreloadKn() <= 10000 &&
		m.GetSubgradeModulusNMm3() >= 0 && m.GetSubgradeModulusNMm3() <= 10000
}

func quickStackBelow(m *footwardv1.StackBelow) bool {
	if !(between(len(m.Tiers), 1, 8) &&
		m.GetBeddingMm() >= 0 && m.GetBeddingMm() <= 1000 &&
		m.GetCoverKpa() >= 0 && m.GetCoverKpa() <= 1000 &&
		m.GetLoadTestKn() >= 0 && m.GetLoadTestKn() <= 1e+06 &&
		m.GetLoadTestShoeMm() >= 0 && m.GetLoadTestShoeMm() <= 5000 &&
		m.GetLoadedDiameterMm() >= 0 && m.GetLoadedDiameterMm() <= 5000 &&
		m.GetSettlementLimitMm() >= 0 && m.GetSettlementLimitMm() <= 1000 &&
		m.GetShearKeyKn() >= 0 && m.GetShearKeyKn() <= 100000) {
		return false
	}
	for _, e := range m.Tiers {
		if e == nil || !quickRingTier(e) {
			return false
		}
	}
	return true
}

func quickLevellingLayer(m *footwardv1.LevellingLayer) bool {
	return m.GetThicknessMm() >= 1 && m.GetThicknessMm() <= 2000 &&
		m.GetUnitWeightKnM3() >= 5 && m.GetUnitWeightKnM3() <= 30
}

func quickPadBars(m *footwardv1.PadBars) bool {
	return m.GetDiameterMm() >= 4 && m.GetDiameterMm() <= 60 &&
		m.GetSpacingMm() >= 20 && m.GetSpacingMm() <= 1000
}

func quickPadReinforcement(m *footwardv1.PadReinforcement) bool {
	return m.Bars != nil && quickPadBars(m.GetBars()) &&
		m.GetBendMm() >= 0 && m.GetBendMm() <= 5000 &&
		m.GetCoverMm() >= 10 && m.GetCoverMm() <= 500 &&
		m.GetFyMpa() >= 200 && m.GetFyMpa() <= 700
}

func quickGroundBelow(m *footwardv1.GroundBelow) bool {
	if !((m.BaseContact == nil || quickBaseContact(m.GetBaseContact())) &&
		(m.Layer == nil || quickGranularLayer(m.GetLayer())) &&
		(m.Presumptive == nil || quickPresumptivePressure(m.GetPresumptive())) &&
		(m.Soil == nil || quickGroundStrength(m.GetSoil())) &&
		between(int(m.GetBearingAuthor()), 0, 4) &&
		between(len(m.DesignApproaches), 0, 4) &&
		m.GetDepthMm() >= 0 && m.GetDepthMm() <= 50000 &&
		m.GetSubgradeModulusNMm3() >= 0 && m.GetSubgradeModulusNMm3() <= 100) {
		return false
	}
	for _, e := range m.DesignApproaches {
		if !between(int(e), 1, 4) {
			return false
		}
	}
	return true
}

func quickSettlementBelow(m *footwardv1.SettlementBelow) bool {
	if !((m.DepthFactor == nil || m.GetDepthFactor() >= 0.5 && m.GetDepthFactor() <= 1) &&
		(m.Limits == nil || quickSettlementLimits(m.GetLimits())) &&
		between(int(m.GetStressSpread()), 0, 2) &&
		between(len(m.Layers), 1, 50) &&
		between(len(m.Neighbours), 0, 50) &&
		m.GetCreepYears() >= 0 && m.GetCreepYears() <= 1000 &&
		m.GetPreloadedKpa() >= 0 && m.GetPreloadedKpa() <= 100000) {
		return false
	}
	for _, e := range m.Layers {
		if e == nil || !quickGroundLayer(e) {
			return false
		}
	}
	for _, e := range m.Neighbours {
		if e == nil || !quickSettlementNeighbour(e) {
			return false
		}
	}
	return true
}

func quickSubstructure(m *footwardv1.Substructure) bool {
	return (m.ConcreteUnitWeightKnM3 == nil || m.GetConcreteUnitWeightKnM3() >= 10 && m.GetConcreteUnitWeightKnM3() <= 40) &&
		(m.Ground == nil || quickGroundBelow(m.GetGround())) &&
		(m.Levelling == nil || quickLevellingLayer(m.GetLevelling())) &&
		(m.Reinforcement == nil || quickPadReinforcement(m.GetReinforcement())) &&
		(m.Settlement == nil || quickSettlementBelow(m.GetSettlement())) &&
		(m.Stack == nil || quickStackBelow(m.GetStack())) &&
		m.GetBlindingMm() >= 0 && m.GetBlindingMm() <= 500 &&
		m.GetOtherWeightKn() >= 0 && m.GetOtherWeightKn() <= 100000
}

func quickColumnBase(m *footwardv1.ColumnBase) bool {
	return (m.Anchorage == nil || quickAnchorage(m.GetAnchorage())) &&
		(m.Rods == nil || quickRodGroup(m.GetRods())) &&
		(m.Sharing == nil || quickForceSharing(m.GetSharing())) &&
		(m.Substructure == nil || quickSubstructure(m.GetSubstructure())) &&
		(m.Support == nil || quickSupport(m.GetSupport())) &&
		(m.Weld == nil || quickWeldSpec(m.GetWeld())) &&
		m.Footprint != nil && quickFootprint(m.GetFootprint()) &&
		m.Plate != nil && quickPlate(m.GetPlate())
}

func quickLoadCase(m *footwardv1.LoadCase) bool {
	return (m.Permanent == nil || quickForcesAtFoot(m.GetPermanent())) &&
		between(int(m.GetKind()), 0, 9) &&
		between(int(m.GetLoadDuration()), 0, 5) &&
		between(utf8.RuneCountInString(m.GetName()), 1, 200) &&
		m.Forces != nil && quickForcesAtFoot(m.GetForces()) &&
		m.GetStage() <= 20
}

func quickLoadCases(m *footwardv1.LoadCases) bool {
	if !(between(len(m.Cases), 1, 2000)) {
		return false
	}
	for _, e := range m.Cases {
		if e == nil || !quickLoadCase(e) {
			return false
		}
	}
	return true
}

func quickCheckColumnBaseRequest(m *footwardv1.CheckColumnBaseRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Base != nil && quickColumnBase(m.GetBase()) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Loads != nil) {
		return false
	}
	if c, ok := m.Loads.(*footwardv1.CheckColumnBaseRequest_ActionSet); ok && (c == nil || c.ActionSet == nil || !quickActionSet(c.ActionSet)) {
		return false
	}
	if c, ok := m.Loads.(*footwardv1.CheckColumnBaseRequest_LoadCases); ok && (c == nil || c.LoadCases == nil || !quickLoadCases(c.LoadCases)) {
		return false
	}
	return true
}

func quickPlatePlan(m *footwardv1.PlatePlan) bool {
	if !(between(len(m.Positions), 0, 64) &&
		m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 5000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 5000) {
		return false
	}
	for _, e := range m.Positions {
		if e == nil || !quickRodPosition(e) {
			return false
		}
	}
	return true
}

func quickRodOffer(m *footwardv1.RodOffer) bool {
	return (m.PerKg == nil || m.GetPerKg() >= 0 && m.GetPerKg() <= 1e+06) &&
		between(utf8.RuneCountInString(m.GetSteel()), 0, 60) &&
		between(utf8.RuneCountInString(m.GetThread()), 1, 60)
}

func quickBottomPlateOffer(m *footwardv1.BottomPlateOffer) bool {
	return m.GetSizeXMm() > 0 && m.GetSizeXMm() <= 5000 &&
		m.GetSizeYMm() > 0 && m.GetSizeYMm() <= 5000 &&
		m.GetThicknessMm() > 0 && m.GetThicknessMm() <= 300
}

func quickStackOffer(m *footwardv1.StackOffer) bool {
	if !(between(len(m.Tiers), 1, 8) &&
		m.GetLoadTestKn() >= 0 && m.GetLoadTestKn() <= 1e+06 &&
		m.GetRingsCost() >= 0 && m.GetRingsCost() <= 1e+09) {
		return false
	}
	for _, e := range m.Tiers {
		if e == nil || !quickRingTier(e) {
			return false
		}
	}
	return true
}

func quickSizeOffer(m *footwardv1.SizeOffer) bool {
	if !(between(len(m.BottomPlates), 0, 100) &&
		between(len(m.Plans), 0, 100) &&
		between(len(m.Rods), 0, 100) &&
		between(len(m.Stacks), 0, 100) &&
		between(len(m.ThicknessMm), 0, 100) &&
		between(len(m.ThroatMm), 0, 100)) {
		return false
	}
	for _, e := range m.Plans {
		if e == nil || !quickPlatePlan(e) {
			return false
		}
	}
	for _, e := range m.ThicknessMm {
		if !(e > 0 && e <= 300) {
			return false
		}
	}
	for _, e := range m.Rods {
		if e == nil || !quickRodOffer(e) {
			return false
		}
	}
	for _, e := range m.ThroatMm {
		if !(e > 0 && e <= 100) {
			return false
		}
	}
	for _, e := range m.BottomPlates {
		if e == nil || !quickBottomPlateOffer(e) {
			return false
		}
	}
	for _, e := range m.Stacks {
		if e == nil || !quickStackOffer(e) {
			return false
		}
	}
	return true
}

func quickSizeRates(m *footwardv1.SizeRates) bool {
	return m.GetEachRod() >= 0 && m.GetEachRod() <= 1e+06 &&
		m.GetFillPerKg() >= 0 && m.GetFillPerKg() <= 1e+06 &&
		m.GetPlatePerKg() >= 0 && m.GetPlatePerKg() <= 1e+06 &&
		m.GetRodPerKg() >= 0 && m.GetRodPerKg() <= 1e+06 &&
		m.GetWeldPerKg() >= 0 && m.GetWeldPerKg() <= 1e+06
}

func quickSizeColumnBaseRequest(m *footwardv1.SizeColumnBaseRequest) bool {
	if !((m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Rates == nil || quickSizeRates(m.GetRates())) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.Base != nil && quickColumnBase(m.GetBase()) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.GetMaxUtilization() >= 0 && m.GetMaxUtilization() <= 1 &&
		m.Loads != nil &&
		m.Offer != nil && quickSizeOffer(m.GetOffer())) {
		return false
	}
	if c, ok := m.Loads.(*footwardv1.SizeColumnBaseRequest_ActionSet); ok && (c == nil || c.ActionSet == nil || !quickActionSet(c.ActionSet)) {
		return false
	}
	if c, ok := m.Loads.(*footwardv1.SizeColumnBaseRequest_LoadCases); ok && (c == nil || c.LoadCases == nil || !quickLoadCases(c.LoadCases)) {
		return false
	}
	return true
}

func quickRingItem(m *footwardv1.RingItem) bool {
	return m.GetFillLooseFactor() >= 0 && m.GetFillLooseFactor() <= 3 &&
		m.GetMassKg() > 0 && m.GetMassKg() <= 100000 &&
		m.GetOuterDiameterMm() >= 50 && m.GetOuterDiameterMm() <= 100000
}

func quickGeotextileItem(m *footwardv1.GeotextileItem) bool {
	return m.GetLaps() >= 0 && m.GetLaps() <= 2 &&
		m.GetLayers() <= 100 &&
		m.GetLayers() >= 1 &&
		m.GetMassKgM2() >= 0 && m.GetMassKgM2() <= 100 &&
		m.GetSizeXMm() >= 1 && m.GetSizeXMm() <= 100000 &&
		m.GetSizeYMm() >= 1 && m.GetSizeYMm() <= 100000
}

func quickRingSupply(m *footwardv1.RingSupply) bool {
	if !((m.Geotextile == nil || quickGeotextileItem(m.GetGeotextile())) &&
		between(len(m.Rings), 1, 8) &&
		m.GetBracketsKg() >= 0 && m.GetBracketsKg() <= 100000 &&
		m.GetLevellingLooseFactor() >= 0 && m.GetLevellingLooseFactor() <= 3 &&
		m.GetLevellingMarginMm() >= 0 && m.GetLevellingMarginMm() <= 5000 &&
		m.GetRodFittingsKg() >= 0 && m.GetRodFittingsKg() <= 10000) {
		return false
	}
	for _, e := range m.Rings {
		if e == nil || !quickRingItem(e) {
			return false
		}
	}
	return true
}

func quickSizeSteps(m *footwardv1.SizeSteps) bool {
	return m.GetMaxMm() >= 50 && m.GetMaxMm() <= 100000 &&
		m.GetMinMm() >= 50 && m.GetMinMm() <= 100000 &&
		m.GetStepMm() >= 1 && m.GetStepMm() <= 10000
}

func quickPadOffer(m *footwardv1.PadOffer) bool {
	if !((m.AboveMm == nil || m.GetAboveMm() >= 0 && m.GetAboveMm() <= 10000) &&
		(m.Aspect == nil || m.GetAspect() >= 0.1 && m.GetAspect() <= 10) &&
		(m.ConcreteUnitWeightKnM3 == nil || m.GetConcreteUnitWeightKnM3() >= 10 && m.GetConcreteUnitWeightKnM3() <= 40) &&
		(m.Plan == nil || quickSizeSteps(m.GetPlan())) &&
		(m.Thickness == nil || quickSizeSteps(m.GetThickness())) &&
		between(len(m.Bars), 0, 50) &&
		m.Concrete != nil && quickConcrete(m.GetConcrete()) &&
		m.GetAnchorRodsKg() >= 0 && m.GetAnchorRodsKg() <= 10000 &&
		m.GetBendMm() >= 0 && m.GetBendMm() <= 5000 &&
		m.GetBlindingBeyondMm() >= 0 && m.GetBlindingBeyondMm() <= 1000 &&
		m.GetBlindingMm() >= 0 && m.GetBlindingMm() <= 500 &&
		m.GetCoverMm() >= 0 && m.GetCoverMm() <= 500 &&
		m.GetDepthMm() >= 0 && m.GetDepthMm() <= 50000 &&
		m.GetFyMpa() >= 0 && m.GetFyMpa() <= 700 &&
		m.GetMaxUtilization() >= 0 && m.GetMaxUtilization() <= 1 &&
		m.GetOtherReinforcementKg() >= 0 && m.GetOtherReinforcementKg() <= 10000 &&
		m.GetPlinthXMm() >= 0 && m.GetPlinthXMm() <= 5000 &&
		m.GetPlinthYMm() >= 0 && m.GetPlinthYMm() <= 5000) {
		return false
	}
	for _, e := range m.Bars {
		if e == nil || !quickPadBars(e) {
			return false
		}
	}
	return true
}

func quickExcavation(m *footwardv1.Excavation) bool {
	return m.GetBulkingFactor() >= 0 && m.GetBulkingFactor() <= 3 &&
		m.GetSlope() >= 0 && m.GetSlope() <= 10 &&
		m.GetSoilUnitWeightKnM3() >= 0 && m.GetSoilUnitWeightKnM3() <= 40 &&
		m.GetWorkingSpaceMm() >= 0 && m.GetWorkingSpaceMm() <= 5000
}

func quickRateValue(m *footwardv1.RateValue) bool {
	return between(int(m.GetPer()), 0, 5) &&
		between(utf8.RuneCountInString(m.GetSource()), 1, 300) &&
		m.GetValue() >= 0 && m.GetValue() <= 1e+06
}

func quickItemRate(m *footwardv1.ItemRate) bool {
	return (m.Carbon == nil || quickRateValue(m.GetCarbon())) &&
		(m.Cost == nil || quickRateValue(m.GetCost())) &&
		(m.Hours == nil || quickRateValue(m.GetHours())) &&
		between(int(m.GetKind()), 1, 15) &&
		m.GetDistanceKm() >= 0 && m.GetDistanceKm() <= 50000
}

func quickTransport(m *footwardv1.Transport) bool {
	return (m.Carbon == nil || quickRateValue(m.GetCarbon())) &&
		(m.Cost == nil || quickRateValue(m.GetCost()))
}

func quickCompareFootingsRequest(m *footwardv1.CompareFootingsRequest) bool {
	if !((m.Excavation == nil || quickExcavation(m.GetExcavation())) &&
		(m.Exposure == nil || quickExposure(m.GetExposure())) &&
		(m.Transport == nil || quickTransport(m.GetTransport())) &&
		between(len(m.Rates), 0, 15) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.ActionSet != nil && quickActionSet(m.GetActionSet()) &&
		m.Base != nil && quickColumnBase(m.GetBase()) &&
		m.Basis != nil && quickDesignBasis(m.GetBasis()) &&
		m.Pad != nil && quickPadOffer(m.GetPad()) &&
		m.Supply != nil && quickRingSupply(m.GetSupply())) {
		return false
	}
	for _, e := range m.Rates {
		if e == nil || !quickItemRate(e) {
			return false
		}
	}
	return true
}

func quickLoadTest(m *footwardv1.LoadTest) bool {
	return between(int(m.GetMode()), 0, 6) &&
		between(utf8.RuneCountInString(m.GetDate()), 0, 10) &&
		between(utf8.RuneCountInString(m.GetGround()), 0, 200) &&
		between(utf8.RuneCountInString(m.GetLeftOutBecause()), 0, 500) &&
		between(utf8.RuneCountInString(m.GetName()), 0, 200) &&
		between(utf8.RuneCountInString(m.GetSpecimen()), 0, 500) &&
		m.GetDeflectionLoadKn() >= 0 && m.GetDeflectionLoadKn() <= 100000 &&
		m.GetLoadKn() > 0 && m.GetLoadKn() <= 100000 &&
		m.GetPredictedKn() >= 0 && m.GetPredictedKn() <= 100000 &&
		m.GetSizeMm() >= 0 && m.GetSizeMm() <= 100000
}

func quickKnownVariation(m *footwardv1.KnownVariation) bool {
	return (m.PriorDegreesOfFreedom == nil || m.GetPriorDegreesOfFreedom() >= 1 && m.GetPriorDegreesOfFreedom() <= 100) &&
		between(utf8.RuneCountInString(m.GetSource()), 1, 500) &&
		m.GetComparableTests() <= 100000 &&
		m.GetValue() >= 0.01 && m.GetValue() <= 1
}

func quickConversionFactor(m *footwardv1.ConversionFactor) bool {
	return between(utf8.RuneCountInString(m.GetReason()), 1, 500) &&
		m.GetValue() >= 0.1 && m.GetValue() <= 1
}

func quickPartialFactor(m *footwardv1.PartialFactor) bool {
	return between(utf8.RuneCountInString(m.GetSource()), 1, 500) &&
		m.GetValue() >= 1 && m.GetValue() <= 5
}

func quickTestCorrelation(m *footwardv1.TestCorrelation) bool {
	return (m.PartialFactor == nil || quickPartialFactor(m.GetPartialFactor())) &&
		between(utf8.RuneCountInString(m.GetSource()), 0, 500) &&
		m.GetXiLeast() >= 0 && m.GetXiLeast() <= 3 &&
		m.GetXiMean() >= 0 && m.GetXiMean() <= 3
}

func quickTestReliability(m *footwardv1.TestReliability) bool {
	return (m.Beta == nil || m.GetBeta() >= 2 && m.GetBeta() <= 5) &&
		(m.DeadOverLive == nil || m.GetDeadOverLive() >= 0 && m.GetDeadOverLive() <= 10) &&
		(m.FabricationVariation == nil || m.GetFabricationVariation() >= 0 && m.GetFabricationVariation() <= 0.5) &&
		(m.MaterialVariation == nil || m.GetMaterialVariation() >= 0 && m.GetMaterialVariation() <= 0.5)
}

func quickSizeFamily(m *footwardv1.SizeFamily) bool {
	return between(utf8.RuneCountInString(m.GetSource()), 1, 500) &&
		m.GetInputVariation() > 0 && m.GetInputVariation() <= 0.5 &&
		m.GetPredictedKn() > 0 && m.GetPredictedKn() <= 100000
}

func quickAssessLoadTestsRequest(m *footwardv1.AssessLoadTestsRequest) bool {
	if !((m.Confidence == nil || m.GetConfidence() >= 0.5 && m.GetConfidence() <= 0.999) &&
		(m.Correlation == nil || quickTestCorrelation(m.GetCorrelation())) &&
		(m.Family == nil || quickSizeFamily(m.GetFamily())) &&
		(m.PartialFactor == nil || quickPartialFactor(m.GetPartialFactor())) &&
		(m.Reliability == nil || quickTestReliability(m.GetReliability())) &&
		(m.Variation == nil || quickKnownVariation(m.GetVariation())) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(int(m.GetMode()), 1, 6) &&
		between(len(m.ConversionFactors), 0, 20) &&
		between(len(m.Tests), 1, 200) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		between(utf8.RuneCountInString(m.GetLogNormalBecause()), 0, 500)) {
		return false
	}
	for _, e := range m.Tests {
		if e == nil || !quickLoadTest(e) {
			return false
		}
	}
	for _, e := range m.ConversionFactors {
		if e == nil || !quickConversionFactor(e) {
			return false
		}
	}
	return true
}

func quickTestPlate(m *footwardv1.TestPlate) bool {
	return m.GetDiameterMm() >= 0 && m.GetDiameterMm() <= 100000 &&
		m.GetGaugeRadiusMm() >= 0 && m.GetGaugeRadiusMm() <= 100000 &&
		m.GetSizeXMm() >= 0 && m.GetSizeXMm() <= 100000 &&
		m.GetSizeYMm() >= 0 && m.GetSizeYMm() <= 100000
}

func quickTestReading(m *footwardv1.TestReading) bool {
	if !(between(len(m.SettlementsMm), 1, 12) &&
		m.GetLoadKn() >= 0 && m.GetLoadKn() <= 100000 &&
		m.GetMinutes() >= 0 && m.GetMinutes() <= 1e+07) {
		return false
	}
	for _, e := range m.SettlementsMm {
		if !(e >= -1000 && e <= 10000) {
			return false
		}
	}
	return true
}

func quickTestStage(m *footwardv1.TestStage) bool {
	if !(between(int(m.GetPhase()), 1, 4) &&
		between(len(m.Readings), 1, 1000) &&
		m.GetLoadKn() >= 0 && m.GetLoadKn() <= 100000) {
		return false
	}
	for _, e := range m.Readings {
		if e == nil || !quickTestReading(e) {
			return false
		}
	}
	return true
}

func quickTestDamage(m *footwardv1.TestDamage) bool {
	return between(utf8.RuneCountInString(m.GetWhat()), 1, 500) &&
		m.GetStage() <= 200 &&
		m.GetStage() >= 1
}

func quickTestClamp(m *footwardv1.TestClamp) bool {
	return m.GetEmbedmentMm() >= 0 && m.GetEmbedmentMm() <= 100 &&
		m.GetFillStiffnessKnMm() > 0 && m.GetFillStiffnessKnMm() <= 100000 &&
		m.GetPreloadKn() >= 0 && m.GetPreloadKn() <= 100000 &&
		m.GetRodStiffnessKnMm() > 0 && m.GetRodStiffnessKnMm() <= 100000
}

func quickPreloadReading(m *footwardv1.PreloadReading) bool {
	return m.GetForceKn() >= 0 && m.GetForceKn() <= 100000 &&
		m.GetMinutes() > 0 && m.GetMinutes() <= 1e+08
}

func quickReadLoadTestRequest(m *footwardv1.ReadLoadTestRequest) bool {
	if !((m.Clamp == nil || quickTestClamp(m.GetClamp())) &&
		(m.Damage == nil || quickTestDamage(m.GetDamage())) &&
		(m.Poisson == nil || m.GetPoisson() >= 0 && m.GetPoisson() <= 0.5) &&
		(m.SubgradeSettlementMm == nil || m.GetSubgradeSettlementMm() >= 0.1 && m.GetSubgradeSettlementMm() <= 100) &&
		between(int(m.GetDetail()), 0, 3) &&
		between(len(m.PreloadRecord), 0, 1000) &&
		between(len(m.Stages), 1, 200) &&
		between(utf8.RuneCountInString(m.GetLabel()), 0, 200) &&
		m.GetDesignLifeYears() >= 0 && m.GetDesignLifeYears() <= 200 &&
		m.GetFootingWidthMm() >= 0 && m.GetFootingWidthMm() <= 100000 &&
		m.Plate != nil && quickTestPlate(m.GetPlate())) {
		return false
	}
	for _, e := range m.Stages {
		if e == nil || !quickTestStage(e) {
			return false
		}
	}
	for _, e := range m.PreloadRecord {
		if e == nil || !quickPreloadReading(e) {
			return false
		}
	}
	return true
}
