package web

import (
	"net"
	"net/http"
	"strings"
)

// hosts are the names by which the service may be called. A page of the web whose
// name is made to lead to this machine would otherwise be of one site with the
// service, and might call it from its reader's browser.
type hosts struct {
	any   bool
	names map[string]bool
}

func newHosts(names []string) *hosts {
	h := &hosts{any: names == nil, names: map[string]bool{"": true, "localhost": true}}
	for _, n := range names {
		h.names[plainHost(n)] = true
	}
	return h
}

// allow reports whether a request calls the service by a name that is known, or by
// an address of this machine: that is no name which could be made to lead here.
func (h *hosts) allow(r *http.Request) bool {
	name := plainHost(r.Host)
	if h.any || h.names[name] {
		return true
	}
	ip := net.ParseIP(name)
	if ip == nil {
		return false
	}
	at, _ := r.Context().Value(http.LocalAddrContextKey).(*net.TCPAddr)
	return ip.IsLoopback() || at != nil && at.IP.Equal(ip)
}

// plainHost is a host without its port, in small letters.
func plainHost(host string) string {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	return strings.ToLower(strings.TrimSuffix(strings.Trim(host, "[]"), "."))
}
