// Package published holds the printed figures that the service reproduces, one
// file a source, and those worked by hand for lack of one.
package published

import "embed"

// Files are the figures: *.yaml.
//
//go:embed *.yaml
var Files embed.FS
