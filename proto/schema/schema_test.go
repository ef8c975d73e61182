package schema_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v3"
	"google.golang.org/protobuf/encoding/protojson"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	"footward.example/footward/client/footward/proof"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/proto/schema"
	"footward.example/footward/testdata/published"
)

var update = flag.Bool("update", false, "write the schemas of files anew")

// TestFilesAreCurrent holds the files that editors read to the whole document.
func TestFilesAreCurrent(t *testing.T) {
	for _, kind := range []string{schema.Check, "combine", "size", "compare", "tests", "reading"} {
		want, err := schema.File(kind)
		require.NoError(t, err)
		name := kind + ".schema.json"
		if *update {
			require.NoError(t, os.WriteFile(name, want, 0o644))
		}
		got, err := os.ReadFile(name)
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, got), "%s is not current: run .ci/generate", name)
	}
}

// TestEveryCallHasAPath: and what is no call is a document, and every reference leads somewhere.
func TestEveryCallHasAPath(t *testing.T) {
	var document struct {
		Paths      map[string]json.RawMessage
		Components map[string]map[string]json.RawMessage
	}
	require.NoError(t, json.Unmarshal(schema.OpenAPI(), &document))
	paths := map[string]bool{}
	for path, operations := range document.Paths {
		paths[path] = bytes.Contains(operations, []byte(`"post"`))
	}
	calls := map[string]bool{"/healthz": false, "/version": false, "/openapi.json": false}
	protoregistry.GlobalFiles.RangeFilesByPackage("footward.v1", func(f protoreflect.FileDescriptor) bool {
		for i := range f.Services().Len() {
			s := f.Services().Get(i)
			for j := range s.Methods().Len() {
				calls["/"+string(s.FullName())+"/"+string(s.Methods().Get(j).Name())] = true
			}
		}
		return true
	})
	assert.Equal(t, calls, paths)
	for _, part := range bytes.Split(schema.OpenAPI(), []byte(`"$ref": "#/components/`))[1:] {
		name, _, _ := strings.Cut(string(part), `"`)
		group, name, _ := strings.Cut(name, "/")
		assert.Contains(t, document.Components[group], name)
	}
}

// TestEveryFieldIsDescribed: also in the schemas stand unit, sign and default.
func TestEveryFieldIsDescribed(t *testing.T) {
	var document struct {
		Components struct {
			Schemas map[string]struct {
				Description string
				Properties  map[string]struct{ Description string }
				Enum        []string
				Meanings    []string `json:"enumDescriptions"`
			}
		}
	}
	require.NoError(t, json.Unmarshal(schema.OpenAPI(), &document))
	for name, s := range document.Components.Schemas {
		assert.NotEmpty(t, s.Description, name)
		assert.Len(t, s.Meanings, len(s.Enum), name)
		for field, f := range s.Properties {
			assert.NotEmpty(t, f.Description, "%s.%s", name, field)
		}
		for i, meaning := range s.Meanings {
			assert.NotEmpty(t, meaning, s.Enum[i])
			assert.Contains(t, s.Description, s.Enum[i]+": ")
		}
	}
	assert.Contains(t, document.Components.Schemas["ForcesAtFoot"].Properties["n_kn"].Description, "[kN]: positive pulls up")
}

var prepared = map[string]*jsonschema.Schema{}

// compiled is the schema of a kind of file.
func compiled(t testing.TB, kind string) *jsonschema.Schema {
	t.Helper()
	if prepared[kind] == nil {
		text, err := schema.File(kind)
		require.NoError(t, err)
		prepared[kind] = compile(t, text)
	}
	return prepared[kind]
}

// compile holds a schema to the rules of JSON Schema, and prepares it.
func compile(t testing.TB, text []byte) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	require.NoError(t, c.AddResource("file:///schema.json", value(t, text)))
	s, err := c.Compile("file:///schema.json")
	require.NoError(t, err)
	return s
}

// value is a JSON text as the validator takes it.
func value(t testing.TB, text []byte) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	require.NoError(t, err)
	return v
}

// asWritten is a message with the fields under their names in the contract.
func asWritten(t testing.TB, m proto.Message) any {
	t.Helper()
	text, err := protojson.MarshalOptions{UseProtoNames: true}.Marshal(m)
	require.NoError(t, err)
	return value(t, text)
}

// TestRequestFilesFitTheirSchema: each file by the schema that its first line names,
// and the request of every published figure.
func TestRequestFilesFitTheirSchema(t *testing.T) {
	kinds := map[string]string{"actions.yaml": "combine", "sizes.yaml": "size", "compare.yaml": "compare", "tests.yaml": "tests", "reading.yaml": "reading"}
	for _, pattern := range []string{"../../testdata/demo*/*.yaml", "../../client/footward/example/*.yaml"} {
		names, err := filepath.Glob(pattern)
		require.NoError(t, err)
		require.NotEmpty(t, names)
		for _, name := range names {
			kind := kinds[filepath.Base(name)]
			if kind == "" {
				kind = schema.Check
			}
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			var content any
			require.NoError(t, yaml.Unmarshal(text, &content), name)
			asJSON, err := json.Marshal(content)
			require.NoError(t, err)
			assert.NoError(t, compiled(t, kind).Validate(value(t, asJSON)), name)
		}
	}
	sources, err := proof.Read(published.Files)
	require.NoError(t, err)
	checks := compiled(t, schema.Check)
	list := &footwardv1.CheckManyRequest{}
	for i := range sources {
		for j := range sources[i].Figures {
			item, err := sources[i].Figures[j].Item()
			require.NoError(t, err)
			assert.NoError(t, checks.Validate(asWritten(t, item)), "%s %s", sources[i].Source, sources[i].Figures[j].ID)
			list.Items = append(list.Items, item)
		}
	}
	require.Greater(t, len(list.GetItems()), 100)
	assert.NoError(t, checks.Validate(asWritten(t, list)))
}

// TestEveryKindOfFileHasASchema: of a single check too, which takes it alone.
func TestEveryKindOfFileHasASchema(t *testing.T) {
	kinds, err := schema.Kinds()
	require.NoError(t, err)
	assert.Len(t, kinds, 16)
	for _, kind := range kinds {
		compiled(t, kind)
	}
	weld := map[string]any{"bearing": map[string]any{}}
	assert.Error(t, compiled(t, "weld").Validate(weld))
	_, err = schema.File("bolt")
	assert.ErrorContains(t, err, "no kind of file")
}
