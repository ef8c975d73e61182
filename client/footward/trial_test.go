package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestTestsAndReading(t *testing.T) {
	r := footward(t, "", "tests", demoMore+"/tests.yaml")
	assert.Equal(t, 0, r.code, r.err)
	golden(t, "footward-tests.txt", unversioned(r.out))
	var m footwardv1.AssessLoadTestsResponse
	require.NoError(t, protojson.Unmarshal([]byte(footward(t, "", "tests", "--json", demoMore+"/tests.yaml").out), &m))
	assert.NotNil(t, m.GetCharacteristic().ValueKn)

	text, err := os.ReadFile(demoMore + "/tests.yaml")
	require.NoError(t, err)
	unknown := strings.Replace(string(text), "variation:\n  value: 0.15\n  source: \"agreed with the proof engineer for rammed crushed rock\"\n", "", 1)
	require.NotEqual(t, string(text), unknown)
	r = footward(t, unknown, "tests", "-")
	assert.Equal(t, 1, r.code, r.err)
	assert.Contains(t, inOneLine(r.out), "lower bound only: with tests that did not fail by the mode V must be known beforehand")

	decisions := "mode: TEST_MODE_FILL_CRUSHED\nvariation: {value: 0.15, source: agreed}\n"
	table := filepath.Join(t.TempDir(), "tests.csv")
	require.NoError(t, os.WriteFile(table, []byte("load_kn,mode\n412,fill crushed\n448,fill crushed\n400,\n"), 0o600))
	r = footward(t, decisions, "tests", "--table", table, "-")
	assert.Equal(t, 0, r.code, r.err)
	assert.Contains(t, r.out, fmt.Sprintf("%.1f kN", m.GetCharacteristic().GetValueKn()))
	assert.Contains(t, footward(t, string(text), "tests", "--table", table, "-").err, "stand in the request and in")
	require.NoError(t, os.WriteFile(table, []byte("load_kn;mode\n412,5;fill crushed\n"), 0o600))
	r = footward(t, decisions, "tests", "--table", table, "-")
	assert.Equal(t, 2, r.code)
	assert.Contains(t, r.err, "decimal comma: write 412.5")
	require.NoError(t, os.WriteFile(table, []byte("stage,phase,load_kn,settlement_mm\n1,first loading,50,1.2\n2,first loading,100,2.5\n"), 0o600))
	r = footward(t, "plate: {diameter_mm: 600}\n", "reading", "--table", table, "-")
	assert.Equal(t, 0, r.code, r.err)
	assert.Contains(t, r.out, "NOT FAILED: 100.0 kN")

	r = footward(t, "", "reading", demoMore+"/reading.yaml")
	assert.Equal(t, 0, r.code, r.err)
	assert.Contains(t, r.out, "NOT FAILED: 400.0 kN is a lower bound")
	golden(t, "footward-reading.txt", unversioned(r.out))
	assert.Equal(t, 2, footward(t, string(text), "reading", "-").code)
	assert.Contains(t, footward(t, string(text), "reading", "-").err, "this is a request for footward tests")
}
