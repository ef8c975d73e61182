// Package version says which build of the service this is.
package version

import (
	"runtime/debug"
	"sync"
)

// development is the version of a build that carries none.
const development = "development"

// String returns the module's version, else the revision that was built with a
// mark where the sources had been changed, else "development".
var String = sync.OnceValue(func() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return development
	}
	return of(info)
})

// revisionDigits are enough to name a revision.
const revisionDigits = 12

func of(info *debug.BuildInfo) string {
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	var revision, mark string
	for _, s := range info.Settings {
		switch s.Key {
		case "vcs.revision":
			revision = s.Value[:min(len(s.Value), revisionDigits)]
		case "vcs.modified":
			if s.Value == "true" {
				mark = "+changed"
			}
		}
	}
	if revision == "" {
		return development
	}
	return revision + mark
}
