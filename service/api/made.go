package api

import (
	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/load"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// made are the combinations of a request as an answer refers to them: those that it
// names are written, each once. The zero value knows none.
type made struct {
	known   map[caseKey]*footwardv1.Combination
	placed  map[caseKey]uint32
	written []*footwardv1.Combination
}

// caseKey tells combinations apart: one name may stand in several stages.
type caseKey struct {
	name  string
	stage int
}

// add takes note of combinations; nil takes none.
func (m *made) add(b basis.Basis, all []load.Combination) {
	if m == nil {
		return
	}
	for i := range all {
		m.keep(combination(b, &all[i]))
	}
}

// ready takes note of a load case.
func (m *made) ready(k *footwardv1.LoadCase) {
	if m == nil {
		return
	}
	m.keep(&footwardv1.Combination{
		Name: k.GetName(), Kind: k.GetKind(), Stage: k.GetStage(), Forces: k.GetForces(), LoadDuration: k.GetLoadDuration(),
	})
}

func (m *made) keep(c *footwardv1.Combination) {
	if m.known == nil {
		m.known, m.placed = map[caseKey]*footwardv1.Combination{}, map[caseKey]uint32{}
	}
	key := caseKey{c.GetName(), int(c.GetStage())}
	if _, twice := m.known[key]; !twice {
		m.known[key] = c
	}
}

// place writes the combination of a name and a stage, counted from 1, and returns where
// it stands in the answer; nil where there is no such one.
func (m *made) place(name string, stage int) *uint32 {
	key := caseKey{base.OffPad(name), stage}
	c, known := m.known[key]
	if !known {
		return nil
	}
	at, written := m.placed[key]
	if !written {
		at = uint32(len(m.written))
		m.placed[key] = at
		m.written = append(m.written, c)
	}
	return &at
}

// stageIndex returns a stage counted from 0, nil for none.
func stageIndex(stage int) *uint32 {
	if stage <= 0 {
		return nil
	}
	from0 := uint32(stage - 1)
	return &from0
}
