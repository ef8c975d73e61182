package telemetry

import (
	"strconv"
	"strings"

	client "github.com/prometheus/client_golang/prometheus"
	"github.com/prometheus/client_golang/prometheus/collectors"

	"footward.example/footward/internal/basis"
	footwardv1 "footward.example/footward/proto/footward/v1"
	"footward.example/footward/service/version"
)

// useBuckets lie close where a part just holds or just fails.
var useBuckets = []float64{0.1, 0.25, 0.5, 0.7, 0.8, 0.9, 0.95, 1, 1.05, 1.1, 1.25, 1.5, 2, 5}

const (
	kinds    = int(footwardv1.CheckKind_CHECK_KIND_CONCRETE_PAD) + 1
	bases    = int(footwardv1.Basis_BASIS_US_ASD) + 1
	verdicts = int(footwardv1.Verdict_VERDICT_OUT_OF_SCOPE) + 1
	reasons  = int(footwardv1.FieldReason_FIELD_REASON_COUNT) + 1
	whys     = int(footwardv1.CallReason_CALL_REASON_NAME_NOT_ALLOWED) + 1
)

// Metrics are the service's own collectors. A nil *Metrics counts nothing.
type Metrics struct {
	rpcs *rpcs
	// One counter for each combination, so that counting neither looks up nor
	// allocates.
	checks  [kinds][bases][verdicts]client.Counter
	use     [kinds]client.Observer
	refused [kinds][reasons]client.Counter
	away    [whys]client.Counter
	panics  client.Counter
	// Of each listener.
	connections map[string]*Connections
	watchesAway client.Counter
	// registry takes what comes with a server.
	registry client.Registerer
}

// New registers the collectors, those of the Go runtime and the process among
// them, with registry.
func New(registry client.Registerer) (*Metrics, error) {
	checks := client.NewCounterVec(client.CounterOpts{
		Name: "footward_checks_total", Help: "Checks answered, by kind, design basis and verdict.",
	}, []string{"check", "basis", "verdict"})
	use := client.NewHistogramVec(client.HistogramOpts{
		Name: "footward_governing_utilization_ratio", Buckets: useBuckets,
		Help: "Utilization of the governing limit state of the checks answered, by kind.",
	}, []string{"check"})
	refused := client.NewCounterVec(client.CounterOpts{
		Name: "footward_refused_fields_total", Help: "Fields of requests that were refused, by kind of check and reason.",
	}, []string{"check", "reason"})
	build := client.NewGaugeVec(client.GaugeOpts{
		Name: "footward_build_info", Help: "1, with the version of the service and the revision of its kernel.",
	}, []string{"version", "kernel_revision"})
	build.WithLabelValues(version.String(), strconv.Itoa(basis.Revision)).Set(1)

	away := client.NewCounterVec(client.CounterOpts{
		Name: "footward_calls_turned_away_total", Help: "Calls turned away before their check, by reason.",
	}, []string{"reason"})
	panics := client.NewCounter(client.CounterOpts{
		Name: "footward_panics_total", Help: "Calls that panicked and were answered INTERNAL.",
	})

	m := &Metrics{registry: registry, panics: panics, rpcs: newRPCs()}
	for k := 1; k < kinds; k++ {
		check := name(footwardv1.CheckKind(k).String(), "CHECK_KIND_")
		m.use[k] = use.WithLabelValues(check)
		for b := 1; b < bases; b++ {
			for v := 1; v < verdicts; v++ {
				m.checks[k][b][v] = checks.WithLabelValues(check,
					name(footwardv1.Basis(b).String(), "BASIS_"), name(footwardv1.Verdict(v).String(), "VERDICT_"))
			}
		}
		for r := 1; r < reasons; r++ {
			m.refused[k][r] = refused.WithLabelValues(check, name(footwardv1.FieldReason(r).String(), "FIELD_REASON_"))
		}
	}
	for r := 1; r < whys; r++ {
		if why := footwardv1.CallReason(r); why != footwardv1.CallReason_CALL_REASON_FIELDS_REFUSED {
			m.away[r] = away.WithLabelValues(name(why.String(), "CALL_REASON_"))
		}
	}
	connections := newConnections(m)
	for _, c := range append(append(m.rpcs.collectors(), connections...), checks, use, refused, away, panics, build,
		collectors.NewGoCollector(), collectors.NewProcessCollector(collectors.ProcessCollectorOpts{})) {
		if err := registry.Register(c); err != nil {
			return nil, err
		}
	}
	return m, nil
}

// name is an enum value as a label: CHECK_KIND_WELD is weld.
func name(value, prefix string) string { return strings.ToLower(strings.TrimPrefix(value, prefix)) }

// Check counts an answer.
func (m *Metrics) Check(kind footwardv1.CheckKind, r *footwardv1.CheckResult) {
	if m == nil {
		return
	}
	k, b, v := int(kind), int(r.GetBasis()), int(r.GetVerdict())
	if !between(k, kinds) {
		return
	}
	if between(b, bases) && between(v, verdicts) {
		m.checks[k][b][v].Inc()
	}
	if r.GoverningUtilization != nil {
		m.use[k].Observe(r.GetGoverningUtilization())
	}
}

// Refused counts the fields of a request that was refused.
func (m *Metrics) Refused(kind footwardv1.CheckKind, violations []*footwardv1.FieldViolation) {
	if m == nil || !between(int(kind), kinds) {
		return
	}
	for _, v := range violations {
		if r := int(v.GetReason()); between(r, reasons) {
			m.refused[kind][r].Inc()
		}
	}
}

// Panicked counts a call that panicked.
func (m *Metrics) Panicked() {
	if m != nil {
		m.panics.Inc()
	}
}

// TurnedAway counts a call that was turned away whole.
func (m *Metrics) TurnedAway(reason footwardv1.CallReason) {
	if m != nil && between(int(reason), whys) && m.away[reason] != nil {
		m.away[reason].Inc()
	}
}

// Load shows what is told at every scrape of each size of calls: how many are worked
// on and how many wait for that, by weight.
func (m *Metrics) Load(sizes map[string]func() (busy, waiting int)) error {
	for size, load := range sizes {
		is := client.Labels{"size": size}
		for _, g := range []client.Collector{
			client.NewGaugeFunc(client.GaugeOpts{Name: "footward_calls_under_way", Help: "Weight of the calls that are worked on, by their size.", ConstLabels: is},
				func() float64 { busy, _ := load(); return float64(busy) }),
			client.NewGaugeFunc(client.GaugeOpts{Name: "footward_calls_waiting", Help: "Weight of the calls that wait to be worked on, by their size.", ConstLabels: is},
				func() float64 { _, waiting := load(); return float64(waiting) }),
		} {
			if err := m.registry.Register(g); err != nil {
				return err
			}
		}
	}
	return nil
}

func between(v, end int) bool { return v > 0 && v < end }
