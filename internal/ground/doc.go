// Package ground checks the soil under a footing: bearing, sliding, eccentricity,
// overturning, uplift, a presumptive pressure, and a strong granular layer over
// clay that the footing punches through.
//
// The footing is a rectangle or a circle with a level base on level ground. For
// the Eurocode, permanent and variable actions are characteristic and each
// design approach puts its own factors on them, the permanent ones both as
// favourable and as unfavourable; the bearing resistance is that of EN 1997-1
// Annex D, drained and undrained, which has no depth factors. For the two United
// States bases the actions are those of one combination, and bearing follows one
// author, whose bearing, shape, depth and inclination factors are never mixed
// with those of another.
//
// Passive resistance beside the footing is not counted. Settlement, slopes, water
// above the base, and repeated load are not part of it.
package ground
