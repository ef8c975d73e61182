// Package ring checks a stack of tiers of rings rammed with granular fill, between
// the shoe plate of a column on top and a bottom plate or the ground below.
//
// The load spreads downwards 2 to 1 inside the rings. At the top and at the bottom
// of each tier the stress follows from statics: as the even pressure of an
// effective area, and as the edge stress of an elastic contact that takes no
// tension. The fill stands as long as the ring confines it, by Mohr and Coulomb;
// the same effect written as an apparent cohesion gives the same strength and is
// never added. The hoop force is that of the greatest edge stress of the tier.
//
// Shear never takes moment back: both are added by their amounts. The weight of the
// stack counts in full where it presses and by its favourable share where it
// centres, holds or rubs. Preload presses, and never holds.
//
// No code covers such a stack. Without a test of the rings and a load test, a state
// that its numbers satisfy is out of scope, never passed; a state that they do not
// satisfy fails.
package ring
