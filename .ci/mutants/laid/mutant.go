// Package mutant is laid over the kernel while its changes are tried: every number,
// comparison, min and max of the kernel then goes through it. A place is one such
// use; MUTANT says which places differ and how, MUTANT_SEEN is the file to which a
// process writes the places that it reaches.
package mutant

import (
	"cmp"
	"fmt"
	"os"
	"strconv"
	"strings"
)

const places = 1 << 15

var (
	on    [places]bool
	value [places]float64
	seen  *os.File
	hits  []int
)

func init() {
	if path := os.Getenv("MUTANT_SEEN"); path != "" {
		file, err := os.Create(path)
		if err != nil {
			panic(err)
		}
		seen = file
		Watch()
	}
	Set(os.Getenv("MUTANT"))
}

// Set makes the places of one change differ: "12=1.8,40=1.8", a place of a comparison
// without a value.
func Set(change string) {
	if change == "" {
		return
	}
	for _, p := range strings.Split(change, ",") {
		id, v, _ := strings.Cut(p, "=")
		n, err := strconv.Atoi(id)
		if err != nil {
			panic(err)
		}
		if v != "" {
			if value[n], err = strconv.ParseFloat(v, 64); err != nil {
				panic(err)
			}
		}
		on[n] = true
	}
}

// Clear makes all places what they are.
func Clear() { clear(on[:]) }

// watching is whether places are looked for, not changed.
var watching bool

// Watch notes which places are reached from here on.
func Watch() {
	watching, hits = true, nil
	for i := range on {
		on[i] = true
	}
}

// Hits ends Watch and returns the places reached.
func Hits() []int {
	watching = false
	Clear()
	return hits
}

// active is whether a place that is on changes; while watching it only notes it.
func active(id int) bool {
	if !watching {
		return true
	}
	if on[id] = false; seen != nil {
		fmt.Fprintln(seen, id)
	}
	hits = append(hits, id)
	return false
}

type number interface {
	~float64 | ~float32 | ~int | ~int8 | ~int16 | ~int32 | ~int64 | ~uint | ~uint8 | ~uint16 | ~uint32 | ~uint64
}

// At is a number of the kernel.
func At[T number](id int, v T) T {
	if on[id] && active(id) {
		return T(value[id])
	}
	return v
}

// Reach notes that a table of the package is used.
func Reach(id int) {
	if on[id] {
		active(id)
	}
}

// Same is the outcome of == or !=.
func Same(id int, v bool) bool {
	if on[id] && active(id) {
		return !v
	}
	return v
}

// Less is a < b, or a > b.
func Less[T cmp.Ordered](id int, a, b T) bool {
	if on[id] && active(id) {
		return a > b
	}
	return a < b
}

// Most is a <= b, or a >= b.
func Most[T cmp.Ordered](id int, a, b T) bool {
	if on[id] && active(id) {
		return a >= b
	}
	return a <= b
}

// More is a > b, or a < b.
func More[T cmp.Ordered](id int, a, b T) bool {
	if on[id] && active(id) {
		return a < b
	}
	return a > b
}

// Least is a >= b, or a <= b.
func Least[T cmp.Ordered](id int, a, b T) bool {
	if on[id] && active(id) {
		return a <= b
	}
	return a >= b
}

// Min is the least, or the greatest.
func Min[T cmp.Ordered](id int, a T, more ...T) T {
	turned := on[id] && active(id)
	for _, b := range more {
		if turned {
			a = max(a, b)
		} else {
			a = min(a, b)
		}
	}
	return a
}

// Max is the greatest, or the least.
func Max[T cmp.Ordered](id int, a T, more ...T) T {
	turned := on[id] && active(id)
	for _, b := range more {
		if turned {
			a = min(a, b)
		} else {
			a = max(a, b)
		}
	}
	return a
}
