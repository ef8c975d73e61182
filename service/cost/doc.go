// Package cost tells from a request, before any work is done, about how long it
// will take: by the combinations, parts, choices, layers and items in it. It only
// counts, so that it takes far less than the work itself.
package cost
