package spelling_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/spelling"
)

func TestNearestNameIsTheOneMeant(t *testing.T) {
	plate := spelling.Fields((&footwardv1.Plate{}).ProtoReflect().Descriptor())
	item := spelling.Fields((&footwardv1.CheckItem{}).ProtoReflect().Descriptor())
	basis := spelling.Values(footwardv1.Basis(0).Descriptor())
	for _, c := range []struct {
		name  string
		known []string
		want  string
	}{
		{"thicknes_mm", plate, "thickness_mm"},
		{"thicknessMm", plate, "thickness_mm"},
		{"Thickness-mm", plate, "thickness_mm"},
		{"thickness", plate, "thickness_mm"},
		{"thcikness_mm", plate, "thickness_mm"},
		{"colour", plate, ""},
		{"plate", item, "plate_bending"},
		{"plate-bending", item, "plate_bending"},
		{"BASIS_EUROCOD", basis, "BASIS_EUROCODE"},
		{"eurocode", basis, "BASIS_EUROCODE"},
		{"US_LFRD", basis, "BASIS_US_LRFD"},
		{"GOST", basis, ""},
		{"", plate, ""},
		{strings.Repeat("thickness", 1e5), plate, ""},
		{"x", nil, ""},
	} {
		assert.Equal(t, c.want, spelling.Nearest(c.name, c.known), c.name)
	}
}

func TestUnknownNameIsToldWithTheKnownOnes(t *testing.T) {
	assert.Equal(t, `unknown field "labl", nearest is label; known are label, basis`,
		spelling.Unknown("field", "labl", []string{"label", "basis"}, true))
	assert.Equal(t, `unknown field "labl"; known are label, basis`,
		spelling.Unknown("field", "labl", []string{"label", "basis"}, false))
	assert.Equal(t, `unknown field "colour"; known are label, basis`,
		spelling.Unknown("field", "colour", []string{"label", "basis"}, true))
}

func TestValuesLeaveOutWhatIsRefused(t *testing.T) {
	assert.NotContains(t, spelling.Values(footwardv1.Basis(0).Descriptor()), "BASIS_UNSPECIFIED")
}

func TestCutShowsWholeCharacters(t *testing.T) {
	assert.Equal(t, "Stütze", spelling.Cut("Stütze", 6))
	assert.Equal(t, "Stü...", spelling.Cut("Stütze", 3))
	assert.Equal(t, "\ufffd...", spelling.Cut("\xffab", 1))
}
