package api_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"footward.example/footward/client"
	"footward.example/footward/client/footward/reading"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

// patient is a client that waits for an answer on however busy a machine.
var patient = client.WithTimeout(10 * time.Minute)

// named is a request of the corpus.
type named struct {
	name string
	item *footwardv1.CheckItem
}

// corpus returns every check of the demo, of the examples and of the published
// figures. They are read anew, so a test may change them.
func corpus(t testing.TB) []named {
	t.Helper()
	var out []named
	for _, folder := range []string{"demo", "demo-more"} {
		files, err := filepath.Glob("../../testdata/" + folder + "/*.yaml")
		require.NoError(t, err)
		require.NotEmpty(t, files)
		for _, path := range files {
			switch strings.TrimSuffix(filepath.Base(path), ".yaml") {
			case "actions", "sizes", "compare", "tests", "reading":
				continue // no checks
			}
			f, err := os.Open(path)
			require.NoError(t, err)
			items, err := reading.Read(f)
			require.NoError(t, err)
			require.NoError(t, f.Close())
			for _, i := range items {
				require.NotNil(t, i.Check, path)
				out = append(out, named{folder + "/" + strings.TrimSuffix(filepath.Base(path), ".yaml"), i.Check})
			}
		}
	}
	for _, s := range sources(t) {
		for i := range s.Figures {
			out = append(out, named{s.Figures[i].ID, item(t, &s.Figures[i])})
		}
	}
	return out
}
