package guard

import (
	"context"
	"fmt"
	"math"
	"math/rand/v2"
	"sync/atomic"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/types/known/durationpb"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Door is what every call passes before anything of its message is read: who calls,
// and whether there is a place. Behind it a message is measured before it is decoded.
//
// Unary methods pass it where they are registered, since gRPC reads their message
// before it comes to interceptors; streams pass it as an interceptor. Either way it
// has two parts, the one that reads outside of what counts and logs the calls, and the
// one that turns away within.
type Door struct {
	o Doorway
	// Messages that arrive (nil: they have), and what messages take once they are
	// decoded [bytes].
	arriving, decoded *rooms
	calls, health     *atomic.Int64 // that are open
	// text reads a message from JSON; nil: they are not in JSON.
	text func(text []byte, m proto.Message) error
}

// Doorway are the bounds of a Door.
type Doorway struct {
	Callers   Callers
	Deadlines Deadlines
	Tally     Tally
	// MessageBytes is the largest message that is taken.
	MessageBytes int
	// Open is the most calls and streams at once, OpenEach the most of one address; as
	// many again may ask for health, lest a client that is held off takes the service
	// for dead.
	// Each may keep as much of a message in the buffers of its connection as gRPC
	// takes unasked. 0: any number.
	Open, OpenEach int
}

// ArrivingMessages and DecodedMessages are how much memory messages have together, in
// largest messages: those that arrive, and what they become.
const (
	ArrivingMessages = 4
	DecodedMessages  = 8
)

// What is of no account [bytes]: gRPC takes as much of a message unasked.
const (
	smallArriving = Window
	smallDecoded  = 256 << 10
)

// Window is how much of a stream is taken before anybody reads it [bytes].
const Window = 64 << 10

// messagesWait is the most messages that wait for room.
const messagesWait = 128

// HealthBytes is the largest message of a caller who was not let in: the name of a
// service.
const HealthBytes = 4 << 10

// healthTime is within which such a message must have come.
const healthTime = 10 * time.Second

// NewDoor returns a door.
func NewDoor(o Doorway) *Door {
	return &Door{
		o: o, calls: &atomic.Int64{}, health: &atomic.Int64{},
		arriving: newRooms(ArrivingMessages*o.MessageBytes, smallArriving, messagesWait),
		decoded:  newRooms(DecodedMessages*o.MessageBytes, smallDecoded, messagesWait),
	}
}

// Inner returns a door to the same rooms for calls that come as HTTP requests, whose
// messages have arrived, in JSON. text reads one.
func (d *Door) Inner(text func([]byte, proto.Message) error) *Door {
	return &Door{o: d.o, calls: d.calls, health: d.health, decoded: d.decoded, text: text}
}

// Load returns the bytes of messages that arrive, and those that messages take.
func (d *Door) Load() (arriving, decoded int) { return d.arriving.load(), d.decoded.load() }

// Services is a server that services are registered with.
type Services interface {
	grpc.ServiceRegistrar
	GetServiceInfo() map[string]grpc.ServiceInfo
}

// Reads returns a registrar whose unary methods have their message read by the door in
// place of gRPC, for a registrar of Register.
func (d *Door) Reads(to Services) Services { return wrapped{to, d.read} }

// Register returns a registrar of services whose unary methods are behind the door.
func (d *Door) Register(to Services) Services { return wrapped{to, d.unary} }

// wrapped is a registrar that wraps unary methods.
type wrapped struct {
	Services
	wrap func(method string, handle grpc.MethodHandler) grpc.MethodHandler
}

// RegisterService implements grpc.ServiceRegistrar.
func (w wrapped) RegisterService(service *grpc.ServiceDesc, implementation any) {
	own := *service
	own.Methods = make([]grpc.MethodDesc, len(service.Methods))
	for i, m := range service.Methods {
		own.Methods[i] = grpc.MethodDesc{MethodName: m.MethodName, Handler: w.wrap("/"+service.ServiceName+"/"+m.MethodName, m.Handler)}
	}
	w.Services.RegisterService(&own, implementation)
}

func (d *Door) read(method string, handle grpc.MethodHandler) grpc.MethodHandler {
	return func(server any, ctx context.Context, _ func(any) error, before grpc.UnaryServerInterceptor) (any, error) {
		in := d.reader(ctx, method, true)
		defer in.done()
		return handle(server, ctx, in.read, before)
	}
}

func (d *Door) unary(method string, handle grpc.MethodHandler) grpc.MethodHandler {
	return func(server any, ctx context.Context, read func(any) error, before grpc.UnaryServerInterceptor) (any, error) {
		leave, err := d.enter(ctx, method)
		if err != nil {
			return nil, err
		}
		defer leave()
		return handle(server, ctx, read, before)
	}
}

// Stream turns streams away.
func (d *Door) Stream() grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		leave, err := d.enter(stream.Context(), info.FullMethod)
		if err != nil {
			return err
		}
		defer leave()
		return handler(server, stream)
	}
}

