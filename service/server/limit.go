package server

import (
	"errors"
	"math"
	"net"
	"time"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/telemetry"
)

// doorway are the bounds of the door before the calls.
func (o *Options) doorway() guard.Doorway {
	return guard.Doorway{
		Callers: o.Callers, Deadlines: o.Deadlines, Tally: o.Metrics, MessageBytes: o.MessageBytes,
		Open: o.Open, OpenEach: o.share(o.Open),
	}
}

// share is what one address may have of so many.
func (o *Options) share(of int) int {
	if of <= 0 || o.AddressShare <= 0 || o.AddressShare >= 1 {
		return 0
	}
	return max(1, int(math.Ceil(o.AddressShare*float64(of))))
}

// bounds are those of the connections of a listener.
func (o *Options) bounds(tally guard.ConnectionTally, silence time.Duration) guard.Connections {
	return guard.Connections{Most: o.Connections, Each: o.share(o.Connections), Silence: silence, Tally: tally}
}

// limitCalls bounds the connections of the listener of calls.
func (o *Options) limitCalls(l net.Listener) net.Listener {
	if o.Connections <= 0 {
		return l
	}
	return guard.LimitConnections(l, o.bounds(o.Metrics.Connections(telemetry.GRPC), o.patience.stranger))
}

// show has the metrics tell what is in use.
func (o *Options) show(gate *guard.Gate, door *guard.Door, health *watchable) error {
	if o.Metrics == nil {
		return nil
	}
	if gate != nil {
		if err := o.Metrics.Load(gate.Loads()); err != nil {
			return err
		}
	}
	return errors.Join(o.Metrics.Messages(door.Load), o.Metrics.Watches(health.now))
}

// Limit bounds the connections of the listener of an HTTP server, which ends silent
// ones by itself.
func (o *Options) Limit(l net.Listener) net.Listener {
	if o.Connections <= 0 {
		return l
	}
	return guard.LimitConnections(l, o.bounds(o.Metrics.Connections(telemetry.HTTP), 0))
}
