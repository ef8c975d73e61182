package api

import (
	"context"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pin"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckPin implements CheckServiceServer.
func (c *Check) CheckPin(_ context.Context, m *footwardv1.CheckPinRequest) (*footwardv1.CheckPinResponse, error) {
	r, violations := c.pin(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckPinResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

func (c *Check) pin(m *footwardv1.CheckPinRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.pinInput(m)
	violations := c.refused(kindPin, m, &r, func(f *limit.Faults) { base.ValidatePin(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := base.CheckPin(&in)
	return c.answered(kindPin, a, out, err)
}

func (r *reader) pinInput(m *footwardv1.CheckPinRequest) base.PinInput {
	in := base.PinInput{Pin: r.pin(m), Welded: m.GetBracketWeld() != nil}
	if !in.Welded {
		return in
	}
	inner := reader{lost: r.lost}
	w := m.GetBracketWeld()
	in.Weld = base.BracketWeld{Weld: inner.weldSpec(w.GetWeld()), Lines: base.Lines(w.GetLines()), Contact: w.GetCompressionByContact()}
	for _, f := range inner.faults {
		f.Field = "bracket_weld." + f.Field
		r.faults = append(r.faults, f)
	}
	return in
}

func (r *reader) pin(m *footwardv1.CheckPinRequest) pin.Input {
	t, p, s, l := m.GetTimber(), m.GetPin(), m.GetPlates(), m.GetLayout()
	return pin.Input{
		Design: r.design(m.GetBasis()),
		Timber: pin.Timber{
			Kind: material.TimberKind(t.GetKind()), Density: t.GetDensityKgM3(), Gravity: t.GetSpecificGravity(),
			AlongPin: t.GetSizeAlongPinMm(), AcrossPin: t.GetSizeAcrossPinMm(), Shear: t.GetShearStrengthMpa(),
			Tension: t.GetTensionAlongMpa(), Compression: t.GetCompressionAlongMpa(), Across: t.GetCompressionAcrossMpa(),
			Modulus: t.GetModulusMpa(), ServiceClass: int(t.GetServiceClass()), Duration: pin.Duration(t.GetLoadDuration()),
			Kmod: t.GetKMod(), LoadDuration: t.GetLoadDurationFactor(), TimeEffect: t.GetTimeEffectFactor(), WetFactor: t.GetWetFactor(),
		},
		Pin: pin.Pin{
			Kind: pin.Kind(p.GetKind()), Diameter: p.GetDiameterMm(), Fu: p.GetFuMpa(), Fy: p.GetFyMpa(), Fyb: p.GetFyBendingMpa(),
			Nuts: p.GetNuts(), Washer: p.GetWasherDiameterMm(),
		},
		Plates: pin.Plates{
			Arrangement: pin.Arrangement(s.GetArrangement()), Thickness: s.GetThicknessMm(), Corrosion: allowance(s != nil && s.CorrosionAllowanceMm != nil, s.GetCorrosionAllowanceMm(), r.lost.Plate()),
			Steel: r.steel(s.GetSteel(), "plates.steel"), Hole: s.GetHoleDiameterMm(), Width: s.GetWidthMm(),
			EndDistance: s.GetEndDistanceMm(), Arm: s.GetArmMm(), Gap: s.GetGapMm(), Embedment: s.GetDowelBearingStrengthMpa(),
			Eccentricity: s.GetEccentricityMm(), Held: s.GetFootHeldAlongPins(),
		},
		Layout: pin.Layout{
			Rows: int(l.GetRows()), InRow: int(l.GetPinsPerRow()), SpacingAlong: l.GetSpacingAlongMm(),
			SpacingAcross: l.GetSpacingAcrossMm(), EndDistance: l.GetEndDistanceMm(), EdgeDistance: l.GetEdgeDistanceMm(),
			GroupFactor: l.GetGroupFactor(),
		},
		Actions: pin.Actions{
			N: m.GetForces().GetNKn() * newton, V: m.GetForces().GetVKn() * newton, M: m.GetForces().GetMKnm() * newtonMM,
		},
		GammaConnection: parametersOf(m.GetBasis(), annexes).connections, EndBears: m.GetEndBears(),
	}
}
