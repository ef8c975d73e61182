// Package bearing checks the medium under a plate or a column end.
//
// The resultant of N, M_x and M_y stands at e_x = M_y/|N|, e_y = -M_x/|N| from
// the centre of the contact area. The effective area is the largest rectangle
// inside the contact area that is centred on the resultant, (B - 2|e_x|) by
// (L - 2|e_y|): a plastic distribution, uniform over that rectangle. A resultant
// outside the contact area fails.
//
// Concrete under a small area is confined by the concrete round it. The spread
// area is similar to the loaded one and has the same centre, so one scale s
// describes it: sqrt(A_c1/A_c0) = s. The scale is limited by the nearest edge of
// the block in each direction, by its height (1:2 spread by Eurocode, 2:1 frustum
// in US practice) and by a cap (3 by Eurocode, 2 in US practice).
//
// Timber is checked along the grain against its compressive strength, across the
// grain with the effective length and the factors of its standard. Any other
// medium is checked against a pressure that the designer answers for.
package bearing
