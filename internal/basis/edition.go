package basis

// Revision of the kernel: it grows with every change that may change a result.
const Revision = 3

var editions = [Count][]string{
	Eurocode: {
		"EN 1990:2002", "EN 1991-1-1:2002", "EN 1992-1-1:2004", "EN 1992-4:2018", "EN 1993-1-1:2005+A1:2014",
		"EN 1993-1-8:2005+AC:2009", "EN 1993-5:2007", "EN 1995-1-1:2004+A2:2014", "EN 1997-1:2004", "EN 1997-2:2007",
	},
	USLRFD: {"ASCE 7-22", "ANSI/AISC 360-22", "AISC Design Guide 1, 3rd ed. 2024", "ACI 318-19", "ANSI/AWC NDS-2018 (LRFD)", "EN 1993-5:2007 (corrosion)"},
	USASD:  {"ASCE 7-22", "ANSI/AISC 360-22", "AISC Design Guide 1, 3rd ed. 2024", "ACI 318-19", "ANSI/AWC NDS-2018 (ASD)", "EN 1993-5:2007 (corrosion)"},
}

// Edition returns the name of the edition of a basis that every check is made by.
func (b Basis) Edition() string {
	switch {
	case b == Eurocode:
		return "first generation"
	case b.US():
		return "2022"
	}
	return ""
}

// Editions returns the standards of a basis with their editions.
func (b Basis) Editions() []string {
	if !b.Valid() {
		return nil
	}
	return editions[b]
}

// Default is a factor with its default value.
type Default struct {
	Symbol string
	Value  float64 // [-]
	Source string
}

// Defaults returns the factors of a basis with their default values, in the
// order of the standards.
//
// Source: as each row says.
func (b Basis) Defaults() []Default {
	if b == Eurocode {
		r := Recommended()
		return []Default{
			{"gamma_M0", r.GammaM0, "EN 1993-1-1:2005 6.1(1)"},
			{"gamma_M1", r.GammaM1, "EN 1993-1-1:2005 6.1(1)"},
			{"gamma_M2", r.GammaM2, "EN 1993-1-8:2005 Table 2.1"},
			{"gamma_C", r.GammaC, "EN 1992-1-1:2004 2.4.2.4"},
			{"alpha_cc", r.AlphaCC, "EN 1992-1-1:2004 3.1.6(1)"},
			{"beta_j", r.BetaJ, "EN 1993-1-8:2005 6.2.5(7)"},
			{"C_f,d", r.CFd, "EN 1993-1-8:2005 6.2.2(6)"},
			{"gamma_M solid timber", 1.30, "EN 1995-1-1:2004 Table 2.3"},
			{"gamma_M glued laminated timber", 1.25, "EN 1995-1-1:2004 Table 2.3"},
			{"gamma_S", r.GammaS, "EN 1992-1-1:2004 2.4.2.4"},
			{"alpha_ct,pl", r.AlphaCTPl, "EN 1992-1-1:2004 12.3.1"},
			{"gamma_phi, M2", r.Ground.Phi, "EN 1997-1:2004 Table A.4"},
			{"gamma_c', M2", r.Ground.C, "EN 1997-1:2004 Table A.4"},
			{"gamma_cu, M2", r.Ground.Cu, "EN 1997-1:2004 Table A.4"},
			{"gamma_R,v, R2", r.Ground.Rv, "EN 1997-1:2004 Table A.5 (not compared with the printed edition)"},
			{"gamma_R,h, R2", r.Ground.Rh, "EN 1997-1:2004 Table A.5 (not compared with the printed edition)"},
			{"gamma_G, A1", r.Ground.GSup, "EN 1997-1:2004 Table A.3"},
			{"gamma_G,fav, A1 and A2", r.Ground.GInf, "EN 1997-1:2004 Table A.3"},
			{"gamma_Q, A1", r.Ground.Q, "EN 1997-1:2004 Table A.3"},
			{"gamma_Q, A2", r.Ground.QA2, "EN 1997-1:2004 Table A.3"},
			{"gamma_G,dst", r.Ground.GDst, "EN 1997-1:2004 Table A.1 (not compared with the printed edition)"},
			{"gamma_G,stb", r.Ground.GStb, "EN 1997-1:2004 Tables A.1, A.15 (not compared with the printed edition)"},
			{"gamma_Q,dst", r.Ground.QDst, "EN 1997-1:2004 Tables A.1, A.15 (not compared with the printed edition)"},
		}
	}
	if !b.US() {
		return nil
	}
	rows := []struct {
		what   string
		s      Strength
		source string
	}{
		{"concrete bearing", ConcreteBearing, "AISC 360-22 J8"},
		{"plate flexure", Flexure, "AISC 360-22 F1"},
		{"rods, fillet welds and rupture", Rupture, "AISC 360-22 J2.4, J3.7, J3.8, J3.11, J4"},
		{"shear yielding", ShearYield, "AISC 360-22 J4.2(a)"},
		{"tension yielding", TensionYield, "AISC 360-22 J4.1(a)"},
		{"friction under a plate", Friction, "AISC Design Guide 1, 3rd ed. (2024), Eq. 4-30"},
		{"contact under friction", FrictionLimit, "AISC Design Guide 1, 3rd ed. (2024), Eq. 4-30"},
		{"groove weld tension", GrooveTension, "AISC 360-22 Table J2.5"},
	}
	out := make([]Default, len(rows))
	for i, r := range rows {
		out[i] = Default{"phi " + r.what, r.s.Phi, r.source}
		if b == USASD {
			out[i] = Default{"Omega " + r.what, r.s.Omega, r.source}
		}
	}
	return out
}
