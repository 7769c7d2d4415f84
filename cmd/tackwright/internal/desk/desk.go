// Package desk is a centre's plan on a page, for people who never type a command.
//
// It serves a folder on this computer, or with pass phrases on the house's
// network, as plain pages that work without script. It reads the folder anew
// whenever a file in it has changed, and holds its lock for a write alone. No
// search runs in it: each one is a process of its own (see package search), so
// that reading waits for none, and the plan that it finds is the one that the
// command finds. What comes back is audited here against the week here.
//
// Addresses hold dates, names of horses and numbers, never the name of a person,
// and nothing is logged.
package desk

import (
	"context"
	"crypto/tls"
	"errors"
	"fmt"
	"io"
	"log"
	"net"
	"net/http"
	"strings"
	"time"

	"tackwright/cmd/tackwright/internal/desk/search"
)

// Options say what is served, to whom.
type Options struct {
	Dir     string
	Now     func() time.Time
	Listen  string   // address and port; "" is this computer alone, on a port that is free
	Names   []string // by which browsers call this computer, besides localhost and its addresses
	Phrases Phrases  // a pass phrase a role; none: this computer alone, and all who sit at it are the office
	TLS     *tls.Config

	// Search runs one search in a process of its own.
	Search search.Runner
	// Command runs a command that takes no search, such as ["note", ...].
	Command func(ctx context.Context, args []string) search.Answer
	// Opened is told the address once pages are served on it.
	Opened func(address string)
}

// Serve serves pages until ctx ends. An error is that it could not begin.
func Serve(ctx context.Context, o Options) error {
	if o.Listen == "" {
		o.Listen = "127.0.0.1:0"
	}
	l, err := net.Listen("tcp", o.Listen)
	if err != nil {
		return fmt.Errorf("nothing can be served on %s: %w", o.Listen, err)
	}
	d := newDesk(ctx, o)
	scheme := "http"
	if o.TLS != nil {
		scheme = "https"
		l = tls.NewListener(l, o.TLS)
	}
	if !IsLoopback(o.Listen) && len(o.Phrases) == 0 {
		l.Close()
		return errors.New("others than this computer are served only with pass phrases")
	}
	server := &http.Server{Handler: d.handler(), ReadHeaderTimeout: 10 * time.Second, IdleTimeout: 2 * time.Minute,
		MaxHeaderBytes: 1 << 16, ErrorLog: log.New(io.Discard, "", 0), // it would name who calls
		BaseContext: func(net.Listener) context.Context { return ctx }}
	ended := make(chan error, 1)
	go func() { ended <- server.Serve(l) }()
	o.Opened(scheme + "://" + shown(l.Addr().String()) + "/")
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	closing, cancel := context.WithTimeout(context.Background(), 3*time.Second)
	defer cancel()
	if server.Shutdown(closing) != nil { // somebody holds a connection open
		server.Close()
	}
	d.jobs.wait()
	return nil
}

// IsLoopback reports whether an address to listen on is of this computer alone.
func IsLoopback(listen string) bool {
	host, _, err := net.SplitHostPort(listen)
	if err != nil {
		return false
	}
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// shown is an address as a person on this computer types it.
func shown(addr string) string {
	host, port, err := net.SplitHostPort(addr)
	if ip := net.ParseIP(host); err == nil && ip != nil && ip.IsUnspecified() {
		return net.JoinHostPort("localhost", port)
	}
	return addr
}

// desk is what is served.
type desk struct {
	Options
	ctx      context.Context
	readings readings
	sessions sessions
	tries    tries
	jobs     jobs
	mux      *http.ServeMux
}

func newDesk(ctx context.Context, o Options) *desk {
	d := &desk{Options: o, ctx: ctx}
	d.readings.dir = o.Dir
	d.sessions.now, d.tries.now = o.Now, o.Now
	d.sessions.cookie = "tackwright-" + key("folder", o.Dir)
	return d
}

// mayCall reports whether a browser may call this computer by that name, so that
// no page from elsewhere can take a name of its own for it.
func (d *desk) mayCall(r *http.Request) bool {
	host := r.Host
	if h, _, err := net.SplitHostPort(host); err == nil {
		host = h
	}
	host = strings.Trim(host, "[]")
	if ip := net.ParseIP(host); ip != nil {
		local, _ := r.Context().Value(http.LocalAddrContextKey).(net.Addr)
		if local == nil {
			return ip.IsLoopback()
		}
		at, _, err := net.SplitHostPort(local.String())
		return err == nil && ip.Equal(net.ParseIP(at))
	}
	for _, name := range append([]string{"localhost"}, d.Names...) {
		if strings.EqualFold(host, name) {
			return true
		}
	}
	return false
}
