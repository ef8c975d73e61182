package guard

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"sync/atomic"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/mem"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/encoding/protowire"
	"google.golang.org/protobuf/proto"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// incoming is gRPC's own stream, from which messages are read here: by the time that
// gRPC tells how large a message is it has read all of it, and decoded it.
type incoming interface {
	RecvCompress() string
	ReadMessageHeader(header []byte) error
	Read(n int) (mem.BufferSlice, error)
}

func incomingOf(ctx context.Context) (incoming, bool) {
	in, ok := grpc.ServerTransportStreamFromContext(ctx).(incoming)
	return in, ok
}

// errTransport is met by no gRPC that this was built with; nobody is let in unread.
var errTransport = status.Error(codes.Internal, "messages cannot be read from this transport")

// reader reads the messages of one call.
type reader struct {
	door   *Door
	ctx    context.Context
	method string
	single bool // one message, and the end
	// taken is how much of the room for decoded messages is held; a stream may be
	// read and answered from two goroutines.
	taken atomic.Int64
}

func (d *Door) reader(ctx context.Context, method string, single bool) *reader {
	return &reader{door: d, ctx: ctx, method: method, single: single}
}

// done gives back the room of the last message.
func (r *reader) done() {
	if n := r.taken.Swap(0); n > 0 {
		r.door.decoded.give(int(n))
	}
}

// read reads the next message.
func (r *reader) read(to any) error {
	r.done()
	in, ok := incomingOf(r.ctx)
	if !ok {
		return errTransport
	}
	if end, streams := r.ctx.Value(streamKey{}).(func(error)); streams && open(r.method) {
		defer time.AfterFunc(healthTime, func() { end(errIdle) }).Stop()
	}
	size, err := r.size(in)
	if err != nil {
		return err
	}
	wire, giveBack, err := r.message(in, size)
	if err != nil {
		return err
	}
	defer giveBack()
	defer wire.Free()
	return r.decode(wire.ReadOnlyData(), to)
}

// size reads how large the next message is.
func (r *reader) size(in incoming) (int, error) {
	var header [5]byte
	if err := in.ReadMessageHeader(header[:]); err != nil {
		if r.single && errors.Is(err, io.EOF) {
			return 0, status.Error(codes.Internal, "cardinality violation: received no request message from non-client-streaming RPC")
		}
		return 0, broken(err)
	}
	size := binary.BigEndian.Uint32(header[1:])
	switch most := r.door.mostOf(r.method); {
	case header[0] != 0:
		return 0, status.Error(codes.Internal, "the message says that it is compressed, and its call that none is")
	case int64(size) > int64(most):
		return 0, status.Errorf(codes.ResourceExhausted, "the message is larger than the most that is taken (%d bytes, at most %d)", size, most)
	}
	return int(size), nil
}

// message reads a message to its end, once there is room for it.
func (r *reader) message(in incoming, size int) (wire mem.Buffer, giveBack func(), err error) {
	giveBack = func() {}
	if room := r.door.arriving; room != nil {
		taken, full, err := room.take(r.ctx, size)
		switch {
		case full:
			return nil, nil, r.door.full()
		case err != nil:
			return nil, nil, err
		}
		giveBack = func() { room.give(taken) }
	}
	pieces, err := in.Read(size)
	if err == nil && r.single {
		err = r.ended(in)
	}
	if err != nil {
		pieces.Free()
		giveBack()
		return nil, nil, broken(err)
	}
	wire = pieces.MaterializeToBuffer(mem.DefaultBufferPool())
	pieces.Free()
	return wire, giveBack, nil
}

// ended waits for the end of a call that has one message.
func (r *reader) ended(in incoming) error {
	var header [5]byte
	switch err := in.ReadMessageHeader(header[:]); {
	case errors.Is(err, io.EOF):
		return nil
	case err != nil:
		return err
	}
	return status.Error(codes.Internal, "cardinality violation: received multiple request messages for non-client-streaming RPC")
}

