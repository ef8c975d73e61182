package client

import (
	"context"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"
)

// attempts is how often a call is made at most: by the service config as long as
// nothing of an answer has come, and by again after that.
const attempts = 4

// again makes a call anew when the connection broke in the middle of its answer,
// as when a server is killed. The retry policy gives such a call up, since it
// might have had an effect; here none has. A server alone cannot bring this
// about, for its UNAVAILABLE comes without headers: so servers in trouble are
// not asked more often than the throttle allows.
func again(ctx context.Context, method string, request, reply any, conn *grpc.ClientConn, invoke grpc.UnaryInvoker, options ...grpc.CallOption) error {
	var begun metadata.MD
	options = append(options[:len(options):len(options)], grpc.Header(&begun))
	for left := attempts - 1; ; left-- {
		begun = nil
		err := exhausted(invoke(ctx, method, request, reply, conn, options...))
		if status.Code(err) != codes.Unavailable || begun == nil || left == 0 {
			return err
		}
	}
}
