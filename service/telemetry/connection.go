package telemetry

import client "github.com/prometheus/client_golang/prometheus"

// Listeners whose connections are counted, as labels.
const (
	GRPC = "grpc"
	HTTP = "http"
)

// Connections counts those of one listener. A nil *Connections counts nothing.
type Connections struct {
	accepted, full, ofAddress, silent client.Counter
	open                              client.Gauge
}

func newConnections(m *Metrics) []client.Collector {
	accepted := client.NewCounterVec(client.CounterOpts{
		Name: "footward_connections_accepted_total", Help: "Connections that were taken, by listener.",
	}, []string{"listener"})
	open := client.NewGaugeVec(client.GaugeOpts{
		Name: "footward_connections_open", Help: "Connections that are open, by listener.",
	}, []string{"listener"})
	away := client.NewCounterVec(client.CounterOpts{
		Name: "footward_connections_turned_away_total",
		Help: "Connections closed by the service, by listener and reason: full, the bound of all; address, that of one address; silent, too long without a call of a caller who was let in.",
	}, []string{"listener", "reason"})
	m.watchesAway = client.NewCounter(client.CounterOpts{
		Name: "footward_health_watches_turned_away_total", Help: "Watches of health turned away because there were too many.",
	})
	m.connections = map[string]*Connections{}
	for _, l := range []string{GRPC, HTTP} {
		m.connections[l] = &Connections{
			accepted: accepted.WithLabelValues(l), open: open.WithLabelValues(l),
			full: away.WithLabelValues(l, "full"), ofAddress: away.WithLabelValues(l, "address"), silent: away.WithLabelValues(l, "silent"),
		}
	}
	return []client.Collector{accepted, open, away, m.watchesAway}
}

// Connections returns the series of a listener.
func (m *Metrics) Connections(listener string) *Connections {
	if m == nil {
		return nil
	}
	return m.connections[listener]
}

// Accepted counts a connection that was taken.
func (c *Connections) Accepted() {
	if c != nil {
		c.accepted.Inc()
		c.open.Inc()
	}
}

// Closed counts the end of one that was taken.
func (c *Connections) Closed() {
	if c != nil {
		c.open.Dec()
	}
}

// Full counts one turned away beyond the most.
func (c *Connections) Full() {
	if c != nil {
		c.full.Inc()
	}
}

// OfAddress counts one turned away beyond the most of its address.
func (c *Connections) OfAddress() {
	if c != nil {
		c.ofAddress.Inc()
	}
}

// Silent counts one that was closed since it went without a call.
func (c *Connections) Silent() {
	if c != nil {
		c.silent.Inc()
	}
}

// WatchTurnedAway counts a watch of health that was turned away.
func (m *Metrics) WatchTurnedAway() {
	if m != nil {
		m.watchesAway.Inc()
	}
}

// Watches shows at every scrape how many watches of health there are.
func (m *Metrics) Watches(now func() int) error {
	return m.registry.Register(client.NewGaugeFunc(client.GaugeOpts{
		Name: "footward_health_watches", Help: "Watches of health that are open.",
	}, func() float64 { return float64(now()) }))
}

// Messages shows at every scrape how much room messages take.
func (m *Metrics) Messages(load func() (arriving, decoded int)) error {
	stage := func(name string, of func() int) client.Collector {
		return client.NewGaugeFunc(client.GaugeOpts{
			Name: "footward_messages_bytes", ConstLabels: client.Labels{"stage": name},
			Help: "Room that larger messages take, by stage: arriving, as they come; decoded, as what they become, until they are answered.",
		}, func() float64 { return float64(of()) })
	}
	for _, c := range []client.Collector{
		stage("arriving", func() int { n, _ := load(); return n }),
		stage("decoded", func() int { _, n := load(); return n }),
	} {
		if err := m.registry.Register(c); err != nil {
			return err
		}
	}
	return nil
}
