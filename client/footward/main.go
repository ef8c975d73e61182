// Command footward checks the parts of a column base from files.
//
//	go run ./client/footward check testdata/demo
package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"slices"
	"syscall"

	"google.golang.org/grpc/grpclog"
)

// Exit statuses of every command.
const (
	allPass  = 0
	notAll   = 1 // a check fails, is out of scope or not applicable
	noAnswer = 2 // bad input, or no answer
)

func main() {
	// What goes wrong is told once and in words; gRPC would log it besides.
	grpclog.SetLoggerV2(grpclog.NewLoggerV2(io.Discard, io.Discard, io.Discard))
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	code := run(ctx, os.Args[1:], os.Stdin, os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// terminal is what a command reads from and writes to.
type terminal struct {
	in       io.Reader
	out, err io.Writer
	// flags, where it is there, gets the options of a command, which then does
	// nothing else.
	flags flagged
}

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	t := terminal{in: stdin, out: stdout, err: stderr}
	if len(args) == 0 {
		fmt.Fprint(stderr, usage())
		return noAnswer
	}
	name, args := args[0], args[1:]
	if slices.Contains([]string{"help", "-h", "-help", "--help"}, name) {
		if len(args) == 0 {
			fmt.Fprint(stdout, usage())
			return allPass
		}
		name, args = args[0], []string{"--help"}
	}
	if name == "--version" {
		name = "version"
	}
	for _, c := range commands() {
		if c.name == name {
			return c.run(ctx, args, t)
		}
	}
	return t.wrong("%s\n\n%s", none("command", name, commandNames()), usage())
}

// wrong says what is wrong and returns the exit status for it.
func (t terminal) wrong(format string, args ...any) int {
	fmt.Fprintf(t.err, "footward: "+format+"\n", args...)
	return noAnswer
}
