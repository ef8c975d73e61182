package manifests

import (
	"context"
	"debug/elf"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/moby/buildkit/client/llb/sourceresolver"
	"github.com/moby/buildkit/frontend/dockerfile/dockerfile2llb"
	"github.com/moby/buildkit/frontend/dockerfile/linter"
	"github.com/moby/buildkit/frontend/dockerfile/parser"
	dockerspec "github.com/moby/docker-image-spec/specs-go/v1"
	"github.com/opencontainers/go-digest"
	ocispecs "github.com/opencontainers/image-spec/specs-go/v1"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/credentials/insecure"
)

// noRegistry answers for every image that a build starts from, so that a build
// can be planned without the network.
type noRegistry struct{ asked []string }

// ResolveImageConfig implements llb.ImageMetaResolver.
func (r *noRegistry) ResolveImageConfig(_ context.Context, ref string, _ sourceresolver.Opt) (string, digest.Digest, []byte, error) {
	r.asked = append(r.asked, ref)
	config, err := json.Marshal(ocispecs.Image{Platform: ocispecs.Platform{OS: "linux", Architecture: "amd64"}})
	return ref, digest.FromBytes(config), config, err
}

// plan plans the build of deploy/Containerfile and returns the image's
// configuration. What the linter finds fails the test.
func plan(t *testing.T) *dockerspec.DockerOCIImage {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(top, "deploy/Containerfile"))
	require.NoError(t, err)
	registry := &noRegistry{}
	options := dockerfile2llb.ConvertOpt{
		MetaResolver:   registry,
		TargetPlatform: &ocispecs.Platform{OS: "linux", Architecture: "amd64"},
		Warn: func(rule, description, _, message string, at []parser.Range) {
			t.Errorf("Containerfile: %s: %s (%s) %v", rule, message, description, at)
		},
	}
	options.LinterConfig = &linter.Config{ExperimentalAll: true}
	planned, err := dockerfile2llb.Dockerfile2LLB(t.Context(), text, options)
	require.NoError(t, err)
	require.Len(t, registry.asked, 1, "the last stage starts from nothing")
	assert.Contains(t, registry.asked[0], "golang:1.26")
	return planned.Image
}

func TestImageRunsTheServerAsNobody(t *testing.T) {
	image := plan(t).Config
	assert.Equal(t, "65532:65532", image.User, "no root, and a number, so that Kubernetes can tell")
	assert.Equal(t, []string{"/footward"}, image.Entrypoint)
	assert.Empty(t, image.Cmd)
	assert.Empty(t, image.Shell)
	var ports []string
	for p := range image.ExposedPorts {
		ports = append(ports, p)
	}
	assert.ElementsMatch(t, []string{port(t, "grpc-address") + "/tcp", port(t, "metrics-address") + "/tcp"}, ports)
}

func TestGoOfTheContainerIsThatOfTheModule(t *testing.T) {
	module, err := os.ReadFile(filepath.Join(top, "go.mod"))
	require.NoError(t, err)
	container, err := os.ReadFile(filepath.Join(top, "deploy/Containerfile"))
	require.NoError(t, err)
	_, version, _ := strings.Cut(string(container), "ARG GO_VERSION=")
	version, _, _ = strings.Cut(version, "\n")
	assert.Contains(t, string(module), "\ngo "+version+".")
}

func TestServerIsStatic(t *testing.T) {
	program, err := elf.Open(binary)
	require.NoError(t, err)
	defer func() { _ = program.Close() }()
	libraries, err := program.ImportedLibraries()
	require.NoError(t, err)
	assert.Empty(t, libraries)
	for _, p := range program.Progs {
		assert.NotEqual(t, elf.PT_INTERP, p.Type, "asks for a loader that the image does not hold")
	}
}

// TestServerNeedsNoOtherFile starts the server in a folder that holds nothing
// else as its root, as the image's user: what the image will give it.
func TestServerNeedsNoOtherFile(t *testing.T) {
	if os.Geteuid() != 0 {
		missing(t, "changing the root folder needs root")
	}
	serves(t, nil, insecure.NewCredentials(), func(server *exec.Cmd) {
		server.Dir, server.Path = "/", "/footward"
		server.SysProcAttr = &syscall.SysProcAttr{
			Chroot:     filepath.Dir(binary),
			Credential: &syscall.Credential{Uid: 65532, Gid: 65532},
		}
	})
}
