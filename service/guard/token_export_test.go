package guard

import "context"

// Known reports whether a call carries a token of the file.
func (t *Tokens) Known(ctx context.Context) bool { return t.known(ctx) }
