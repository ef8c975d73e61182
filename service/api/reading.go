package api

import (
	"footward.example/footward/internal/record"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Defaults of a record.
const (
	usualPoisson  = 0.3
	usualSubgrade = 1.25 // [mm]
)

func testRecord(m *footwardv1.ReadLoadTestRequest) record.Input {
	p, c := m.GetPlate(), m.GetClamp()
	in := record.Input{
		Diameter: p.GetDiameterMm(), SizeX: p.GetSizeXMm(), SizeY: p.GetSizeYMm(), GaugeRadius: p.GetGaugeRadiusMm(),
		Plunged: m.GetPlunged(), Damaged: int(m.GetDamage().GetStage()), Damage: m.GetDamage().GetWhat(),
		Poisson: or(m.Poisson, usualPoisson), SubgradeAt: or(m.SubgradeSettlementMm, usualSubgrade),
		Footing: record.Footing{Width: m.GetFootingWidthMm(), Clay: m.GetClay()}, Years: m.GetDesignLifeYears(), Clay: m.GetClay(),
		Clamp: record.Clamp{
			Asked: c != nil, Fill: c.GetFillStiffnessKnMm() * newton, Rods: c.GetRodStiffnessKnMm() * newton,
			Preload: c.GetPreloadKn() * newton, Embedment: c.GetEmbedmentMm(),
		},
	}
	for _, s := range m.GetStages() {
		one := record.Stage{Phase: record.Phase(s.GetPhase()), Load: s.GetLoadKn() * newton}
		for _, v := range s.GetReadings() {
			one.Readings = append(one.Readings, record.Reading{Minutes: v.GetMinutes(), Load: v.GetLoadKn() * newton, Gauges: v.GetSettlementsMm()})
		}
		in.Stages = append(in.Stages, one)
	}
	for _, v := range m.GetPreloadRecord() {
		in.PreloadRecord = append(in.PreloadRecord, record.Force{Minutes: v.GetMinutes(), Force: v.GetForceKn() * newton})
	}
	return in
}

func testRead(in *record.Input, r *record.Result) *footwardv1.ReadLoadTestResponse {
	out := &footwardv1.ReadLoadTestResponse{
		Failed: r.Failed(), Governing: footwardv1.FailureCriterion(r.Governing), ResistanceKn: r.Resistance / newton,
		UnusableFrom: uint32(r.Unread), FirstLoading: testModulus(&r.FirstLoading), Reload: testModulus(&r.Reload),
		Subgrade: subgradeReaction(&r.Subgrade), Hyperbola: testHyperbola(&r.Hyperbola), Clamp: clampReading(in, r),
	}
	for _, c := range r.Criteria {
		out.Criteria = append(out.Criteria, &footwardv1.CriterionReading{
			Criterion: footwardv1.FailureCriterion(c.Criterion), LoadKn: kilonewton(c.Load, c.Met), Reason: c.Reason,
		})
	}
	for _, p := range r.Points {
		out.Stages = append(out.Stages, &footwardv1.StageReading{
			LoadKn: p.Load / newton, SettlementMm: p.Settlement, EdgeMm: p.Edge, Tilt: shown(p.Tilt, in.GaugeRadius > 0),
		})
	}
	for i := range r.Creep {
		c := &r.Creep[i]
		read := c.Reason == ""
		out.Creep = append(out.Creep, &footwardv1.HoldingCreep{
			Stage: uint32(c.Stage), AlphaMm: shown(c.Alpha, read), ErrorMm: shown(c.Error, read), NoneMeasurable: c.None,
			UsedMm: shown(c.Used, read), LifeMm: shown(c.Life, read && in.Years > 0), Reason: c.Reason,
		})
	}
	return out
}

func testModulus(c *record.Cycle) *footwardv1.TestModulus {
	return &footwardv1.TestModulus{EVMpa: shown(c.Ev, c.Known), EPltMpa: shown(c.Eplt, c.Known), Reason: c.Reason}
}

func subgradeReaction(s *record.Subgrade) *footwardv1.SubgradeReaction {
	return &footwardv1.SubgradeReaction{
		PlateNMm3: shown(s.Plate, s.Plate > 0), Scale: shown(s.Scale, s.Scale > 0), FootingNMm3: shown(s.Footing, s.Footing > 0),
		BoundOnly: s.BoundOnly, Reason: s.Reason,
	}
}

func testHyperbola(h *record.Hyperbola) *footwardv1.TestHyperbola {
	return &footwardv1.TestHyperbola{
		UltimateKn: kilonewton(h.Ultimate, h.Known), ErrorKn: kilonewton(h.Error, h.Known), InitialKnMm: kilonewton(h.Initial, h.Known),
		ExtrapolatedKn: kilonewton(h.Bound, h.Known), Reason: h.Reason,
	}
}

func clampReading(in *record.Input, r *record.Result) *footwardv1.ClampReading {
	if !in.Clamp.Asked && len(in.PreloadRecord) == 0 {
		return nil
	}
	asked, f := in.Clamp.Asked, &r.Fade
	return &footwardv1.ClampReading{
		SlackLoadKn: kilonewton(r.Slack, asked), PreloadLostKn: kilonewton(r.Lost, asked), SlackLoadLeftKn: kilonewton(r.SlackLeft, asked),
		PreloadAtLifeKn: kilonewton(f.Left, f.Known), PreloadAtLifeLeastKn: kilonewton(f.Least, f.Known),
		SlackLoadAtLifeKn: kilonewton(f.Slacken, f.Known && asked), Reason: f.Reason,
	}
}
