package geom

// Clamp are equal rods that were tightened against a stack of fill.
type Clamp struct {
	Count      int     // of the rods
	Area       float64 // of each that stretches [mm2]
	Modulus    float64 // of elasticity of the rods [MPa]
	Length     float64 // that stretches [mm]
	Stack      float64 // stiffness of the stack [N/mm]; 0: not known
	Preload    float64 // of each rod when tightened [N]
	Relaxed    float64 // share of it that relaxation takes [-]
	Settlement float64 // of the stack after tightening [mm]
	Load       float64 // compression that came after tightening [N]
}

// Springs are rods and stack, and what became of the preload of one rod.
type Springs struct {
	Rods    float64 // stiffness of all rods [N/mm]
	Stack   float64 // of the stack [N/mm]; 0: not known
	Relaxed float64 // what relaxation took [N]
	Load    float64 // what the load took [N]
	Settled float64 // what settlement took [N]
	Left    float64 // what is left, not below 0 [N]
}

// Springs returns what is left of the preload. Of a stack whose stiffness is not known
// each loss is taken as if it were the worst for it: soft under the load, rigid for
// the settlement.
//
//	k_r = n E A_s/L, P_left = P_0 (1 - rho) - N/n k_r/(k_r + k_m) - s/(1/k_r + 1/k_m)/n
//
// Source: statics of springs in series (bolted-joint practice, from memory).
func (c *Clamp) Springs() Springs {
	n := float64(c.Count)
	s := Springs{
		Rods: n * c.Modulus * c.Area / c.Length, Stack: c.Stack,
		Relaxed: c.Preload * c.Relaxed, Load: c.Load / n,
	}
	s.Settled = c.Settlement * s.Rods / n
	if c.Stack > 0 {
		s.Load *= s.Rods / (s.Rods + c.Stack)
		s.Settled *= c.Stack / (s.Rods + c.Stack)
	}
	s.Left = max(0, c.Preload-s.Relaxed-s.Load-s.Settled)
	return s
}

// Pulled returns the tension of a rod [N] that the actions would pull by t without
// preload; held of its preload is in t already. As long as the stack is clamped the rod
// takes its share of what they add; that share is all of it where the stiffness of the
// stack is not known.
//
//	T = max(t, P_0 + (t - P_h) k_r/(k_r + k_m))
//
// Source: statics of springs in parallel.
func (c *Clamp) Pulled(t, held float64) float64 {
	if c.Preload == 0 {
		return t
	}
	share := 1.0
	if c.Stack > 0 {
		rods := float64(c.Count) * c.Modulus * c.Area / c.Length
		share = rods / (rods + c.Stack)
	}
	return max(t, c.Preload+share*max(0, t-held))
}
