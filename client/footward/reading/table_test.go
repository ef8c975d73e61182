package reading

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

func TestTestsOfATable(t *testing.T) {
	for _, text := range []string{
		"name,date,load_kn,mode\nstack 1,2026-04-14,412,fill crushed\nstack 2,2026-04-15,448.5,TEST_MODE_FILL_CRUSHED\nstack 3,2026-04-17,400,\n",
		"\ufeffname;date;load_kn;mode\r\nstack 1;2026-04-14;412;FILL_CRUSHED\r\nstack 2;2026-04-15;448.5;fill-crushed\r\nstack 3;2026-04-17;400;\r\n",
	} {
		all, err := Tests(strings.NewReader(text))
		require.NoError(t, err)
		require.Len(t, all, 3)
		assert.Equal(t, "stack 1", all[0].GetName())
		assert.Equal(t, "2026-04-15", all[1].GetDate())
		assert.InDelta(t, 448.5, all[1].GetLoadKn(), 1e-12)
		assert.Equal(t, footwardv1.TestMode_TEST_MODE_FILL_CRUSHED, all[1].GetMode())
		assert.Zero(t, all[2].GetMode())
	}
}

func TestStagesOfATable(t *testing.T) {
	all, err := Stages(strings.NewReader(`stage,phase,load_kn,minutes,settlement_1_mm,settlement_2_mm
1,first loading,50,1,0.9,1.0
1,first loading,49,10,1.1,1.2
2,first loading,100,1,2.0,2.2
`))
	require.NoError(t, err)
	require.Len(t, all, 2)
	assert.InDelta(t, 50, all[0].GetLoadKn(), 1e-12)
	assert.Len(t, all[0].GetReadings(), 2)
	assert.InDelta(t, 49, all[0].GetReadings()[1].GetLoadKn(), 1e-12)
	assert.Equal(t, []float64{1.1, 1.2}, all[0].GetReadings()[1].GetSettlementsMm())
	assert.Equal(t, footwardv1.TestPhase_TEST_PHASE_FIRST_LOADING, all[1].GetPhase())
}

func TestTableThatCannotBeReadSaysWhy(t *testing.T) {
	for text, want := range map[string]string{
		"name;load_kn\nstack 1;412,5\n":        "412,5 has a decimal comma: write 412.5",
		"name,load_kn\nstack 1,412,5\n":        "a decimal comma?",
		"name,load_kn\n":                       "no rows",
		"name,lod_kn\nstack 1,2\n":             `"lod_kn" is none of name`,
		"load_kn,load_kn\n1,2\n":               "stands twice",
		"name,mode\nstack 1,burst\n":           `"burst" is none of ring_burst`,
		"name,load_kn\nstack 1,four hundred\n": "is no number",
	} {
		_, err := Tests(strings.NewReader(text))
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), want)
	}
	for text, want := range map[string]string{
		"stage,load_kn\n1,50\n":                   "are needed",
		"stage;load_kn;settlement_mm\n1;50;1,5\n": "decimal comma",
		"stage,gauge\n1,50\n":                     `"gauge" is none of`,
		"stage,settlement_mm\n1,\n":               "is no number",
	} {
		_, err := Stages(strings.NewReader(text))
		require.Error(t, err, text)
		assert.Contains(t, err.Error(), want)
	}
}