// broken is the status of a call whose message did not come.
func broken(err error) error {
	if _, is := status.FromError(err); is || errors.Is(err, io.EOF) {
		return err
	}
	switch {
	case errors.Is(err, io.ErrUnexpectedEOF):
		return status.Error(codes.Internal, err.Error())
	case errors.Is(err, context.Canceled), errors.Is(err, context.DeadlineExceeded):
		return status.FromContextError(err).Err()
	}
	return status.Error(codes.Unavailable, "the connection broke off")
}

// Messages up to few bytes are decoded unmeasured: they cannot become more than what
// is of no account. Larger ones are decoded in pieces, between which a call whose time
// is over ends.
const (
	few   = 2 << 10
	piece = 64 << 10
)

// decode decodes a message once there is room for what it becomes.
func (r *reader) decode(wire []byte, to any) error {
	m, ok := to.(proto.Message)
	if !ok {
		return status.Errorf(codes.Internal, "%T is no message", to)
	}
	if len(wire) > few {
		taken, err := r.door.measure(r.ctx, wire, m)
		if err != nil {
			return err
		}
		r.taken.Store(int64(taken))
	}
	switch {
	case r.door.text != nil:
		return unreadable(r.door.text(wire, m))
	case len(wire) <= piece:
		return unreadable(proto.Unmarshal(wire, m))
	}
	return r.inPieces(wire, m)
}

// inPieces decodes a large message as long as its call goes on.
func (r *reader) inPieces(wire []byte, m proto.Message) error {
	proto.Reset(m)
	for merge := (proto.UnmarshalOptions{Merge: true}); len(wire) > 0; {
		if err := r.ctx.Err(); err != nil {
			return status.FromContextError(err).Err()
		}
		n := cut(wire)
		if err := merge.Unmarshal(wire[:n], m); err != nil {
			return unreadable(err)
		}
		wire = wire[n:]
	}
	return nil
}

func unreadable(err error) error {
	if err == nil {
		return nil
	}
	return status.Errorf(codes.Internal, "grpc: failed to unmarshal the received message: %v", err)
}

// cut is where a message can be divided: a message is what its fields are, one after
// another.
func cut(wire []byte) int {
	n := 0
	for n < piece && n < len(wire) {
		_, _, size := protowire.ConsumeField(wire[n:])
		if size < 0 {
			return len(wire) // for decoding to find the fault
		}
		n += size
	}
	return n
}

// measure refuses a batch of too many items, and takes room for what a message becomes.
func (d *Door) measure(ctx context.Context, wire []byte, m proto.Message) (taken int, err error) {
	s := shapeOf(m.ProtoReflect().Descriptor())
	meter := &meter{ctx: ctx, most: d.decoded.most()}
	items := uint64(0)
	if d.text != nil {
		items = meter.body(s, wire)
	} else if s.batch != nil {
		items = count(wire, s.batch.number)
	}
	switch {
	case s.batch == nil || items <= s.batch.most:
	case Lines(ctx):
		return 0, nil // it is told in its place by who reads the line, and makes nothing of the list
	default:
		return 0, s.batch.tooMany(items)
	}
	if d.text == nil {
		meter.wire(s, wire, 0)
	}
	return d.roomFor(meter)
}

// roomFor takes room for what a meter has found.
func (d *Door) roomFor(m *meter) (taken int, err error) {
	switch {
	case m.late != nil:
		return 0, status.FromContextError(m.late).Err()
	case m.spent > m.most:
		// To ask again helps nobody.
		return 0, status.Errorf(codes.OutOfRange,
			"the request would take more than %d MiB of memory: divide it into several calls", m.most>>20)
	}
	taken, full, err := d.decoded.take(m.ctx, m.spent)
	if full {
		return 0, d.full()
	}
	return taken, err
}

// tooMany is what the rules of the contract say of a batch of n items.
func (f *shapeField) tooMany(n uint64) error {
	return InvalidArgument([]*footwardv1.FieldViolation{{
		Field: f.name, Reason: footwardv1.FieldReason_FIELD_REASON_COUNT,
		Description: fmt.Sprintf("is a list of %d; must contain no more than %d item(s)", n, f.most),
	}})
}
