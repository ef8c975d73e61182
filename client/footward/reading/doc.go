// Package reading turns files into checks. A file is YAML or JSON by the
// protobuf JSON mapping, and holds one or more documents; a document is one
// CheckItem or, under "items", a list of them as in CheckManyRequest.
//
// Files come from anywhere, so what they may cost is bounded: size, depth and
// number of faults told. YAML anchors and aliases are refused: no request needs
// them, and a few lines of them can unfold into gigabytes. A key that stands
// twice is refused too, since one of the two values would be lost in silence.
package reading
