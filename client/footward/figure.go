package main

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// figure writes a number with four significant digits.
func figure(v float64) string {
	a := math.Abs(v)
	switch {
	case v == 0:
		return "0"
	case !(a <= math.MaxFloat64):
		return "?" // no answer holds one
	case a >= 1e7 || a < 1e-4:
		return strconv.FormatFloat(v, 'e', 3, 64)
	}
	return strconv.FormatFloat(v, 'f', max(0, 3-int(math.Floor(math.Log10(a)))), 64)
}

// utilization writes a ratio so that it never looks like a pass when it is none.
func utilization(u float64) string {
	s := figure(u)
	if u < 10 {
		s = strconv.FormatFloat(u, 'f', 3, 64)
	}
	if u > 1+1e-9 && s == "1.000" {
		return "1.001"
	}
	return s
}

// size writes a required size, rounded up to a tenth so that it will do.
func size(v float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(math.Ceil(v*10-1e-6)/10, 'f', 1, 64), ".0")
}

var sizes = map[footwardv1.SizeKind]string{
	footwardv1.SizeKind_SIZE_KIND_PLATE_THICKNESS: "a plate thickness of",
	footwardv1.SizeKind_SIZE_KIND_WELD_THROAT:     "a throat of",
	footwardv1.SizeKind_SIZE_KIND_WELD_LEG:        "a leg of",
	footwardv1.SizeKind_SIZE_KIND_WELD_LENGTH:     "a weld length of",
	footwardv1.SizeKind_SIZE_KIND_ROD_DIAMETER:    "a rod diameter of",
	footwardv1.SizeKind_SIZE_KIND_CONTACT_SIDE:    "a square contact area with a side of",
	footwardv1.SizeKind_SIZE_KIND_HOLE_DIAMETER:   "a hole diameter of",

	footwardv1.SizeKind_SIZE_KIND_PIN_DIAMETER:         "a pin diameter of",
	footwardv1.SizeKind_SIZE_KIND_COLUMN_THICKNESS:     "a column along the pins of",
	footwardv1.SizeKind_SIZE_KIND_PIN_SPACING_ALONG:    "a spacing along the column of",
	footwardv1.SizeKind_SIZE_KIND_PIN_SPACING_ACROSS:   "a spacing of the rows of",
	footwardv1.SizeKind_SIZE_KIND_PIN_END_DISTANCE:     "an end distance of",
	footwardv1.SizeKind_SIZE_KIND_PIN_EDGE_DISTANCE:    "an edge distance of",
	footwardv1.SizeKind_SIZE_KIND_BRACKET_END_DISTANCE: "an end distance of the plate of",
	footwardv1.SizeKind_SIZE_KIND_BRACKET_WIDTH:        "a width of the plate of",
	footwardv1.SizeKind_SIZE_KIND_PAD_THICKNESS:        "a pad thickness of",
	footwardv1.SizeKind_SIZE_KIND_STEEL_PER_WIDTH:      "bars over the width of",
}

var verdicts = map[footwardv1.Verdict]string{
	footwardv1.Verdict_VERDICT_PASS:           "pass",
	footwardv1.Verdict_VERDICT_FAIL:           "FAIL",
	footwardv1.Verdict_VERDICT_NOT_APPLICABLE: "not applicable",
	footwardv1.Verdict_VERDICT_OUT_OF_SCOPE:   "out of scope",
}

var bases = map[footwardv1.Basis]string{
	footwardv1.Basis_BASIS_EUROCODE: "Eurocode",
	footwardv1.Basis_BASIS_US_LRFD:  "US LRFD",
	footwardv1.Basis_BASIS_US_ASD:   "US ASD",
}

var severities = map[footwardv1.Severity]string{
	footwardv1.Severity_SEVERITY_INFO:       "information",
	footwardv1.Severity_SEVERITY_ASSUMPTION: "assumption",
	footwardv1.Severity_SEVERITY_CAUTION:    "caution",
}

func counted(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}

// tidy writes a value of a derivation with six significant digits, as they are
// put into the steps that follow.
func tidy(v float64) string {
	a := math.Abs(v)
	switch {
	case v == 0:
		return "0"
	case !(a <= math.MaxFloat64):
		return "?"
	case a >= 1e9 || a < 1e-4:
		return strconv.FormatFloat(v, 'e', 5, 64)
	}
	s := strconv.FormatFloat(v, 'f', max(0, 5-int(math.Floor(math.Log10(a)))), 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
