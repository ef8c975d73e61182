package limit

// Severity ranks notices.
type Severity uint8

// The severities.
const (
	Info       Severity = iota + 1 // a choice that the calculation made
	Assumption                     // to be confirmed by the designer
	Caution                        // a limit of the method, or something not checked
)

// Notice is a remark that goes with an answer. Each part keeps one ordered
// table of its notices.
type Notice struct {
	Code     string // stable, snake case
	Text     string // in words
	Severity Severity
}

// MaxNotices is the most notices that one check can have.
const MaxNotices = 128

// Notices is an ordered list of notices. It allocates nothing.
type Notices struct {
	n  int
	at [MaxNotices]*Notice
}

// Add appends a notice once.
func (l *Notices) Add(n *Notice) {
	for _, has := range l.at[:l.n] {
		if has == n {
			return
		}
	}
	if l.n < MaxNotices {
		l.at[l.n] = n
		l.n++
	}
}

// Drop takes the notice of a code out of the list, where what it misses is there
// after all.
func (l *Notices) Drop(code string) {
	kept := 0
	for _, n := range l.at[:l.n] {
		if n.Code != code {
			l.at[kept] = n
			kept++
		}
	}
	l.n = kept
}

// Reset empties the list.
func (l *Notices) Reset() { l.n = 0 }

// All returns the notices in order.
func (l *Notices) All() []*Notice { return l.at[:l.n] }
