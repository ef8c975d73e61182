package manifests

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/compose-spec/compose-go/v2/loader"
	"github.com/compose-spec/compose-go/v2/types"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/credentials/insecure"
	"sigs.k8s.io/yaml"
)

// compose reads deploy/compose.yaml as the tool does, which checks its schema.
func compose(t *testing.T) *types.Project {
	t.Helper()
	project, err := loader.LoadWithContext(t.Context(), types.ConfigDetails{
		WorkingDir:  filepath.Join(top, "deploy"),
		ConfigFiles: []types.ConfigFile{{Filename: filepath.Join(top, "deploy/compose.yaml")}},
	}, func(o *loader.Options) { o.SetProjectName("footward", true) })
	require.NoError(t, err)
	return project
}

func environment(s types.ServiceConfig) map[string]string {
	given := map[string]string{}
	for name, value := range s.Environment {
		given[name] = *value
	}
	return given
}

func TestComposeShutsTheServerIn(t *testing.T) {
	s, err := compose(t).GetService("footward")
	require.NoError(t, err)
	assert.True(t, s.ReadOnly)
	assert.Equal(t, []string{"ALL"}, s.CapDrop)
	assert.Equal(t, []string{"no-new-privileges:true"}, s.SecurityOpt)
	assert.False(t, s.Privileged)
	assert.FileExists(t, filepath.Join(s.Build.Context, s.Build.Dockerfile))

	given := environment(s)
	var aim int64
	require.NoError(t, size(given["GOMEMLIMIT"], &aim))
	room(t, aim, int64(s.MemLimit))
	drains(t, given, time.Duration(*s.StopGracePeriod))
	serves(t, given, insecure.NewCredentials(), func(server *exec.Cmd) { server.Env = append(server.Env, "GOMAXPROCS=2") })
}

// size reads a size as Go's runtime writes it, such as 432MiB.
func size(text string, into *int64) error {
	var bytes types.UnitBytes
	err := bytes.DecodeMapstructure(text)
	*into = int64(bytes)
	return err
}

func TestComposePublishesToThisMachineAlone(t *testing.T) {
	p := compose(t)
	var published []string
	for _, s := range p.Services {
		for _, at := range s.Ports {
			assert.Equal(t, "127.0.0.1", at.HostIP)
			published = append(published, at.Published)
		}
	}
	assert.ElementsMatch(t, []string{port(t, "grpc-address"), "9090"}, published)
}

// TestPrometheusOfComposeAsksTheServer reads the configuration that it mounts.
func TestPrometheusOfComposeAsksTheServer(t *testing.T) {
	s, err := compose(t).GetService("prometheus")
	require.NoError(t, err)
	var folder string
	for _, v := range s.Volumes {
		if v.Target == "/etc/prometheus" {
			folder = v.Source
			assert.True(t, v.ReadOnly)
		}
	}
	assert.Contains(t, s.Command, "--config.file=/etc/prometheus/prometheus.yml")
	text, err := os.ReadFile(filepath.Join(folder, "prometheus.yml"))
	require.NoError(t, err)
	var config struct {
		Rules  []string `json:"rule_files"`
		Scrape []struct {
			Static []struct {
				Targets []string `json:"targets"`
			} `json:"static_configs"`
		} `json:"scrape_configs"`
	}
	require.NoError(t, yaml.Unmarshal(text, &config))
	var targets []string
	for _, s := range config.Scrape {
		for _, c := range s.Static {
			targets = append(targets, c.Targets...)
		}
	}
	assert.Equal(t, []string{help(t)["metrics-address"]}, targets)
	server, err := compose(t).GetService("footward")
	require.NoError(t, err)
	assert.NotContains(t, environment(server), variable("metrics-address"), "so it is the default")
	assert.Equal(t, "service:footward", s.NetworkMode, "the same network, so the same 127.0.0.1")
	for _, r := range config.Rules {
		assert.FileExists(t, filepath.Join(folder, r))
	}
}
