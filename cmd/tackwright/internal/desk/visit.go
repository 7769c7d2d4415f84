package desk

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"net/http"
	"net/url"
	"os"
	"runtime/debug"
	"slices"
	"strings"

	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/model"
	"tackwright/model/folder"
)

// visit is one request, of somebody who may make it.
type visit struct {
	*desk
	w http.ResponseWriter
	r *http.Request
	*session
	reading *reading
	back    string // where to go from what cannot be; "": where she came from
}

// refused is what a person is told who asked for what cannot be.
type refused struct {
	status int
	words  string
}

func (e *refused) Error() string { return e.words }

func no(format string, args ...any) error {
	return &refused{http.StatusConflict, fmt.Sprintf(format, args...)}
}

func notThere(format string, args ...any) error {
	return &refused{http.StatusNotFound, fmt.Sprintf(format, args...)}
}

// route is what answers one kind of request.
type route struct {
	pattern string
	least   model.Role // that may
	do      func(*visit) error
}

// ranks of roles: each may do what those before it may.
var ranks = []model.Role{model.Barn, model.Instructor, model.Office}

func rank(r model.Role) int { return slices.Index(ranks, r) }

// handler checks each request before it is answered.
func (d *desk) handler() http.Handler {
	mux := http.NewServeMux()
	mux.HandleFunc("GET /look/{file}", serveLook)
	for _, x := range routes() {
		mux.HandleFunc(x.pattern, func(w http.ResponseWriter, r *http.Request) { d.answer(x, w, r) })
	}
	mux.HandleFunc("GET /enter", d.showEnter)
	mux.HandleFunc("POST /enter", d.enter)
	d.mux = mux
	checked := http.NewCrossOriginProtection().Handler(mux)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", "default-src 'none'; style-src 'self'; script-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'")
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "camera=(), microphone=(), geolocation=()")
		if !d.mayCall(r) {
			http.Error(w, "This computer is not known by that name. Add it with --name when the desk is started.", http.StatusMisdirectedRequest)
			return
		}
		most := int64(mostForm)
		if r.URL.Path == "/import" {
			most = mostSheet
		}
		r.Body = http.MaxBytesReader(w, r.Body, most)
		checked.ServeHTTP(w, r)
	})
}

// answer answers a request of somebody whose role allows it.
func (d *desk) answer(x route, w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Cache-Control", "no-store")
	s := d.sessionOf(w, r)
	if s == nil {
		d.turnAway(w, r)
		return
	}
	v := &visit{desk: d, w: w, r: r, session: s}
	if r.Method == http.MethodPost && r.URL.Path != "/name" {
		s.keep(nil, d.Now()) // it is sent, or something else is
	}
	defer func() {
		if x := recover(); x != nil {
			fmt.Fprintf(os.Stderr, "a bug of this program: %v\n%s", x, debug.Stack())
			v.fail(errors.New("this went wrong, which is a bug of this program"))
		}
	}()
	err := v.may(x)
	if err == nil {
		err = v.said()
	}
	if err == nil {
		v.reading, err = d.read(v.asked())
	}
	if err == nil {
		err = x.do(v)
	}
	if err != nil {
		v.fail(err)
	}
}

// notes reports whether who looks may note and mend.
func (v *visit) notes() bool { return rank(v.role) >= rank(model.Instructor) }

func (v *visit) may(x route) error {
	if rank(v.role) < rank(x.least) {
		return &refused{http.StatusForbidden, fmt.Sprintf("that is for the %s; you are here as %s", x.least, v.role)}
	}
	return nil
}

// said is that the address names dates that are some, and that all of a form came:
// what did not fit would look as if it had been left empty.
func (v *visit) said() error {
	for _, s := range []string{v.r.PathValue("date"), v.r.URL.Query().Get("on")} {
		if _, err := model.ParseDate(s); s != "" && err != nil {
			return notThere("there is no such date")
		}
	}
	var large *http.MaxBytesError
	if err := v.r.ParseForm(); errors.As(err, &large) {
		return &refused{http.StatusRequestEntityTooLarge, "that is more than a form can hold"}
	} else if err != nil {
		return &refused{http.StatusBadRequest, "that form cannot be read"}
	}
	return nil
}

