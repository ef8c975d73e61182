// Package pin checks a timber column held by horizontal pins to the steel plates
// of a shoe: two plates outside the timber, or one plate in a slot of it. Either
// way every pin is in double shear; both together are out of scope. The grain runs
// along the column.
//
// N and V spread evenly over the pins, the moment about the axis of the pins by
// the polar inertia of the group. Each pin then carries its own force at its own
// angle to the grain. Where the end of the column stands on a plate, compression
// goes through the end grain and the pins carry only what else there is.
//
// A pin fails with the timber: the timber yields under the pin, the pin bends, or
// both (Johansen's yield theory). Per shear plane, with the embedment q = f_h d
// per length, the yield moment M_y and a clear gap c between steel and timber,
//
//	plate outside, pin free to turn in it   M_y = P c + P^2/(2 q)
//	plate outside, pin held by it         2 M_y = P c + P^2/(2 q)
//	plate in a slot, timber t_1 turns       M_y = P c + P^2/(4 q) + P t_1/2 - q t_1^2/4
//	plate in a slot, two hinges           2 M_y = P c + P^2/(2 q)
//
// Without a gap these are the printed formulas of EN 1995-1-1 (8.11) to (8.13)
// and of NDS 12.3; with one they are the same theory, which the codes of these
// editions do not print.
//
// Around the pins the timber may split across the grain, shear out along it, or
// tear at the section that the holes weaken. Each row is held by itself, and those
// that pull most together. The plates are held in tension, compression, bending, at
// the holes and as blocks round them; they buckle as cantilevers unless the column keeps
// their heads upright or its foot is held. The weld of the plates is checked beside
// the pins by package base; the column between its ends, and whatever the shoe
// stands on, belong to other checks.
//
// A required size is what holds with all else unchanged. Diameter and number of
// the pins are asked for only where more of them surely helps.
package pin
