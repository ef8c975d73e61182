// Package load combines actions at the foot of a column as the standards write
// it, stage by stage.
//
// Actions act from a first to a last stage. Within a stage every permanent
// action may help or harm, so each is taken with its upper and its lower factor;
// every variable action may be there or not, and leads or accompanies. Actions of
// one kind, or said to be of one whole, are parts of one action: they lead or
// accompany together, and each may be absent. No two actions of one group of
// alternatives act together, unless they are parts of one whole. What remains after
// equal combinations have been dropped is the whole set, of which the envelope holds
// the extremes. Of each combination is known how long it lasts, for timber.
//
// Eurocode: EN 1990 (6.10), or (6.10a) with (6.10b); sets A, B and C of Table
// A1.2; the accidental and the three serviceability combinations. United States:
// ASCE 7-22 2.3.1 and 2.4.1, without earthquake, flood, ice, fluids and self-
// straining actions.
package load
