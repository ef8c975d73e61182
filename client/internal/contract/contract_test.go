package contract

import (
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protodesc"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/types/descriptorpb"
)

var update = flag.Bool("update", false, "write the contract into the packages for Python and Node")

func contractWords(t *testing.T) words {
	t.Helper()
	w, err := readWords("../../../proto/footward/v1")
	require.NoError(t, err)
	return w
}

// TestPackagesHoldTheContract holds the files of the packages for Python and Node to
// the contract. With -update it writes them.
func TestPackagesHoldTheContract(t *testing.T) {
	w := contractWords(t)
	descriptors, err := Descriptors()
	require.NoError(t, err)
	methods, err := Methods()
	require.NoError(t, err)
	for name, want := range map[string]string{
		"python/footward/contract.binpb": string(descriptors),
		"python/footward/methods.json":   string(methods),
		"python/footward/requests.py":    PythonRequests(w),
		"python/footward/responses.py":   PythonResponses(w),
		"node/contract.binpb":            string(descriptors),
		"node/methods.json":              string(methods),
		"node/methods.d.ts":              TypeScriptMethods(w),
		"node/requests.d.ts":             TypeScriptRequests(w),
		"node/responses.d.ts":            TypeScriptResponses(w),
	} {
		path := filepath.Join("../..", name)
		if *update {
			require.NoError(t, os.WriteFile(path, []byte(want), 0o644))
		}
		got, err := os.ReadFile(path)
		require.NoError(t, err)
		assert.True(t, string(got) == want, "client/%s is stale: run .ci/generate", name)
	}
}

// TestDescriptorsStandAlone: a client can build every message of them, and nothing
// is left of the rules on values.
func TestDescriptorsStandAlone(t *testing.T) {
	text, err := Descriptors()
	require.NoError(t, err)
	set := &descriptorpb.FileDescriptorSet{}
	require.NoError(t, proto.Unmarshal(text, set))
	files, err := protodesc.NewFiles(set)
	require.NoError(t, err)
	for _, m := range methods() {
		got, err := files.FindDescriptorByName(m.FullName())
		require.NoError(t, err)
		method, ok := got.(protoreflect.MethodDescriptor)
		require.True(t, ok)
		assert.Equal(t, m.Input().Fields().Len(), method.Input().Fields().Len())
		assert.Equal(t, m.Output().FullName(), method.Output().FullName())
	}
	assert.NotContains(t, string(text), "buf.validate")
}

// TestEveryMethodHasItsName: clients call methods by name without the service, and
// find one for every kind of check.
func TestEveryMethodHasItsName(t *testing.T) {
	text, err := Methods()
	require.NoError(t, err)
	var got struct {
		Kinds   map[string]string
		Methods map[string]struct{}
	}
	require.NoError(t, json.Unmarshal(text, &got))
	assert.Len(t, got.Methods, len(methods()), "two services have a method of one name")
	for kind, name := range got.Kinds {
		assert.Contains(t, got.Methods, name, kind)
	}
}

// TestEveryWordOfTheContractIsFound: the contract explains every message, field,
// value and method, so a gap is one of the reader.
func TestEveryWordOfTheContractIsFound(t *testing.T) {
	w := contractWords(t)
	for _, p := range []*part{requests(), responses()} {
		for _, m := range p.messages {
			assert.NotEmpty(t, w[m.FullName()], m.FullName())
			for i := range m.Fields().Len() {
				name := m.Fields().Get(i).FullName()
				assert.NotEmpty(t, w[name], name)
			}
		}
		for _, e := range p.enums {
			for _, v := range values(e) {
				assert.NotEmpty(t, w[v.FullName()], v.FullName())
			}
		}
	}
	for _, m := range methods() {
		assert.NotEmpty(t, w[m.FullName()], m.FullName())
	}
}
