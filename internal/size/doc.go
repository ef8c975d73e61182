// Package size looks for the cheapest column base that holds, among plans,
// thicknesses, threads and throats that are offered.
//
// Choices are tried from the cheapest up, so the first that passes is the best.
// What fails tells of others: a weld that fails does so on any plan and with any
// rods; what does not know the throat fails with any throat. No more than that is
// taken for granted, since a thicker plate may end prying and a thicker rod needs
// a larger hole, so the answer is that of trying every choice.
//
// SearchPad looks for a concrete pad for the same column, the smallest plan first:
// its ground and its concrete are those of the parts ground and pad, which it composes.
package size
