package main

import (
	"net/http"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestBodiesAreMeasuredBeforeTheyAreDecoded: the same over HTTP, where nothing is read
// of a caller without a token.
func TestBodiesAreMeasuredBeforeTheyAreDecoded(t *testing.T) {
	if testing.Short() {
		t.Skip("takes seconds")
	}
	p := guarded(t, "--http-address", "127.0.0.1:0")
	at := regexp.MustCompile(`msg=serving .* http=(\S+)`).FindStringSubmatch(p.log.String())
	require.Len(t, at, 2)
	list := func(one string, n int) string { return "[" + strings.Repeat(one+",", n-1) + one + "]" }
	settlement := `{"settlement":{"layers":` + list("{}", 100) + `,"neighbours":` + list("{}", 50) + `}}`
	bodies := map[string]int{
		`{"items":` + list("{}", 4<<20) + `}`:       http.StatusBadRequest,
		`{"items":` + list(settlement, 10000) + `}`: http.StatusBadRequest,
	}
	ask := func(body string, headers ...string) int {
		r, err := http.NewRequest(http.MethodPost, "http://"+at[1]+footwardv1.CheckService_CheckMany_FullMethodName, strings.NewReader(body))
		if !assert.NoError(t, err) {
			return 0
		}
		r.Header.Set("Content-Type", "application/json")
		for i := 0; i < len(headers); i += 2 {
			r.Header.Set(headers[i], headers[i+1])
		}
		own := &http.Client{Transport: &http.Transport{DisableKeepAlives: true}}
		got, err := own.Do(r)
		if err != nil {
			return http.StatusUnauthorized // closed while it was still sent
		}
		_ = got.Body.Close()
		return got.StatusCode
	}
	before := p.figures(t)
	var all sync.WaitGroup
	for body := range bodies {
		for range 3 {
			all.Go(func() { assert.Equal(t, http.StatusUnauthorized, ask(body)) })
		}
	}
	all.Wait()
	strangers := p.figures(t)
	for body, want := range bodies {
		for range 3 {
			all.Go(func() { assert.Equal(t, want, ask(body, "Authorization", "Bearer "+token)) })
		}
	}
	all.Wait()
	after := p.figures(t)
	t.Logf("memory %d MiB before, %d MiB at most without a token, %d MiB with one; %v of processors without, %v with",
		before.now>>20, strangers.most>>20, after.most>>20, strangers.used-before.used, after.used-strangers.used)
	assert.Less(t, strangers.most-before.now, int64(16<<20))
	assert.Less(t, after.most, int64(300<<20))
}
