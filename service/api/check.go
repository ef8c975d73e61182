package api

import (
	"context"

	"google.golang.org/protobuf/proto"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// Check implements CheckService, ColumnBaseService and CompareService. It holds no state between calls and may be
// used by any number of them at once.
type Check struct {
	footwardv1.UnimplementedCheckServiceServer
	footwardv1.UnimplementedColumnBaseServiceServer
	footwardv1.UnimplementedCompareServiceServer
	validator *guard.Validator
	metrics   *telemetry.Metrics // nil: not counted
	// largest is the most bytes of outcomes in one message to the caller.
	largest int
}

// NewCheck returns the service. Responses to CheckMany and StreamChecks stay
// below largest bytes; a caller who asks for more is told to ask for less.
func NewCheck(validator *guard.Validator, metrics *telemetry.Metrics, largest int) *Check {
	return &Check{validator: validator, metrics: metrics, largest: largest}
}

// CheckBearing implements CheckServiceServer.
func (c *Check) CheckBearing(_ context.Context, m *footwardv1.CheckBearingRequest) (*footwardv1.CheckBearingResponse, error) {
	r, violations := c.bearing(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckBearingResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// CheckPlateBending implements CheckServiceServer.
func (c *Check) CheckPlateBending(_ context.Context, m *footwardv1.CheckPlateBendingRequest) (*footwardv1.CheckPlateBendingResponse, error) {
	r, violations := c.plateBending(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckPlateBendingResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// CheckWeld implements CheckServiceServer.
func (c *Check) CheckWeld(_ context.Context, m *footwardv1.CheckWeldRequest) (*footwardv1.CheckWeldResponse, error) {
	r, violations := c.weld(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckWeldResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// CheckAnchorRods implements CheckServiceServer.
func (c *Check) CheckAnchorRods(_ context.Context, m *footwardv1.CheckAnchorRodsRequest) (*footwardv1.CheckAnchorRodsResponse, error) {
	r, violations := c.anchorRods(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckAnchorRodsResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

// CheckAnchorage implements CheckServiceServer.
func (c *Check) CheckAnchorage(_ context.Context, m *footwardv1.CheckAnchorageRequest) (*footwardv1.CheckAnchorageResponse, error) {
	r, violations := c.anchorage(m)
	if violations != nil {
		return nil, guard.InvalidArgument(violations)
	}
	return &footwardv1.CheckAnchorageResponse{Result: r, Provenance: provenanceOf(r.GetBasis())}, nil
}

func (c *Check) bearing(m *footwardv1.CheckBearingRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := reader{}
	in := r.bearingInput(m)
	violations := c.refused(kindBearing, m, &r, func(f *limit.Faults) { bearing.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), nil}
	out, err := bearing.Check(&in)
	return c.answered(kindBearing, a, &out, err)
}

func (c *Check) plateBending(m *footwardv1.CheckPlateBendingRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.plateInput(m)
	violations := c.refused(kindPlateBending, m, &r, func(f *limit.Faults) { base.ValidatePlate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := base.CheckPlate(&in)
	return c.answered(kindPlateBending, a, out, err)
}

func (c *Check) weld(m *footwardv1.CheckWeldRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.weldInput(m)
	violations := c.refused(kindWeld, m, &r, func(f *limit.Faults) { weld.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := weld.Check(&in)
	return c.answered(kindWeld, a, &out, err)
}

func (c *Check) anchorRods(m *footwardv1.CheckAnchorRodsRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.rodInput(m)
	violations := c.refused(kindAnchorRods, m, &r, func(f *limit.Faults) { rod.Validate(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := rod.Check(&in)
	return c.answered(kindAnchorRods, a, &out, err)
}

func (c *Check) anchorage(m *footwardv1.CheckAnchorageRequest) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	r := readerOf(m.GetExposure())
	in := r.anchorageInput(m)
	violations := c.refused(kindAnchorage, m, &r, func(f *limit.Faults) { base.ValidateAnchorage(&in, f) })
	if violations != nil {
		return nil, violations
	}
	a := asked{m.GetLabel(), m.GetBasis(), m.GetDetail(), m.GetExposure()}
	out, err := base.CheckAnchorage(&in)
	return c.answered(kindAnchorage, a, out, err)
}

// refused collects all that is wrong with a request: what its schema forbids,
// names that the catalogue lacks, and what does not fit together, unless it was
// read in part.
func (c *Check) refused(kind footwardv1.CheckKind, m proto.Message, r *reader, validate func(*limit.Faults)) []*footwardv1.FieldViolation {
	violations := append(c.validator.Violations(m), guard.Foreign(m)...)
	if guard.Unread(m) == nil {
		validate(&r.faults)
	}
	if len(violations) == 0 && len(r.faults) == 0 {
		return nil
	}
	violations = merge(violations, r.faults)
	c.metrics.Refused(kind, violations)
	return violations
}

func (c *Check) answered(kind footwardv1.CheckKind, a asked, o outcome, err error) (*footwardv1.CheckResult, []*footwardv1.FieldViolation) {
	if err != nil {
		r, faults := refusal(a, err)
		if r == nil {
			violations := merge(nil, faults)
			c.metrics.Refused(kind, violations)
			return nil, violations
		}
		c.metrics.Check(kind, r)
		return r, nil
	}
	r := answer(a, o)
	c.metrics.Check(kind, r)
	return r, nil
}

// Short names of the kinds of check.
const (
	kindBearing      = footwardv1.CheckKind_CHECK_KIND_BEARING
	kindPlateBending = footwardv1.CheckKind_CHECK_KIND_PLATE_BENDING
	kindWeld         = footwardv1.CheckKind_CHECK_KIND_WELD
	kindAnchorRods   = footwardv1.CheckKind_CHECK_KIND_ANCHOR_RODS
	kindAnchorage    = footwardv1.CheckKind_CHECK_KIND_ANCHORAGE
	kindPin          = footwardv1.CheckKind_CHECK_KIND_PIN
	kindSettlement   = footwardv1.CheckKind_CHECK_KIND_SETTLEMENT
	kindFooting      = footwardv1.CheckKind_CHECK_KIND_FOOTING
	kindRingStack    = footwardv1.CheckKind_CHECK_KIND_RING_STACK
	kindPad          = footwardv1.CheckKind_CHECK_KIND_CONCRETE_PAD
	kindColumnBase   = footwardv1.CheckKind_CHECK_KIND_COLUMN_BASE
)
