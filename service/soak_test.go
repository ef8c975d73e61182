package main

import (
	"context"
	"flag"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

var soak = flag.Duration("soak", 2*time.Second, "how long TestMemoryStaysFlat calls")

// soakers are as many callers as a busy studio has.
const soakers = 64

// TestMemoryStaysFlat has callers ask for the checks of the demo, one after another.
// The memory of the process may grow while it warms up, for half of the time, and by a
// tenth and 32 MiB after that.
func TestMemoryStaysFlat(t *testing.T) {
	if testing.Short() {
		t.Skip("memory tells nothing under the race detector, which is run with -short")
	}
	p := launch(t)
	c := p.dial(t)
	items := demoItems(t)
	ctx, cancel := context.WithTimeout(t.Context(), *soak)
	defer cancel()
	var made, failed atomic.Int64
	var group sync.WaitGroup
	for n := range soakers {
		group.Go(func() {
			for i := n; ctx.Err() == nil; i++ {
				m, err := c.CheckMany(t.Context(), &footwardv1.CheckManyRequest{Items: items[i%len(items) : i%len(items)+1]})
				made.Add(1)
				if err != nil || m.GetOutcomes()[0].GetResult() == nil {
					failed.Add(1)
				}
			}
		})
	}
	time.Sleep(*soak / 2)
	warm := p.resident(t)
	<-ctx.Done()
	end := p.resident(t)
	group.Wait()
	assert.Zero(t, failed.Load())
	assert.Less(t, float64(end), 1.1*float64(warm)+32*(1<<20))
	t.Logf("%d calls in %v, %d failed; %d MiB warm, %d MiB at the end", made.Load(), *soak, failed.Load(), warm>>20, end>>20)
}
