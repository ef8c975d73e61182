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

func (r *reader) design(b *footwardv1.DesignBasis) basis.Design {
	d := basis.Design{Basis: basis.Basis(b.GetBasis()), EC: basis.Recommended()}
	if c := b.GetCorrosion(); c != nil {
		exposure(c).Validate("basis.corrosion", &r.faults)
	}
	given := b.GetEurocode()
	if given == nil {
		return d
	}
	if d.Basis != basis.Eurocode {
		r.faults.Add(limit.Conflict, "basis.eurocode", "goes with BASIS_EUROCODE only")
		return d
	}
	for _, f := range eurocodeFactors {
		if v := f.given(given); v != nil {
			*f.factor(&d.EC) = *v
		}
	}
	if g := given.GetGround(); g != nil {
		for _, f := range groundFactors {
			if v := f.given(g); v != nil {
				*f.factor(&d.EC.Ground) = *v
			}
		}
	}
	return d
}

// exposure reads what acts on the steel; nil: nothing.
func exposure(c *footwardv1.Corrosion) corrosion.Exposure {
	return corrosion.Exposure{Years: c.GetYears(), Ground: corrosion.Ground(c.GetGround()), Rate: c.GetRateMmPerYear()}
}

// readerOf returns the reader of a request on a basis.
func readerOf(b *footwardv1.DesignBasis) reader { return reader{lost: exposure(b.GetCorrosion())} }

// allowance returns what a part loses: its own allowance where it states one, be it
// nothing.
func allowance(states bool, own, exposed float64) float64 {
	if states {
		return own
	}
	return exposed
}

// eurocodeFactors ties each nationally determined parameter to its symbol.
var eurocodeFactors = []struct {
	symbol string
	given  func(*footwardv1.EurocodeFactors) *float64
	factor func(*basis.Factors) *float64
}{
	{"gamma_M0", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaM0 },
		func(f *basis.Factors) *float64 { return &f.GammaM0 }},
	{"gamma_M1", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaM1 },
		func(f *basis.Factors) *float64 { return &f.GammaM1 }},
	{"gamma_M2", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaM2 },
		func(f *basis.Factors) *float64 { return &f.GammaM2 }},
	{"gamma_C", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaC },
		func(f *basis.Factors) *float64 { return &f.GammaC }},
	{"alpha_cc", func(f *footwardv1.EurocodeFactors) *float64 { return f.AlphaCc },
		func(f *basis.Factors) *float64 { return &f.AlphaCC }},
	{"beta_j", func(f *footwardv1.EurocodeFactors) *float64 { return f.BetaJ },
		func(f *basis.Factors) *float64 { return &f.BetaJ }},
	{"C_f,d", func(f *footwardv1.EurocodeFactors) *float64 { return f.CFd },
		func(f *basis.Factors) *float64 { return &f.CFd }},
	{"gamma_M", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaMTimber },
		func(f *basis.Factors) *float64 { return &f.GammaMTimber }},
	{"gamma_S", func(f *footwardv1.EurocodeFactors) *float64 { return f.GammaS },
		func(f *basis.Factors) *float64 { return &f.GammaS }},
	{"alpha_ct,pl", func(f *footwardv1.EurocodeFactors) *float64 { return f.AlphaCtPl },
		func(f *basis.Factors) *float64 { return &f.AlphaCTPl }},
}

// groundFactors ties each partial factor of the ground to its symbol.
var groundFactors = []struct {
	printed []string // the symbols by which an answer states it
	given   func(*footwardv1.GroundFactors) *float64
	factor  func(*basis.Ground) *float64
}{
	{[]string{"gamma_phi"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaPhi },
		func(f *basis.Ground) *float64 { return &f.Phi }},
	{[]string{"gamma_c"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaCEff },
		func(f *basis.Ground) *float64 { return &f.C }},
	{[]string{"gamma_cu"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaCu },
		func(f *basis.Ground) *float64 { return &f.Cu }},
	{[]string{"gamma_R,v"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaRV },
		func(f *basis.Ground) *float64 { return &f.Rv }},
	{[]string{"gamma_R,h"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaRH },
		func(f *basis.Ground) *float64 { return &f.Rh }},
	{[]string{"gamma_G", "gamma_W"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaG },
		func(f *basis.Ground) *float64 { return &f.GSup }},
	{[]string{"gamma_G", "gamma_W"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaGFav },
		func(f *basis.Ground) *float64 { return &f.GInf }},
	{[]string{"gamma_Q", "gamma_Q,N"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaQ },
		func(f *basis.Ground) *float64 { return &f.Q }},
	{[]string{"gamma_Q", "gamma_Q,N"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaQA2 },
		func(f *basis.Ground) *float64 { return &f.QA2 }},
	{[]string{"gamma_G,dst"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaGDst },
		func(f *basis.Ground) *float64 { return &f.GDst }},
	{[]string{"gamma_stb"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaGStb },
		func(f *basis.Ground) *float64 { return &f.GStb }},
	{[]string{"gamma_Q,dst"}, func(f *footwardv1.GroundFactors) *float64 { return f.GammaQDst },
		func(f *basis.Ground) *float64 { return &f.QDst }},
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
