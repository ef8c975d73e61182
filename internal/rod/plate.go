package rod

import (
	"math"

	"footward.example/footward/internal/limit"
)

// plateStates appends the limit states of the plate at the rods and of its washers.
func (r *Result) plateStates(l *limit.List) {
	in, w := r.in, &r.Worst
	us := in.Design.Basis.US()
	if in.Rod.Countersunk {
		for _, k := range [...]*limit.Kind{plateBearing, plateTearOut, punching, washerBending} {
			if k.Clause[in.Design.Basis] != "" {
				l.Add(limit.Beyond(k, sunken))
			}
		}
		return
	}
	if !r.Sheared || w.Bearing < 0 {
		l.Add(limit.Skip(plateBearing, noShear))
		if us {
			l.Add(limit.Skip(plateTearOut, noShear))
		}
	} else {
		l.Add(limit.Evaluate(plateBearing, w.Fb, w.FbRd).Of(w.Bearing+1).Need(limit.PlateThickness, r.bearingThickness()))
		if us {
			l.Add(limit.Evaluate(plateTearOut, w.Fo, w.FoRd).Of(w.TearOut+1).Need(limit.PlateThickness, in.Plate.Needed(func(_, fu float64) float64 {
				return w.Fo / (r.US.Factor * tearShare * max(0, w.Lc) * fu)
			})))
		}
	}
	resistance := r.EC.BpRd
	if us {
		resistance = r.US.Punching
	}
	switch {
	case r.TensionReason != "":
		l.Add(limit.Beyond(punching, r.TensionReason))
	case !r.Tense:
		l.Add(limit.Skip(punching, noTension))
	case r.falls():
		l.Add(limit.State{Kind: punching, Verdict: limit.Fail, Demand: w.Ft, Reason: throughs, Member: w.Tension + 1})
	default:
		l.Add(limit.Evaluate(punching, w.Ft, resistance).Of(w.Tension+1).Need(limit.PlateThickness, in.Plate.Needed(func(_, fu float64) float64 {
			perMM := shearRupture * math.Pi * r.nut() * fu
			if us {
				return w.Ft / (perMM * r.US.Factor)
			}
			return w.Ft * in.Design.EC.GammaM2 / perMM
		})))
	}
	l.Add(r.washerState())
}

// washerState holds a washer that bridges the hole. A nut that stands on the plate
// all round a hole of nominal clearance bends no washer.
func (r *Result) washerState() limit.State {
	h := &r.in.Holes
	switch {
	case h.WasherSide == 0 && h.WasherThickness == 0:
		return limit.Skip(washerBending, "there is no plate washer")
	case r.TensionReason != "":
		return limit.Beyond(washerBending, r.TensionReason)
	case !r.Tense:
		return limit.Skip(washerBending, noTension)
	case h.WasherSide == 0 && !(r.nut() > h.Diameter):
		return limit.Beyond(washerBending, noSide)
	case h.WasherSide == 0:
		return limit.Skip(washerBending, "there is no plate washer, and the nut is wider than the hole")
	case !r.spans():
		return limit.Skip(washerBending, "the nut is wider than the hole, which has no more than the nominal clearance")
	}
	return limit.Evaluate(washerBending, r.Worst.Ft, r.Washer).Of(r.Worst.Tension + 1)
}

func (r *Result) bearingThickness() float64 {
	in, w := r.in, &r.Worst
	h := surround(in, w.Bearing, w.AlongY)
	return in.Plate.Needed(func(_, fu float64) float64 {
		if in.Design.Basis.US() {
			return w.Fb / (r.US.Factor * bearShare * r.D * fu)
		}
		return w.Fb / r.bearingPerMM(&h, fu)
	})
}
