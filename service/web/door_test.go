package web_test

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
	"footward.example/footward/service/web"
)

// door refuses with what it is told to, and counts the room that is taken.
type door struct {
	admit, arrive error
	mu            sync.Mutex
	taken, held   int
}

func (d *door) Admit(*http.Request) error { return d.admit }

func (d *door) Arrive(context.Context, int64) (func(), error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	d.taken++
	d.held++
	return func() {
		d.mu.Lock()
		defer d.mu.Unlock()
		d.held--
	}, d.arrive
}

func (d *door) counts() (taken, held int) {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.taken, d.held
}

func refusal(t *testing.T, code codes.Code, reason string) error {
	t.Helper()
	s, err := status.New(code, "not now").WithDetails(&errdetails.ErrorInfo{Domain: "footward.v1", Reason: reason})
	require.NoError(t, err)
	return s.Err()
}

// TestCallerIsAskedBeforeTheBody, which never comes.
func TestCallerIsAskedBeforeTheBody(t *testing.T) {
	for code, want := range map[codes.Code]int{
		codes.Unauthenticated: http.StatusUnauthorized, codes.PermissionDenied: http.StatusForbidden,
	} {
		s := serveFake(t, web.Options{Door: &door{admit: refusal(t, code, "A_REASON")}}, func(context.Context) error {
			t.Error("it was called")
			return nil
		})
		for path, kind := range map[string]string{bearingPath: "application/json", streamPath: "application/x-ndjson"} {
			c, err := net.Dial("tcp", strings.TrimPrefix(s.url, "http://"))
			require.NoError(t, err)
			require.NoError(t, c.SetDeadline(time.Now().Add(time.Minute)))
			_, err = io.WriteString(c, "POST "+path+" HTTP/1.1\r\nHost: localhost\r\nContent-Type: "+kind+"\r\nContent-Length: 1000000\r\n\r\n{")
			require.NoError(t, err)
			r, err := http.ReadResponse(bufio.NewReader(c), nil)
			require.NoError(t, err)
			text, err := io.ReadAll(r.Body)
			require.NoError(t, err)
			assert.Equal(t, want, r.StatusCode, path)
			assert.Contains(t, string(text), "A_REASON", "with its details")
			assert.Equal(t, code == codes.Unauthenticated, r.Header.Get("WWW-Authenticate") != "")
			require.NoError(t, c.Close())
		}
	}
}

func TestBodyForWhichThereIsNoRoomIsNotRead(t *testing.T) {
	s := serveFake(t, web.Options{Door: &door{arrive: refusal(t, codes.ResourceExhausted, "OVERLOADED")}}, func(context.Context) error {
		t.Error("it was called")
		return nil
	})
	r := s.post(t, bearingPath, bearing)
	assert.Equal(t, http.StatusTooManyRequests, r.StatusCode)
	assert.NotEmpty(t, r.Header.Get("Retry-After"))
}

// TestBodyGivesItsRoomBack when the call has ended.
func TestBodyGivesItsRoomBack(t *testing.T) {
	d := &door{}
	s := serveFake(t, web.Options{Door: d}, func(context.Context) error { return nil })
	assert.Equal(t, http.StatusOK, s.post(t, bearingPath, bearing).StatusCode)
	assert.Eventually(t, func() bool {
		taken, held := d.counts()
		return taken == 1 && held == 0
	}, time.Minute, time.Millisecond)
}

// TestLongLinesTakeRoomUntilTheyAreAnswered; short ones take none.
func TestLongLinesTakeRoomUntilTheyAreAnswered(t *testing.T) {
	d := &door{}
	s := serveStream(t, web.Options{Door: d}, func(stream grpc.BidiStreamingServer[footwardv1.StreamChecksRequest, footwardv1.StreamChecksResponse]) error {
		for {
			if _, err := stream.Recv(); err != nil {
				return nil
			}
			if err := stream.Send(&footwardv1.StreamChecksResponse{}); err != nil {
				return err
			}
		}
	})
	short := "{}\n"
	long := "{" + strings.Repeat(" ", 2*guard.Window) + "}\n"
	r, err := s.client.Post(s.url+streamPath, "application/x-ndjson", strings.NewReader(short+long+short+long+long))
	require.NoError(t, err)
	text, err := io.ReadAll(r.Body)
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	assert.Equal(t, 5, strings.Count(string(text), "\n"))
	assert.Eventually(t, func() bool {
		taken, held := d.counts()
		return taken == 3 && held == 0
	}, time.Minute, time.Millisecond)

	d.mu.Lock()
	d.arrive = refusal(t, codes.ResourceExhausted, "OVERLOADED")
	d.mu.Unlock()
	r, err = s.client.Post(s.url+streamPath, "application/x-ndjson", strings.NewReader(long))
	require.NoError(t, err)
	require.NoError(t, r.Body.Close())
	assert.Equal(t, http.StatusTooManyRequests, r.StatusCode)
}
