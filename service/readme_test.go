package main

import (
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/server"
	"footward.example/footward/service/telemetry"
)

// operating returns what README.md says about running the service, its blanks and
// line ends as one blank each.
func operating(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	_, part, found := strings.Cut(string(text), "\n## Operate\n")
	require.True(t, found)
	part, _, found = strings.Cut(part, "\n## ")
	require.True(t, found)
	return strings.Join(strings.Fields(part), " ")
}

// long writes a time as README.md does.
func long(d time.Duration) string {
	switch {
	case d == time.Hour:
		return "an hour"
	case d >= time.Minute && d%time.Minute == 0:
		return fmt.Sprintf("%d minutes", d/time.Minute)
	case d >= time.Second && d%time.Second == 0:
		return fmt.Sprintf("%d s", d/time.Second)
	case d%time.Millisecond == 0:
		return fmt.Sprintf("%d ms", d/time.Millisecond)
	}
	return d.String()
}

// said are the sentences of README.md that tell a default or a fixed limit, with the
// numbers of the code in them.
func said(t *testing.T) []string {
	t.Helper()
	flags := (&settings{}).flags()
	value := func(name string) string {
		f := flags.Lookup(name)
		require.NotNil(t, f, name)
		return f.DefValue
	}
	span := func(name string) string {
		d, err := time.ParseDuration(value(name))
		require.NoError(t, err)
		return long(d)
	}
	each := []string{"None", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight"}
	return []string{
		fmt.Sprintf("are looked at every %d seconds when calls come in", guard.LookEvery/time.Second),
		fmt.Sprintf("at least %d characters", guard.LeastToken),
		fmt.Sprintf("A call without a deadline gets %s, none gets more than %s;", span("call-timeout"), span("call-timeout-most")),
		fmt.Sprintf("a stream ends after %s, or %s without a message.", span("stream-timeout"), span("stream-idle-timeout")),
		fmt.Sprintf("small ones (up to %s)", long(guard.SmallTo)), fmt.Sprintf("(over %s)", long(guard.LongFrom)),
		fmt.Sprintf("Of each size %s calls for each processor are worked on at once and %s wait;", strings.ToLower(each[atOnce]), value("calls-waiting")),
		fmt.Sprintf("a batch counts one more for every %d items.", guard.BatchShare),
		fmt.Sprintf("One message has at most %s MiB,", value("message-mib")),
		fmt.Sprintf("one connection %s calls at once, the service %s connections;", value("connection-calls"), value("connections")),
		fmt.Sprintf("headers have at most %d KiB.", server.HeaderBytes>>10),
		fmt.Sprintf("of the %s calls that may be open and of the %s watches of health", value("calls-open"), value("health-watches")),
		fmt.Sprintf("%d of the largest arrive at once, and what they become takes as much as %d of them", guard.ArrivingMessages, guard.DecodedMessages),
		fmt.Sprintf("names of at most %d KiB", guard.HealthBytes>>10),
		fmt.Sprintf("After %s a client is asked to connect anew (`--connection-age`)", span("connection-age")),
		fmt.Sprintf("GOMEMLIMIT (%d MiB unless set)", memory>>20),
		fmt.Sprintf("too little time left to begin (%s)", span("call-timeout-least")),
		fmt.Sprintf("| %d | stopped as asked,", stopped),
		fmt.Sprintf("| %d | could not serve,", failed),
		fmt.Sprintf("| %d | a setting is wrong |", wrongSetting),
		fmt.Sprintf("| %d, %d | ended at once by a second signal", bySignal+int(syscall.SIGINT), bySignal+int(syscall.SIGTERM)),
		fmt.Sprintf("of up to %d letters", telemetry.LongestID),
	}
}

// noLimits are numbers of README.md that no setting has: what was measured, ports and
// names of other things.
var noLimits = []string{
	"set it to 1 behind a proxy", "within 20 s of silence", "64 callers of small checks", "ends it with status 0",
	"encrypt (TLS 1.3)", "from 100 us up", "W3C Trace Context", "https://collector:4317",
}

// TestReadmeTellsTheDefaults holds every number that README.md gives for running the
// service to the defaults of the code: each sentence stands there with the code's own
// number, and no other number does.
func TestReadmeTellsTheDefaults(t *testing.T) {
	rest := operating(t)
	for _, sentence := range append(said(t), noLimits...) {
		if assert.Contains(t, rest, sentence) {
			rest = strings.ReplaceAll(rest, sentence, "")
		}
	}
	for _, at := range regexp.MustCompile(`[0-9]+`).FindAllStringIndex(rest, -1) {
		t.Errorf("no default is known for the number in %q", rest[max(0, at[0]-30):min(len(rest), at[1]+30)])
	}
}

// TestHelpTellsTheDefaults holds what the texts of flags say of numbers to the code.
func TestHelpTellsTheDefaults(t *testing.T) {
	flags := (&settings{}).flags()
	assert.Contains(t, flags.Lookup("calls-at-once").Usage, fmt.Sprintf("default %d for each", atOnce))
	assert.Contains(t, flags.Lookup("calls-waiting").Usage, fmt.Sprintf("for every %d items", guard.BatchShare))
	assert.Contains(t, flags.Lookup("token-file").Usage, "at least "+strconv.Itoa(guard.LeastToken)+" characters")
}
