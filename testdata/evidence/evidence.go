// Package evidence holds figures for the reading of tests, each with its source and
// provenance, which the kernel must give.
package evidence

import (
	_ "embed"

	"go.yaml.in/yaml/v3"
)

//go:embed loads.yaml
var loads []byte

// Figure is one figure with where it comes from.
type Figure struct {
	ID         string         `yaml:"id"`
	Source     string         `yaml:"source"`
	Provenance string         `yaml:"provenance"`
	Note       string         `yaml:"note"`
	Inputs     map[string]any `yaml:"inputs"`
	Expect     []float64      `yaml:"expect"`
	Unit       string         `yaml:"unit"`
	Tolerance  float64        `yaml:"tolerance"`
}

// Loads returns the figures of load tests.
func Loads() ([]Figure, error) {
	var file struct {
		Figures []Figure `yaml:"figures"`
	}
	err := yaml.Unmarshal(loads, &file)
	return file.Figures, err
}

// Numbers returns the numbers of an input by name.
func (f *Figure) Numbers(name string) (out []float64) {
	switch v := f.Inputs[name].(type) {
	case []any:
		for _, one := range v {
			out = append(out, number(one))
		}
	default:
		out = append(out, number(v))
	}
	return out
}

// Number returns the number of an input by name; 0 where there is none.
func (f *Figure) Number(name string) float64 { return f.Numbers(name)[0] }

func number(v any) float64 {
	switch v := v.(type) {
	case int:
		return float64(v)
	case float64:
		return v
	}
	return 0
}
