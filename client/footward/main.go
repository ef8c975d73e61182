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
	"syscall"

	"google.golang.org/grpc/grpclog"
)

// Exit statuses of every command.
const (
	allPass  = 0
	notAll   = 1 // a check fails, is out of scope or not applicable
	noAnswer = 2 // bad input, or no answer
)

const usage = `Footward checks the parts of a column base, from files.

  footward check FILE...       check the requests in files and folders
  footward combine FILE        write out the combinations of actions
  footward size FILE           look for the cheapest column base that holds
  footward compare FILE        hold a ring footing against a concrete pad
  footward evidence            print what holds the numbers, figure by figure
  footward catalog [LIST...]   list the names that requests may use
  footward example [KIND]      print a request to start from

Each explains itself with --help.
`

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
}

func run(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	t := terminal{stdin, stdout, stderr}
	name := ""
	if len(args) > 0 {
		name, args = args[0], args[1:]
	}
	switch name {
	case "check":
		return check(ctx, args, t)
	case "combine":
		return combine(ctx, args, t)
	case "size":
		return sizing(ctx, args, t)
	case "compare":
		return comparing(ctx, args, t)
	case "evidence":
		return evidence(ctx, args, t)
	case "catalog":
		return catalog(ctx, args, t)
	case "example":
		return example(args, t)
	case "help", "-h", "-help", "--help":
		fmt.Fprint(stdout, usage)
		return allPass
	case "":
		fmt.Fprint(stderr, usage)
		return noAnswer
	}
	return t.wrong("there is no command %q\n\n%s", name, usage)
}

// wrong says what is wrong and returns the exit status for it.
func (t terminal) wrong(format string, args ...any) int {
	fmt.Fprintf(t.err, "footward: "+format+"\n", args...)
	return noAnswer
}
