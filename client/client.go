package client

import (
	"context"
	"fmt"

	"google.golang.org/grpc"
	_ "google.golang.org/grpc/health" // lets round_robin pass over a server that shuts down

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// MaxMessageBytes is the largest message that a Client sends or takes, the same
// as the service's own limit.
const MaxMessageBytes = 16 << 20

// Client calls a Footward service. Its methods are those of all its services, and
// any number of goroutines may use it at once. Make one and keep it: every Client
// has connections of its own.
type Client struct {
	footwardv1.CheckServiceClient
	footwardv1.ColumnBaseServiceClient
	footwardv1.CompareServiceClient
	footwardv1.LoadServiceClient
	footwardv1.EvidenceServiceClient
	footwardv1.CatalogServiceClient

	conn    *grpc.ClientConn
	onClose []func() error
}

// Dial returns a Client for a service. It does not wait for a connection: a
// server that cannot be reached shows in the first call.
//
// The target is host:port, or any target that gRPC knows, such as
// dns:///checks.example.org:443 or unix:///run/footward.sock. The connection is
// encrypted, and trusts the system's certificates, unless the target is this
// very machine; see WithTLS and WithPlaintext.
func Dial(target string, options ...Option) (*Client, error) {
	s := settings{timeout: DefaultTimeout, wait: true, askLater: true}
	for _, o := range options {
		o(&s)
	}
	transport, err := s.dialOptions(target)
	if err != nil {
		return nil, err
	}
	conn, err := grpc.NewClient(target, transport...)
	if err != nil {
		return nil, fmt.Errorf("footward client: %w", err)
	}
	return &Client{
		CheckServiceClient:      footwardv1.NewCheckServiceClient(conn),
		ColumnBaseServiceClient: footwardv1.NewColumnBaseServiceClient(conn),
		CompareServiceClient:    footwardv1.NewCompareServiceClient(conn),
		LoadServiceClient:       footwardv1.NewLoadServiceClient(conn),
		EvidenceServiceClient:   footwardv1.NewEvidenceServiceClient(conn),
		CatalogServiceClient:    footwardv1.NewCatalogServiceClient(conn),
		conn:                    conn,
		onClose:                 s.onClose,
	}, nil
}

// Conn returns the connection, for services beside Footward's own, such as
// health and reflection. Close closes it.
func (c *Client) Conn() grpc.ClientConnInterface { return c.conn }

// Close ends the calls under way and gives the connections up.
func (c *Client) Close() error {
	err := c.conn.Close()
	for _, f := range c.onClose {
		if e := f(); err == nil {
			err = e
		}
	}
	return err
}

// deadline gives every unary call that has no deadline the default one.
func (s *settings) deadline(ctx context.Context, method string, request, reply any, conn *grpc.ClientConn, invoke grpc.UnaryInvoker, options ...grpc.CallOption) error {
	if _, has := ctx.Deadline(); !has && s.timeout > 0 {
		limited, cancel := context.WithTimeout(ctx, s.timeout)
		defer cancel()
		ctx = limited
	}
	return invoke(ctx, method, request, reply, conn, options...)
}
