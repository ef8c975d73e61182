// Package corrosion finds what steel in the ground loses over a design life.
//
// The loss is that of one face: a plate loses it on both, a rod all round its
// diameter, a fillet weld on the face of its throat. It comes from the table of EN
// 1993-5 by kind of ground and years, between its columns by straight lines, or
// from a steady rate that the caller answers for. The table is for bare steel away
// from stray currents and from other metals; it knows nothing of zinc.
package corrosion
