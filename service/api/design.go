package api

import (
	"fmt"
	"slices"
	"strings"

	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/derive"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// national are the nationally determined parameters as a check takes them. What is 0 has
// the value of its standard.
type national struct {
	ec          basis.Factors
	actions     load.Factors
	connections float64 // gamma_M of connections [-]
	fill        float64 // gamma_phi of the fill in rings [-]
}

// parameter ties a nationally determined parameter to its field and to how an answer
// states it.
type parameter struct {
	name    string // path in Eurocode
	printed []printed
	given   func(*footwardv1.Eurocode) *float64
	value   func(*national) *float64
}

// printed is how an answer states a factor: its symbol, and what its source holds where
// other factors have the symbol too.
type printed struct{ symbol, source string }

func (p printed) is(f *derive.Factor) bool {
	return p.symbol == f.Symbol && strings.Contains(f.Source, p.source)
}

// numberOf returns how a number is read of a message that may be absent.
func numberOf[M any](in func(*footwardv1.Eurocode) *M, of func(*M) *float64) func(*footwardv1.Eurocode) *float64 {
	return func(e *footwardv1.Eurocode) *float64 {
		if m := in(e); m != nil {
			return of(m)
		}
		return nil
	}
}

func ofSteel(of func(*footwardv1.SteelFactors) *float64) func(*footwardv1.Eurocode) *float64 {
	return numberOf((*footwardv1.Eurocode).GetSteel, of)
}

func ofConcrete(of func(*footwardv1.ConcreteFactors) *float64) func(*footwardv1.Eurocode) *float64 {
	return numberOf((*footwardv1.Eurocode).GetConcrete, of)
}

func ofTimber(of func(*footwardv1.TimberFactors) *float64) func(*footwardv1.Eurocode) *float64 {
	return numberOf((*footwardv1.Eurocode).GetTimber, of)
}

func ofGround(of func(*footwardv1.GroundFactors) *float64) func(*footwardv1.Eurocode) *float64 {
	return numberOf((*footwardv1.Eurocode).GetGround, of)
}

func ofActions(of func(*footwardv1.ActionFactors) *float64) func(*footwardv1.Eurocode) *float64 {
	return numberOf((*footwardv1.Eurocode).GetActions, of)
}

var parameters = []parameter{
	{"steel.gamma_m0", []printed{{"gamma_M0", ""}},
		ofSteel(func(f *footwardv1.SteelFactors) *float64 { return f.GammaM0 }),
		func(n *national) *float64 { return &n.ec.GammaM0 }},
	{"steel.gamma_m1", []printed{{"gamma_M1", ""}},
		ofSteel(func(f *footwardv1.SteelFactors) *float64 { return f.GammaM1 }),
		func(n *national) *float64 { return &n.ec.GammaM1 }},
	{"steel.gamma_m2", []printed{{"gamma_M2", ""}},
		ofSteel(func(f *footwardv1.SteelFactors) *float64 { return f.GammaM2 }),
		func(n *national) *float64 { return &n.ec.GammaM2 }},
	{"steel.beta_j", []printed{{"beta_j", ""}},
		ofSteel(func(f *footwardv1.SteelFactors) *float64 { return f.BetaJ }),
		func(n *national) *float64 { return &n.ec.BetaJ }},
	{"steel.c_fd", []printed{{"C_f,d", ""}},
		ofSteel(func(f *footwardv1.SteelFactors) *float64 { return f.CFd }),
		func(n *national) *float64 { return &n.ec.CFd }},
	{"concrete.gamma_c", []printed{{"gamma_C", ""}, {"gamma_Mc", "EN 1992-4"}},
		ofConcrete(func(f *footwardv1.ConcreteFactors) *float64 { return f.GammaC }),
		func(n *national) *float64 { return &n.ec.GammaC }},
	{"concrete.gamma_s", []printed{{"gamma_S", ""}},
		ofConcrete(func(f *footwardv1.ConcreteFactors) *float64 { return f.GammaS }),
		func(n *national) *float64 { return &n.ec.GammaS }},
	{"concrete.alpha_cc", []printed{{"alpha_cc", ""}},
		ofConcrete(func(f *footwardv1.ConcreteFactors) *float64 { return f.AlphaCc }),
		func(n *national) *float64 { return &n.ec.AlphaCC }},
	{"concrete.alpha_ct_pl", []printed{{"alpha_ct,pl", ""}},
		ofConcrete(func(f *footwardv1.ConcreteFactors) *float64 { return f.AlphaCtPl }),
		func(n *national) *float64 { return &n.ec.AlphaCTPl }},
	{"timber.gamma_m", []printed{{"gamma_M", "EN 1995"}, {"gamma_Mt", ""}},
		ofTimber(func(f *footwardv1.TimberFactors) *float64 { return f.GammaM }),
		func(n *national) *float64 { return &n.ec.GammaMTimber }},
	{"timber.gamma_m_connections", []printed{{"gamma_Mc", "EN 1995"}},
		ofTimber(func(f *footwardv1.TimberFactors) *float64 { return f.GammaMConnections }),
		func(n *national) *float64 { return &n.connections }},
	{"ground.gamma_phi", []printed{{"gamma_phi", "1997-1:2004 Table A.4"}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaPhi }),
		func(n *national) *float64 { return &n.ec.Ground.Phi }},
	{"ground.gamma_c_eff", []printed{{"gamma_c", ""}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaCEff }),
		func(n *national) *float64 { return &n.ec.Ground.C }},
	{"ground.gamma_cu", []printed{{"gamma_cu", ""}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaCu }),
		func(n *national) *float64 { return &n.ec.Ground.Cu }},
	{"ground.gamma_r_v", []printed{{"gamma_R,v", ""}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaRV }),
		func(n *national) *float64 { return &n.ec.Ground.Rv }},
	{"ground.gamma_r_h", []printed{{"gamma_R,h", ""}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaRH }),
		func(n *national) *float64 { return &n.ec.Ground.Rh }},
	{"ground.gamma_phi_fill", []printed{{"gamma_phi", "on tan(phi)"}},
		ofGround(func(f *footwardv1.GroundFactors) *float64 { return f.GammaPhiFill }),
		func(n *national) *float64 { return &n.fill }},
	{"actions.gamma_g_sup", []printed{{"gamma_G,sup", ""}, {"gamma_G", "Table A.3"}, {"gamma_W", "Table A.3"}, {"gamma_G", "weight where it presses"}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaGSup }),
		func(n *national) *float64 { return &n.actions.GSup }},
	{"actions.gamma_g_inf", []printed{{"gamma_G,inf", ""}, {"gamma_G", "Table A.3"}, {"gamma_W", "Table A.3"}, {"gamma_stb", "weight"}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaGInf }),
		func(n *national) *float64 { return &n.actions.GInf }},
	{"actions.gamma_q", []printed{{"gamma_Q", ""}, {"gamma_Q,N", ""}, {"gamma_Q,dst", ""}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaQ }),
		func(n *national) *float64 { return &n.actions.Q }},
	{"actions.xi", []printed{{"xi", ""}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.Xi }),
		func(n *national) *float64 { return &n.actions.Xi }},
	{"actions.gamma_g_sup_equilibrium", []printed{{"gamma_G,sup (A)", ""}, {"gamma_G,dst", ""}, {"gamma_G", "weight where it presses"}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaGSupEquilibrium }),
		func(n *national) *float64 { return &n.actions.GSupA }},
	{"actions.gamma_g_inf_equilibrium", []printed{{"gamma_G,inf (A)", ""}, {"gamma_stb", ""}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaGInfEquilibrium }),
		func(n *national) *float64 { return &n.actions.GInfA }},
	{"actions.gamma_q_ground", []printed{{"gamma_Q (C)", ""}, {"gamma_Q", "Table A.3"}, {"gamma_Q,N", "Table A.3"}},
		ofActions(func(f *footwardv1.ActionFactors) *float64 { return f.GammaQGround }),
		func(n *national) *float64 { return &n.actions.QC }},
}

