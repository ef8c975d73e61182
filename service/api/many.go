package api

import (
	"context"
	"errors"
	"io"

	"google.golang.org/grpc"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

// CheckMany implements CheckServiceServer.
func (c *Check) CheckMany(ctx context.Context, m *footwardv1.CheckManyRequest) (*footwardv1.CheckManyResponse, error) {
	if violations := c.validator.Violations(m); violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	outcomes, err := c.many(ctx, m.GetItems(), 0)
	if err != nil {
		return nil, err
	}
	return &footwardv1.CheckManyResponse{
		Outcomes: outcomes, Provenance: provenanceOf(used(outcomes)...),
	}, nil
}

// StreamChecks implements CheckServiceServer. Where its messages are lines that a
// caller wrote, one that holds no checks is refused in its place.
func (c *Check) StreamChecks(stream grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error {
	for next := uint32(0); ; {
		m, err := stream.Recv()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		violations := c.validator.Violations(m)
		var outcomes []*footwardv1.CheckOutcome
		switch {
		case violations == nil:
			outcomes, err = c.many(stream.Context(), m.GetItems(), next)
		case guard.Lines(stream.Context()):
			outcomes = []*footwardv1.CheckOutcome{{Index: next, Outcome: refusedOutcome(violations)}}
		default:
			err = guard.InvalidArgument(violations)
		}
		if err != nil {
			return err
		}
		r := &footwardv1.StreamChecksResponse{Outcomes: outcomes}
		if next == 0 {
			r.Provenance = provenanceOf(allBases...)
		}
		next += uint32(len(outcomes))
		if err := stream.Send(r); err != nil {
			return err
		}
	}
}

// checkIn is how many items are answered between two that are weighed.
const checkIn = 32

// many answers items in order; first is the index of the first.
func (c *Check) many(ctx context.Context, items []*footwardv1.CheckItem, first uint32) ([]*footwardv1.CheckOutcome, error) {
	block := make([]footwardv1.CheckOutcome, len(items))
	out := make([]*footwardv1.CheckOutcome, len(items))
	w := weight{most: c.largest}
	quiet := c.uncounted()
	for i, item := range items {
		o := &block[i]
		o.Index = first + uint32(i)
		quiet.one(ctx, item, o)
		// Asked after each item, since one that was cut short has no outcome.
		if err := ctx.Err(); err != nil {
			return nil, status.FromContextError(err).Err()
		}
		out[i] = o
		if w.add(out[:i+1]) {
			return nil, guard.AnswerTooLarge(i, len(items), c.largest)
		}
	}
	c.count(items, out)
	return out, nil
}

// weight watches that a batch of answers fits into one message. Weighing costs
// as much as a small check, so it takes samples until they may come near.
type weight struct {
	most, estimate int // bytes
	exact          bool
}

// near is the share of the most at which samples are not enough any more.
const near = 4

// add weighs the last outcome, and reports whether all are too heavy.
func (w *weight) add(all []*footwardv1.CheckOutcome) bool {
	last := all[len(all)-1]
	switch {
	case w.exact:
		w.estimate += proto.Size(last)
	case (len(all)-1)%checkIn == 0:
		if w.estimate += checkIn * proto.Size(last); w.estimate > w.most/near {
			w.exact, w.estimate = true, 0
			for _, o := range all {
				w.estimate += proto.Size(o)
			}
		}
	}
	return w.exact && w.estimate > w.most
}

func (c *Check) one(ctx context.Context, item *footwardv1.CheckItem, o *footwardv1.CheckOutcome) {
	if guard.Unread(item) != nil {
		o.Outcome = refusedOutcome(c.beside(item))
		return
	}
	var r *footwardv1.CheckResult
	var violations []*footwardv1.FieldViolation
	field := ""
	switch check := item.GetCheck().(type) {
	case *footwardv1.CheckItem_Bearing:
		field = "bearing."
		r, violations = c.bearing(check.Bearing)
	case *footwardv1.CheckItem_PlateBending:
		field = "plate_bending."
		r, violations = c.plateBending(check.PlateBending)
	case *footwardv1.CheckItem_Weld:
		field = "weld."
		r, violations = c.weld(check.Weld)
	case *footwardv1.CheckItem_AnchorRods:
		field = "anchor_rods."
		r, violations = c.anchorRods(check.AnchorRods)
	case *footwardv1.CheckItem_Anchorage:
		field = "anchorage."
		r, violations = c.anchorage(check.Anchorage)
	case *footwardv1.CheckItem_Pin:
		field = "pin."
		r, violations = c.pin(check.Pin)
	case *footwardv1.CheckItem_Settlement:
		field = "settlement."
		r, violations = c.settlement(check.Settlement)
	case *footwardv1.CheckItem_Footing:
		field = "footing."
		r, violations = c.footing(check.Footing)
	case *footwardv1.CheckItem_RingStack:
		field = "ring_stack."
		r, violations = c.ringStack(check.RingStack)
	case *footwardv1.CheckItem_ColumnBase:
		field = "column_base."
		r, violations = c.columnBase(ctx, check.ColumnBase)
	default:
		violations = []*footwardv1.FieldViolation{{
			Field: "check", Reason: footwardv1.FieldReason_FIELD_REASON_MISSING,
			Description: "needs a check, such as bearing or column_base",
		}}
	}
	if violations != nil {
		for _, v := range violations {
			if field != "" {
				v.Field = field + v.GetField()
			}
		}
		o.Outcome = refusedOutcome(violations)
		return
	}
	o.Outcome = &footwardv1.CheckOutcome_Result{Result: r}
}

// used returns the bases of the outcomes, each once, in the contract's order.
func used(outcomes []*footwardv1.CheckOutcome) []footwardv1.Basis {
	var seen [4]bool
	for _, o := range outcomes {
		if b := int(o.GetResult().GetBasis()); b > 0 && b < len(seen) {
			seen[b] = true
		}
	}
	var out []footwardv1.Basis
	for _, b := range allBases {
		if seen[b] {
			out = append(out, b)
		}
	}
	return out
}
