package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"log/slog"
	"net"
	"slices"
	"strings"
	"time"
)

// settings are everything that a run of the service needs to know.
type settings struct {
	grpc         string
	http         string
	httpHosts    string
	metrics      string
	plaintext    bool
	reflection   bool
	messageMiB   int
	drainDelay   time.Duration
	drainTimeout time.Duration
	logLevel     slog.Level
	logJSON      bool
	bounds       bounds
	access       access
	tracing      tracing
}

const about = `Footward's service: structural checks of column bases over gRPC.

Every setting is a flag, or a variable of the environment: FOOTWARD_ and the
name of the flag in capitals, with _ for -. A flag goes before a variable.

Exit status: 0 stopped as asked and all calls answered; 1 failed, or calls were
cut off; 2 a setting is wrong; 130 or 143 ended at once by a second signal to
stop (SIGINT, SIGTERM). SIGHUP has the files of certificate and tokens looked at
at once; it ends nothing.

`

// prefix begins the name of every variable of the environment.
const prefix = "FOOTWARD_"

func (s *settings) flags() *flag.FlagSet {
	f := flag.NewFlagSet("footward service", flag.ContinueOnError)
	f.SetOutput(io.Discard) // errors are told once, by run
	f.StringVar(&s.grpc, "grpc-address", "127.0.0.1:50061", "serve gRPC at this `HOST:PORT`")
	f.StringVar(&s.http, "http-address", "", "also answer calls as JSON over HTTP at this `HOST:PORT`; empty: not at all")
	f.StringVar(&s.httpHosts, "http-hosts", "", "answer HTTP requests that call the service by one of these `NAMES`, with commas between, beside localhost and this machine's addresses; * for any; "+
		"empty: none other where --http-address is on this machine alone and unencrypted, else any")
	f.StringVar(&s.metrics, "metrics-address", "127.0.0.1:9461", "serve Prometheus metrics over HTTP at this `HOST:PORT`; empty: not at all")
	f.BoolVar(&s.plaintext, "plaintext-to-other-machines", false, "serve other machines without encryption: metrics always, calls unless --tls-cert is given; only for a network that you trust")
	f.BoolVar(&s.reflection, "reflection", true, "tell clients the contract through gRPC server reflection")
	f.IntVar(&s.messageMiB, "message-mib", 16, "largest message taken or sent [`MIB`], 1 to 256")
	f.DurationVar(&s.drainDelay, "drain-delay", 0, "after the signal to stop, say NOT_SERVING for this `TIME` before new calls are refused")
	f.DurationVar(&s.drainTimeout, "drain-timeout", 20*time.Second, "cut off calls that are not answered this `TIME` after the signal to stop")
	f.TextVar(&s.logLevel, "log-level", slog.LevelInfo, "write log lines of this `LEVEL` and above: debug (every call), info, warn, error")
	f.BoolVar(&s.logJSON, "log-json", false, "write log lines as JSON")
	s.bounds.flags(f)
	s.access.flags(f)
	s.tracing.flags(f)
	f.Usage = func() {}
	return f
}

// readSettings reads the flags in args, and what they leave open from the
// environment. A variable that begins with FOOTWARD_ and names no setting is an
// error, for it may be a misspelt one. Asked for help it writes to out and
// returns flag.ErrHelp.
func readSettings(args, environment []string, out io.Writer) (*settings, error) {
	s := &settings{}
	f := s.flags()
	if err := f.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			fmt.Fprint(out, about)
			f.SetOutput(out)
			f.PrintDefaults()
		}
		return nil, err
	}
	if f.NArg() > 0 {
		return nil, fmt.Errorf("%q is no flag", f.Arg(0))
	}
	given := map[string]bool{}
	f.Visit(func(g *flag.Flag) { given[g.Name] = true })
	var wrong []error
	for _, e := range environment {
		name, value, _ := strings.Cut(e, "=")
		key, ours := strings.CutPrefix(name, prefix)
		if !ours {
			continue
		}
		known := f.Lookup(strings.ReplaceAll(strings.ToLower(key), "_", "-"))
		switch {
		case known == nil:
			wrong = append(wrong, fmt.Errorf("%s names no setting", name))
		case given[known.Name]:
		default:
			if err := known.Value.Set(value); err != nil {
				wrong = append(wrong, fmt.Errorf("%s: %q: %w", name, value, err))
			}
		}
	}
	if len(wrong) > 0 {
		return nil, errors.Join(wrong...)
	}
	return s, s.check()
}

func (s *settings) check() error {
	var wrong []error
	for name, address := range map[string]string{"grpc-address": s.grpc, "http-address": s.http, "metrics-address": s.metrics} {
		if name != "grpc-address" && address == "" {
			continue
		}
		host, _, err := net.SplitHostPort(address)
		switch {
		case err != nil:
			wrong = append(wrong, fmt.Errorf("%s: %w", name, err))
		case !loopback(host) && !s.plaintext && !(name != "metrics-address" && s.access.cert != ""):
			wrong = append(wrong, fmt.Errorf("%s: %s can be reached by other machines and nothing is encrypted; "+
				"if that is meant, say --plaintext-to-other-machines", name, address))
		}
	}
	if s.messageMiB < 1 || s.messageMiB > 256 {
		wrong = append(wrong, fmt.Errorf("message-mib: %d is not between 1 and 256", s.messageMiB))
	}
	if s.drainDelay < 0 || s.drainTimeout < s.drainDelay {
		wrong = append(wrong, errors.New("drain-timeout: must not be shorter than drain-delay, nor that negative"))
	}
	wrong = append(wrong, s.bounds.check()...)
	wrong = append(wrong, s.access.check(s.grpc, s.http)...)
	wrong = append(wrong, s.checkHosts()...)
	wrong = append(wrong, s.tracing.check(s.plaintext)...)
	slices.SortFunc(wrong, func(a, b error) int { return strings.Compare(a.Error(), b.Error()) })
	return errors.Join(wrong...)
}

func loopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// log returns the log that the settings ask for.
func (s *settings) log(out io.Writer) *slog.Logger {
	o := &slog.HandlerOptions{Level: s.logLevel}
	if s.logJSON {
		return slog.New(slog.NewJSONHandler(out, o))
	}
	return slog.New(slog.NewTextHandler(out, o))
}
