package api_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// TestSettlementShowsEveryStage, and leaves out what the data do not allow.
func TestSettlementShowsEveryStage(t *testing.T) {
	m := &footwardv1.CheckSettlementRequest{
		Basis:     footwardv1.On(footwardv1.Basis_BASIS_EUROCODE),
		Footing:   &footwardv1.Footing{Plan: &footwardv1.Footing_Circle{Circle: &footwardv1.FootingCircle{DiameterMm: 800}}},
		Rigid:     true,
		HalfSpace: true,
		Layers:    []*footwardv1.GroundLayer{{ThicknessMm: 5000, ModulusMpa: 20, Poisson: 0.3}},
		Stages:    []*footwardv1.SettlementStage{{Name: "frame", Load: &footwardv1.SettlementStage_CompressionKn{CompressionKn: 25}}, {Name: "ballast", Load: &footwardv1.SettlementStage_CompressionKn{CompressionKn: 50}}},
	}
	r, err := service(t).CheckSettlement(t.Context(), m)
	require.NoError(t, err)
	require.Len(t, r.GetResult().GetSettlementStages(), 2)
	frame, ballast := r.GetResult().GetSettlementStages()[0], r.GetResult().GetSettlementStages()[1]
	assert.Equal(t, "frame", frame.GetName())
	assert.InEpsilon(t, 2*frame.GetElasticMm(), ballast.GetElasticMm(), 1e-9)
	assert.Nil(t, ballast.SchmertmannMm)
	assert.Nil(t, ballast.ConsolidationMm)
	for _, s := range r.GetResult().GetLimitStates() {
		if s.GetId() == "settle_elastic" {
			assert.InEpsilon(t, ballast.GetElasticMm(), s.GetDemand(), 1e-9)
		}
	}
	finite(t, r.ProtoReflect())
}
