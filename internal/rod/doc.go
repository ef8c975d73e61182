// Package rod checks the steel of threaded rods through a plate, and the plate
// at their holes.
//
// Forces come rod by rod, or are shared by the elastic method of bolt groups: V
// equally, T by the polar inertia, N equally and M_x, M_y by the inertias of the
// group. The last holds only while every rod stays in tension; as soon as one
// would be pressed, the plate bears on its support and the sharing is another,
// so the tension states are then out of scope. Compression without moment goes
// through the plate, and the rods carry shear alone.
//
// Friction under the plate takes shear before the rods do, where the caller counts
// it, the forces press, there is no torsion and no stand-off; no more compression
// counts than the forces have. Rods in holes larger than the nominal clearance carry
// shear only through welded washers, and bend between those and the surface.
//
// A rod that bridges a gap bends: its lever arm reaches from the middle of the
// plate to the surface, and half a diameter further where no nut clamps it there.
// Rods that would be pressed across a gap are out of scope. US practice counts an
// intact thread by the shares of AISC 360-22 Table J3.2, a worn or unknown one by
// no more than its own net area. A nut must be wider than its hole or stand on a
// washer that bridges it.
// The ground, fill or concrete that holds the rods is not part of this package.
package rod
