package desk

import (
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strings"
	"time"
)

// kept is a form that was filled in and came when its session was over, or before
// anybody had said her name. The page that asks for the pass phrase carries it in
// hidden fields; once somebody has entered, her session holds it, and the page of
// the form shows it filled in. It is sent by her hand alone.
type kept struct {
	path   string // of the form, which has its page under the same
	fields url.Values
	until  time.Time // in a session
}

const (
	keepsFor = 15 * time.Minute // a session does, from when it has begun
	mostKept = 256 << 10        // bytes
)

// fills are the routes of forms that people fill in.
var fills = []string{"/edit/{table}/{entry}", "/add/{table}", "/day/{date}/close", "/day/{date}/happened"}

// fillsAt reports whether a form that people fill in has that path.
func (d *desk) fillsAt(path string) bool {
	u, err := url.Parse(path)
	if err != nil {
		return false
	}
	_, pattern := d.mux.Handler(&http.Request{Method: http.MethodPost, URL: u})
	return slices.Contains(fills, strings.TrimPrefix(pattern, "POST "))
}

// kept is what a request says in a form that people fill in; nil is that it is none,
// or more than is kept.
func (d *desk) kept(r *http.Request) *kept {
	if r.Method != http.MethodPost || !d.fillsAt(r.URL.RequestURI()) || r.ParseForm() != nil {
		return nil
	}
	size := 0
	for name, values := range r.PostForm {
		size += len(name) + len(strings.Join(values, ""))
	}
	if size > mostKept {
		return nil
	}
	return &kept{path: r.URL.RequestURI(), fields: r.PostForm}
}

// keptBefore stands before the names of fields that the entry page carries.
const keptBefore = "kept-"

// carried is the form that the entry page carried; nil is none.
func (d *desk) carried(r *http.Request) *kept {
	k := &kept{path: r.PostFormValue("form"), fields: url.Values{}}
	if d.here(k.path) == "" || !d.fillsAt(k.path) {
		return nil
	}
	for name, values := range r.PostForm {
		if name, ok := strings.CutPrefix(name, keptBefore); ok {
			k.fields[name] = values
		}
	}
	return k
}

// hiddenField is a field of a page that nobody sees.
type hiddenField struct{ Name, Value string }

// hidden are the fields in which the entry page carries it.
func (k *kept) hidden() (all []hiddenField) {
	if k == nil {
		return nil
	}
	all = append(all, hiddenField{"form", k.path})
	for _, name := range slices.Sorted(maps.Keys(k.fields)) {
		for _, value := range k.fields[name] {
			all = append(all, hiddenField{keptBefore + name, value})
		}
	}
	return all
}

// keep has the session hold a form for a while.
func (s *session) keep(k *kept, now time.Time) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.kept = k; k != nil {
		k.until = now.Add(keepsFor)
	}
}

// refilled puts into a request for the page of a form what was filled in before, and
// reports whether anything was.
func (v *visit) refilled() bool {
	v.session.mu.Lock()
	defer v.session.mu.Unlock()
	k := v.session.kept
	if v.r.Method != http.MethodGet || k == nil || k.path != v.r.URL.RequestURI() || v.Now().After(k.until) {
		return false
	}
	v.r.PostForm = k.fields
	return true
}

// notSent is said of a form that is shown filled in.
const notSent = "nothing of this was saved yet, because the desk had to ask who you are: look it over, then save it"
