// Package plate checks the bending of a base plate between a footprint (a
// column, a shoe) and its support.
//
// Compression. By Eurocode the plate spreads the pressure of the footprint by
// the distance c at which an elastic cantilever under the bearing strength f_jd
// just yields; the widened footprint, clipped by the plate and never counted
// twice, is the effective area. In United States practice the pressure is
// uniform and the plate is a plastic cantilever of the length l = max(m, n,
// lambda n') from lines inside the footprint; a plate that spans between two
// parts of the footprint, or inside a hollow one, is given a cantilever that has
// the same moment.
//
// Moment about one axis. By Eurocode compression acts under one flange, tension
// in the row of rods outside the other, and both follow from equilibrium:
//
//	C = (M - N z_T)/(z_T + z_C)   T = (M + N z_C)/(z_T + z_C)   N tension positive
//
// The tension side is an equivalent T-stub whose plate has no help of prying; the
// prying that develops is for the rods and what holds them. In United States
// practice the pressure is a block at the plate's edge: of its own length while the
// moment is small, at its full strength when the moment is large, and the rods take
// what is left; the plate is bent by the block, no more. No row of rods is credited
// with more than straight yield lines past the flange hold.
//
// Where the steel of an I-section or a tube is given, the Eurocode also holds its
// flange and web where they bring these forces in.
//
// A plate that is pressed by something soft, such as the end of a timber post,
// bends most under the middle of it, so its centre is checked by statics.
//
// Where that pattern does not fit (see Misfit: moments about both axes, other rows of
// rods, pipes, solid footprints) the plate is held by straight sections at any angle,
// from how support and rods share the actions, which a Finder finds. By Eurocode the
// support presses as a plastic block under the footprint widened by c, as 6.2.5 has
// it; in United States practice under the whole plate, or as the elastic bed of the
// base does. The clauses' states then hold one moment alone.
//
// Not covered: stiffeners.
package plate
