package api

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"

	"footward.example/footward/internal/basis"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestAnnexesAreReadable, those that are shipped: none is, for none was read.
func TestAnnexesAreReadable(t *testing.T) {
	require.NoError(t, errAnnexes)
	assert.Empty(t, annexes)
}

// TestNationalAnnexIsARowOfData: its values count before those recommended and after
// those of the request, and the answer says where each comes from. The annex here is made
// up to show that.
func TestNationalAnnexIsARowOfData(t *testing.T) {
	known, err := readAnnexes("# invented\nXX\tsteel.gamma_m2\t1.3\tNA.1\nXX\tactions.gamma_q\t1.4\tNA.2\nYY\tsteel.gamma_m2\t1.1\tNA.3\n")
	require.NoError(t, err)
	b := footwardv1.On(footwardv1.Basis_BASIS_EUROCODE)
	var r reader
	assert.Equal(t, 1.25, r.designAmong(b, known).EC.GammaM2)
	b.GetEurocode().Annex = "XX"
	d := r.designAmong(b, known)
	assert.Equal(t, 1.3, d.EC.GammaM2)
	assert.Equal(t, 1.4, d.EC.Ground.Q, "the ground takes the factors on actions")
	assert.Equal(t, 1.0, d.EC.GammaM0, "the annex says nothing of it")
	assert.Equal(t, [2]string{"NA.1", "NA.2"}, [2]string{statedBy(b, known)[0].source, statedBy(b, known)[1].source})
	b.GetEurocode().Steel = &footwardv1.SteelFactors{GammaM2: proto.Float64(1.5)}
	assert.Equal(t, 1.5, r.designAmong(b, known).EC.GammaM2)
	assert.Equal(t, givenInRequest, statedBy(b, known)[0].source)
	require.Empty(t, r.faults)

	b.GetEurocode().Annex = "ZZ"
	r.designAmong(b, known)
	require.Len(t, r.faults, 1)
	assert.Equal(t, "basis.eurocode.annex", r.faults[0].Field)
	assert.Contains(t, r.faults[0].Reason, "known are XX, YY")
	for _, wrong := range []string{"XX\tsteel.gamma_m2\t1.3", "XX\tsteel.gamma_m2\tmuch\tNA", "XX\tsteel.gamma_m9\t1\tNA", "XX\tsteel.gamma_m2\t1\tNA\nXX\tsteel.gamma_m2\t1\tNA"} {
		_, err := readAnnexes(wrong)
		assert.Error(t, err, wrong)
	}
}

// TestEditionIsOneThatIsKnown, by its name or by none.
func TestEditionIsOneThatIsKnown(t *testing.T) {
	for _, b := range allBases {
		var r reader
		d := footwardv1.On(b)
		for name, faults := range map[string]int{"": 0, basis.Basis(b).Edition(): 0, "third": 1} {
			r.faults = nil
			switch f := d.GetFamily().(type) {
			case *footwardv1.DesignBasis_Eurocode:
				f.Eurocode.Edition = name
			case *footwardv1.DesignBasis_UsLrfd:
				f.UsLrfd.Edition = name
			case *footwardv1.DesignBasis_UsAsd:
				f.UsAsd.Edition = name
			}
			r.design(d)
			assert.Len(t, r.faults, faults, "%s %q", b, name)
		}
	}
}

// TestEveryParameterHasItsField: each number of a Eurocode basis is read, into a place of
// its own.
func TestEveryParameterHasItsField(t *testing.T) {
	e := &footwardv1.Eurocode{}
	n := 0
	groups := e.ProtoReflect().Descriptor().Fields()
	for i := range groups.Len() {
		g := groups.Get(i)
		if g.Message() == nil {
			continue
		}
		for j := range g.Message().Fields().Len() {
			f := g.Message().Fields().Get(j)
			if f.Kind().String() != "double" {
				continue
			}
			n++
			in := &footwardv1.Eurocode{}
			m := in.ProtoReflect().Mutable(g).Message()
			m.Set(f, f.Default())
			read := 0
			for _, p := range parameters {
				if p.given(in) != nil {
					read++
					assert.Equal(t, string(g.Name())+"."+string(f.Name()), p.name)
				}
			}
			assert.Equal(t, 1, read, "%s.%s", g.Name(), f.Name())
		}
	}
	assert.Len(t, parameters, n)
	var all national
	places := map[*float64]bool{}
	for _, p := range parameters {
		places[p.value(&all)] = true
	}
	assert.Len(t, places, n)
}
