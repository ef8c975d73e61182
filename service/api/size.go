package api

import (
	"context"
	"errors"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/size"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// SizeColumnBase implements ColumnBaseServiceServer.
func (c *Check) SizeColumnBase(ctx context.Context, m *footwardv1.SizeColumnBaseRequest) (*footwardv1.SizeColumnBaseResponse, error) {
	violations := append(c.validator.Violations(m), guard.Foreign(m)...)
	r := readerOf(m.GetExposure())
	r.stop = ctx.Err
	in := r.sizeInput(m)
	in.Stop = r.stop
	if guard.Unread(m) == nil {
		size.Validate(&in, &r.faults)
	}
	if violations = merge(violations, r.faults); len(violations) > 0 {
		return nil, guard.InvalidArgument(violations)
	}
	out, err := size.Search(&in)
	var faults limit.Faults
	var scope *limit.Scope
	switch {
	case errors.As(err, &faults):
		return nil, guard.InvalidArgument(merge(nil, faults))
	case errors.As(err, &scope):
		return nil, status.Error(codes.FailedPrecondition, "no choice is covered by the basis: "+scope.Error())
	case err != nil:
		return nil, status.FromContextError(err).Err()
	}
	return sized(m, &in, out), nil
}

func (r *reader) sizeInput(m *footwardv1.SizeColumnBaseRequest) size.Input {
	request := &footwardv1.CheckColumnBaseRequest{Basis: m.GetBasis(), Exposure: m.GetExposure(), Base: m.GetBase()}
	switch m.GetLoads().(type) {
	case *footwardv1.SizeColumnBaseRequest_ActionSet:
		request.Loads = &footwardv1.CheckColumnBaseRequest_ActionSet{ActionSet: m.GetActionSet()}
	case *footwardv1.SizeColumnBaseRequest_LoadCases:
		request.Loads = &footwardv1.CheckColumnBaseRequest_LoadCases{LoadCases: m.GetLoadCases()}
	}
	in := size.Input{Base: r.columnInput(request), Rates: size.Mass, Most: 1,
		Thickness: m.GetOffer().GetThicknessMm(), Throats: m.GetOffer().GetThroatMm()}
	if v := m.GetMaxUtilization(); v > 0 {
		in.Most = v
	}
	v := m.GetRates()
	if rates := (size.Rates{PlateKg: v.GetPlatePerKg(), RodKg: v.GetRodPerKg(), EachRod: v.GetEachRod(), WeldKg: v.GetWeldPerKg(),
		FillKg: v.GetFillPerKg()}); rates != (size.Rates{}) {
		in.Rates = rates
	}
	for _, p := range m.GetOffer().GetPlans() {
		plan := size.Plan{SizeX: p.GetSizeXMm(), SizeY: p.GetSizeYMm()}
		for _, at := range p.GetPositions() {
			plan.At = append(plan.At, geom.Point{X: at.GetXMm(), Y: at.GetYMm()})
		}
		in.Plans = append(in.Plans, plan)
	}
	if stack := &in.Base.Below.Stack; stack.LoadTested && stack.TestShoe == 0 && len(in.Plans) > 0 {
		// The test was of the base's own plate, not of those offered.
		stack.TestShoe = min(in.Base.Base.Plate.Plate.SizeX, in.Base.Base.Plate.Plate.SizeY)
	}
	for _, p := range m.GetOffer().GetBottomPlates() {
		in.Bottoms = append(in.Bottoms, size.BottomPlate{SizeX: p.GetSizeXMm(), SizeY: p.GetSizeYMm(), Thickness: p.GetThicknessMm()})
	}
	for _, k := range m.GetOffer().GetStacks() {
		in.Stacks = append(in.Stacks, size.Stack{Tiers: tiers(k.GetTiers()), RingsCost: k.GetRingsCost(),
			LoadTested: k.GetLoadTested(), LoadTest: k.GetLoadTestKn() * newton})
	}
	for i, o := range m.GetOffer().GetRods() {
		in.Rods = append(in.Rods, r.rodOffer(o, indexed("offer.rods", i)))
	}
	return in
}

func (r *reader) rodOffer(o *footwardv1.RodOffer, field string) size.Rod {
	thread, found := material.ThreadByName(o.GetThread())
	if !found && o.GetThread() != "" {
		r.unknown(field+".thread", o.GetThread(), "ListThreads")
	}
	rod := size.Rod{Thread: thread, OwnKg: o.PerKg != nil, PerKg: o.GetPerKg()}
	if o.GetSteel() != "" && found {
		if rod.Steel, found = material.RodSteelByName(o.GetSteel(), thread.Diameter); !found {
			r.unknown(field+".steel", o.GetSteel(), "ListRodSteels")
		}
	}
	return rod
}

func sized(m *footwardv1.SizeColumnBaseRequest, in *size.Input, r *size.Result) *footwardv1.SizeColumnBaseResponse {
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	s.notices.Reset()
	r.Notices(&s.notices)
	out := &footwardv1.SizeColumnBaseResponse{
		Label: m.GetLabel(), Found: r.Found, Best: choice(in, &r.Best),
		Choices: uint32(r.Choices), Checked: uint32(r.Checked),
		Notices: notices(s.notices.All(), true), Provenance: provenanceOf(m.GetBasis().Basis()),
	}
	if r.Next != nil {
		out.NextBest = choice(in, r.Next)
	}
	for _, stop := range r.Stops {
		one := &footwardv1.SizeStop{
			Dimension: footwardv1.SizeDimension(stop.Dimension), Index: uint32(stop.Place), LimitStateId: stop.State, Reason: stop.Reason,
		}
		if stop.Rated {
			u := stop.Utilization
			one.Utilization = &u
		}
		out.Stops = append(out.Stops, one)
	}
	return out
}

func choice(in *size.Input, c *size.Choice) *footwardv1.SizeChoice {
	b := in.Build(c)
	out := &footwardv1.SizeChoice{
		Plan: uint32(c.Plan), Thickness: uint32(c.Thickness), Rod: uint32(c.Rod), Throat: uint32(c.Throat),
		BottomPlate: uint32(c.Bottom), Stack: uint32(c.Stack),
		SizeXMm: b.Base.Plate.Plate.SizeX, SizeYMm: b.Base.Plate.Plate.SizeY, ThicknessMm: b.Base.Plate.Plate.Thickness,
		MassKg: c.Mass, Cost: c.Cost,
		Verdict: footwardv1.Verdict(c.Verdict), GoverningLimitStateId: c.Governing, Combination: c.Combination, Reason: c.Reason,
	}
	if b.Base.HasRods {
		out.ThreadDesignation, out.RodSteel = b.Base.Rod.Thread.Name, b.Base.Rod.Steel.Class
	}
	if b.HasWeld {
		out.ThroatMm = b.Base.Plate.WeldThroat
	}
	if c.Rated {
		u := c.Utilization
		out.GoverningUtilization = &u
	}
	return out
}
