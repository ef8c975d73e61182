package reading

import (
	"bufio"
	"encoding/csv"
	"fmt"
	"io"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"google.golang.org/protobuf/reflect/protoreflect"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// table is CSV with a heading, separated by commas or semicolons as the heading is.
type table struct {
	columns []string
	rows    [][]string
}

func tableOf(from io.Reader) (t table, err error) {
	text, err := io.ReadAll(bufio.NewReader(from))
	if err != nil {
		return t, err
	}
	whole := strings.TrimPrefix(string(text), "\ufeff") // which spreadsheets write first
	heading, _, _ := strings.Cut(whole, "\n")
	r := csv.NewReader(strings.NewReader(whole))
	r.TrimLeadingSpace, r.FieldsPerRecord = true, -1
	if strings.Contains(heading, ";") {
		r.Comma = ';'
	}
	for {
		row, err := r.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return t, err
		}
		for i := range row {
			row[i] = strings.TrimSpace(row[i])
		}
		line, _ := r.FieldPos(0)
		switch {
		case t.columns == nil:
			t.columns = row
		case len(row) != len(t.columns):
			return t, fmt.Errorf("line %d has %d fields, the heading has %d; a decimal comma? Write 3.6, not 3,6", line, len(row), len(t.columns))
		default:
			t.rows = append(t.rows, row)
		}
	}
	if len(t.rows) == 0 {
		return t, fmt.Errorf("there are no rows below a heading")
	}
	for i, name := range t.columns {
		if slices.Contains(t.columns[:i], name) {
			return t, fmt.Errorf("the column %q stands twice", name)
		}
	}
	return t, nil
}

var decimalComma = regexp.MustCompile(`^[-+]?\d+,\d+$`)

func number(text string) (float64, error) {
	if decimalComma.MatchString(text) {
		return 0, fmt.Errorf("%s has a decimal comma: write %s", text, strings.Replace(text, ",", ".", 1))
	}
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		return 0, fmt.Errorf("%q is no number", text)
	}
	return v, nil
}

// set puts a text into a field; enums go by their names, also without what all share.
func set(m protoreflect.Message, f protoreflect.FieldDescriptor, text string) error {
	switch f.Kind() {
	case protoreflect.StringKind:
		m.Set(f, protoreflect.ValueOfString(text))
	case protoreflect.DoubleKind:
		v, err := number(text)
		if err != nil {
			return err
		}
		m.Set(f, protoreflect.ValueOfFloat64(v))
	case protoreflect.EnumKind:
		all := f.Enum().Values()
		word := strings.ToUpper(strings.NewReplacer(" ", "_", "-", "_").Replace(text))
		var known []string
		shared := strings.TrimSuffix(string(all.Get(0).Name()), "UNSPECIFIED")
		for i := range all.Len() {
			name := string(all.Get(i).Name())
			if i > 0 && (name == word || name == shared+word) {
				m.Set(f, protoreflect.ValueOfEnum(all.Get(i).Number()))
				return nil
			}
			known = append(known, strings.ToLower(strings.TrimPrefix(name, shared)))
		}
		return fmt.Errorf("%q is none of %s", text, strings.Join(known[1:], ", "))
	}
	return nil
}

// fill puts the named columns of a row into a message; what is empty is left out.
func (t *table) fill(m protoreflect.Message, row int, columns []int) error {
	for _, i := range columns {
		text := t.rows[row][i]
		if text == "" {
			continue
		}
		if err := set(m, m.Descriptor().Fields().ByName(protoreflect.Name(t.columns[i])), text); err != nil {
			return fmt.Errorf("row %d, %s: %w", row+1, t.columns[i], err)
		}
	}
	return nil
}

// Tests reads load tests from a table: a test on each line, columns by the names of
// LoadTest.
func Tests(from io.Reader) ([]*footwardv1.LoadTest, error) {
	t, err := tableOf(from)
	if err != nil {
		return nil, err
	}
	known := (&footwardv1.LoadTest{}).ProtoReflect().Descriptor().Fields()
	var columns []int
	for i, name := range t.columns {
		if known.ByName(protoreflect.Name(name)) == nil {
			return nil, fmt.Errorf("the column %q is none of %s", name, strings.Join(fieldNames(known), ", "))
		}
		columns = append(columns, i)
	}
	out := make([]*footwardv1.LoadTest, len(t.rows))
	for i := range t.rows {
		out[i] = &footwardv1.LoadTest{}
		if err := t.fill(out[i].ProtoReflect(), i, columns); err != nil {
			return nil, err
		}
	}
	return out, nil
}

func fieldNames(all protoreflect.FieldDescriptors) (out []string) {
	for i := range all.Len() {
		out = append(out, string(all.Get(i).Name()))
	}
	return out
}

// gauge is the column of a gauge: settlement_1_mm and so on, or settlement_mm alone.
var gauge = regexp.MustCompile(`^settlement(_\d+)?_mm$`)

// Stages reads the stages of a load test from a table: a reading on each line. Rows
// of one number in the column stage are one stage.
func Stages(from io.Reader) ([]*footwardv1.TestStage, error) {
	t, err := tableOf(from)
	if err != nil {
		return nil, err
	}
	number := slices.Index(t.columns, "stage")
	var gauges, ofStage, ofReading []int
	for i, name := range t.columns {
		switch {
		case i == number:
		case gauge.MatchString(name):
			gauges = append(gauges, i)
		case name == "phase" || name == "load_kn":
			ofStage = append(ofStage, i)
		case name == "minutes":
			ofReading = append(ofReading, i)
		default:
			return nil, fmt.Errorf("the column %q is none of stage, phase, load_kn, minutes, settlement_mm, settlement_1_mm, settlement_2_mm and so on", name)
		}
	}
	if number < 0 || len(gauges) == 0 {
		return nil, fmt.Errorf("the columns stage and settlement_mm are needed")
	}
	var out []*footwardv1.TestStage
	for i, row := range t.rows {
		if i == 0 || row[number] != t.rows[i-1][number] {
			out = append(out, &footwardv1.TestStage{})
		}
		stage, r := out[len(out)-1], &footwardv1.TestReading{}
		load := stage.GetLoadKn()
		first := len(stage.GetReadings()) == 0
		if err := t.fill(stage.ProtoReflect(), i, ofStage); err != nil {
			return nil, err
		}
		if !first { // the stage keeps its first load, a reading its own
			r.LoadKn, stage.LoadKn = stage.GetLoadKn(), load
		}
		if err := t.fill(r.ProtoReflect(), i, ofReading); err != nil {
			return nil, err
		}
		if err := t.settlements(r, i, gauges); err != nil {
			return nil, err
		}
		stage.Readings = append(stage.Readings, r)
	}
	return out, nil
}

func (t *table) settlements(r *footwardv1.TestReading, row int, gauges []int) error {
	for _, g := range gauges {
		v, err := number(t.rows[row][g])
		if err != nil {
			return fmt.Errorf("row %d, %s: %w", row+1, t.columns[g], err)
		}
		r.SettlementsMm = append(r.SettlementsMm, v)
	}
	return nil
}
