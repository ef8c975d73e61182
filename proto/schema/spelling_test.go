package schema_test

import (
	"errors"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"google.golang.org/protobuf/encoding/protojson"
)

// TestServiceAloneTakesOtherSpellings: the forms of protobuf's JSON that a schema for
// people and programs leaves out. All else that a rule refuses, both refuse.
func TestServiceAloneTakesOtherSpellings(t *testing.T) {
	accepts := compiled(t, "footing")
	good := `{"footing": {"detail": "DETAIL_GOVERNING", "height_mm": 20}}`
	asWritten := accepts.Validate(value(t, []byte(good)))
	for _, spelling := range []string{
		strings.Replace(good, "height_mm", "heightMm", 1),
		strings.Replace(good, "20", `"20"`, 1),
		strings.Replace(good, `"DETAIL_GOVERNING"`, "1", 1),
		strings.Replace(good, "20", `null`, 1),
	} {
		assert.NoError(t, protojson.Unmarshal([]byte(spelling), newMessage("footward.v1.CheckItem").Interface()), spelling)
		assert.Greater(t, faults(accepts.Validate(value(t, []byte(spelling)))), faults(asWritten), spelling)
	}
}

// faults counts what a schema finds.
func faults(err error) int {
	var f *jsonschema.ValidationError
	if !errors.As(err, &f) {
		return 0
	}
	n := 1
	for _, cause := range f.Causes {
		n += faults(cause)
	}
	return n
}
