package manifests

import (
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/grpc/credentials/insecure"
	apps "k8s.io/api/apps/v1"
	autoscaling "k8s.io/api/autoscaling/v2"
	core "k8s.io/api/core/v1"
	networking "k8s.io/api/networking/v1"
	"k8s.io/apimachinery/pkg/api/resource"
	meta "k8s.io/apimachinery/pkg/apis/meta/v1"
	"k8s.io/apimachinery/pkg/labels"
	"sigs.k8s.io/kustomize/api/types"
)

func TestPodIsShutIn(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		p, at := c.deployment.Spec.Template.Spec, c.pod(t)
		require.NotNil(t, p.SecurityContext)
		assert.True(t, *p.SecurityContext.RunAsNonRoot)
		assert.Equal(t, fmt.Sprintf("%d:%d", *p.SecurityContext.RunAsUser, *p.SecurityContext.RunAsGroup), plan(t).Config.User)
		assert.Equal(t, core.SeccompProfileTypeRuntimeDefault, p.SecurityContext.SeccompProfile.Type)
		assert.False(t, *p.AutomountServiceAccountToken)
		assert.False(t, p.HostNetwork || p.HostPID || p.HostIPC)
		assert.True(t, *at.SecurityContext.ReadOnlyRootFilesystem)
		assert.False(t, *at.SecurityContext.AllowPrivilegeEscalation)
		assert.Nil(t, at.SecurityContext.Privileged)
		assert.Equal(t, &core.Capabilities{Drop: []core.Capability{"ALL"}}, at.SecurityContext.Capabilities)
		assert.Empty(t, at.Command, "the image's own")
		assert.Contains(t, at.Image, "/footward:")
	})
}

// TestNoVariableOfAnotherServiceReachesTheServer, which refuses what begins with
// its prefix and names no setting.
func TestNoVariableOfAnotherServiceReachesTheServer(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		require.NotNil(t, c.deployment.Spec.Template.Spec.EnableServiceLinks)
		assert.False(t, *c.deployment.Spec.Template.Spec.EnableServiceLinks)
	})
	server := exec.CommandContext(t.Context(), binary)
	server.Env = []string{"FOOTWARD_PORT=tcp://10.0.0.1:50061"}
	out, err := server.CombinedOutput()
	assert.Error(t, err)
	assert.Contains(t, string(out), "FOOTWARD_PORT names no setting")
}

func TestGoKeepsWithinThePod(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		at, from := c.pod(t), map[string]string{}
		for _, e := range at.Env {
			if e.ValueFrom != nil && e.ValueFrom.ResourceFieldRef != nil {
				from[e.Name] = e.ValueFrom.ResourceFieldRef.Resource
			}
		}
		assert.Equal(t, map[string]string{"GOMAXPROCS": "limits.cpu", "GOMEMLIMIT": "requests.memory"}, from)
		aim, limit := at.Resources.Requests.Memory(), at.Resources.Limits.Memory()
		room(t, aim.Value(), limit.Value())
		assert.Equal(t, 1, at.Resources.Limits.Cpu().Cmp(*at.Resources.Requests.Cpu()))
		assert.Zero(t, at.Resources.Limits.Cpu().MilliValue()%1000, "whole processors, as GOMAXPROCS counts them")
		assert.Equal(t, -1, at.Resources.Limits.Cpu().Cmp(resource.MustParse("16")))
	})
}

// room checks that Go's aim lies below the limit by what it does not count.
func room(t *testing.T, aim, limit int64) {
	t.Helper()
	share := float64(aim) / float64(limit)
	assert.InDelta(t, 0.85, share, 0.05, "of the memory's limit is Go's aim")
}

func TestPortsAgree(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		at, given := c.pod(t), c.environment(t)
		ports := map[string]int32{}
		for _, p := range at.Ports {
			ports[p.Name] = p.ContainerPort
		}
		for name, setting := range map[string]string{"grpc": "grpc-address", "metrics": "metrics-address"} {
			assert.Equal(t, fmt.Sprint(ports[name]), port(t, setting), "the server's own default")
			assert.Equal(t, fmt.Sprintf("0.0.0.0:%d", ports[name]), given[variable(setting)])
		}
		served := map[string]bool{}
		for _, p := range c.service.Spec.Ports {
			assert.Equal(t, ports[p.Name], p.Port)
			assert.Equal(t, p.Name, p.TargetPort.StrVal)
			served[p.Name] = true
		}
		assert.Equal(t, map[string]bool{"grpc": true, "metrics": true}, served)
		let := []string{}
		for _, rule := range c.network.Spec.Ingress {
			require.NotEmpty(t, rule.From, "from somebody named")
			for _, p := range rule.Ports {
				let = append(let, p.Port.StrVal)
			}
		}
		assert.ElementsMatch(t, []string{"grpc", "metrics"}, let)
		for _, e := range c.monitor.Spec.Endpoints {
			assert.Equal(t, "metrics", e.Port)
		}
		require.Len(t, c.monitor.Spec.Endpoints, 1)
	})
}

func TestProbesAskTheServer(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		at := c.pod(t)
		for name, probe := range map[string]*core.Probe{"startup": at.StartupProbe, "ready": at.ReadinessProbe, "alive": at.LivenessProbe} {
			require.NotNil(t, probe, name)
			switch {
			case !c.encrypted(t):
				require.NotNil(t, probe.GRPC, name)
				assert.Equal(t, port(t, "grpc-address"), fmt.Sprint(probe.GRPC.Port), name)
				assert.Nil(t, probe.GRPC.Service, "the server as a whole")
			case name == "alive":
				require.NotNil(t, probe.HTTPGet)
				assert.Equal(t, "/metrics metrics", probe.HTTPGet.Path+" "+probe.HTTPGet.Port.StrVal)
			default:
				require.NotNil(t, probe.TCPSocket, "Kubernetes has no certificate to ask with")
				assert.Equal(t, "grpc", probe.TCPSocket.Port.StrVal, name)
			}
		}
		// A busy server is taken out long before it is started anew.
		lapse := func(p *core.Probe) int32 { return p.PeriodSeconds * p.FailureThreshold }
		assert.Greater(t, lapse(at.LivenessProbe), 3*lapse(at.ReadinessProbe))
	})
}