// annexOf returns the annex that a basis names.
func annexOf(b *footwardv1.DesignBasis, known []annex) (annex, bool) {
	name := b.GetEurocode().GetAnnex()
	i := slices.IndexFunc(known, func(a annex) bool { return a.name == name })
	if i < 0 {
		return annex{}, name == ""
	}
	return known[i], true
}

// parametersOf returns the parameters of a Eurocode basis: those given, else those of the
// annex, else the recommended ones.
func parametersOf(b *footwardv1.DesignBasis, known []annex) national {
	n := national{ec: basis.Recommended(), actions: load.Recommended()}
	e := b.GetEurocode()
	if e == nil {
		return n
	}
	own, _ := annexOf(b, known)
	for _, p := range parameters {
		for _, v := range own.rulings {
			if v.name == p.name {
				*p.value(&n) = v.value
			}
		}
		if v := p.given(e); v != nil {
			*p.value(&n) = *v
		}
	}
	a, g := &n.actions, &n.ec.Ground
	a.AccidentalFrequent = e.GetActions().GetAccidentalFrequent()
	g.GSup, g.GInf, g.Q, g.QA2 = a.GSup, a.GInf, a.Q, a.QC
	g.GDst, g.GStb, g.QDst = a.GSupA, a.GInfA, a.Q
	return n
}

