// Package base composes the parts of a column base. A part knows nothing of its
// siblings; what one part needs from another is brought here: the bearing
// strength under a plate, the strength of the rods that hold it.
package base
