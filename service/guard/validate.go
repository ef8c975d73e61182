package guard

import (
	"errors"
	"fmt"
	"strconv"
	"strings"

	"buf.build/go/protovalidate"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// requests are the messages that callers send.
func requests() []proto.Message {
	return []proto.Message{
		&footwardv1.CheckBearingRequest{}, &footwardv1.CheckPlateBendingRequest{},
		&footwardv1.CheckWeldRequest{}, &footwardv1.CheckAnchorRodsRequest{}, &footwardv1.CheckAnchorageRequest{}, &footwardv1.CheckPinRequest{},
		&footwardv1.CheckSettlementRequest{}, &footwardv1.CheckFootingRequest{}, &footwardv1.CheckRingStackRequest{},
		&footwardv1.CheckManyRequest{}, &footwardv1.StreamChecksRequest{}, &footwardv1.CombineActionsRequest{},
		&footwardv1.CheckColumnBaseRequest{}, &footwardv1.SizeColumnBaseRequest{}, &footwardv1.CompareFootingsRequest{},
		&footwardv1.AssessLoadTestsRequest{}, &footwardv1.ReadLoadTestRequest{},
	}
}

// Validator holds requests against their schema. It may be used by any number
// of calls at once.
type Validator struct {
	rules protovalidate.Validator
}

// NewValidator prepares the rules of every request.
func NewValidator() (*Validator, error) {
	rules, err := protovalidate.New(protovalidate.WithDisableLazy(), protovalidate.WithMessages(requests()...))
	if err != nil {
		return nil, fmt.Errorf("rules of the contract: %w", err)
	}
	return &Validator{rules: rules}, nil
}

// forbidden returns everything that the schema forbids about a request, one
// violation a field, or nil. What the quick rules pass needs no words, so the
// rules proper are left to find them for the rest.
func (v *Validator) forbidden(m proto.Message) []*footwardv1.FieldViolation {
	if quick(m) {
		return nil
	}
	err := v.rules.Validate(m)
	if err == nil {
		return nil
	}
	var broken *protovalidate.ValidationError
	if !errors.As(err, &broken) {
		// Not to be reached: the rules were compiled beforehand.
		return []*footwardv1.FieldViolation{{Description: "the request cannot be held against its schema"}}
	}
	var out []*footwardv1.FieldViolation
	at := make(map[string]int, len(broken.Violations))
	for _, b := range broken.Violations {
		field := protovalidate.FieldPathString(b.Proto.GetField())
		if i, has := at[field]; has {
			out[i].Description += "; " + demand(b)
			continue
		}
		at[field] = len(out)
		out = append(out, &footwardv1.FieldViolation{Field: field, Description: describe(b), Reason: reason(b)})
	}
	return out
}

// describe says what a field is and what it must be.
func describe(b *protovalidate.Violation) string {
	if given := given(b); given != "" {
		return "is " + given + "; " + demand(b)
	}
	return demand(b)
}

// demand is the rule in words.
func demand(b *protovalidate.Violation) string {
	d, rule := b.FieldDescriptor, b.Proto.GetRuleId()
	switch {
	case rule == "required":
		return "is required"
	case rule == "message.oneof":
		return "needs one of its choices"
	case d == nil: // an element of a list
	case d.Kind() == protoreflect.EnumKind && !d.IsList() && b.FieldValue.IsValid() && b.FieldValue.Enum() == 0:
		return "must be stated: one of " + names(d.Enum())
	case d.Kind() == protoreflect.EnumKind:
		return "must be one of " + names(d.Enum())
	}
	words := strings.TrimPrefix(b.Proto.GetMessage(), "value ")
	words = strings.NewReplacer("less than or equal to", "at most", "greater than or equal to", "at least").Replace(words)
	if u := unit(b); u != "" && !strings.HasSuffix(words, "finite") {
		words += " " + u
	}
	return words
}

// names are the values of an enum that may be sent.
func names(e protoreflect.EnumDescriptor) string {
	var out []string
	for i := range e.Values().Len() {
		if v := e.Values().Get(i); v.Number() != 0 {
			out = append(out, string(v.Name()))
		}
	}
	return strings.Join(out, ", ")
}

// given is the value of a field as it was sent, where that helps.
func given(b *protovalidate.Violation) string {
	if !b.FieldValue.IsValid() || b.Proto.GetRuleId() == "required" {
		return ""
	}
	switch v := b.FieldValue.Interface().(type) {
	case float64:
		return strings.TrimSpace(strconv.FormatFloat(v, 'g', 6, 64) + " " + unit(b))
	case string:
		return fmt.Sprintf("a text of %d characters", len([]rune(v)))
	case uint32:
		return strconv.FormatUint(uint64(v), 10)
	case protoreflect.List:
		return fmt.Sprintf("a list of %d", v.Len())
	}
	return ""
}

// unit is the unit of a number, by the ending of its field's name.
func unit(b *protovalidate.Violation) string {
	path := b.Proto.GetField().GetElements()
	if _, number := b.FieldValue.Interface().(float64); !number || len(path) == 0 {
		return ""
	}
	_, ending, found := cutLast(path[len(path)-1].GetFieldName(), '_')
	if !found {
		return ""
	}
	return map[string]string{
		"mm": "mm", "mm2": "mm2", "kn": "kN", "knm": "kNm", "mpa": "MPa", "kpa": "kPa",
	}[ending]
}

func cutLast(text string, at byte) (before, after string, found bool) {
	i := strings.LastIndexByte(text, at)
	if i < 0 {
		return text, "", false
	}
	return text[:i], text[i+1:], true
}

// reason is the kind of fault that a rule finds.
func reason(b *protovalidate.Violation) footwardv1.FieldReason {
	rule := b.Proto.GetRuleId()
	kind, _, _ := strings.Cut(rule, ".")
	switch {
	case rule == "required" || rule == "message.oneof":
		return footwardv1.FieldReason_FIELD_REASON_MISSING
	case kind == "enum" && b.FieldValue.IsValid() && b.FieldValue.Enum() == 0:
		return footwardv1.FieldReason_FIELD_REASON_MISSING
	case kind == "enum":
		return footwardv1.FieldReason_FIELD_REASON_UNKNOWN_VALUE
	case kind == "string" && b.FieldValue.IsValid() && b.FieldValue.String() == "":
		return footwardv1.FieldReason_FIELD_REASON_MISSING
	case kind == "string" || kind == "repeated":
		return footwardv1.FieldReason_FIELD_REASON_COUNT
	}
	return footwardv1.FieldReason_FIELD_REASON_OUT_OF_RANGE
}
