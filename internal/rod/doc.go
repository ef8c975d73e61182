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
// Friction under the plate takes shear before the rods do, where the caller
// counts it, there is no torsion and no stand-off. Rods in holes larger than the
// nominal clearance carry shear only through welded washers.
//
// A rod that bridges a gap bends: its lever arm reaches from the middle of the
// plate to the surface, and half a diameter further where no nut clamps it there.
// The ground, fill or concrete that holds the rods is not part of this package.
package rod
