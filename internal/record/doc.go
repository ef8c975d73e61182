// Package record reads the record of one load test: resistance by each
// criterion or a lower bound, moduli of first loading and reload, subgrade
// reaction, creep and the settlement of a design life, and what the preload of
// clamping rods does to them.
//
// Criteria, moduli and scales are quoted from memory of the standards named,
// formulas recomputed; what no standard gives is marked as a choice.
package record
