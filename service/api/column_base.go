package api

import (
	"context"
	"math"

	"google.golang.org/grpc/status"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckColumnBase implements ColumnBaseServiceServer.
func (c *Check) CheckColumnBase(ctx context.Context, m *footwardv1.CheckColumnBaseRequest) (*footwardv1.CheckColumnBaseResponse, error) {
	r, violations := c.columnBase(ctx, m)
	switch {
	case violations != nil:
		return nil, guard.InvalidArgument(violations)
	case r == nil:
		return nil, status.FromContextError(ctx.Err()).Err()
	}
	return &footwardv1.CheckColumnBaseResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// columnAnswer is what the tables of an answer about a base are written from.
type columnAnswer struct {
	made made
	in   base.ColumnInput
	out  *base.ColumnResult
}

// columnBase checks a base. It returns nothing when ctx ends first, for thousands of
// combinations take time.
func (c *Check) columnBase(ctx context.Context, m *footwardv1.CheckColumnBaseRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	r.stop = ctx.Err
	var more columnAnswer
	full := m.GetDetail() != footwardv1.Detail_DETAIL_GOVERNING
	if full || m.GetIncludeCombinations() {
		r.made = &more.made
	}
	more.in = r.columnInput(m)
	more.in.Table = m.GetIncludeCombinations()
	violations := c.refused(kindColumnBase, m, &r, func(f *limit.Faults) { base.ValidateColumn(&more.in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := base.CheckColumn(&more.in)
	if err != nil && ctx.Err() != nil {
		return nil, nil
	}
	result, violations := c.answered(kindColumnBase, a, out, err)
	if result == nil {
		return nil, violations
	}
	for _, s := range result.GetLimitStates() {
		s.CombinationIndex = more.made.place(s.GetCombination(), int(s.GetStage()))
		s.StageIndex = stageIndex(int(s.GetStage()))
	}
	if err == nil {
		more.out = out
		if m.GetIncludeCombinations() {
			result.CombinationRows = more.rows()
		}
		if full {
			result.SettlementStages = more.settlement()
		}
	}
	result.Combinations = more.made.written
	return result, nil
}

func (r *reader) columnInput(m *footwardv1.CheckColumnBaseRequest) base.ColumnInput {
	b := m.GetBase()
	// The parts are described as in their own checks, one level deeper.
	parts := reader{lost: r.lost}
	in := base.ColumnInput{
		Base: parts.plateInput(&footwardv1.CheckPlateBendingRequest{
			Basis: m.GetBasis(), Plate: b.GetPlate(), Footprint: b.GetFootprint(), Support: b.GetSupport(), Rods: b.GetRods(),
		}),
		Modulus: b.GetSharing().GetSubgradeModulusNMm3(), Preload: b.GetSharing().GetPreloadKn() * newton,
		Friction: b.GetFriction(),
	}
	in.Mu, in.MuAssumed = frictionOf(m.GetBasis())
	if b.GetWeld() != nil {
		in.HasWeld = true
		in.Weld = parts.weldInput(&footwardv1.CheckWeldRequest{Basis: m.GetBasis(), Weld: b.GetWeld()}).Weld
		in.Base.Plate.WeldThroat, in.Base.Plate.WeldLost = throat(&in.Weld), in.Weld.Corrosion
	}
	if b.GetAnchorage() != nil {
		in.Anchorage = parts.anchorage(b.GetAnchorage())
	}
	r.faults = append(r.faults, prefixed("base.", parts.faults)...)
	if b.GetSubstructure() != nil {
		in.Below = substructure(m.GetBasis(), b.GetSubstructure())
		in.Below.Stack.Exposed, in.Below.Stack.Face = m.GetExposure() != nil, r.lost.PerFace()
	}
	r.cases(m, &in)
	nationalWeights(m.GetBasis(), &in)
	in.Stop = r.stop
	return in
}

// throat returns the throat of a fillet as made [mm]; 0 for other welds, whose
// face is that of the footprint.
func throat(w *weld.Spec) float64 {
	if w.Type != weld.Fillet {
		return 0
	}
	return max(w.Throat, w.Leg/math.Sqrt2)
}

// rows writes what the base does under each combination.
func (a *columnAnswer) rows() []*footwardv1.CombinationRow {
	out := make([]*footwardv1.CombinationRow, len(a.out.Rows))
	for i := range a.out.Rows {
		row, k := &a.out.Rows[i], &a.in.Cases[i]
		m := &footwardv1.CombinationRow{
			Combination: k.Name, Stage: uint32(k.Stage), Forces: atFoot(&k.Actions),
			Verdict: footwardv1.Verdict(row.Verdict), GoverningLimitStateId: row.Governing, PeakPressureMpa: row.Peak,
			Contact: touching(row.Contact),
		}
		if at := a.made.place(k.Name, k.Stage); at != nil {
			m.CombinationIndex = *at
		}
		if row.Rated {
			u := row.Utilization
			m.GoverningUtilization = &u
		}
		for _, t := range row.Tensions {
			m.RodTensionsKn = append(m.RodTensionsKn, t/newton)
		}
		for _, f := range row.Forces {
			m.RodForces = append(m.RodForces, &footwardv1.RodForce{TensionKn: f.Tension / newton, ShearXKn: f.ShearX / newton, ShearYKn: f.ShearY / newton})
		}
		out[i] = m
	}
	return out
}

// settlement writes what the ground settles stage by stage.
func (a *columnAnswer) settlement() []*footwardv1.StageSettlement {
	out, stages := settled(a.out.Settled()), a.out.SettledIn()
	for i, s := range out {
		s.CombinationIndex = a.made.place(s.GetName(), stages[i])
		s.StageIndex = stageIndex(stages[i])
	}
	return out
}

// level is the slope of the pressure, over the greatest pressure and the size of what is
// pressed, that counts as none.
const level = 1e-9

// touching writes where a plate presses.
func touching(c *base.Contact) *footwardv1.ContactState {
	if c == nil {
		return nil
	}
	m := &footwardv1.ContactState{AreaMm2: c.Area, PeakPressureMpa: c.Peak}
	slope := math.Hypot(c.B, c.C)
	most, reach := 0.0, 0.0
	for _, p := range c.Outline {
		m.Outline = append(m.Outline, &footwardv1.PlanPoint{XMm: p.X, YMm: p.Y})
		if sinks := c.A + c.B*p.X + c.C*p.Y; m.Peak == nil || sinks > most*(1+level) {
			most, m.Peak = sinks, m.Outline[len(m.Outline)-1]
		}
		reach = max(reach, math.Hypot(p.X, p.Y))
	}
	if slope*reach > level*most {
		degrees, offset := math.Atan2(c.C, c.B)*180/math.Pi, -c.A/slope
		m.NeutralAxisDeg, m.NeutralAxisOffsetMm = &degrees, &offset
	}
	return m
}
