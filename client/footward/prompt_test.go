package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/proto/schema"
)

func changed(t *testing.T, file string, pairs ...string) string {
	t.Helper()
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	return strings.NewReplacer(pairs...).Replace(string(text))
}

// inOneLine undoes the breaking of lines.
func inOneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

func TestNamesOfTheCatalogueAreFoundAtAPrompt(t *testing.T) {
	for given, want := range map[string]string{
		"S235":   `"S235" is not in the catalogue, nearest is EN 10025-2 S235; footward catalog steels lists the names`,
		"s355":   `nearest is EN 10025-2 S355;`,
		"S355J2": `nearest is EN 10025-2 S355;`,
		"A36":    `nearest is ASTM A36;`,
		"bronze": `"bronze" is not in the catalogue; footward catalog steels lists the names`,
	} {
		r := footward(t, changed(t, demo+"/2-plate.yaml", "EN 10025-2 S355", given), "check", "-")
		assert.Equal(t, 2, r.code)
		assert.Contains(t, inOneLine(r.out), want)
		assert.NotContains(t, r.out, "Service")
	}
	r := footward(t, changed(t, demo+"/4-rods.yaml", "M20", "M21", "ISO 898-1 8.8", "8.8"), "check", "-")
	assert.Contains(t, inOneLine(r.out), `"M21" is not in the catalogue, nearest is M20; footward catalog threads`)
	assert.Contains(t, inOneLine(r.out), `"8.8" is not in the catalogue, nearest is ISO 898-1 8.8; footward catalog rod-steels`)
	r = footward(t, changed(t, demoMore+"/sizes.yaml", "EN 10025-2 S355", "S355"), "size", "-")
	assert.Equal(t, 2, r.code)
	assert.Contains(t, r.err, "nearest is EN 10025-2 S355; footward catalog steels")
	r = footward(t, changed(t, demo+"/2-plate.yaml", "grade: EN 10025-2 S355", "{}"), "check", "-")
	assert.Contains(t, inOneLine(r.out), "needs grade (footward catalog steels lists them) or properties")
}

func TestRequestForAnotherCommand(t *testing.T) {
	r := footward(t, "", "check", "--brief", demo, demoMore)
	assert.Equal(t, 2, r.code)
	for _, command := range []string{"size", "combine", "compare", "tests", "reading"} {
		assert.Contains(t, r.out, "this is a request for footward "+command)
	}
	assert.Contains(t, r.out, "15 checks: 10 pass, 5 refused.")
}

func TestVersion(t *testing.T) {
	r := footward(t, "", "version")
	assert.Equal(t, 0, r.code, r.err)
	assert.Regexp(t, `^Footward \S+, calculation kernel revision \d+\n$`, r.out)
	assert.Equal(t, r, footward(t, "", "--version"))
	_, address := stage(t)
	assert.Equal(t, "Footward 0, calculation kernel revision 0\n", footward(t, "", "version", "--server", address).out)
}

// TestSchemaIsThatOfTheFile: of the file that an example or the demo names in its
// first line, and by either spelling.
func TestSchemaIsThatOfTheFile(t *testing.T) {
	assert.Equal(t, footward(t, "", "schema", "check"), footward(t, "", "schema"))
	assert.Equal(t, footward(t, "", "schema", "plate_bending"), footward(t, "", "schema", "Plate-Bending"))
	line := regexp.MustCompile(`^# yaml-language-server: \$schema=(\S+)\n`)
	for kind, file := range exampleFiles {
		text, err := os.ReadFile(file)
		require.NoError(t, err)
		m := line.FindSubmatch(text)
		require.NotNil(t, m, file)
		inTree, err := os.ReadFile(filepath.Join("example", string(m[1])))
		require.NoError(t, err, kind)

		m = line.FindSubmatch([]byte(footward(t, "", "example", kind).out))
		require.NotNil(t, m, kind)
		told := regexp.MustCompile(`#   footward (schema.*) > ` + regexp.QuoteMeta(string(m[1]))).
			FindStringSubmatch(footward(t, "", "example", kind).out)
		require.NotNil(t, told, kind)
		assert.Equal(t, string(inTree), footward(t, "", strings.Fields(told[1])...).out, kind)

		want, err := schema.File(kind)
		require.NoError(t, err)
		assert.Equal(t, string(want), footward(t, "", "schema", kind).out)
	}
	for _, folder := range []string{demo, demoMore} {
		files, err := filepath.Glob(folder + "/*.yaml")
		require.NoError(t, err)
		for _, file := range files {
			text, err := os.ReadFile(file)
			require.NoError(t, err)
			m := line.FindSubmatch(text)
			require.NotNil(t, m, file)
			assert.FileExists(t, filepath.Join(folder, string(m[1])))
		}
	}
}

func TestJSONIsTheSameTextEachTime(t *testing.T) {
	m := &footwardv1.ForcesAtFoot{NKn: 1, VXKn: 2}
	text, err := asJSON(m, "  ")
	require.NoError(t, err)
	assert.Equal(t, "{\n  \"n_kn\": 1,\n  \"v_x_kn\": 2\n}\n", text)
	text, err = asJSON(m, "")
	require.NoError(t, err)
	assert.Equal(t, "{\"n_kn\":1,\"v_x_kn\":2}\n", text)
	assert.True(t, json.Valid([]byte(text)))
	require.NoError(t, protojson.Unmarshal([]byte(text), &footwardv1.ForcesAtFoot{}))
}
