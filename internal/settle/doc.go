// Package settle predicts the settlement of a footing stage by stage, by every
// method that the data allow: the elastic half space, the strain influence of
// sand by cone resistance, the statistics of sand by blow count, and the
// one-dimensional consolidation of clay.
//
// The methods stand side by side because no one of them is right: each gives
// its own limit state. All loads are those of service, net of the ground that
// the excavation took away. Layers go from the base down; below the last one
// the ground is rigid unless the last one reaches down without end. Loads that
// go down again heave nothing here: a limit state takes the greatest of the
// stages.
//
// Peat, organic soil, mud and loose fill are out of scope, and so are repeated
// loads, collapse, swelling and liquefaction.
package settle
