// Package anchor checks what holds headed rods in a block of concrete: the rod,
// the concrete cone (breakout), pull-out, blow-out of a near side face, and under
// shear the rod, pry-out and the concrete edge, and all together.
//
// The edges are those of the rectangular block in which the rods stand. The area
// of the cones is the union of the squares about the rods that pull, cut off at
// the edges; rods with three or more near edges count with a shorter embedment.
// At an edge the rods nearest to it are taken to carry the whole shear, since
// holes have play. Where rods push in different directions, as under torsion, the
// shears count by their magnitudes, which is on the safe side.
//
// Eurocode by EN 1992-4:2018, United States practice by ACI 318-19 chapter 17 and
// by LRFD only. No reinforcement beside the rods is counted; earthquake, fatigue
// and fire are not covered.
package anchor
