package guard

import "time"

// account is what a caller has had of a lane, and what of its calls is there.
type account struct {
	who     string
	spent   time.Duration // of processors
	begun   int           // weight
	waiting []*turn
	ready   []*turn // begun, and wait to go on computing
}

// held are the places of the calls that wait and may be turned away.
func (a *account) held() (places int) {
	for _, t := range a.waiting {
		if !t.patient {
			places += t.places
		}
	}
	return places
}

// newest is the last of the calls that wait and may be turned away; nil: none.
func (a *account) newest() *turn {
	for i := len(a.waiting) - 1; i >= 0; i-- {
		if !a.waiting[i].patient {
			return a.waiting[i]
		}
	}
	return nil
}

// of returns the account of a caller. One that comes anew begins where the others
// are: what it did not ask for before, it has not saved.
func (l *lane) of(who string) *account {
	for _, a := range l.accounts {
		if a.who == who {
			return a
		}
	}
	a := &account{who: who, spent: l.now}
	l.accounts = append(l.accounts, a)
	return a
}

// tidy forgets callers of whom nothing is left.
func (l *lane) tidy() {
	kept := l.accounts[:0]
	for _, a := range l.accounts {
		if a.begun > 0 || len(a.waiting) > 0 || len(a.ready) > 0 {
			kept = append(kept, a)
		}
	}
	clear(l.accounts[len(kept):])
	l.accounts = kept
}

// poorest returns the account that has had least of those that are asked for; nil:
// none is.
func (l *lane) poorest(asked func(*account) bool) *account {
	var least *account
	for _, a := range l.accounts {
		if asked(a) && (least == nil || a.spent < least.spent) {
			least = a
		}
	}
	if least != nil {
		l.now = max(l.now, least.spent)
	}
	return least
}

// longest returns the account of which most waits that may be turned away; nil: none.
func (l *lane) longest() *account {
	var most *account
	for _, a := range l.accounts {
		if held := a.held(); held > 0 && (most == nil || held > most.held()) {
			most = a
		}
	}
	return most
}

func drop(list []*turn, t *turn) []*turn {
	for i := range list {
		if list[i] == t {
			return append(list[:i], list[i+1:]...)
		}
	}
	return list
}
