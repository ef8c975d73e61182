package api

import (
	"context"
	"slices"

	"footward.example/footward/internal/base"
	"footward.example/footward/internal/basis"
	"footward.example/footward/internal/bearing"
	"footward.example/footward/internal/compare"
	"footward.example/footward/internal/ground"
	"footward.example/footward/internal/limit"
	"footward.example/footward/internal/load"
	"footward.example/footward/internal/material"
	"footward.example/footward/internal/pad"
	"footward.example/footward/internal/pin"
	"footward.example/footward/internal/record"
	"footward.example/footward/internal/ring"
	"footward.example/footward/internal/rod"
	"footward.example/footward/internal/settle"
	"footward.example/footward/internal/size"
	"footward.example/footward/internal/trial"
	"footward.example/footward/internal/weld"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Catalog implements CatalogService.
type Catalog struct {
	footwardv1.UnimplementedCatalogServiceServer
}

// NewCatalog returns the service.
func NewCatalog() *Catalog { return &Catalog{} }

// ListDesignBases implements CatalogServiceServer.
func (*Catalog) ListDesignBases(context.Context, *footwardv1.ListDesignBasesRequest) (*footwardv1.ListDesignBasesResponse, error) {
	out := &footwardv1.ListDesignBasesResponse{}
	for _, b := range allBases {
		e := &footwardv1.BasisEntry{Basis: b, Edition: basis.Basis(b).Edition(), Standards: basis.Basis(b).Editions()}
		if b == footwardv1.Basis_BASIS_EUROCODE {
			for _, a := range annexes {
				e.Annexes = append(e.Annexes, a.name)
			}
		}
		for _, d := range basis.Basis(b).Defaults() {
			e.Factors = append(e.Factors, &footwardv1.FactorUsed{Symbol: d.Symbol, Value: d.Value, Source: d.Source})
		}
		out.Bases = append(out.Bases, e)
	}
	return out, nil
}

// ListSteels implements CatalogServiceServer.
func (*Catalog) ListSteels(context.Context, *footwardv1.ListSteelsRequest) (*footwardv1.ListSteelsResponse, error) {
	out := &footwardv1.ListSteelsResponse{}
	for _, s := range material.Steels() {
		e := &footwardv1.SteelEntry{Grade: s.Name, BetaW: s.BetaW, Source: s.Source}
		for _, b := range s.Bands {
			e.Bands = append(e.Bands, &footwardv1.SteelBand{UpToThicknessMm: b.UpTo, FyMpa: b.Fy, FuMpa: b.Fu})
		}
		out.Steels = append(out.Steels, e)
	}
	return out, nil
}

// ListRodSteels implements CatalogServiceServer.
func (*Catalog) ListRodSteels(context.Context, *footwardv1.ListRodSteelsRequest) (*footwardv1.ListRodSteelsResponse, error) {
	out := &footwardv1.ListRodSteelsResponse{}
	for _, s := range material.RodSteels() {
		out.RodSteels = append(out.RodSteels, &footwardv1.RodSteelEntry{
			Grade: s.Name, FyMpa: s.Fy, FuMpa: s.Fu, UpToDiameterMm: s.UpTo, Source: s.Source,
		})
	}
	return out, nil
}

// ListThreads implements CatalogServiceServer.
func (*Catalog) ListThreads(context.Context, *footwardv1.ListThreadsRequest) (*footwardv1.ListThreadsResponse, error) {
	out := &footwardv1.ListThreadsResponse{}
	for _, t := range material.Threads() {
		out.Threads = append(out.Threads, &footwardv1.ThreadEntry{
			Designation: t.Name, DiameterMm: t.Diameter, PitchMm: t.Pitch,
			StressAreaMm2: t.StressArea, Source: t.Source,
		})
	}
	return out, nil
}

// ListWeldMetals implements CatalogServiceServer.
func (*Catalog) ListWeldMetals(context.Context, *footwardv1.ListWeldMetalsRequest) (*footwardv1.ListWeldMetalsResponse, error) {
	out := &footwardv1.ListWeldMetalsResponse{}
	for _, w := range material.WeldMetals() {
		out.WeldMetals = append(out.WeldMetals, &footwardv1.WeldMetalEntry{
			Grade: w.Name, StrengthMpa: w.Strength, Source: w.Source,
		})
	}
	return out, nil
}

// ListConcretes implements CatalogServiceServer.
func (*Catalog) ListConcretes(context.Context, *footwardv1.ListConcretesRequest) (*footwardv1.ListConcretesResponse, error) {
	out := &footwardv1.ListConcretesResponse{}
	for _, c := range material.Concretes() {
		out.Concretes = append(out.Concretes, &footwardv1.ConcreteEntry{
			Grade: c.Name, StrengthMpa: c.Strength, Source: c.Source,
		})
	}
	return out, nil
}

// ListTimbers implements CatalogServiceServer.
func (*Catalog) ListTimbers(context.Context, *footwardv1.ListTimbersRequest) (*footwardv1.ListTimbersResponse, error) {
	out := &footwardv1.ListTimbersResponse{}
	for _, t := range material.Timbers() {
		b := footwardv1.Basis_BASIS_EUROCODE
		if t.US {
			b = footwardv1.Basis_BASIS_US_ASD
		}
		out.Timbers = append(out.Timbers, &footwardv1.TimberEntry{
			Grade: t.Name, CompressionAlongMpa: t.Timber.Along, CompressionAcrossMpa: t.Timber.Across,
			Kind: footwardv1.TimberKind(t.Timber.Kind), Basis: b, Source: t.Source,
		})
	}
	return out, nil
}

// ListUnitWeights implements CatalogServiceServer.
func (*Catalog) ListUnitWeights(context.Context, *footwardv1.ListUnitWeightsRequest) (*footwardv1.ListUnitWeightsResponse, error) {
	out := &footwardv1.ListUnitWeightsResponse{}
	for _, w := range material.Weights() {
		out.UnitWeights = append(out.UnitWeights, &footwardv1.UnitWeightEntry{
			Material: w.Name, MinKnM3: w.Least, MaxKnM3: w.Most, Source: w.Source,
		})
	}
	return out, nil
}

// checks lists what each check can answer with, in the contract's order.
var checks = []struct {
	kind    footwardv1.CheckKind
	kinds   func() []*limit.Kind
	remarks func() []*limit.Notice
}{
	{kindBearing, bearing.Kinds, bearing.Remarks},
	{kindPlateBending, base.PlateKinds, base.PlateRemarks},
	{kindWeld, weld.Kinds, weld.Remarks},
	{kindAnchorRods, rod.Kinds, rod.Remarks},
	{kindPin, pin.Kinds, base.PinRemarks},
	{kindSettlement, settle.Kinds, settle.Remarks},
	{kindFooting, ground.Kinds, ground.Remarks},
	{kindRingStack, ring.Kinds, ring.Remarks},
	{kindPad, pad.Kinds, padRemarks},
	{kindAnchorage, base.AnchorageKinds, base.AnchorageRemarks},
	{kindColumnBase, base.ColumnKinds, columnRemarks},
}

// columnRemarks are the notices of a column base and of its search.
func columnRemarks() []*limit.Notice {
	return slices.Concat(base.ColumnRemarks(), size.SearchRemarks())
}

// padRemarks are the notices of a pad, of its search and of a comparison.
func padRemarks() []*limit.Notice {
	return slices.Concat(pad.Remarks(), size.PadRemarks(), size.CompareRemarks(), compare.Remarks())
}

// ListLimitStates implements CatalogServiceServer.
func (*Catalog) ListLimitStates(context.Context, *footwardv1.ListLimitStatesRequest) (*footwardv1.ListLimitStatesResponse, error) {
	out := &footwardv1.ListLimitStatesResponse{}
	for _, c := range checks {
		for _, k := range c.kinds() {
			e := &footwardv1.LimitStateEntry{Check: c.kind, Id: k.ID, Title: k.Title, Unit: units[k.Measure].name}
			for _, b := range allBases {
				if k.Clause[b] != "" {
					e.Clauses = append(e.Clauses, &footwardv1.LimitStateClause{
						Basis: b, Clause: k.Clause[b], Evidence: evidence[k.ID][familyOf(b)],
					})
				}
			}
			out.LimitStates = append(out.LimitStates, e)
		}
	}
	return out, nil
}

// ListNotices implements CatalogServiceServer.
func (*Catalog) ListNotices(context.Context, *footwardv1.ListNoticesRequest) (*footwardv1.ListNoticesResponse, error) {
	out := &footwardv1.ListNoticesResponse{}
	for _, c := range checks {
		for _, n := range c.remarks() {
			out.Notices = append(out.Notices, &footwardv1.NoticeEntry{
				Check: c.kind, Code: n.Code, Severity: footwardv1.Severity(n.Severity), Text: n.Text,
			})
		}
	}
	for _, n := range slices.Concat(load.Remarks(), trial.Remarks(), record.Remarks()) {
		out.Notices = append(out.Notices, &footwardv1.NoticeEntry{Code: n.Code, Severity: footwardv1.Severity(n.Severity), Text: n.Text})
	}
	return out, nil
}
