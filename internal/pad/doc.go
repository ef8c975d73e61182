// Package pad checks a concrete pad under a column: plain or reinforced, bending,
// shear along a section, punching, and what the bars need. Crushing under the
// column is bearing's, what the ground bears is ground's.
//
// The pad is a rectangle under a column at its middle. The pressure on its
// underside is a straight line without tension; its greatest value, at a corner,
// is taken over the whole pad. That is on the safe side for bending and shear
// along a section, and for punching the moment of the column is counted as well.
// The weight of the pad and of the soil above it lies evenly on the ground and
// bends nothing, except where the pressure below is less than the weight: there
// the pad hangs, and its top is in tension.
//
// Where the pressure leaves the kern in both directions, its greatest value is
// taken as the product of the two directions by themselves, which is above that
// of the plane on a bed without tension.
//
// Concrete is of normal weight. Cracks, durability, fire, seismic detailing, joints
// and the anchorage of the column are not part of it.
package pad