// design reads a basis with its factors.
func (r *reader) design(b *footwardv1.DesignBasis) basis.Design {
	return r.designAmong(b, annexes)
}

func (r *reader) designAmong(b *footwardv1.DesignBasis, known []annex) basis.Design {
	d := basis.Design{Basis: basis.Basis(b.Basis()), EC: basis.Recommended()}
	family, edition := "", ""
	switch f := b.GetFamily().(type) {
	case *footwardv1.DesignBasis_Eurocode:
		family, edition = "eurocode", f.Eurocode.GetEdition()
		d.EC = parametersOf(b, known).ec
	case *footwardv1.DesignBasis_UsLrfd:
		family, edition = "us_lrfd", f.UsLrfd.GetEdition()
	case *footwardv1.DesignBasis_UsAsd:
		family, edition = "us_asd", f.UsAsd.GetEdition()
	}
	if edition != "" && edition != d.Basis.Edition() {
		r.faults.Add(limit.UnknownValue, "basis."+family+".edition", fmt.Sprintf("%q is not known; only %q is", edition, d.Basis.Edition()))
	}
	if _, found := annexOf(b, known); !found {
		var names []string
		for _, a := range known {
			names = append(names, a.name)
		}
		told := "no national annex is known yet"
		if len(names) > 0 {
			told = "known are " + strings.Join(names, ", ")
		}
		r.faults.Add(limit.UnknownValue, "basis.eurocode.annex", fmt.Sprintf("%q is not known; %s", b.GetEurocode().GetAnnex(), told))
	}
	return d
}

// stated is a parameter whose value is not that of its standard.
type stated struct {
	printed []printed
	value   float64
	source  string
}

// is reports whether it is a factor of an answer.
func (s *stated) is(f *derive.Factor) bool {
	return s.value == f.Value && slices.ContainsFunc(s.printed, func(p printed) bool { return p.is(f) })
}

// statedBy returns the parameters that the request or its national annex states.
func statedBy(b *footwardv1.DesignBasis, known []annex) (out []stated) {
	e := b.GetEurocode()
	if e == nil {
		return nil
	}
	own, _ := annexOf(b, known)
	for _, p := range parameters {
		if v := p.given(e); v != nil {
			out = append(out, stated{p.printed, *v, givenInRequest})
			continue
		}
		for _, v := range own.rulings {
			if v.name == p.name {
				out = append(out, stated{p.printed, v.value, v.source})
			}
		}
	}
	return out
}

// weights are the factors on the weights of stack and clamped fill that follow from those
// on actions where these are not the recommended ones; 0: as the basis has them. Which of
// the sets governs is not asked: the least where a weight holds, the greatest where it
// presses.
func weights(b *footwardv1.DesignBasis) (holds, presses float64) {
	if b.GetEurocode() == nil {
		return 0, 0
	}
	f, usual := parametersOf(b, annexes).actions, load.Recommended()
	if least := min(f.GInf, f.GInfA); least != min(usual.GInf, usual.GInfA) {
		holds = least
	}
	if most := max(f.GSup, f.GSupA); most != max(usual.GSup, usual.GSupA) {
		presses = most
	}
	return holds, presses
}

// frictionOf returns mu of a US basis, and whether it was taken for want of one.
func frictionOf(b *footwardv1.DesignBasis) (mu float64, assumed bool) {
	var given *float64
	switch f := b.GetFamily().(type) {
	case *footwardv1.DesignBasis_UsLrfd:
		given = f.UsLrfd.FrictionCoefficient
	case *footwardv1.DesignBasis_UsAsd:
		given = f.UsAsd.FrictionCoefficient
	}
	if given == nil {
		return defaultFriction, true
	}
	return *given, false
}
