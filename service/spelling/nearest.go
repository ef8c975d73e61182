package spelling

import "strings"

// Bounds on what counts as near.
const (
	leastPart = 3 // letters of a name that begins or ends a longer one
	perFault  = 3 // letters for each that may be wrong
)

// Nearest returns the known name that was most likely meant, or none. Names are
// compared without capitals, signs and the words that all known ones begin with, as
// the values of an enum do.
func Nearest(name string, known []string) string {
	shared := plain(sharedWords(known))
	asked := strings.TrimPrefix(plain(Cut(name, longestName)), shared)
	best, least := "", max(1, len(asked)/perFault)+1
	for _, k := range known {
		if d := distance(asked, plain(k)[len(shared):], least); d < least {
			best, least = k, d
		}
	}
	return best
}

// plain leaves the letters and digits of a name.
func plain(name string) string {
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune("_-. ", r) {
			return -1
		}
		return r
	}, strings.ToLower(name))
}

// sharedWords is what all names begin with, up to a _.
func sharedWords(names []string) string {
	if len(names) < 2 {
		return ""
	}
	shared := names[0]
	for _, n := range names[1:] {
		for !strings.HasPrefix(n, shared) {
			shared = shared[:len(shared)-1]
		}
	}
	return shared[:strings.LastIndexByte(shared, '_')+1]
}

// distance is how many letters must be put in, left out, replaced or exchanged with
// the next one to make b of a; 1 when one begins or ends the other. It is
// least where it is not less.
func distance(a, b string, least int) int {
	if a == b {
		return 0
	}
	if short := min(len(a), len(b)); short >= leastPart &&
		(strings.HasPrefix(b, a) || strings.HasSuffix(b, a) || strings.HasPrefix(a, b) || strings.HasSuffix(a, b)) {
		return 1
	}
	if len(a)-len(b) >= least || len(b)-len(a) >= least {
		return least
	}
	// Rows of the table of Damerau's distance: before the last, last, now.
	before, last, now := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := 1; i <= len(a); i++ {
		now[0] = i
		for j := 1; j <= len(b); j++ {
			cost := 1
			if a[i-1] == b[j-1] {
				cost = 0
			}
			now[j] = min(last[j]+1, now[j-1]+1, last[j-1]+cost)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				now[j] = min(now[j], before[j-2]+1)
			}
		}
		before, last, now = last, now, before
	}
	return min(last[len(b)], least)
}
