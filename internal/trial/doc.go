// Package trial turns load tests of one population into a characteristic and a
// design value: EN 1990 Annex D, tests that stopped without failure by
// likelihood, the correlation factors of EN 1997-1 beside, families of sizes, and
// two routes of the United States.
//
// A test that ended by one mode says of every other mode only that its load was
// survived. Clauses and tables of EN 1990 Annex D, and AISI S100 K2, are from
// memory; formulas were recomputed. No code gives the strength of a rammed stack.
package trial
