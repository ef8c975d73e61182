// Package contact shares the actions on a rigid plate between the bed that it
// presses on and the rods that hold it down, under N, M_x and M_y at once.
//
// The plate sinks by u = a + b x + c y, downwards positive. The bed presses
// where the plate sinks into it and never pulls:
//
//	p = k <u>          elastic
//	p = min(k <u>, f)  elastic and plastic; with a very stiff k a plastic block
//
// A rod pulls when the plate rises, from its preload or after a gap, and never
// pushes:
//
//	T = <F_0 - k_r (u - u_0 + gap)>
//
// Preload is what the rods pull before the actions come: u_0 is the plane in which
// the preload of all rods has pressed the bed by then.
//
// Both laws are slopes of convex potentials, so equilibrium is the least of a
// convex function of a, b and c: the forces are unique, and Newton's method with
// a line search finds them whenever equilibrium exists. The pressed zone is the
// outline cut by the lines u = 0 and u = f/k, and is integrated exactly as a
// polygon.
//
// There is no equilibrium when nothing holds a plate that is lifted or turned
// over, or when the bed's strength is used up; the answer says which.
package contact
