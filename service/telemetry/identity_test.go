package telemetry

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestRequestIDsThatAreFitForALog(t *testing.T) {
	for id, want := range map[string]bool{
		"7f3a": true, "018f2c9e-4b1d-7c3a-9a55-0f1e2d3c4b5a": true, "Root=1-6789;Self=2": true, "a.b_c:d+e/f=": true,
		strings.Repeat("x", LongestID): true, strings.Repeat("x", LongestID+1): false,
		"": false, "a b": false, "a\nlevel=ERROR": false, `a"`: false, "a\x00": false, "größe": false, "a,b": false, "%0a": false,
	} {
		assert.Equal(t, want, fit(id), "%q", id)
	}
}

func TestTraceParents(t *testing.T) {
	const id, parent = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"
	for text, want := range map[string]Trace{
		"00-" + id + "-" + parent + "-01":                      {ID: id, Sampled: true},
		"00-" + id + "-" + parent + "-00":                      {ID: id},
		"00-" + id + "-" + parent + "-02":                      {ID: id},
		"00-" + id + "-" + parent + "-ff":                      {ID: id, Sampled: true},
		"cc-" + id + "-" + parent + "-01-what-comes-later":     {ID: id, Sampled: true},
		"00-" + id + "-" + parent + "-01-more":                 {},
		"cc-" + id + "-" + parent + "-01more":                  {},
		"ff-" + id + "-" + parent + "-01":                      {},
		"00-" + strings.ToUpper(id) + "-" + parent + "-01":     {},
		"00-" + strings.Repeat("0", 32) + "-" + parent + "-01": {},
		"00-" + id + "-" + strings.Repeat("0", 16) + "-01":     {},
		"00-" + id + "-" + parent:                              {},
		"00-" + id[:31] + "\n-" + parent + "-01":               {},
		"00_" + id + "-" + parent + "-01":                      {},
		"":                                                     {},
	} {
		assert.Equal(t, want, parseTraceParent(text), text)
	}
}

func FuzzTraceParent(f *testing.F) {
	f.Add("00-4bf92f3577b34da6a3ce929d0e0e4736-00f067aa0ba902b7-01")
	f.Fuzz(func(t *testing.T, text string) {
		if got := parseTraceParent(text); got.ID != "" {
			assert.Len(t, got.ID, 32)
			assert.True(t, hex(got.ID) && fit(got.ID))
		} else {
			assert.False(t, got.Sampled)
		}
	})
}
