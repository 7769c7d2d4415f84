package desk

import (
	"crypto/rand"
	"net/http"
	"sync"
	"time"

	"tackwright/model"
)

// session is somebody at a browser, from the pass phrase (or, where this
// computer alone is served, from the first page) until it is closed.
type session struct {
	role model.Role

	mu   sync.Mutex
	name string    // the person's, once she has said it
	kept *kept     // a form that she had filled in before; nil is none
	seen time.Time // last
}

func (s *session) who() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.name
}

func (s *session) is(name string) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.name != "" && s.name != name { // it is another's
		s.kept = nil
	}
	s.name = name
}

const (
	idle     = 12 * time.Hour // after which a session is over
	mostOpen = 500            // sessions
)

// sessions are held in memory: a restart asks for the pass phrase again.
type sessions struct {
	sync.Mutex
	now    func() time.Time
	cookie string // its name: browsers give cookies to every port of a computer
	open   map[string]*session
}

// begin opens a session and gives its cookie.
func (all *sessions) begin(w http.ResponseWriter, role model.Role, secure bool) *session {
	all.Lock()
	defer all.Unlock()
	if all.open == nil {
		all.open = map[string]*session{}
	}
	for id, s := range all.open {
		if all.now().Sub(s.seen) > idle || len(all.open) >= mostOpen {
			delete(all.open, id)
		}
	}
	id := rand.Text()
	s := &session{role: role, seen: all.now()}
	all.open[id] = s
	http.SetCookie(w, &http.Cookie{Name: all.cookie, Value: id, Path: "/", HttpOnly: true, Secure: secure, SameSite: http.SameSiteStrictMode})
	return s
}

// of is the session of a request; nil is none.
func (all *sessions) of(r *http.Request) *session {
	c, err := r.Cookie(all.cookie)
	if err != nil {
		return nil
	}
	all.Lock()
	defer all.Unlock()
	s := all.open[c.Value]
	if s == nil || all.now().Sub(s.seen) > idle {
		return nil
	}
	s.seen = all.now()
	return s
}

// end closes the session of a request.
func (all *sessions) end(r *http.Request) {
	if c, err := r.Cookie(all.cookie); err == nil {
		all.Lock()
		defer all.Unlock()
		delete(all.open, c.Value)
	}
}

// sessionOf is the session of a request. Where this computer alone is served it
// is begun by itself, as the office.
func (d *desk) sessionOf(w http.ResponseWriter, r *http.Request) *session {
	s := d.sessions.of(r)
	if s == nil && len(d.Phrases) == 0 {
		s = d.sessions.begin(w, model.Office, d.TLS != nil)
	}
	return s
}
