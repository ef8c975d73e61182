package api

import (
	"fmt"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/corrosion"
	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/material"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const (
	newton   = 1e3  // N in a kN
	newtonMM = 1e6  // Nmm in a kNm
	megaPa   = 1e-3 // MPa in a kPa

	newtonPerMM3 = 1e-6 // N/mm3 in a kN/m3
)

// reader turns requests into kernel inputs and collects what is wrong with
// names and choices on the way. Missing messages read as zero values, so the
// kernel can still say what else is wrong.
type reader struct {
	faults limit.Faults
	// lost is what corrosion takes of parts that state no allowance of their own.
	lost corrosion.Exposure
	stop func() error // ends long work; nil: never
	made *made        // what the combinations are noted in; nil: not needed
}

// exposure reads what acts on the steel; nil: nothing.
func exposure(c *footwardv1.Exposure) corrosion.Exposure {
	return corrosion.Exposure{Years: c.GetDesignLifeYears(), Ground: corrosion.Ground(c.GetGround()), Rate: c.GetRateMmPerYear()}
}

// readerOf returns the reader of a request whose steel is exposed.
func readerOf(e *footwardv1.Exposure) reader {
	r := reader{lost: exposure(e)}
	if e != nil {
		r.lost.Validate("exposure", &r.faults)
	}
	return r
}

// allowance returns what a part loses: its own allowance where it states one, be it
// nothing.
func allowance(states bool, own, exposed float64) float64 {
	if states {
		return own
	}
	return exposed
}

func actions(f *footwardv1.ForcesAtFoot) geom.Actions {
	return geom.Actions{
		N: f.GetNKn() * newton, Vx: f.GetVXKn() * newton, Vy: f.GetVYKn() * newton,
		Mx: f.GetMXKnm() * newtonMM, My: f.GetMYKnm() * newtonMM, T: f.GetTKnm() * newtonMM,
	}
}

func (r *reader) plate(p *footwardv1.Plate) geom.Plate { return r.plateAt(p, "plate") }

func (r *reader) plateAt(p *footwardv1.Plate, field string) geom.Plate {
	return geom.Plate{
		SizeX: p.GetSizeXMm(), SizeY: p.GetSizeYMm(), Thickness: p.GetThicknessMm(),
		Corrosion: allowance(p != nil && p.CorrosionAllowanceMm != nil, p.GetCorrosionAllowanceMm(), r.lost.Plate()), Steel: r.steel(p.GetSteel(), field+".steel"),
	}
}

// choice reports whether a material is named (true) or described (false), and faults
// neither.
func (r *reader) choice(name string, described bool, field, nameField, entries string) (named, ok bool) {
	if name == "" && !described {
		r.faults.Add(limit.Missing, field, "needs "+nameField+" (CatalogService."+entries+" lists them) or properties")
		return false, false
	}
	return !described, true
}

// indexed is the path of an element of a list.
func indexed(field string, i int) string { return fmt.Sprintf("%s[%d]", field, i) }

func (r *reader) unknown(field, name, entries string) {
	r.faults.Add(limit.UnknownValue, field,
		fmt.Sprintf("%q is not in the catalogue; CatalogService.%s lists the names", name, entries))
}

func (r *reader) steel(s *footwardv1.Steel, field string) material.Steel {
	named, ok := r.choice(s.GetGrade(), s.GetProperties() != nil, field, "grade", "ListSteels")
	if !ok {
		return material.Steel{}
	}
	if named {
		grade, found := material.SteelByName(s.GetGrade())
		if !found {
			r.unknown(field+".grade", s.GetGrade(), "ListSteels")
		}
		return material.Steel{Grade: grade}
	}
	p := s.GetProperties()
	r.strengths(p.GetFyMpa(), p.GetFuMpa(), field)
	return material.Steel{Fy: p.GetFyMpa(), Fu: p.GetFuMpa(), BetaW: p.GetBetaW()}
}

func (r *reader) strengths(fy, fu float64, field string) {
	if fu < fy {
		r.faults.Add(limit.OutOfRange, field+".properties.fu_mpa",
			fmt.Sprintf("is %g MPa, below the yield strength of %g MPa", fu, fy))
	}
}

func (r *reader) concrete(c *footwardv1.Concrete, field string) material.Concrete {
	named, ok := r.choice(c.GetGrade(), c.GetProperties() != nil, field, "grade", "ListConcretes")
	if !ok {
		return material.Concrete{}
	}
	if !named {
		return material.Concrete{Strength: c.GetProperties().GetStrengthMpa()}
	}
	row, found := material.ConcreteByName(c.GetGrade())
	if !found {
		r.unknown(field+".grade", c.GetGrade(), "ListConcretes")
		return material.Concrete{}
	}
	return material.Concrete{Strength: row.Strength}
}

func (r *reader) timber(t *footwardv1.Timber, field string, design basis.Basis) material.Timber {
	named, ok := r.choice(t.GetGrade(), t.GetProperties() != nil, field, "grade", "ListTimbers")
	if !ok {
		return material.Timber{}
	}
	if !named {
		p := t.GetProperties()
		return material.Timber{
			Along: p.GetCompressionAlongMpa(), Across: p.GetCompressionAcrossMpa(),
			Kind: material.TimberKind(p.GetKind()),
		}
	}
	row, found := material.TimberByName(t.GetGrade())
	if !found {
		r.unknown(field+".grade", t.GetGrade(), "ListTimbers")
		return material.Timber{}
	}
	if row.US != design.US() {
		r.faults.Add(limit.Conflict, field+".grade",
			fmt.Sprintf("%q has values for another basis than the one chosen", t.GetGrade()))
	}
	return row.Timber
}

func (r *reader) rodSteel(s *footwardv1.RodSteel, diameter float64, field string) material.RodSteel {
	named, ok := r.choice(s.GetGrade(), s.GetProperties() != nil, field, "grade", "ListRodSteels")
	if !ok {
		return material.RodSteel{}
	}
	if named {
		row, found := material.RodSteelByName(s.GetGrade(), diameter)
		if !found {
			r.unknown(field+".grade", s.GetGrade(), "ListRodSteels")
			return material.RodSteel{}
		}
		return row
	}
	p := s.GetProperties()
	r.strengths(p.GetFyMpa(), p.GetFuMpa(), field)
	return material.RodSteel{Fy: p.GetFyMpa(), Fu: p.GetFuMpa()}
}

func (r *reader) thread(t *footwardv1.Thread, field string) material.Thread {
	named, ok := r.choice(t.GetDesignation(), t.GetProperties() != nil, field, "designation", "ListThreads")
	if !ok {
		return material.Thread{}
	}
	if !named {
		p := t.GetProperties()
		return material.Thread{Diameter: p.GetDiameterMm(), StressArea: p.GetStressAreaMm2()}
	}
	row, found := material.ThreadByName(t.GetDesignation())
	if !found {
		r.unknown(field+".designation", t.GetDesignation(), "ListThreads")
	}
	return row
}

func (r *reader) filler(w *footwardv1.WeldMetal, field string) material.WeldMetal {
	if w == nil {
		return material.WeldMetal{}
	}
	named, ok := r.choice(w.GetGrade(), w.GetProperties() != nil, field, "grade", "ListWeldMetals")
	if !ok {
		return material.WeldMetal{}
	}
	if !named {
		return material.WeldMetal{Strength: w.GetProperties().GetStrengthMpa()}
	}
	row, found := material.WeldMetalByName(w.GetGrade())
	if !found {
		r.unknown(field+".grade", w.GetGrade(), "ListWeldMetals")
	}
	return material.WeldMetal{Strength: row.Strength}
}
