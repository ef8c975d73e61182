package guard

import (
	"context"
	"net"
	"net/netip"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// wait asks for room and tells what came of it.
func wait(ctx context.Context, r *room, n int) chan error {
	out := make(chan error, 1)
	go func() {
		_, _, err := r.take(ctx, n)
		out <- err
	}()
	return out
}

func (r *room) wait(t *testing.T, n int) {
	t.Helper()
	require.Eventually(t, func() bool {
		r.mu.Lock()
		defer r.mu.Unlock()
		return r.waiting.Len() == n
	}, time.Minute, time.Millisecond)
}

func TestRoomIsGivenOutInTurn(t *testing.T) {
	r := newRoom(100, 2)
	n, full, err := r.take(t.Context(), 1000)
	assert.False(t, full)
	assert.NoError(t, err)
	assert.Equal(t, 100, n, "nobody has more than there is")

	first := wait(t.Context(), r, 80)
	r.wait(t, 1)
	second := wait(t.Context(), r, 15)
	r.wait(t, 2)
	_, full, err = r.take(t.Context(), 15)
	assert.True(t, full, "too many wait")
	assert.NoError(t, err)
	r.give(30)
	r.wait(t, 2)
	assert.Equal(t, 70, r.load(), "who comes later waits, though there is room enough for him")
	r.give(50)
	assert.NoError(t, <-first)
	r.wait(t, 1)
	r.give(20)
	assert.NoError(t, <-second)
	assert.Equal(t, 95, r.load())
}

// TestSmallerMessagesDoNotWaitForTheLargest, nor the smallest at all.
func TestSmallerMessagesDoNotWaitForTheLargest(t *testing.T) {
	r := newRooms(3200, 10, 5)
	large, _, err := r.take(t.Context(), 4000)
	require.NoError(t, err)
	assert.Equal(t, 3200, large)
	middling, full, err := r.take(t.Context(), 100)
	assert.NoError(t, err)
	assert.False(t, full)
	assert.Equal(t, 100, middling)
	small, _, err := r.take(t.Context(), 10)
	assert.NoError(t, err)
	assert.Zero(t, small, "of no account")
	assert.Equal(t, 3300, r.load())
	for _, n := range []int{large, middling, small} {
		r.give(n)
	}
	assert.Zero(t, r.load())
}

func TestWhoGivesUpMakesRoom(t *testing.T) {
	r := newRoom(100, 10)
	_, _, err := r.take(t.Context(), 60)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	large := wait(ctx, r, 100)
	r.wait(t, 1)
	small := wait(t.Context(), r, 40)
	r.wait(t, 2)
	cancel()
	assert.Equal(t, codes.Canceled, status.Code(<-large))
	assert.NoError(t, <-small)
	r.give(100)
	assert.Zero(t, r.load())
}

func TestRoomIsNeverGivenOutTwice(t *testing.T) {
	r := newRoom(50, 1000)
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() {
			for k := range 200 {
				ctx, cancel := context.WithCancel(t.Context())
				if k%3 == 0 {
					cancel()
				}
				n, _, err := r.take(ctx, 1+(i+k)%50)
				assert.LessOrEqual(t, r.load(), 50)
				if err == nil {
					r.give(n)
				}
				cancel()
			}
		})
	}
	all.Wait()
	assert.Zero(t, r.load())
}

func TestCallersAreToldApartByAddress(t *testing.T) {
	for text, want := range map[string]string{
		"192.0.2.7:5000": "192.0.2.7/32", "[::ffff:192.0.2.7]:1": "192.0.2.7/32",
		"[2001:db8:1:2:3:4:5:6]:443": "2001:db8:1:2::/64", "[fe80::1%eth0]:443": "fe80::/64",
	} {
		at, known := network(&net.TCPAddr{
			IP: netip.MustParseAddrPort(text).Addr().AsSlice(), Port: 1, Zone: netip.MustParseAddrPort(text).Addr().Zone(),
		})
		assert.True(t, known, text)
		assert.Equal(t, want, at.String(), text)
	}
	_, known := network(&net.UnixAddr{Name: "/run/x", Net: "unix"})
	assert.False(t, known)
}
