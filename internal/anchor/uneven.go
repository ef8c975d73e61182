package anchor

import (
	"cmp"
	"math"
	"slices"
)

// worst returns the rods whose cone is used most, with it: all of a group, those of it
// that carry most, or those that stand apart from the others.
//
// Rods that carry little lend the group all of their cones, for which the eccentricity of
// the standards pays only in the middle of a block: beside an edge a group would hold a
// force that its rods at the edge cannot. And rods 3 h_ef apart are no group.
//
// Source: EN 1992-4:2018 7.2.1.4, 3.1 (group); ACI 318-19 17.5.1.1, Table 17.5.1.3.1;
// which rods are tried: derived.
func (r *Result) worst(all *group, force func(Force) float64) (group, Cone) {
	in, most, cone := r.in, *all, r.cone(all)
	try := func(rods []int) {
		g := in.group(rods, force)
		if c := r.cone(&g); g.force*cone.NRd > most.force*c.NRd*(1+1e-9) {
			most, cone = g, c
		}
	}
	rods := slices.Clone(all.rods)
	slices.SortStableFunc(rods, func(a, b int) int {
		return cmp.Compare(force(in.Each[b]), force(in.Each[a]))
	})
	for n := 1; n < len(rods); n++ {
		if force(in.Each[rods[n]]) < force(in.Each[rods[n-1]])*(1-1e-9) {
			try(rods[:n])
		}
	}
	for len(rods) > 0 {
		// What stands near the first, and near that.
		near := rods[:1:1]
		rest := rods[1:]
		for i := 0; i < len(near); i++ {
			var far []int
			for _, k := range rest {
				if p, q := in.At[near[i]], in.At[k]; max(math.Abs(p.X-q.X), math.Abs(p.Y-q.Y)) < 3*in.Embedment {
					near = append(near, k)
				} else {
					far = append(far, k)
				}
			}
			rest = far
		}
		if len(near) < len(all.rods) {
			try(near)
		}
		rods = rest
	}
	return most, cone
}
