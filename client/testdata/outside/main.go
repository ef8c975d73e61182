// Outside is a program of another module that asks a Footward service.
package main

import (
	"context"
	"fmt"
	"log"
	"os"

	"footward.example/footward/client"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

func main() {
	c, err := client.Dial(os.Args[1])
	if err != nil {
		log.Fatal(err)
	}
	answer, err := c.CheckBearing(context.Background(), &footwardv1.CheckBearingRequest{
		Label:   "plate of the shoe on the fill",
		Basis:   footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Contact: &footwardv1.SolidRectangle{SizeXMm: 500, SizeYMm: 500},
		Forces:  &footwardv1.ForcesAtFoot{NKn: -120},
		Support: &footwardv1.Support{Medium: &footwardv1.Support_Given{Given: &footwardv1.GivenPressure{
			PressureKpa: 640, Source: "load test of the stack",
			Medium: footwardv1.GivenMedium_GIVEN_MEDIUM_GRANULAR_FILL,
		}}},
	})
	for _, v := range client.Violations(err) {
		fmt.Println(v.GetField(), v.GetDescription())
	}
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(answer.GetResult().GetVerdict(), answer.GetResult().GetGoverningUtilization())
}
