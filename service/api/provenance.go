package api

import (
	"strings"
	"sync"

	"footward.example/footward/internal/basis"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/version"
)

// caution goes with every answer.
const caution = "Design aid only. It does not replace the local code and regulations, the manufacturer's documents " +
	"or the judgement of a licensed engineer, who must check input, assumptions and result before anything is built."

var allBases = []footwardv1.Basis{
	footwardv1.Basis_BASIS_EUROCODE, footwardv1.Basis_BASIS_US_LRFD, footwardv1.Basis_BASIS_US_ASD,
}

// provenanceOf says what produced an answer by the given bases.
func provenanceOf(bases ...footwardv1.Basis) *footwardv1.Provenance {
	p := &footwardv1.Provenance{
		ServiceVersion: version.String(), KernelRevision: basis.Revision, Caution: caution,
		Bases: make([]*footwardv1.BasisEdition, len(bases)),
	}
	for i, b := range bases {
		p.Bases[i] = editions()[b]
	}
	return p
}

// editions are the bases with their standards. They are never changed, so all
// answers share them.
var editions = sync.OnceValue(func() map[footwardv1.Basis]*footwardv1.BasisEdition {
	out := map[footwardv1.Basis]*footwardv1.BasisEdition{}
	for _, b := range allBases {
		out[b] = &footwardv1.BasisEdition{Basis: b, Editions: strings.Join(basis.Basis(b).Editions(), "; ")}
	}
	return out
})
