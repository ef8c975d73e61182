// Package local answers checks inside the process: the same service, the same
// answers and refusals, and no network. It links the calculation; a program that
// only asks a service elsewhere does without it.
package local

import (
	"context"
	"net"

	"google.golang.org/grpc"
	"google.golang.org/grpc/test/bufconn"

	"footward.example/footward/client"
	"footward.example/footward/service/server"
)

// pipeBytes is how much a message may run ahead of its reader.
const pipeBytes = 256 << 10

// Start returns a Client of a service of its own, which Close ends.
func Start(options ...client.Option) (*client.Client, error) {
	service, err := server.New(server.Options{MessageBytes: client.MaxMessageBytes})
	if err != nil {
		return nil, err
	}
	listener := bufconn.Listen(pipeBytes)
	ended := make(chan error, 1)
	go func() { ended <- service.Serve(listener) }()
	connect := grpc.WithContextDialer(func(ctx context.Context, _ string) (net.Conn, error) {
		return listener.DialContext(ctx)
	})
	stop := func() error {
		service.Stop()
		return <-ended
	}
	return client.Dial("passthrough:///local", append(options,
		client.WithPlaintext(), client.WithDialOptions(connect), client.WithOnClose(stop))...)
}
