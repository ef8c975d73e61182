package client

import (
	"crypto/tls"
	"errors"
	"net"
	"strings"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/keepalive"
)

// DefaultTimeout ends a unary call whose context has no deadline.
const DefaultTimeout = 30 * time.Second

// Option changes how a Client connects or calls.
type Option func(*settings)

type settings struct {
	tls       *tls.Config
	plaintext bool
	token     func() (string, error)
	timeout   time.Duration
	wait      bool
	askLater  bool
	onClose   []func() error
	extra     []grpc.DialOption
}

// WithTLS sets how the connection is encrypted: own authorities, and a
// certificate of the caller's where the server asks for one.
func WithTLS(c *tls.Config) Option { return func(s *settings) { s.tls = c } }

// WithPlaintext leaves the connection unencrypted although the target is
// another machine. Only for a network that you trust.
func WithPlaintext() Option { return func(s *settings) { s.plaintext = true } }

// WithToken sends a bearer token with every call. It is asked for at each, so it
// may change. A token goes to another machine over an encrypted connection only.
func WithToken(token func() (string, error)) Option {
	return func(s *settings) { s.token = token }
}

// WithTimeout replaces DefaultTimeout; zero or less means no default deadline.
func WithTimeout(d time.Duration) Option { return func(s *settings) { s.timeout = d } }

// WithoutWaiting lets a call fail soon, after the retries, while no server can be
// reached. By default it waits for one until its deadline, so that a server may
// be restarted unnoticed.
func WithoutWaiting() Option { return func(s *settings) { s.wait = false } }

// WithoutAskingLater lets a call fail at once that a service with too much to do
// has turned away. By default it waits for as long as the service says, up to
// twice that by chance and at most half of the time to its deadline, and asks once
// more. A caller who does so itself, by [RetryDelay], leaves it out.
func WithoutAskingLater() Option { return func(s *settings) { s.askLater = false } }

// WithOnClose has Close run f after the connection is closed.
func WithOnClose(f func() error) Option {
	return func(s *settings) { s.onClose = append(s.onClose, f) }
}

// WithDialOptions adds gRPC options after the Client's own, such as a stats
// handler, or a dialler of the caller's.
func WithDialOptions(o ...grpc.DialOption) Option {
	return func(s *settings) { s.extra = append(s.extra, o...) }
}

// Ping rarely, and only while a call is under way: less often than the five
// minutes by which a gRPC server counts pings as abuse unless told otherwise.
const (
	pingEvery  = 6 * time.Minute
	pingAnswer = 20 * time.Second
)

func (s *settings) dialOptions(target string) ([]grpc.DialOption, error) {
	plain := s.tls == nil && (s.plaintext || loopback(target))
	if s.tls != nil && s.plaintext {
		return nil, errors.New("footward client: WithTLS and WithPlaintext exclude each other")
	}
	transport := insecure.NewCredentials()
	if !plain {
		transport = credentials.NewTLS(s.tls)
	}
	options := []grpc.DialOption{
		grpc.WithTransportCredentials(transport),
		grpc.WithDefaultServiceConfig(serviceConfig(s.wait)),
		grpc.WithChainUnaryInterceptor(s.deadline),
		grpc.WithKeepaliveParams(keepalive.ClientParameters{Time: pingEvery, Timeout: pingAnswer}),
		grpc.WithDefaultCallOptions(
			grpc.MaxCallRecvMsgSize(MaxMessageBytes),
			grpc.MaxCallSendMsgSize(MaxMessageBytes),
			// A request above this size would not be retried.
			grpc.MaxRetryRPCBufferSize(MaxMessageBytes),
		),
	}
	if s.askLater {
		l := &later{}
		options = append(options, grpc.WithChainUnaryInterceptor(l.unary), grpc.WithChainStreamInterceptor(l.stream))
	}
	options = append(options, grpc.WithChainUnaryInterceptor(again), grpc.WithChainStreamInterceptor(exhaustedStream))
	if s.token != nil {
		options = append(options, grpc.WithPerRPCCredentials(bearer{s.token, !loopback(target)}))
	}
	return append(options, s.extra...), nil
}

// loopback reports whether a target is this very machine, so that nobody else
// can listen in.
func loopback(target string) bool {
	scheme, rest, found := strings.Cut(target, ":")
	if found && (scheme == "unix" || scheme == "unix-abstract") {
		return true
	}
	address := target
	if found && strings.HasPrefix(rest, "//") {
		// scheme://authority/address
		if _, address, found = strings.Cut(rest[2:], "/"); !found {
			return false
		}
	} else if scheme == "dns" || scheme == "passthrough" {
		address = rest
	}
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		host = strings.Trim(address, "[]")
	}
	if strings.EqualFold(host, "localhost") {
		return true
	}
	ip := net.ParseIP(host)
	return ip != nil && ip.IsLoopback()
}
