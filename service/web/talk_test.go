package web_test

import (
	"bufio"
	"context"
	"io"
	"net/http"
	"testing"

	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/encoding/protojson"

	footwardv1 "footward.example/footward/proto/footward/v1"
)

// talk is a stream of lines that is under way.
type talk struct {
	t        *testing.T
	body     *io.PipeWriter
	answered chan *http.Response
	answer   *bufio.Reader
	*http.Response
}

// talk opens a stream. Its answer is waited for by the first line that is read.
func (s *served) talk(t *testing.T, ctx context.Context, header ...string) *talk {
	t.Helper()
	reader, writer := io.Pipe()
	r, err := http.NewRequestWithContext(ctx, http.MethodPost, s.url+streamPath, reader)
	require.NoError(t, err)
	r.Header.Set("Content-Type", asLines)
	for i := 0; i < len(header); i += 2 {
		r.Header.Set(header[i], header[i+1])
	}
	c := &talk{t: t, body: writer, answered: make(chan *http.Response, 1)}
	go func() {
		answer, err := s.client.Do(r)
		if err != nil {
			_ = reader.CloseWithError(err)
		}
		c.answered <- answer
	}()
	t.Cleanup(func() {
		_ = writer.Close()
		if c.Response != nil {
			_ = c.Body.Close()
		}
	})
	return c
}

func (c *talk) say(line string) {
	c.t.Helper()
	_, err := io.WriteString(c.body, line+"\n")
	require.NoError(c.t, err)
}

// line reads the next line of the answer; empty: there is none.
func (c *talk) line() string {
	c.t.Helper()
	if c.Response == nil {
		c.Response = <-c.answered
		require.NotNil(c.t, c.Response)
		c.answer = bufio.NewReader(c.Body)
	}
	line, err := c.answer.ReadString('\n')
	if err != nil {
		require.ErrorIs(c.t, err, io.EOF)
		require.Empty(c.t, line, "a line that does not end")
	}
	return line
}

func (c *talk) outcomes() *footwardv1.StreamChecksResponse {
	c.t.Helper()
	m := &footwardv1.StreamChecksResponse{}
	line := c.line()
	require.NoError(c.t, protojson.Unmarshal([]byte(line), m), line)
	return m
}
