// Package schema holds the contract in the words of OpenAPI and JSON Schema, for
// programs that know these: clients over HTTP, and editors that complete and check
// request files.
//
// The documents are generated from the contract by .ci/generate. They refuse what a
// rule of a field refuses: ranges, counts, what is required, names of enums, unknown
// fields. They are narrower than the service in spelling alone: fields by the names of
// the contract, numbers as numbers, enums by name, nothing null.
package schema

import (
	_ "embed"
	"encoding/json"
	"fmt"
	"maps"
	"net/http"
	"regexp"
	"slices"
	"strings"
)

//go:embed openapi.json
var openAPI []byte

// OpenAPI returns the OpenAPI 3.1 document of the service's calls as JSON over HTTP.
func OpenAPI() []byte { return slices.Clone(openAPI) }

// ServeHTTP answers with the OpenAPI document.
func ServeHTTP(w http.ResponseWriter, _ *http.Request) {
	w.Header().Set("Content-Type", "application/json")
	_, _ = w.Write(openAPI)
}

// Check is the kind of a file that holds checks of any kind.
const Check = "check"

const (
	item = "CheckItem"
	refs = "#/components/schemas/"
)

// requests are the messages of files that hold one request.
var requests = map[string]string{
	"combine": "CombineActionsRequest", "size": "SizeColumnBaseRequest", "compare": "CompareFootingsRequest",
	"tests": "AssessLoadTestsRequest", "reading": "ReadLoadTestRequest",
}

// message is the schema of a message or enum. What is not looked into stays as it is
// written.
type message = json.RawMessage

// definitions returns the schema of every message and enum by name, and of every
// check by its field in CheckItem.
func definitions() (all, checks map[string]message, err error) {
	var document struct {
		Components struct {
			Schemas map[string]message `json:"schemas"`
		} `json:"components"`
	}
	if err := json.Unmarshal(openAPI, &document); err != nil {
		return nil, nil, fmt.Errorf("the OpenAPI document: %w", err)
	}
	var choice struct {
		Properties map[string]message `json:"properties"`
	}
	if err := json.Unmarshal(document.Components.Schemas[item], &choice); err != nil {
		return nil, nil, fmt.Errorf("%s of the OpenAPI document: %w", item, err)
	}
	return document.Components.Schemas, choice.Properties, nil
}

// Kinds returns every kind of file that File knows, sorted.
func Kinds() ([]string, error) {
	_, checks, err := definitions()
	kinds := slices.Concat(slices.Collect(maps.Keys(checks)), slices.Collect(maps.Keys(requests)), []string{Check})
	slices.Sort(kinds)
	return kinds, err
}

// File returns the JSON Schema of a request file. The kind is check for a file with
// checks of any kind, the field of a check in CheckItem, such as plate_bending, for
// one with this check alone, or combine, size, compare, tests or reading.
func File(kind string) ([]byte, error) {
	all, checks, err := definitions()
	if err != nil {
		return nil, err
	}
	root := map[string]message{}
	switch _, single := checks[kind]; {
	case requests[kind] != "":
		err = json.Unmarshal(all[requests[kind]], &root)
	case single:
		root, err = oneOf(map[string]message{kind: checks[kind]})
	case kind == Check:
		checks["items"] = message(several)
		root, err = oneOf(checks)
	default:
		return nil, fmt.Errorf("there is no kind of file %q", kind)
	}
	if err != nil {
		return nil, err
	}
	used := map[string]message{}
	gather(used, root["properties"], all)
	root["$schema"] = message(`"https://json-schema.org/draft/2020-12/schema"`)
	if root["$defs"], err = json.Marshal(used); err != nil {
		return nil, err
	}
	text, err := json.MarshalIndent(root, "", " ")
	return []byte(strings.ReplaceAll(string(text), refs, "#/$defs/") + "\n"), err
}

// several is the list that a file may hold in place of one check.
const several = `{"description": "Several checks, of any kind, mixed.", "type": "array", "minItems": 1, "items": {"$ref": "` + refs + item + `"}}`

// oneOf is the schema of a file that holds one of the fields.
func oneOf(fields map[string]message) (map[string]message, error) {
	var one []string
	for _, name := range slices.Sorted(maps.Keys(fields)) {
		one = append(one, fmt.Sprintf(`{"required": [%q]}`, name))
	}
	properties, err := json.Marshal(fields)
	return map[string]message{
		"type": message(`"object"`), "properties": properties, "additionalProperties": message("false"),
		"oneOf": message("[" + strings.Join(one, ",") + "]"),
	}, err
}

var ref = regexp.MustCompile(`"\$ref": ?"` + refs + `(\w+)"`)

// gather puts into used the definitions that a part refers to.
func gather(used map[string]message, part message, all map[string]message) {
	for _, m := range ref.FindAllSubmatch(part, -1) {
		name := string(m[1])
		if _, has := used[name]; !has {
			used[name] = all[name]
			gather(used, all[name], all)
		}
	}
}
