// Package proof reads figures that were printed elsewhere or worked by hand, asks
// the service for the same, and sets both side by side.
package proof

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"path"
	"regexp"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v3"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Source is one file of figures.
type Source struct {
	File       string `yaml:"-"`
	Source     string `yaml:"source"`
	Edition    string `yaml:"edition"`
	Provenance string `yaml:"provenance"`
	Note       string `yaml:"note"`
	// Constructed figures were worked out by hand for lack of printed ones.
	Constructed bool     `yaml:"constructed"`
	Figures     []Figure `yaml:"figures"`
}

// Figure is one request in the source's own units, and what the source gives.
type Figure struct {
	ID         string         `yaml:"id"`
	Place      string         `yaml:"place"`
	Provenance string         `yaml:"provenance"` // where it differs from the file's
	Note       string         `yaml:"note"`
	Request    map[string]any `yaml:"request"`
	Expect     []Value        `yaml:"expect"`
}

// Value is one figure of a limit state: what it shows, or a step of the derivation
// or a factor that it rests on.
type Value struct {
	State     string  `yaml:"state"`
	What      string  `yaml:"what"` // demand, resistance, utilization, required_size
	Symbol    string  `yaml:"symbol"`
	Value     float64 `yaml:"value"`
	Unit      string  `yaml:"unit"`
	Tolerance float64 `yaml:"tolerance"` // in Unit
}

const (
	inch = 25.4            // mm; exact
	kip  = 4448.2216152605 // N; exact
)

// perUnit is how many N, mm and MPa a unit of a source holds.
var perUnit = map[string]float64{
	"": 1, "-": 1, "mm": 1, "N": 1, "MPa": 1, "mm2": 1, "mm3": 1, "mm4": 1, "N/mm": 1, "Nmm": 1, "Nmm/mm": 1,
	"kN": 1e3, "kNm": 1e6, "kPa": 1e-3, "kN/m": 1, "kNm/m": 1e3, "kN/mm": 1e3, "cm": 10, "m": 1e3,
	"in": inch, "ft": 12 * inch, "in2": inch * inch, "in3": inch * inch * inch, "in4": inch * inch * inch * inch,
	"kip": kip, "lbf": kip / 1e3, "ksi": kip / (inch * inch), "psi": kip / 1e3 / (inch * inch),
	"kip-in": kip * inch, "kip-ft": 12 * kip * inch, "kip/in": kip / inch, "kip/ft": kip / (12 * inch),
	"kip-in/in": kip, "in4/in": inch * inch * inch, "1/in": 1 / inch,
}

// fieldUnit is the unit in which a field of the contract counts.
func fieldUnit(field string) (float64, bool) {
	for ending, of := range map[string]float64{
		"_mm": 1, "_mm2": 1, "_kn": 1e3, "_knm": 1e6, "_mpa": 1, "_kpa": 1e-3,
	} {
		if strings.HasSuffix(field, ending) {
			return of, true
		}
	}
	return 0, false
}

// Read returns the sources of a folder, in the order of their files.
func Read(folder fs.FS) ([]Source, error) {
	files, err := fs.Glob(folder, "*.yaml")
	if err != nil {
		return nil, err
	}
	out := make([]Source, len(files))
	for i, file := range files {
		text, err := fs.ReadFile(folder, file)
		if err != nil {
			return nil, err
		}
		d := yaml.NewDecoder(strings.NewReader(string(text)))
		d.KnownFields(true)
		if err := d.Decode(&out[i]); err != nil {
			return nil, fmt.Errorf("%s: %w", file, err)
		}
		out[i].File = path.Base(file)
	}
	return out, nil
}

// Item returns the request of a figure, asking for the derivation.
func (f *Figure) Item() (*footwardv1.CheckItem, error) {
	request, err := inContract("", f.Request)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.ID, err)
	}
	text, err := json.Marshal(request)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", f.ID, err)
	}
	m := &footwardv1.CheckItem{}
	if err := protojson.Unmarshal(text, m); err != nil {
		return nil, fmt.Errorf("%s: %w", f.ID, err)
	}
	Detail(m, footwardv1.Detail_DETAIL_DERIVATION)
	return m, nil
}

