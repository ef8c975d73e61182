package web_test

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	spb "google.golang.org/genproto/googleapis/rpc/status"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/guard"
)

const contractReadme = "../../proto/footward/v1/README.md"

// TestRefusalsOfTheContractsPageAreThoseOfTheService: each request there is answered as
// it says.
func TestRefusalsOfTheContractsPageAreThoseOfTheService(t *testing.T) {
	text, err := os.ReadFile(contractReadme)
	require.NoError(t, err)
	examples := regexp.MustCompile("(?s)<!-- (\\w+): POST (\\S+) -->\n```json\n(.*?)```\n\n```json\n(.*?)```").FindAllStringSubmatch(string(text), -1)
	require.Len(t, examples, 2)
	p := produce(t)
	for _, e := range examples {
		r := p.post(t, e[2], e[3])
		switch e[1] {
		case "refused":
			want := &spb.Status{}
			require.NoError(t, protojson.Unmarshal([]byte(e[4]), want))
			assert.True(t, proto.Equal(want, r.status(t).Proto()), "%s", r.body)
		case "item":
			want, got := &footwardv1.Refusal{}, &footwardv1.CheckManyResponse{}
			require.NoError(t, protojson.Unmarshal([]byte(e[4]), want))
			require.NoError(t, protojson.Unmarshal([]byte(r.body), got))
			assert.True(t, proto.Equal(want, got.GetOutcomes()[0].GetRefusal()), "%s", r.body)
		}
	}
}

// TestEveryReasonOfACallStandsInTheContractsPage, and no other.
func TestEveryReasonOfACallStandsInTheContractsPage(t *testing.T) {
	text, err := os.ReadFile(contractReadme)
	require.NoError(t, err)
	told := map[string]bool{}
	for _, row := range regexp.MustCompile("(?m)^\\| `([A-Z_]+)` \\|").FindAllStringSubmatch(string(text), -1) {
		told[row[1]] = true
	}
	known := map[string]bool{}
	for n, name := range footwardv1.CallReason_name {
		if n != 0 {
			known[name[len("CALL_REASON_"):]] = true
		}
	}
	assert.Equal(t, known, told)
	assert.Contains(t, string(text), `"domain": "`+guard.Domain+`"`)
}

// TestEveryUnitOfTheContractIsListed on its page: the ending of each number's name.
func TestEveryUnitOfTheContractIsListed(t *testing.T) {
	text, err := os.ReadFile(contractReadme)
	require.NoError(t, err)
	listed := map[string]bool{}
	for _, u := range regexp.MustCompile("`(_[a-z0-9_]+)`").FindAllStringSubmatch(string(text), -1) {
		listed[u[1]] = true
	}
	unit := regexp.MustCompile(`(_mm_per_year|_per_year|_per_kg|_(kn|n|kg)_[a-z0-9]+|_(mm|mm2|m2|m3|km|kn|knm|kg|mpa|kpa|deg|years))$`)
	numbers := 0
	for _, f := range numbersOfTheContract() {
		if ending := unit.FindString(f); ending != "" {
			numbers++
			assert.True(t, listed[ending], "%s ends in %s, which is not listed", f, ending)
		}
	}
	assert.Greater(t, numbers, 200)
}

// numbersOfTheContract are the names of all fields that hold a number.
func numbersOfTheContract() (out []string) {
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(f protoreflect.FileDescriptor) bool {
		for i := range f.Messages().Len() {
			fields := f.Messages().Get(i).Fields()
			for j := range fields.Len() {
				if d := fields.Get(j); d.Kind() == protoreflect.DoubleKind {
					out = append(out, string(d.Name()))
				}
			}
		}
		return true
	})
	return out
}
