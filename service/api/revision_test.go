package api_test

import (
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"footward.example/footward/client/footward/proof"
	"footward.example/footward/internal/basis"
	footwardv1 "footward.example/footward/proto/footward/v1"
)

const numbersFile = "../../testdata/golden/numbers.txt"

// drawing is a letter in the names of variants. A field that is renamed has other numbers
// drawn, which is no other result: it is then time for the next letter.
const drawing = "b"

// variants of a request, each with some of its numbers changed by up to a third. What
// is drawn for a number depends on the names of the request and of its field alone.
func variants(k named, n int) []named {
	var out []named
	for i := range n {
		v := named{fmt.Sprintf("%s %s%d", k.name, drawing, i+1), proto.CloneOf(k.item)}
		for _, p := range places(requestOf(v.item).ProtoReflect(), "") {
			h := fnv.New64a()
			fmt.Fprintf(h, "%s %s", k.name, p.path)
			draw := rand.New(rand.NewPCG(h.Sum64(), uint64(i+1)))
			if by := 2./3 + 2./3*draw.Float64(); p.d.Kind() == protoreflect.DoubleKind && draw.IntN(3) == 0 {
				p.in.Set(p.d, protoreflect.ValueOfFloat64(p.in.Get(p.d).Float()*by))
			}
		}
		out = append(out, v)
	}
	return out
}

// numbers is the answer of a request in a line: verdict, and of each limit state that
// applies its demand, resistance and required size to nine digits.
func numbers(r *footwardv1.CheckResult, err error) string {
	if err != nil {
		return "refused"
	}
	digits := func(v float64) string { return strconv.FormatFloat(v, 'g', 9, 64) }
	var b strings.Builder
	b.WriteString(strings.ToLower(strings.TrimPrefix(r.GetVerdict().String(), "VERDICT_")))
	for _, s := range r.GetLimitStates() {
		switch s.GetVerdict() {
		case footwardv1.Verdict_VERDICT_NOT_APPLICABLE:
			continue
		case footwardv1.Verdict_VERDICT_OUT_OF_SCOPE:
			b.WriteString(" " + s.GetId() + "=?")
			continue
		}
		b.WriteString(" " + s.GetId() + "=" + digits(s.GetDemand()))
		if s.Resistance != nil {
			b.WriteString("/" + digits(s.GetResistance()))
		} else if s.GetVerdict() == footwardv1.Verdict_VERDICT_FAIL {
			b.WriteString("/-")
		}
		if s.GetRequiredSize() != nil {
			b.WriteString(":" + digits(s.GetRequiredSize().GetValue()))
		}
	}
	return b.String()
}

// TestResultsChangeWithTheRevision holds the answers to the demo, the examples, the
// published requests and variants of them to those of the kernel's revision. Who
// changes one raises Revision in internal/basis, says what changed in DEVELOPERS.md,
// and writes the numbers anew with -update.
func TestResultsChangeWithTheRevision(t *testing.T) {
	s := service(t)
	var all []named
	for _, k := range corpus(t) {
		all = append(append(all, k), variants(k, 1)...)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "revision %d\n", basis.Revision)
	now := map[string]string{}
	for _, k := range all {
		proof.Detail(k.item, footwardv1.Detail_DETAIL_LIMIT_STATES)
		r, err := call(s, requestOf(k.item))
		now[k.name] = numbers(r, err)
		fmt.Fprintf(&b, "%s: %s\n", k.name, now[k.name])
	}
	text, err := os.ReadFile(numbersFile)
	if *update && os.IsNotExist(err) {
		require.NoError(t, os.WriteFile(numbersFile, []byte(b.String()), 0o644))
		return
	}
	require.NoError(t, err)
	head, rest, _ := strings.Cut(string(text), "\n")
	differ := 0
	for _, line := range strings.Split(strings.TrimSpace(rest), "\n") {
		name, was, _ := strings.Cut(line, ": ")
		if is, asked := now[name]; asked && is != was {
			if differ++; differ <= 10 {
				t.Logf("%s\nwas %s\nis  %s", name, was, is)
			}
		}
	}
	if head == fmt.Sprint("revision ", basis.Revision) {
		assert.Zero(t, differ, "results changed and the revision of the kernel did not")
	}
	if *update && !t.Failed() {
		require.NoError(t, os.WriteFile(numbersFile, []byte(b.String()), 0o644))
		return
	}
	assert.Equal(t, string(text), b.String(), "run go test ./service/api -run Revision -update")
}