func TestReplicaEndsByItself(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		given := c.environment(t)
		grace := time.Duration(*c.deployment.Spec.Template.Spec.TerminationGracePeriodSeconds) * time.Second
		drains(t, given, grace)
		// Readiness is told from outside within the delay, too.
		delay, err := time.ParseDuration(given[variable("drain-delay")])
		require.NoError(t, err)
		ready := c.pod(t).ReadinessProbe
		assert.LessOrEqual(t, time.Duration(ready.PeriodSeconds*ready.FailureThreshold)*time.Second, delay)
		assert.Zero(t, c.deployment.Spec.Strategy.RollingUpdate.MaxUnavailable.IntValue())
		assert.Nil(t, c.pod(t).Lifecycle)
	})
}

func TestEverythingMeansTheSamePods(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		pods := labels.Set(c.deployment.Spec.Template.Labels)
		means := func(s *meta.LabelSelector, set labels.Set, what string) {
			t.Helper()
			selector, err := meta.LabelSelectorAsSelector(s)
			require.NoError(t, err)
			assert.False(t, selector.Empty(), what)
			assert.True(t, selector.Matches(set), what)
		}
		means(c.deployment.Spec.Selector, pods, "deployment")
		means(c.budget.Spec.Selector, pods, "budget")
		means(&c.network.Spec.PodSelector, pods, "network")
		means(&meta.LabelSelector{MatchLabels: c.service.Spec.Selector}, pods, "service")
		means(&c.monitor.Spec.Selector, c.service.Labels, "monitor")
		for _, s := range c.deployment.Spec.Template.Spec.TopologySpreadConstraints {
			means(s.LabelSelector, pods, s.TopologyKey)
		}
		assert.Len(t, c.deployment.Spec.Template.Spec.TopologySpreadConstraints, 2)
		assert.Equal(t, core.ClusterIPNone, c.service.Spec.ClusterIP, "clients balance themselves")

		assert.Equal(t, autoscaling.CrossVersionObjectReference{APIVersion: "apps/v1", Kind: "Deployment", Name: c.deployment.Name}, c.scaler.Spec.ScaleTargetRef)
		assert.Nil(t, c.deployment.Spec.Replicas, "the autoscaler's")
		assert.Greater(t, *c.scaler.Spec.MinReplicas, int32(c.budget.Spec.MaxUnavailable.IntValue()), "one may go and others serve")
		assert.Greater(t, c.scaler.Spec.MaxReplicas, *c.scaler.Spec.MinReplicas)
	})
}

func TestNetworkLetsInCallersAndPrometheusAndNothingOut(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		n := c.network.Spec
		assert.ElementsMatch(t, []networking.PolicyType{networking.PolicyTypeIngress, networking.PolicyTypeEgress}, n.PolicyTypes)
		assert.Empty(t, n.Egress)
		require.Len(t, n.Ingress, 2)
		assert.Equal(t, []networking.NetworkPolicyPeer{{PodSelector: &meta.LabelSelector{
			MatchLabels: map[string]string{"footward.example/client": "true"},
		}}}, n.Ingress[0].From)
		require.Len(t, n.Ingress[1].From, 1)
		assert.NotNil(t, n.Ingress[1].From[0].NamespaceSelector)
	})
}

func TestServerTakesTheSettingsOfKubernetes(t *testing.T) {
	each(t, func(t *testing.T, c *cluster) {
		require.Empty(t, c.pod(t).Args)
		given, encryption := c.environment(t), insecure.NewCredentials()
		if c.encrypted(t) {
			var folder string
			folder, encryption = secret(t)
			for name, value := range given {
				if file, in := strings.CutPrefix(value, c.pod(t).VolumeMounts[0].MountPath); in {
					given[name] = folder + file
				}
			}
		}
		serves(t, given, encryption, nil)
	})
}

// TestStrictDecodingFindsAMisspeltField shows that the tests above can fail.
func TestStrictDecodingFindsAMisspeltField(t *testing.T) {
	text, err := os.ReadFile(filepath.Join(top, "deploy/kubernetes/base/deployment.yaml"))
	require.NoError(t, err)
	misspelt := strings.Replace(string(text), "readOnlyRootFilesystem", "readOnlyRootFileSystem", 1)
	assert.NotEqual(t, string(text), misspelt)
	assert.ErrorContains(t, decode([]byte(misspelt), &apps.Deployment{}), "readOnlyRootFileSystem")
}

func TestEveryFileIsUsed(t *testing.T) {
	for _, folder := range kustomizations(t) {
		text, err := os.ReadFile(filepath.Join(top, "deploy/kubernetes", folder, "kustomization.yaml"))
		require.NoError(t, err)
		var k types.Kustomization
		require.NoError(t, decode(text, &k))
		files, err := filepath.Glob(filepath.Join(top, "deploy/kubernetes", folder, "*.yaml"))
		require.NoError(t, err)
		for _, f := range files {
			name := filepath.Base(f)
			used := name == "kustomization.yaml" || slices.Contains(k.Resources, name) ||
				slices.ContainsFunc(k.Patches, func(p types.Patch) bool { return p.Path == name })
			assert.True(t, used, "%s/%s", folder, name)
		}
	}
}
