package client_test

import (
	"context"
	"errors"
	"fmt"
	"io"
	"log"
	"log/slog"
	"net"
	"os"
	"path/filepath"
	"time"

	"google.golang.org/grpc/status"

	"footward.example/footward/client"
	"footward.example/footward/client/local"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
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
		Basis: footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Weld: &footwardv1.WeldSpec{
			Kind: footwardv1.WeldKind_WELD_KIND_FILLET, Size: &footwardv1.WeldSpec_ThroatMm{ThroatMm: throat},
			Parts: []*footwardv1.JoinedPart{s355(20), s355(12)},
		},
		Layout: &footwardv1.CheckWeldRequest_Run{Run: &footwardv1.WeldRun{LengthMm: 150, Count: 2, NormalKn: 120}},
	}
}

// serving starts a service on this machine and returns its address, and a function
// that ends it.
func serving(callers guard.Callers) (address string, stop func()) {
	service, err := server.New(server.Options{Callers: callers})
	if err != nil {
		log.Fatal(err)
	}
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		log.Fatal(err)
	}
	go func() { _ = service.Serve(listener) }()
	return listener.Addr().String(), service.Stop
}

// tokens has a service know one token, from a file that remove removes.
func tokens(one string) (known *guard.Tokens, remove func()) {
	folder, err := os.MkdirTemp("", "tokens")
	if err != nil {
		log.Fatal(err)
	}
	file := filepath.Join(folder, "tokens")
	if err := os.WriteFile(file, []byte(one+"\n"), 0o600); err != nil {
		log.Fatal(err)
	}
	if known, err = guard.ReadTokens(file, time.Hour, slog.New(slog.DiscardHandler)); err != nil {
		log.Fatal(err)
	}
	return known, func() { _ = os.RemoveAll(folder) }
}

// A service elsewhere is dialled, here one that stands in for it; the rest is the
// same as in process.
func ExampleDial() {
	address, stop := serving(guard.Callers{})
	defer stop()

	c, err := client.Dial(address) // or "checks.example.org:443"
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
	// Output: VERDICT_PASS
}

// A token is asked for at every call, so that it may change while the client lives.
func ExampleWithToken() {
	const secret = "0123456789-studio-one"
	known, remove := tokens(secret)
	defer remove()
	address, stop := serving(guard.Callers{Tokens: known})
	defer stop()

	for _, token := range []string{secret, "not the one"} {
		c, err := client.Dial(address, client.WithToken(func() (string, error) { return token, nil }))
		if err != nil {
			log.Print(err)
			return
		}
		answer, err := c.CheckWeld(context.Background(), bracket(4))
		fmt.Println(answer.GetResult().GetVerdict(), status.Code(err))
		_ = c.Close()
	}
	// Output:
	// VERDICT_PASS OK
	// VERDICT_UNSPECIFIED Unauthenticated
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
		r.GetLabel(), r.GetVerdict(), r.GetGoverningUtilization(), r.GetGoverningLimitStateId())
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

// Any number of checks go through a stream. One goroutine sends while another
// receives, for a service reads no further than it is read.
func ExampleClient_streamChecks() {
	c, err := local.Start()
	if err != nil {
		log.Fatal(err)
	}
	defer func() { _ = c.Close() }()

	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	stream, err := c.StreamChecks(ctx)
	if err != nil {
		log.Print(err)
		return
	}
	go func() {
		for _, throat := range []float64{2, 4, -6} {
			item := &footwardv1.CheckItem{Check: &footwardv1.CheckItem_Weld{Weld: bracket(throat)}}
			if stream.Send(&footwardv1.StreamChecksRequest{Items: []*footwardv1.CheckItem{item}}) != nil {
				return // why is received
			}
		}
		_ = stream.CloseSend()
	}()
	for {
		answer, err := stream.Recv()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			log.Print(err)
			return
		}
		for _, o := range answer.GetOutcomes() {
			for _, v := range o.GetRefusal().GetViolations() {
				fmt.Println(o.GetIndex(), "refused:", v.GetField())
			}
			if r := o.GetResult(); r != nil {
				fmt.Println(o.GetIndex(), r.GetVerdict())
			}
		}
	}
	// Output:
	// 0 VERDICT_FAIL
	// 1 VERDICT_PASS
	// 2 refused: weld.weld.throat_mm
}
