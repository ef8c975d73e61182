package manifests

import (
	"errors"
	"path/filepath"
	"testing"

	monitoring "github.com/prometheus-operator/prometheus-operator/pkg/apis/monitoring/v1"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	apps "k8s.io/api/apps/v1"
	autoscaling "k8s.io/api/autoscaling/v2"
	core "k8s.io/api/core/v1"
	networking "k8s.io/api/networking/v1"
	policy "k8s.io/api/policy/v1"
	"sigs.k8s.io/json"
	"sigs.k8s.io/kustomize/api/krusty"
	"sigs.k8s.io/kustomize/api/types"
	"sigs.k8s.io/kustomize/kyaml/filesys"
	"sigs.k8s.io/yaml"
)

// cluster is what one kustomization makes.
type cluster struct {
	deployment apps.Deployment
	service    core.Service
	scaler     autoscaling.HorizontalPodAutoscaler
	budget     policy.PodDisruptionBudget
	network    networking.NetworkPolicy
	monitor    monitoring.ServiceMonitor
}

// kustomizations are the folders under deploy/kubernetes that can be applied.
func kustomizations(t *testing.T) []string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(top, "deploy/kubernetes/*/kustomization.yaml"))
	require.NoError(t, err)
	var folders []string
	for _, p := range paths {
		folders = append(folders, filepath.Base(filepath.Dir(p)))
	}
	require.Contains(t, folders, "base")
	return folders
}

// kustomize builds a kustomization and decodes what comes out.
func kustomize(t *testing.T, folder string) *cluster {
	t.Helper()
	// As kubectl does it: nothing from outside the folder but other kustomizations.
	options := krusty.MakeDefaultOptions()
	options.LoadRestrictions = types.LoadRestrictionsRootOnly
	made, err := krusty.MakeKustomizer(options).Run(filesys.MakeFsOnDisk(), filepath.Join(top, "deploy/kubernetes", folder))
	require.NoError(t, err)
	c := &cluster{}
	into := map[string]any{
		"Deployment": &c.deployment, "Service": &c.service, "HorizontalPodAutoscaler": &c.scaler,
		"PodDisruptionBudget": &c.budget, "NetworkPolicy": &c.network, "ServiceMonitor": &c.monitor,
	}
	versions := map[string]string{
		"Deployment": "apps/v1", "Service": "v1", "HorizontalPodAutoscaler": "autoscaling/v2",
		"PodDisruptionBudget": "policy/v1", "NetworkPolicy": "networking.k8s.io/v1", "ServiceMonitor": "monitoring.coreos.com/v1",
	}
	for _, r := range made.Resources() {
		kind := r.GetKind()
		require.Contains(t, into, kind, "once, and of a known kind")
		text, err := r.AsYAML()
		require.NoError(t, err)
		require.NoError(t, decode(text, into[kind]), "%s\n%s", kind, text)
		assert.Equal(t, versions[kind], r.GetApiVersion())
		assert.Equal(t, "footward", r.GetName())
		delete(into, kind)
	}
	require.Empty(t, into, "missing")
	return c
}

// decode reads YAML as the Kubernetes API does under strict validation: capitals
// count, unlike in encoding/json, and nothing may be unknown or twice.
func decode(text []byte, into any) error {
	text, err := yaml.YAMLToJSONStrict(text)
	if err != nil {
		return err
	}
	odd, err := json.UnmarshalStrict(text, into)
	return errors.Join(append(odd, err)...)
}

// pod returns the pod's only container.
func (c *cluster) pod(t *testing.T) *core.Container {
	t.Helper()
	require.Len(t, c.deployment.Spec.Template.Spec.Containers, 1)
	return &c.deployment.Spec.Template.Spec.Containers[0]
}

// environment returns the variables that are given outright.
func (c *cluster) environment(t *testing.T) map[string]string {
	t.Helper()
	given := map[string]string{}
	for _, e := range c.pod(t).Env {
		if e.ValueFrom == nil {
			given[e.Name] = e.Value
		}
	}
	return given
}

// encrypted tells whether clients need a certificate.
func (c *cluster) encrypted(t *testing.T) bool {
	t.Helper()
	return c.environment(t)[variable("tls-cert")] != ""
}

// each runs a test on every kustomization.
func each(t *testing.T, f func(*testing.T, *cluster)) {
	t.Helper()
	for _, folder := range kustomizations(t) {
		t.Run(folder, func(t *testing.T) { f(t, kustomize(t, folder)) })
	}
}