// Detail sets the detail that an item asks for.
func Detail(i *footwardv1.CheckItem, d footwardv1.Detail) {
	m := i.ProtoReflect()
	if check := m.WhichOneof(m.Descriptor().Oneofs().ByName("check")); check != nil {
		r := m.Mutable(check).Message()
		r.Set(r.Descriptor().Fields().ByName("detail"), protoreflect.ValueOfEnum(d.Number()))
	}
}

// Family is a family of codes.
type Family string

// The families.
const (
	Eurocode Family = "Eurocode"
	US       Family = "US"
)

// FamilyOf returns the family of a basis.
func FamilyOf(b footwardv1.Basis) Family {
	if b == footwardv1.Basis_BASIS_EUROCODE {
		return Eurocode
	}
	return US
}

// Basis returns the design basis of an item.
func Basis(i *footwardv1.CheckItem) footwardv1.Basis {
	m := i.ProtoReflect()
	check := m.WhichOneof(m.Descriptor().Oneofs().ByName("check"))
	if check == nil {
		return footwardv1.Basis_BASIS_UNSPECIFIED
	}
	r, ok := m.Get(check).Message().Interface().(interface {
		GetBasis() *footwardv1.DesignBasis
	})
	if !ok {
		return footwardv1.Basis_BASIS_UNSPECIFIED
	}
	return r.GetBasis().Basis()
}

var quantity = regexp.MustCompile(`^(-?[0-9.]+(?:/[0-9.]+)?) ([a-z][A-Za-z0-9/-]*)$`)

// inContract turns every text such as "12.7 in" into the unit of its field.
func inContract(field string, v any) (any, error) {
	switch v := v.(type) {
	case map[string]any:
		out := make(map[string]any, len(v))
		for k, w := range v {
			x, err := inContract(k, w)
			if err != nil {
				return nil, err
			}
			out[k] = x
		}
		return out, nil
	case []any:
		out := make([]any, len(v))
		for i, w := range v {
			x, err := inContract(field, w)
			if err != nil {
				return nil, err
			}
			out[i] = x
		}
		return out, nil
	case string:
		of, ok := fieldUnit(field)
		m := quantity.FindStringSubmatch(v)
		if !ok || m == nil {
			return v, nil
		}
		from, known := perUnit[m[2]]
		if !known {
			return nil, fmt.Errorf("%s: unit of %q is not known", field, v)
		}
		n, err := number(m[1])
		return n * from / of, err
	}
	return v, nil
}

func number(text string) (float64, error) {
	over, under, fraction := strings.Cut(text, "/")
	v, err := strconv.ParseFloat(over, 64)
	if err != nil || !fraction {
		return v, err
	}
	w, err := strconv.ParseFloat(under, 64)
	return v / w, err
}

// Computed returns the value as the service answers it, in the unit of the source.
func (v *Value) Computed(r *footwardv1.CheckResult) (float64, error) {
	of, known := perUnit[v.Unit]
	if !known {
		return math.NaN(), fmt.Errorf("unit %q is not known", v.Unit)
	}
	got, err := v.found(r)
	return got / of, err
}

// found returns the value in N, mm and MPa.
func (v *Value) found(r *footwardv1.CheckResult) (float64, error) {
	if v.Symbol != "" {
		for _, s := range r.GetDerivation() {
			if s.GetSymbol() == v.Symbol {
				return s.GetValue(), nil
			}
		}
		for _, f := range r.GetFactors() {
			if f.GetSymbol() == v.Symbol {
				return f.GetValue(), nil
			}
		}
		return math.NaN(), fmt.Errorf("no step %s", v.Symbol)
	}
	for _, s := range r.GetLimitStates() {
		if s.GetId() != v.State {
			continue
		}
		of := perUnit[s.GetUnit()]
		switch {
		case v.What == "demand":
			return s.GetDemand() * of, nil
		case v.What == "resistance" && s.Resistance != nil:
			return s.GetResistance() * of, nil
		case v.What == "utilization" && s.Utilization != nil:
			return s.GetUtilization(), nil
		case v.What == "required_size" && s.GetRequiredSize() != nil:
			return s.GetRequiredSize().GetValue(), nil
		}
		return math.NaN(), fmt.Errorf("%s has no %s: %s %s", v.State, v.What, s.GetVerdict(), s.GetReason())
	}
	return math.NaN(), fmt.Errorf("no limit state %s", v.State)
}
