package client_test

import (
	"context"
	"fmt"
	"log"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// s355 is a part of that thickness, as a weld joins two.
func s355(thickness float64) *footwardv1.JoinedPart {
	return &footwardv1.JoinedPart{ThicknessMm: thickness, Steel: &footwardv1.Steel{Source: &footwardv1.Steel_Grade{Grade: "EN 10025-2 S355"}}}
}

// bracket is the weld of a bracket on its plate: two runs of 150 mm that are
// pulled off the plate by 120 kN.
func bracket(throat float64) *footwardv1.CheckWeldRequest {
	return &footwardv1.CheckWeldRequest{
		Label: "bracket",
		Basis: &footwardv1.DesignBasis{Basis: footwardv1.Basis_BASIS_EUROCODE},
		Weld: &footwardv1.WeldSpec{
			Kind: footwardv1.WeldKind_WELD_KIND_FILLET, Size: &footwardv1.WeldSpec_ThroatMm{ThroatMm: throat},
			Parts: []*footwardv1.JoinedPart{s355(20), s355(12)},
		},
		Layout: &footwardv1.CheckWeldRequest_Run{Run: &footwardv1.WeldRun{LengthMm: 150, Count: 2, NormalKn: 120}},
	}
}

// A service elsewhere is dialled; the rest is the same as in process.
func ExampleDial() {
	c, err := client.Dial("checks.example.org:443")
	if err != nil {
		log.Fatal(err)
	}
	defer func() { _ = c.Close() }()

	answer, err := c.CheckWeld(context.Background(), bracket(4))
	if err != nil {
		log.Print(err)
		return
	}
	fmt.Println(answer.GetResult().GetVerdict())
}

func ExampleClient() {
	c, err := local.Start()
	if err != nil {
		log.Fatal(err)
	}
	defer func() { _ = c.Close() }()

	answer, err := c.CheckWeld(context.Background(), bracket(4))
	if err != nil {
		log.Print(err)
		return
	}
	r := answer.GetResult()
	fmt.Printf("%s %s, utilization %.2f by %s\n",
		r.GetLabel(), r.GetVerdict(), r.GetGoverningUtilization(), r.GetGoverningId())
	// Output: bracket VERDICT_PASS, utilization 0.75 by weld_throat_minimum
}

func ExampleViolations() {
	c, err := local.Start()
	if err != nil {
		log.Fatal(err)
	}
	defer func() { _ = c.Close() }()

	request := bracket(-4)
	request.GetWeld().GetParts()[0].Steel.Source = &footwardv1.Steel_Grade{Grade: "S355 or so"}
	_, err = c.CheckWeld(context.Background(), request)
	for _, v := range client.Violations(err) {
		fmt.Println(v.GetField(), v.GetReason())
	}
	// Output:
	// weld.throat_mm FIELD_REASON_OUT_OF_RANGE
	// weld.parts[0].steel.grade FIELD_REASON_UNKNOWN_VALUE
}

// Many checks go in one call. A bad one is refused in its place.
func ExampleClient_checkMany() {
	c, err := local.Start()
	if err != nil {
		log.Fatal(err)
	}
	defer func() { _ = c.Close() }()

	var request footwardv1.CheckManyRequest
	for _, throat := range []float64{3, 4, 5, -6} {
		w := bracket(throat)
		w.Detail = footwardv1.Detail_DETAIL_GOVERNING
		request.Items = append(request.Items, &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Weld{Weld: w}})
	}
	answer, err := c.CheckMany(context.Background(), &request)
	if err != nil {
		log.Print(err)
		return
	}
	for _, o := range answer.GetOutcomes() {
		if r := o.GetRefusal(); r != nil {
			fmt.Println(o.GetIndex(), "refused:", r.GetViolations()[0].GetField())
			continue
		}
		fmt.Println(o.GetIndex(), o.GetResult().GetVerdict())
	}
	// Output:
	// 0 VERDICT_PASS
	// 1 VERDICT_PASS
	// 2 VERDICT_PASS
	// 3 refused: weld.weld.throat_mm
}
