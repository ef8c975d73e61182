// Package section finds the straight section of a plate that is bent most by what
// acts beyond it, at any angle.
//
// A footprint holds the plate within its outline, the hull. Every straight line
// that touches the hull cuts off a part of the plate; what presses or pulls on that
// part must be held by bending along the line:
//
//	m = sum of (force beyond the line times its distance from the line) / length
//
// For one moment and a straight face this is the cantilever of the handbooks. Under
// two moments, round a corner or a pipe, the line that governs may have any angle,
// which is looked for.
//
// Pressure and rods are held apart: where one end of a line is pressed and the other
// pulled, they do not relieve each other; rods that pull where it is pressed do. What
// acts on a short part of a line bends no more of it than 45 degrees reach, or, of rods,
// than the yield lines round them.
//
// The line at the face of the hull is a mechanism of the plastic plate, so by itself
// an upper bound; the limits of the length keep below the other mechanisms.
package section
