// Package tie checks rods that go right through a stack of fill to a bottom plate
// and clamp it.
//
// The rods pull the bottom plate up against the fill above it. The fill presses
// on the plate as a block of even pressure whose resultant meets that of the rods,
// and across each section of the plate the moment follows from what acts on one
// side of it, in full in both directions. The moment spreads from the nuts at 45
// degrees.
//
// Against uplift count the weight of what the rods clamp and, where the user says
// so, of the ground outside the prism above the plate, up to a surface that rises
// at an angle from the plate's edges. Against overturning, about an edge of the
// bottom plate, counts the clamped weight alone.
//
// Preload is lost as the fill settles under it: the rods are short springs. What
// is left is held against what the sharing of forces counts on.
package tie
