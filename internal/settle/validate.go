package settle

import (
	"fmt"

	"footward.example/footward/internal/geom"
	"footward.example/footward/internal/limit"
)

const (
	greatestMoment = 1e13
	greatestSize   = 1e5
	leastWeight    = 1e-5 // of mineral soil [N/mm3]
	greatestWeight = 4e-5
	mostLayers     = 50
	mostStages     = 100
	mostNeighbours = 50
)

func within(v, low, high float64) bool { return v >= low && v <= high }

// row is a number with its bounds; optional lets 0 stand for not given.
type row struct {
	field          string
	v, least, most float64
	optional       bool
}

func check(prefix string, rows []row, faults *limit.Faults) {
	for _, f := range rows {
		if within(f.v, f.least, f.most) || f.optional && f.v == 0 {
			continue
		}
		reason := fmt.Sprintf("must be a number from %g to %g in N, mm and MPa", f.least, f.most)
		if f.optional {
			reason += ", or be left out"
		}
		faults.Add(limit.OutOfRange, prefix+f.field, reason)
	}
}

// Validate adds to faults everything about the footing, its ground and its
// stages that does not fit. What is not known may be left out: the methods that
// need it are then left out too.
func Validate(in *Input, faults *limit.Faults) {
	if !in.Design.Valid() {
		faults.Add(limit.UnknownValue, "basis.family", "must be a known basis with usable factors")
	}
	switch in.Shape {
	case Rectangle:
		check("footing.rectangle.", []row{{"size_x_mm", in.SizeX, 50, greatestSize, false}, {"size_y_mm", in.SizeY, 50, greatestSize, false}}, faults)
	case Circle:
		check("footing.circle.", []row{{"diameter_mm", in.Diameter, 50, greatestSize, false}}, faults)
	default:
		faults.Add(limit.UnknownValue, "footing.plan", "must be a rectangle or a circle")
	}
	if in.Spread > TwoToOne {
		faults.Add(limit.UnknownValue, "stress_spread", "must be a known spread of stress")
	}
	check("", []row{
		{"footing.depth_mm", in.Depth, 0, greatestSize, false},
		{"unit_weight_above_kn_m3", in.Above, leastWeight, greatestWeight, true},
		{"depth_factor", in.Embedment, 0.5, 1, true},
		{"water_depth_mm", in.Water, 0, 1e6, false},
		{"preloaded_kpa", in.Preloaded, 0, 100, false},
		{"creep_years", in.Years, 0, 1000, false},
		{"limits.total_mm", in.Limits.Total, 1e-3, 1e4, true},
		{"limits.angular_distortion", in.Limits.Distortion, 1e-6, 0.1, true},
		{"limits.tilt_rad", in.Limits.Tilt, 1e-6, 0.1, true},
	}, faults)
	count("layers", len(in.Layers), 1, mostLayers, faults)
	count("stages", len(in.Stages), 1, mostStages, faults)
	count("neighbours", len(in.Neighbours), 0, mostNeighbours, faults)
	for i := range in.Layers {
		validateLayer(fmt.Sprintf("layers[%d].", i), &in.Layers[i], faults)
	}
	for i := range in.Stages {
		validateStage(fmt.Sprintf("stages[%d]", i), &in.Stages[i], faults)
	}
	for i, n := range in.Neighbours {
		check(fmt.Sprintf("neighbours[%d].", i), []row{
			{"distance_mm", n.Distance, 1, 1e6, false}, {"settlement_mm", n.Settlement, 0, 1e4, false},
		}, faults)
	}
}

func count(field string, n, least, most int, faults *limit.Faults) {
	if n < least || n > most {
		faults.Add(limit.Number, field, fmt.Sprintf("has %d entries, must have from %d to %d", n, least, most))
	}
}

func validateLayer(path string, l *Layer, faults *limit.Faults) {
	o := &l.Oedometer
	check(path, []row{
		{"thickness_mm", l.Thickness, 1, greatestSize, false},
		{"modulus_mpa", l.Modulus, 0.01, 1e6, true},
		{"poisson", l.Poisson, 0, 0.5, false},
		{"unit_weight_kn_m3", l.Weight, leastWeight, greatestWeight, true},
		{"n60", l.N60, 1, 200, true},
		{"cone_resistance_mpa", l.Cone, 0.01, 200, true},
		{"oedometer.compression_index", o.Compression, 1e-4, 10, true},
		{"oedometer.recompression_index", o.Recompression, 1e-5, 10, true},
		{"oedometer.void_ratio", o.Void, 0, 20, false},
		{"oedometer.preconsolidation_kpa", o.Preconsolidation, 0, 100, false},
	}, faults)
	switch {
	case o.Compression == 0 && (o.Recompression > 0 || o.Preconsolidation > 0):
		faults.Add(limit.Missing, path+"oedometer.compression_index", "is needed beside the other figures of the test")
	case o.Compression > 0 && o.Void == 0:
		faults.Add(limit.Missing, path+"oedometer.void_ratio", "is needed beside the compression index")
	case o.Recompression > o.Compression:
		faults.Add(limit.Conflict, path+"oedometer.recompression_index", fmt.Sprintf(
			"of %g is above the compression index of %g", o.Recompression, o.Compression))
	case o.Preconsolidation > 0 && o.Recompression == 0:
		faults.Add(limit.Missing, path+"oedometer.recompression_index", "is needed beside a preconsolidation pressure")
	}
}

func validateStage(path string, s *Stage, faults *limit.Faults) {
	check(path, []row{
		{".net_pressure_kpa", s.Net, 0, 100, false}, {".compression_kn", s.N, 0, geom.GreatestForce, false},
		{".above_mm", s.Above, 0, 1e4, false}, {".turn_x_rad", s.TurnX, 0, 1, false}, {".turn_y_rad", s.TurnY, 0, 1, false},
	}, faults)
	if s.Net > 0 && s.N > 0 {
		faults.Add(limit.Conflict, path, "has a net pressure and a force: give one of them")
	}
	faults.Range(path+".m_x_knm", s.Mx, -greatestMoment, greatestMoment, 1e6, " kNm")
	faults.Range(path+".m_y_knm", s.My, -greatestMoment, greatestMoment, 1e6, " kNm")
}
