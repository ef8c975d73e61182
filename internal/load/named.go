package load

import (
	"strings"

	"footward.example/footward/internal/limit"
)

// with returns a notice that names actions.
func with(n *limit.Notice, actions string) *limit.Notice {
	return &limit.Notice{Code: n.Code, Severity: n.Severity, Text: strings.Replace(n.Text, "ACTIONS", actions, 1)}
}

// named appends the notices that name actions.
func (r *Result) named(l *limit.Notices) {
	if s := r.pairs(true); s != "" {
		l.Add(with(partsOfOne, s))
	}
	if s := r.pairs(false); s != "" && !r.in.Basis.US() {
		l.Add(with(partsApart, s))
	}
	var none []string
	variable := false
	for i := range r.in.Actions {
		a := &r.in.Actions[i]
		variable = variable || a.Kind != Permanent
		if !r.meet(i, i) {
			none = append(none, a.Name)
		}
	}
	if len(none) > 0 {
		l.Add(with(inNone, strings.Join(none, ", ")))
	}
	if variable {
		l.Add(wholeOrNone)
	}
}

// pairs names the variable actions of one kind that act in one combination: those
// that are parts of one action, or those that are not.
func (r *Result) pairs(one bool) string {
	var all []string
	done := make([]bool, len(r.in.Actions))
	for i := range r.in.Actions {
		if done[i] || !r.in.variable(i) {
			continue
		}
		names := []string{r.in.Actions[i].Name}
		for j := i + 1; j < len(r.in.Actions); j++ {
			if r.in.Actions[i].Kind == r.in.Actions[j].Kind && (r.in.one(i, j) || r.in.Basis.US()) == one && r.meet(i, j) {
				names = append(names, r.in.Actions[j].Name)
				done[j] = one
			}
		}
		if len(names) > 1 {
			all = append(all, strings.Join(names, " + "))
		}
	}
	return strings.Join(all, "; ")
}

func (in *Input) variable(i int) bool {
	k := in.Actions[i].Kind
	return k != Permanent && k != Accidental
}

// meet reports whether two actions are in one combination.
func (r *Result) meet(i, j int) bool {
	for k := range r.Combinations {
		if f := r.Combinations[k].Factors; f[i] != 0 && f[j] != 0 {
			return true
		}
	}
	return false
}
