package footwardv1

// Basis returns the basis that is chosen, BASIS_UNSPECIFIED where none is.
func (x *DesignBasis) Basis() Basis {
	switch x.GetFamily().(type) {
	case *DesignBasis_Eurocode:
		return Basis_BASIS_EUROCODE
	case *DesignBasis_UsLrfd:
		return Basis_BASIS_US_LRFD
	case *DesignBasis_UsAsd:
		return Basis_BASIS_US_ASD
	}
	return Basis_BASIS_UNSPECIFIED
}

// On returns a choice of a basis with what its standards recommend; of no basis where
// there is no such.
func On(b Basis) *DesignBasis {
	switch b {
	case Basis_BASIS_EUROCODE:
		return &DesignBasis{Family: &DesignBasis_Eurocode{Eurocode: &Eurocode{}}}
	case Basis_BASIS_US_LRFD:
		return &DesignBasis{Family: &DesignBasis_UsLrfd{UsLrfd: &UsLrfd{}}}
	case Basis_BASIS_US_ASD:
		return &DesignBasis{Family: &DesignBasis_UsAsd{UsAsd: &UsAsd{}}}
	}
	return &DesignBasis{}
}
