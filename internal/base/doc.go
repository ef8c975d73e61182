// Package base composes the parts of a column base. A part knows nothing of its
// siblings; what one part needs from another is brought here.
//
//	column      N, V, M at the plate's upper face
//	  weld                    the same
//	  plate                   V times plate and grout on M (lever.go)
//	  bed and rods            share N and M in every way they may (share.go)
//	  plate                   greatest pressure and tensions of the sharing
//	  rods                    the greater of sharing, plate's own method with its
//	                          prying, and preload; what friction leaves of V
//	  headed in concrete      what the rods have (anchorage.go)
//	  through the stack       what the rods have; weights against N, V, M
//	  stack of rings          what the plate presses, V times its height (stack.go)
//	  block of concrete       N, V, M at the foot, as a pad (pad.go)
//	  ground                  N, V, M at the foot and all weights (below.go)
//	  settlement              service values; the stack settles and turns besides
//
// Handovers lists what is handed on, and a test holds every part to it: the receiver
// takes the greatest that any method of the same answer finds.
package base
