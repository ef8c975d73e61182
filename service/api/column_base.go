package api

import (
	"context"
	"math"

	"google.golang.org/grpc/status"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckColumnBase implements ColumnBaseServiceServer.
func (c *Check) CheckColumnBase(ctx context.Context, m *footwardv1.CheckColumnBaseRequest) (*footwardv1.CheckColumnBaseResponse, error) {
	r, table, stages, violations := c.columnBase(ctx, m)
	switch {
	case violations != nil:
		return nil, guard.InvalidArgument(violations)
	case r == nil:
		return nil, status.FromContextError(ctx.Err()).Err()
	}
	out := &footwardv1.CheckColumnBaseResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}
	if m.GetTable() {
		out.Table = table()
	}
	out.Settlement = stages()
	return out, nil
}

// columnBase checks a base; the tables are written when they are called for. It
// returns nothing when ctx ends first, for thousands of combinations take time.
func (c *Check) columnBase(ctx context.Context, m *footwardv1.CheckColumnBaseRequest) (
	*footwardv1.CheckResult, func() []*footwardv1.CombinationRow, func() []*footwardv1.StageSettlement, []*footwardv1.FieldViolation,
) {
	r := readerOf(m.GetBasis())
	r.stop = ctx.Err
	in := r.columnInput(m)
	violations := c.refused(kindColumnBase, m, &r, func(f *limit.Faults) { base.ValidateColumn(&in, f) })
	if violations != nil {
		return nil, nil, nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail()}
	out, err := base.CheckColumn(&in)
	if err != nil && ctx.Err() != nil {
		return nil, nil, nil, nil
	}
	result, violations := c.answered(kindColumnBase, a, out, err)
	stages := func() []*footwardv1.StageSettlement {
		if out == nil {
			return nil
		}
		return settled(out.Settled())
	}
	return result, func() []*footwardv1.CombinationRow { return rows(&in, out) }, stages, violations
}

func (r *reader) columnInput(m *footwardv1.CheckColumnBaseRequest) base.ColumnInput {
	b := m.GetBase()
	// The parts are described as in their own checks, one level deeper.
	parts := readerOf(m.GetBasis())
	in := base.ColumnInput{
		Base: parts.plateInput(&footwardv1.CheckPlateBendingRequest{
			Basis: m.GetBasis(), Plate: b.GetPlate(), Footprint: b.GetFootprint(), Support: b.GetSupport(), Rods: b.GetRods(),
		}),
		Modulus: b.GetSharing().GetModulusNMm3(), Preload: b.GetSharing().GetPreloadKn() * newton,
		Friction: b.GetFriction(), Mu: defaultFriction,
	}
	if b != nil && b.FrictionCoefficient != nil {
		in.Mu = b.GetFrictionCoefficient()
		if design := in.Base.Plate.Design.Basis; design.Valid() && !design.US() {
			parts.faults.Add(limit.Conflict, "friction_coefficient",
				"goes with the US bases only; the Eurocode takes basis.eurocode.c_fd")
		}
	}
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
		in.Below = substructure(b.GetSubstructure())
	}
	in.Cases = r.cases(m, &in.Below)
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

// cases reads the combinations, and what a substructure takes of them.
func (r *reader) cases(m *footwardv1.CheckColumnBaseRequest, below *base.Substructure) []base.Case {
	if list := m.GetLoadCases(); list != nil {
		out := make([]base.Case, len(list.GetCases()))
		for i, k := range list.GetCases() {
			out[i] = base.Case{Name: k.GetName(), Stage: int(k.GetStage()), Actions: actions(k.GetForces())}
		}
		readyShares(basis.Basis(m.GetBasis().GetBasis()), out, below)
		return out
	}
	if m.GetActionSet() == nil {
		return make([]base.Case, 1) // the schema names what is missing
	}
	in := r.loadInput(m.GetBasis(), m.GetActionSet(), "action_set.")
	if len(in.Situations) == 0 {
		in.Situations = []load.Situation{load.Strength}
		// What hangs on weight is a matter of equilibrium too.
		if in.Basis == basis.Eurocode && (m.GetBase().GetAnchorage().GetThrough() != nil || m.GetBase().GetSubstructure() != nil) {
			in.Situations = append(in.Situations, load.Equilibrium)
		}
	}
	combined, err := load.Combine(&in)
	if err == nil && m.GetBase().GetSubstructure() != nil {
		err = shares(&in, combined, below)
	}
	if err != nil {
		_, faults := refusal(asked{}, err)
		r.faults = append(r.faults, prefixed("action_set.", faults)...)
		return make([]base.Case, 1)
	}
	out := make([]base.Case, len(combined.Combinations))
	for i, k := range combined.Combinations {
		out[i] = base.Case{Name: k.Name, Stage: k.Stage, Actions: k.Sum}
	}
	return out
}

func rows(in *base.ColumnInput, r *base.ColumnResult) []*footwardv1.CombinationRow {
	if r == nil {
		return nil
	}
	out := make([]*footwardv1.CombinationRow, len(r.Rows))
	for i, row := range r.Rows {
		k := &in.Cases[i]
		m := &footwardv1.CombinationRow{
			Combination: k.Name, Stage: uint32(k.Stage), Forces: atFoot(&k.Actions),
			Verdict: footwardv1.Verdict(row.Verdict), GoverningId: row.Governing, PeakPressureMpa: row.Peak,
		}
		if row.Rated {
			u := row.Utilization
			m.GoverningUtilization = &u
		}
		for _, t := range row.Tensions {
			m.RodTensionsKn = append(m.RodTensionsKn, t/newton)
		}
		out[i] = m
	}
	return out
}
