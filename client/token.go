package client

import (
	"context"
	"fmt"
)

// bearer adds a token to the headers of a call.
type bearer struct {
	token  func() (string, error)
	secure bool // whether it needs an encrypted connection
}

// GetRequestMetadata implements credentials.PerRPCCredentials.
func (b bearer) GetRequestMetadata(context.Context, ...string) (map[string]string, error) {
	t, err := b.token()
	if err != nil {
		return nil, fmt.Errorf("footward client: no token: %w", err)
	}
	return map[string]string{"authorization": "Bearer " + t}, nil
}

// RequireTransportSecurity implements credentials.PerRPCCredentials.
func (b bearer) RequireTransportSecurity() bool { return b.secure }
