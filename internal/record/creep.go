package record

import "math"

// minutesPerYear are those of 365.25 days.
const minutesPerYear = 365.25 * 24 * 60

// Creep is what one holding stage tells.
type Creep struct {
	Stage      int     // counted from 1
	Load       float64 // [N]
	Alpha      float64 // settlement a cycle of log10 t [mm]
	Error      float64 // standard error [mm]
	Used       float64 // alpha, or its bound where there is no measurable creep [mm]
	Last       float64 // minutes of the last reading [min]
	Settlement float64 // then [mm]
	Cycles     float64 // log10 of design life over Last [-]; 0: no life asked
	Life       float64 // settlement at the design life [mm]; 0: likewise
	None       bool    // no measurable creep
	Reason     string  // why there is no alpha
}

// creepOf reads one hold.
func (r *Result) creepOf(i int) (c Creep) {
	s := &r.in.Stages[i]
	c = Creep{Stage: i + 1, Load: s.Load}
	var x, y []float64
	least, most := math.Inf(1), 0.0
	for j := range s.Readings {
		v := &s.Readings[j]
		load := v.Load
		if load == 0 {
			load = s.Load
		}
		most = max(most, load)
		if load < 0.95*most {
			c.Reason = "the load fell by more than 5 % during the hold: not a creep stage"
			return c
		}
		if v.Minutes >= 1 {
			x, y = append(x, math.Log10(v.Minutes)), append(y, meanOf(v.Gauges))
			least, c.Last, c.Settlement = min(least, v.Minutes), v.Minutes, meanOf(v.Gauges)
		}
	}
	if len(x) < 3 || c.Last < 10*least {
		c.Reason = "the hold is shorter than one log cycle, or has fewer than 3 readings after the first minute"
		return c
	}
	l, _ := LineOf(x, y)
	c.Alpha, c.Error, c.Used = l.Slope, l.Error, l.Slope
	if c.Alpha <= 0 || c.Alpha < 2*c.Error {
		c.None, c.Used = true, max(0, l.upper())
	}
	if r.in.Years > 0 {
		c.Cycles = math.Log10(r.in.Years * minutesPerYear / c.Last)
		c.Life = c.Settlement + c.Used*c.Cycles
	}
	return c
}

// creep reads every hold of the first loading, and the creep load.
func (r *Result) creep() {
	var loads, alphas []float64
	for i := range r.in.Stages[:len(r.usable)] {
		if r.in.Stages[i].Phase != First || len(r.in.Stages[i].Readings) < 2 {
			continue
		}
		c := r.creepOf(i)
		r.Creep = append(r.Creep, c)
		if c.Reason == "" {
			loads, alphas = append(loads, c.Load), append(alphas, c.Alpha)
		}
	}
	b, ok := BreakOf(loads, alphas)
	if ok && b.Past.Slope > b.Before.Slope && alphas[b.Split] >= 2*alphas[b.Split-1] {
		r.CreepLoad, r.creepBreak = b.At, b
	}
}

// Fade is what the record of the preload tells.
type Fade struct {
	Known   bool
	Per     float64 // loss a cycle of log10 t [N]
	Error   float64 // standard error [N]
	Last    float64 // minutes of the last reading [min]
	Fitted  float64 // preload then, by the line [N]
	Cycles  float64 // log10 of design life over Last [-]
	Left    float64 // preload at the design life [N]
	Least   float64 // its one-sided 95 % bound [N]
	Reason  string
	Slacken float64 // load at which the rods go slack with Least [N]; 0: no clamp
}

func (r *Result) fade() {
	all := r.in.PreloadRecord
	f := &r.Fade
	switch {
	case len(all) == 0:
		return
	case r.in.Years == 0:
		f.Reason = "the design life is needed"
		return
	case len(all) < 4 || all[len(all)-1].Minutes < 10*all[0].Minutes:
		f.Reason = "a record of the preload needs 4 readings over one log cycle"
		return
	}
	var x, y []float64
	for _, v := range all {
		x, y = append(x, math.Log10(v.Minutes)), append(y, v.Force)
	}
	l, ok := LineOf(x, y)
	if !ok {
		f.Reason = "the readings are all of one time"
		return
	}
	f.Known, f.Per, f.Error, f.Last = true, max(0, -l.Slope), l.Error, all[len(all)-1].Minutes
	f.Fitted = l.Intercept + l.Slope*math.Log10(f.Last)
	f.Cycles = math.Log10(r.in.Years * minutesPerYear / f.Last)
	f.Left = max(0, f.Fitted-f.Per*f.Cycles)
	at := math.Log10(r.in.Years * minutesPerYear)
	spread := math.Sqrt(l.Rest / float64(l.n-2) * (1/float64(l.n) + (at-l.mean)*(at-l.mean)/l.squares))
	f.Least = max(0, f.Left-student(float64(l.n-2))*spread)
	if r.in.Clamp.Asked {
		c := r.in.Clamp
		c.Preload = f.Least
		f.Slacken = SlackLoad(&c)
	}
}