// Messages reads the messages of streams in place of gRPC. It must be the outermost
// interceptor, so that the others see them pass.
func (d *Door) Messages() grpc.StreamServerInterceptor {
	return func(server any, stream grpc.ServerStream, info *grpc.StreamServerInfo, handler grpc.StreamHandler) error {
		in := d.reader(stream.Context(), info.FullMethod, !info.IsClientStream)
		defer in.done()
		return handler(server, &measured{stream, in})
	}
}

// measured is a stream whose messages are measured before they are decoded.
type measured struct {
	grpc.ServerStream
	in *reader
}

func (m *measured) RecvMsg(to any) error { return m.in.read(to) }

// SendMsg has the last message let go of its room: it is answered.
func (m *measured) SendMsg(answer any) error {
	m.in.done()
	return m.ServerStream.SendMsg(answer)
}

// enter lets a call in before anything of it is read, or says why not.
func (d *Door) enter(ctx context.Context, method string) (leave func(), err error) {
	if err := d.o.Callers.check(ctx, method, d.o.Tally); err != nil {
		return nil, err
	}
	in, ok := incomingOf(ctx)
	if !ok {
		return nil, errTransport
	}
	if how := in.RecvCompress(); how != "" && how != "identity" {
		return nil, status.Errorf(codes.Unimplemented, "messages are taken without compression only; grpc-encoding is %.40q", how)
	}
	if !open(method) {
		if err := d.o.Deadlines.enough(ctx, d.o.Tally); err != nil {
			return nil, err
		}
	}
	conn := connectionOf(ctx)
	if open(method) {
		return d.inquiry(conn)
	}
	if conn == nil {
		return d.place(d.calls, nil)
	}
	if leave, err = d.place(d.calls, &conn.from.calls); err == nil {
		conn.trust()
	}
	return leave, err
}

// inquiry lets a call for health in, on which a connection stays a stranger's.
func (d *Door) inquiry(conn *limitedConn) (leave func(), err error) {
	if conn == nil {
		return d.place(d.health, nil)
	}
	place, err := d.place(d.health, &conn.from.health)
	if err != nil {
		return nil, err
	}
	conn.begin()
	return func() {
		conn.end()
		place()
	}, nil
}

// place takes one of the places for calls.
func (d *Door) place(all, each *atomic.Int64) (leave func(), err error) {
	if !take(all, each, d.o.Open, d.o.OpenEach) {
		return nil, d.full()
	}
	return func() { giveBack(all, each) }, nil
}

// take takes one of the places that there are in all and for each; each may be nil. A
// bound of 0 is none.
func take(all, each *atomic.Int64, most, mostEach int) bool {
	if n := all.Add(1); most > 0 && n > int64(most) {
		all.Add(-1)
		return false
	}
	if each == nil {
		return true
	}
	if n := each.Add(1); mostEach > 0 && n > int64(mostEach) {
		giveBack(all, each)
		return false
	}
	return true
}

func giveBack(all, each *atomic.Int64) {
	all.Add(-1)
	if each != nil {
		each.Add(-1)
	}
}

// full is the status of a call for which there is no room.
func (d *Door) full() error {
	again := leastRetry + rand.N(mostRetry-leastRetry)
	return turnAway(d.o.Tally, codes.ResourceExhausted, footwardv1.CallReason_CALL_REASON_OVERLOADED,
		fmt.Sprintf("the service has no room for the call; ask again in %v", again.Round(time.Millisecond)),
		&errdetails.RetryInfo{RetryDelay: durationpb.New(again)})
}

// mostOf is the largest message that a method takes.
func (d *Door) mostOf(method string) int {
	if open(method) {
		return min(HealthBytes, d.o.MessageBytes)
	}
	return min(d.o.MessageBytes, math.MaxInt32)
}
