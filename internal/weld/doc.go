// Package weld checks fillet and groove welds: one straight run, or a group of
// straight segments in the plane of the plate.
//
// A run carries a force along its axis and two across it. On the throat of a
// fillet, at 45 degrees, the two become a normal stress and a shear stress across
// the axis; on which side of the upright part the fillet lies decides which of
// them is the greater, so the less favourable is taken for each criterion.
//
// A group shares its six actions by the elastic vector method: V and N equally
// along the length, T by the polar inertia, M_x and M_y by the inertias with
// their coupling. Along a segment each component is linear, so a criterion that
// is convex in them is greatest at an end; only ends are looked at. In US practice
// fillet groups under V_x, V_y and T may instead be taken to turn about their
// instantaneous centre, each element with the strength that its direction and
// deformation give it. The motion that is sought, translation of the centroid and
// turn, counts as a direction in three dimensions, and so do the load and what the
// elements resist; in an elastic group motion and load point the same way.
//
// The parts beside the weld are checked too: in shear for what acts parallel to
// the plate, in tension for what pulls at the part that stands on it, and in shear
// through the plate for what pulls at the plate. By Eurocode segments of a group
// share a thickness only where two lie on both faces of the second part.
//
// A group may be the welds of a lap, reduced as its longest line, or one closed
// line without ends, as chords of the weld round a pipe.
//
// Corrosion is taken off the throat in resistances, never in the minima of
// detailing. A complete-penetration weld loses it off the thinner part.
package weld
