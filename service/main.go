// Command service serves Footward's checks over gRPC and, where asked, as JSON
// over HTTP, with health, reflection and Prometheus metrics.
//
//	go run ./service --help
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"runtime/debug"
	"sync"
	"syscall"
	"time"

	"github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/promhttp"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
	"footward.example/footward/service/version"
)

// Exit statuses.
const (
	stopped      = 0 // as asked
	failed       = 1 // or cut calls off
	wrongSetting = 2
	bySignal     = 128 // and the number of the second signal
)

// collectAt is how far garbage may grow over what is in use, in percent, before
// it is collected, unless the environment says so (GOGC). A check leaves little
// behind, so the heap stays small, and collecting at Go's 100 would cost a tenth
// of the calls.
const collectAt = 400

// memory is from where on it is collected more often [bytes], unless the
// environment says otherwise (GOMEMLIMIT): only batches of thousands come there.
const memory = 208 << 20

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(collectAt)
	}
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(memory)
	}
	ctx, stop := context.WithCancel(context.Background())
	// A reader of the log that is gone ends no service, nor does the end of a terminal.
	signal.Ignore(syscall.SIGPIPE, syscall.SIGHUP)
	signals := make(chan os.Signal, 2)
	signal.Notify(signals, os.Interrupt, syscall.SIGTERM)
	go func() {
		<-signals
		stop()
		// Not left to the system, which may have been told to ignore an interrupt.
		if second, ok := (<-signals).(syscall.Signal); ok {
			os.Exit(bySignal + int(second))
		}
	}()
	os.Exit(run(ctx, os.Args[1:], os.Environ(), os.Stdout, os.Stderr))
}

func run(ctx context.Context, args, environment []string, stdout, stderr io.Writer) int {
	s, err := readSettings(args, environment, stdout)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return stopped
	case err != nil:
		fmt.Fprintf(stderr, "footward: %v\n(--help lists the settings)\n", err)
		return wrongSetting
	}
	log := s.log(stderr)
	if err := serve(ctx, s, log, nil); err != nil {
		log.Error("failed", "error", err)
		return failed
	}
	return stopped
}

// addresses are where the service listens.
type addresses struct {
	grpc, metrics net.Addr
	http          string // empty: nowhere
}

// serve answers calls until ctx ends, then drains. It calls ready, if not nil,
// when it listens.
func serve(ctx context.Context, s *settings, log *slog.Logger, ready func(addresses)) error {
	registry := prometheus.NewRegistry()
	metrics, err := telemetry.New(registry)
	if err != nil {
		return err
	}
	o := server.Options{Log: log, Metrics: metrics, MessageBytes: s.messageMiB << 20, Reflection: s.reflection, Web: s.http != ""}
	s.bounds.put(&o)
	put, look, err := s.access.read(ctx, log)
	switch {
	case err != nil && ctx.Err() != nil:
		log.Info("stopped while files were read")
		return nil
	case err != nil:
		return err
	}
	put(&o)
	stopTracing, err := s.tracing.put(ctx, &o, log)
	if err != nil {
		return err
	}
	defer stopTracing()
	service, err := server.New(o)
	if err != nil {
		return err
	}
	defer service.Stop() // lets go of its workers when it never served
	listener, err := net.Listen("tcp", s.grpc)
	if err != nil {
		return err
	}
	front, err := newFront(s, service, o)
	if err != nil {
		return errors.Join(err, listener.Close())
	}
	defer front.stop()
	at := addresses{grpc: listener.Addr(), http: front.address()}
	watch := &http.Server{
		Handler: watching(registry), ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 10 * time.Second,
		WriteTimeout: 30 * time.Second, IdleTimeout: 2 * time.Minute, MaxHeaderBytes: 16 << 10,
		ErrorLog: slog.NewLogLogger(log.Handler(), slog.LevelDebug),
	}
	ended := make(chan error, 3)
	if s.metrics != "" {
		l, err := net.Listen("tcp", s.metrics)
		if err != nil {
			return errors.Join(err, listener.Close())
		}
		at.metrics = l.Addr()
		go func() { ended <- watch.Serve(guard.LimitConnections(l, guard.Connections{Most: scrapers})) }()
	}
	go func() { ended <- service.Serve(listener) }()
	front.serve(ended)
	defer onHangup(look)()
	log.Info("serving", "version", version.String(), "grpc", s.grpc, "listening", at.grpc.String(), "http", at.http, "http_hosts", s.httpHosts, "metrics", s.metrics,
		"plaintext_to_other_machines", s.plaintext, "reflection", s.reflection, "message_mib", s.messageMiB,
		"drain_delay", s.drainDelay, "drain_timeout", s.drainTimeout, "log_level", s.logLevel, "bounds", s.bounds, "access", s.access,
		"trace_endpoint", s.tracing.endpoint, "trace_ratio", s.tracing.ratio)
	if ready != nil {
		ready(at)
	}

	select {
	case err = <-ended:
		return errors.Join(err, watch.Close())
	case <-ctx.Done():
	}
	log.Info("draining")
	limit, cancel := context.WithTimeout(context.WithoutCancel(ctx), s.drainTimeout)
	defer cancel()
	drained := make(chan error, 1)
	go func() { drained <- front.drain(limit, s.drainDelay) }()
	err = errors.Join(service.Drain(limit, s.drainDelay), <-drained)
	log.Info("drained", "cut_off", err != nil)
	// The metrics go last, so that the end can be scraped too.
	return errors.Join(err, watch.Close())
}

// onHangup has the files looked at when the terminal's signal comes, by which services
// are commonly asked to do so. It returns what ends that.
func onHangup(look func()) (end func()) {
	hangups, done := make(chan os.Signal, 1), make(chan struct{})
	signal.Notify(hangups, syscall.SIGHUP)
	var looking sync.WaitGroup
	looking.Go(func() {
		for {
			select {
			case <-hangups:
				look()
			case <-done:
				return
			}
		}
	})
	return func() {
		signal.Stop(hangups)
		close(done)
		looking.Wait()
	}
}

// scrapers is the most connections for metrics.
const scrapers = 32

// watching serves the metrics.
func watching(registry *prometheus.Registry) http.Handler {
	mux := http.NewServeMux()
	mux.Handle("GET /metrics", promhttp.HandlerFor(registry, promhttp.HandlerOpts{EnableOpenMetrics: true}))
	return mux
}
