package web

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/tap"

	"footward.example/footward/service/guard"
	"footward.example/footward/service/spelling"
)

// services begins the names of the services that are answered here.
const services = "footward.v1."

// front lets through whole requests in JSON to methods that exist, and answers
// everything else itself.
type front struct {
	methods      map[string]method // by path
	documents    map[string]http.Handler
	hosts        *hosts
	messageBytes int
	requestTime  time.Duration
	answerTime   time.Duration
	deadlines    guard.Deadlines
	begin        tap.ServerInHandle // bounds streams
	door         Door
	calls        Calls
	leaving      atomic.Bool // each answer is the last on its connection
}

type method struct{ streams bool }

func newFront(calls Calls, o Options) (*front, error) {
	f := &front{
		methods: map[string]method{}, documents: map[string]http.Handler{}, hosts: newHosts(o.Hosts), messageBytes: o.MessageBytes,
		requestTime: o.RequestTime, answerTime: o.AnswerTime, deadlines: o.Deadlines, calls: calls, door: o.Door,
	}
	streams := map[string]bool{}
	for name, service := range calls.GetServiceInfo() {
		if !strings.HasPrefix(name, services) {
			continue
		}
		for _, m := range service.Methods {
			path := "/" + name + "/" + m.Name
			streams[path] = m.IsClientStream || m.IsServerStream
			f.methods[path] = method{streams: streams[path]}
		}
	}
	f.begin = o.Deadlines.Tap(streams)
	return f, f.addDocuments(o.Documents)
}

// ServeHTTP implements http.Handler. A path is taken as it is written: letters
// behind % would look otherwise to a proxy in front.
func (f *front) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("X-Content-Type-Options", "nosniff")
	if f.leaving.Load() {
		w.Header().Set("Connection", "close")
	}
	if !f.hosts.allow(r) {
		refuse(w, &refusal{http.StatusForbidden, codes.PermissionDenied,
			fmt.Sprintf("nobody has said that this service may be called by the name %q (--http-hosts)", spelling.Cut(r.Host, longestText))})
		return
	}
	path := r.URL.EscapedPath()
	if d, known := f.documents[path]; known {
		f.document(w, r, d)
		return
	}
	m, known := f.methods[path]
	if !known {
		refuse(w, &refusal{http.StatusNotFound, codes.NotFound, "there is nothing at this path" + f.hint(path) + "; GET / lists what there is"})
		return
	}
	c, refused := f.call(w, r, m)
	if refused != nil {
		refuse(w, refused)
		return
	}
	if err := f.door.Admit(r); err != nil {
		turnAway(w, err)
		return
	}
	if m.streams {
		f.stream(c)
	} else {
		f.unary(c)
	}
}

// longestText is how much is shown of what a caller sent [characters].
const longestText = 100

// hint names the path that was meant, where one is near.
func (f *front) hint(path string) string {
	name := path[strings.LastIndexByte(path, '/')+1:]
	if strings.Count(path, "/") > 1 && !strings.Contains(strings.ToLower(path), services) {
		return "" // somebody else's
	}
	at := map[string]string{}
	for p := range f.methods {
		at[p[strings.LastIndexByte(p, '/')+1:]] = p
	}
	names := make([]string, 0, len(at))
	for n := range at {
		names = append(names, n)
	}
	slices.Sort(names)
	if near := spelling.Nearest(name, names); near != "" {
		return ", nearest is " + at[near]
	}
	return ""
}
