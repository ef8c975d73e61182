package guard

import (
	"bufio"
	"bytes"
	"context"
	"crypto/sha256"
	"crypto/subtle"
	"crypto/x509"
	"errors"
	"fmt"
	"log/slog"
	"slices"
	"strings"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/credentials"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/peer"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// Callers says who may call. The zero value lets everybody in.
type Callers struct {
	// Names are those of the certificates that may call: a DNS name, a URI or the
	// common name. nil: all that the authorities have signed.
	Names  []string
	Tokens *Tokens // nil: none is asked for
}

// check turns away calls of others.
func (c Callers) check(ctx context.Context, method string, tally Tally) error {
	switch {
	case open(method):
	case len(c.Names) > 0 && !c.named(ctx):
		return turnAway(tally, codes.PermissionDenied, footwardv1.CallReason_CALL_REASON_NAME_NOT_ALLOWED,
			"no name in the client's certificate is allowed to call")
	case c.Tokens != nil && !c.Tokens.known(ctx):
		return turnAway(tally, codes.Unauthenticated, footwardv1.CallReason_CALL_REASON_TOKEN_REFUSED,
			"a bearer token that the service knows is needed: authorization: Bearer TOKEN")
	}
	return nil
}

func (c Callers) named(ctx context.Context) bool {
	p, ok := peer.FromContext(ctx)
	if !ok {
		return false
	}
	info, ok := p.AuthInfo.(credentials.TLSInfo)
	// Only a certificate that was verified counts.
	if !ok || len(info.State.VerifiedChains) == 0 {
		return false
	}
	return slices.ContainsFunc(namesOf(info.State.VerifiedChains[0][0]), func(name string) bool {
		return slices.Contains(c.Names, name)
	})
}

func namesOf(c *x509.Certificate) []string {
	names := slices.Clone(c.DNSNames)
	for _, u := range c.URIs {
		names = append(names, u.String())
	}
	if c.Subject.CommonName != "" {
		names = append(names, c.Subject.CommonName)
	}
	return names
}

// LeastToken is the fewest characters of a token: fewer can be guessed.
const LeastToken = 16

type digest = [sha256.Size]byte

// Tokens are the bearer tokens that may call, read from a file with one a line
// and again when it changes. Of a token only its digest is kept.
type Tokens struct{ digests *fromFiles[[]digest] }

// ReadTokens reads a file of tokens. A blank line says nothing, nor does what follows
// a # that begins a line or stands after a blank.
func ReadTokens(path string, lookEvery time.Duration, log *slog.Logger) (*Tokens, error) {
	if lookEvery == 0 {
		lookEvery = LookEvery
	}
	t := &Tokens{&fromFiles[[]digest]{
		what: "tokens", paths: []string{path}, log: log, every: lookEvery,
		read: func() ([]digest, error) {
			warnOfOthers(log, path, secret)
			return readTokens(path)
		},
	}}
	return t, t.digests.load()
}

func readTokens(path string) ([]digest, error) {
	text, err := readSecret(path)
	if err != nil {
		return nil, fmt.Errorf("tokens: %w", err)
	}
	var out []digest
	lines := bufio.NewScanner(bytes.NewReader(text))
	for n := 1; lines.Scan(); n++ {
		token := bytes.TrimSpace(lines.Bytes())
		comment := []byte(nil)
		if at := bytes.IndexAny(token, " \t"); at >= 0 && !bytes.HasPrefix(token, []byte("#")) {
			token, comment = token[:at], bytes.TrimSpace(token[at:])
		}
		switch {
		case len(token) == 0 || token[0] == '#':
		// The token itself is never said.
		case len(token) < LeastToken || len(comment) > 0 && comment[0] != '#':
			return nil, fmt.Errorf("tokens: %s: line %d is no token: one has at least %d characters and no blank", path, n, LeastToken)
		case bytes.ContainsFunc(token, unfit):
			return nil, fmt.Errorf("tokens: %s: line %d has characters that no header carries: the file must be plain text, such as UTF-8, and a token ASCII", path, n)
		default:
			out = append(out, sha256.Sum256(token))
		}
	}
	if err := lines.Err(); err != nil {
		return nil, fmt.Errorf("tokens: %s: %w", path, err)
	}
	if len(out) == 0 {
		return nil, errors.New("tokens: " + path + " holds none")
	}
	return out, nil
}

// unfit reports whether a character cannot be in the value of a header.
func unfit(r rune) bool { return r <= ' ' || r > '~' }

// Look has the file looked at now, whether it is time or not.
func (t *Tokens) Look() { t.digests.look() }

// known reports whether a call carries a token of the file. It takes as long for
// a wrong token as for a right one, wherever that stands.
func (t *Tokens) known(ctx context.Context) bool {
	sent := metadata.ValueFromIncomingContext(ctx, "authorization")
	if len(sent) != 1 {
		return false
	}
	scheme, token, _ := strings.Cut(sent[0], " ")
	if !strings.EqualFold(scheme, "bearer") {
		return false
	}
	given := sha256.Sum256([]byte(strings.TrimSpace(token)))
	found := 0
	for _, d := range t.digests.get() {
		found |= subtle.ConstantTimeCompare(given[:], d[:])
	}
	return found == 1
}
