package api_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"footward.example/footward/internal/basis"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/api"
)

// cited finds the names of standards in a clause.
var cited = regexp.MustCompile(`EN 199\d(?:-\d){0,2}|AISC 360|ACI 318|ASCE 7|NDS|Design Guide 1`)

// TestEditionsNameEveryStandardThatIsCited by the limit states of a basis and by its
// factors, so that provenance lists what an answer rests on.
func TestEditionsNameEveryStandardThatIsCited(t *testing.T) {
	all, err := api.NewCatalog().ListLimitStates(t.Context(), &footwardv1.ListLimitStatesRequest{})
	assert.NoError(t, err)
	named := func(b basis.Basis, clause, by string) {
		editions := strings.Join(b.Editions(), "; ")
		for _, standard := range cited.FindAllString(clause, -1) {
			if b.US() && strings.HasPrefix(standard, "EN ") {
				continue // what the US has no clause for says so in the state
			}
			assert.Contains(t, editions, standard, "%s by basis %d", by, b)
		}
	}
	seen := 0
	for _, s := range all.GetLimitStates() {
		for _, k := range s.GetClauses() {
			named(basis.Basis(k.GetBasis()), k.GetClause(), s.GetId())
			seen++
		}
	}
	for b := basis.Eurocode; b.Valid(); b++ {
		for _, d := range b.Defaults() {
			named(b, d.Source, d.Symbol)
		}
	}
	assert.Greater(t, seen, 100)
}