// asked is the date that the address names; 0 is none.
func (v *visit) asked() model.Date {
	for _, s := range []string{v.r.PathValue("date"), v.r.URL.Query().Get("on")} {
		if d, err := model.ParseDate(s); err == nil {
			return d
		}
	}
	return 0
}

// date is that of the address, else today.
func (v *visit) date() model.Date {
	if d := v.asked(); d != 0 {
		return d
	}
	return v.reading.Today
}

// fail tells a person what could not be done, and that nothing was.
func (v *visit) fail(err error) {
	status := http.StatusInternalServerError
	var says *refused
	var busy *folder.BusyError
	var changed *folder.ChangedError
	var not *folder.RefusedError
	var disk *folder.DiskError
	switch {
	case errors.As(err, &says):
		status = says.status
	case errors.As(err, &changed), errors.As(err, &not), errors.Is(err, search.ErrChanged):
		status = http.StatusConflict
	case errors.As(err, &busy), errors.As(err, &disk):
		status = http.StatusServiceUnavailable
	}
	back := cmp.Or(v.back, v.cameFrom())
	if k := v.desk.kept(v.r); k != nil && errors.Is(err, errUnnamed) {
		v.session.keep(k, v.Now())
		back = k.path
	}
	v.page(status, "refused", "That cannot be", struct {
		Words, Back string
		Name, Said  bool // she has no name yet; it says itself that nothing was changed, or nothing was to be
	}{model.Sentence(err.Error()), back, errors.Is(err, errUnnamed), v.r.Method == http.MethodGet || strings.HasPrefix(strings.ToLower(err.Error()), "nothing was changed")})
}

// see sends the browser to another page, after something was done.
func (v *visit) see(path string) error {
	http.Redirect(v.w, v.r, path, http.StatusSeeOther)
	return nil
}

var errUnnamed = &refused{http.StatusConflict, "say who you are first: what is noted and posted carries your name"}

// cameFrom is the page of this desk that led here; "" is none.
func (v *visit) cameFrom() string { return v.ledFrom(v.r) }

// ledFrom is cameFrom of any request.
func (d *desk) ledFrom(r *http.Request) string {
	u, err := url.Parse(r.Referer())
	if err != nil || u.Host != r.Host {
		return ""
	}
	return d.here(u.RequestURI())
}

// here is a path of a page of this desk, or "": no other place is led to.
func (d *desk) here(path string) string {
	u, err := url.Parse(path)
	if err != nil || u.Host != "" || u.Scheme != "" || !strings.HasPrefix(u.Path, "/") || strings.Contains(u.Path, `\`) || u.Path == "/name" || u.Path == "/enter" {
		return ""
	}
	if _, page := d.mux.Handler(&http.Request{Method: http.MethodGet, URL: u}); !strings.HasPrefix(page, "GET ") {
		return "" // it takes a form alone
	}
	return path
}

// person is who does it; whoever has not said her name is asked.
func (v *visit) person() (*model.Person, error) {
	i := slices.IndexFunc(v.reading.Centre.Persons, func(p *model.Person) bool { return p.Name == v.session.who() })
	if i < 0 {
		return nil, errUnnamed
	}
	return v.reading.Centre.Persons[i], nil
}

// page writes a page; what it shows was made before, so that an error leaves
// none half written.
func (v *visit) page(status int, name, title string, body any) error {
	var b bytes.Buffer
	if err := pages[name].Execute(&b, v.frame(title, body)); err != nil {
		return fmt.Errorf("the page cannot be shown, which is a bug of this program: %w", err)
	}
	v.w.Header().Set("Content-Type", "text/html; charset=utf-8")
	v.w.WriteHeader(status)
	_, err := v.w.Write(b.Bytes())
	if err != nil {
		return nil // whoever asked is gone
	}
	return nil
}

// show is page for what was found.
func (v *visit) show(name, title string, body any) error {
	return v.page(http.StatusOK, name, title, body)
}
