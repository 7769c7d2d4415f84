package desk

import (
	"cmp"
	"crypto/sha256"
	"crypto/subtle"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"sync"
	"time"
	"unicode/utf8"

	"tackwright/model"
)

// Phrases are pass phrases by role.
type Phrases map[model.Role]string

// leastPhrase is how many letters a pass phrase has at least.
const leastPhrase = 12

// Check says what is wrong with the pass phrases.
func (p Phrases) Check() error {
	said := map[string]model.Role{}
	for _, role := range ranks {
		phrase, ok := p[role]
		switch other := said[phrase]; {
		case !ok:
			continue
		case utf8.RuneCountInString(phrase) < leastPhrase:
			return fmt.Errorf("the pass phrase of the %s is shorter than %d letters", role, leastPhrase)
		case other != "":
			return fmt.Errorf("%s and %s have the same pass phrase", other, role)
		}
		said[phrase] = role
	}
	if len(said) == 0 {
		return fmt.Errorf("there is no pass phrase; write one each for barn, instructor and office")
	}
	return nil
}

// roleOf is the role whose pass phrase it is; "" is none. It takes as long for
// each answer.
func (p Phrases) roleOf(said string) (role model.Role) {
	sum := sha256.Sum256([]byte(said))
	for _, r := range ranks {
		phrase, ok := p[r]
		if is := sha256.Sum256([]byte(phrase)); subtle.ConstantTimeCompare(sum[:], is[:]) == 1 && ok {
			role = r
		}
	}
	return role
}

const (
	freeTries = 5           // wrong pass phrases from one address, before it has to wait
	waits     = time.Minute // and then after each; longer after more of them
	mostWait  = time.Hour
	mostFrom  = 1000 // addresses that are kept in mind
)

// tries count wrong pass phrases.
type tries struct {
	sync.Mutex
	now  func() time.Time
	from map[string]*failures
}

type failures struct {
	count int
	last  time.Time
}

// wait is how long an address has to wait before its next try.
func (t *tries) wait(from string) time.Duration {
	t.Lock()
	defer t.Unlock()
	f := t.from[from]
	if f == nil || f.count < freeTries {
		return 0
	}
	pause := min(waits<<min(f.count-freeTries, 10), mostWait)
	return max(0, f.last.Add(pause).Sub(t.now()))
}

func (t *tries) wrong(from string) {
	t.Lock()
	defer t.Unlock()
	if t.from == nil || len(t.from) >= mostFrom {
		t.from = map[string]*failures{}
	}
	if t.from[from] == nil {
		t.from[from] = &failures{}
	}
	t.from[from].count++
	t.from[from].last = t.now()
}

func (t *tries) right(from string) {
	t.Lock()
	defer t.Unlock()
	delete(t.from, from)
}

// caller is the address that a request comes from.
func caller(r *http.Request) string {
	host, _, err := net.SplitHostPort(r.RemoteAddr)
	if err != nil {
		return r.RemoteAddr
	}
	return host
}

func (d *desk) showEnter(w http.ResponseWriter, r *http.Request) {
	d.door(w, r, http.StatusOK, enterView{Back: d.here(r.URL.Query().Get("back"))})
}

// enterView is the page that asks for the pass phrase.
type enterView struct {
	Wrong  string
	Back   string        // where she goes from there
	Hidden []hiddenField // of a form that she had filled in
}

// turnAway has somebody without a session enter; what she wanted is not forgotten.
func (d *desk) turnAway(w http.ResponseWriter, r *http.Request) {
	if r.Method != http.MethodPost {
		to := "/enter"
		if back := d.here(r.URL.RequestURI()); back != "" && back != "/" {
			to += "?back=" + url.QueryEscape(back)
		}
		http.Redirect(w, r, to, http.StatusSeeOther)
		return
	}
	x := enterView{Wrong: "Your session is over, and nothing was done. Enter, and touch it again.", Back: d.ledFrom(r)}
	if k := d.kept(r); k != nil {
		x.Wrong, x.Back, x.Hidden = "Your session is over, and nothing was saved yet. Enter, and what you filled in is there again.", k.path, k.hidden()
	}
	d.door(w, r, http.StatusForbidden, x)
}

// door is the page that asks for the pass phrase.
func (d *desk) door(w http.ResponseWriter, r *http.Request, status int, x enterView) {
	if len(d.Phrases) == 0 {
		http.Redirect(w, r, "/", http.StatusSeeOther)
		return
	}
	v := &visit{desk: d, w: w, r: r, session: &session{}}
	w.Header().Set("Cache-Control", "no-store")
	if err := v.page(status, "enter", "Pass phrase", x); err != nil {
		http.Error(w, err.Error(), http.StatusInternalServerError)
	}
}

func (d *desk) enter(w http.ResponseWriter, r *http.Request) {
	from := caller(r)
	k := d.carried(r)
	x := enterView{Back: d.here(r.PostFormValue("back")), Hidden: k.hidden()}
	if wait := d.tries.wait(from); wait > 0 {
		w.Header().Set("Retry-After", fmt.Sprint(int(wait.Seconds())+1))
		x.Wrong = fmt.Sprintf("Too many wrong ones. Wait %s, then try again.", wait.Round(time.Second))
		d.door(w, r, http.StatusTooManyRequests, x)
		return
	}
	role := d.Phrases.roleOf(r.PostFormValue("phrase"))
	if role == "" {
		d.tries.wrong(from)
		x.Wrong = "That is not a pass phrase of this centre."
		d.door(w, r, http.StatusForbidden, x)
		return
	}
	d.tries.right(from)
	d.sessions.end(r)
	d.sessions.begin(w, role, d.TLS != nil).keep(k, d.Now())
	to := "/name"
	if x.Back != "" {
		to += "?back=" + url.QueryEscape(x.Back)
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
}

// leave closes the session.
func leave(v *visit) error {
	v.sessions.end(v.r)
	return v.see("/enter")
}

// showName asks who it is: of the persons of the folder those who may do no more
// than the pass phrase allows.
func showName(v *visit) error {
	var names []string
	for _, p := range v.reading.Centre.Persons {
		if v.mayBe(p) {
			names = append(names, p.Name)
		}
	}
	back := v.here(v.r.URL.Query().Get("back"))
	if back == "" {
		back = v.cameFrom()
	}
	return v.show("name", "Who are you?", struct {
		Names []string
		Back  string
	}{names, back})
}

func (v *visit) mayBe(p *model.Person) bool { return rank(p.Role) <= rank(v.role) }

func setName(v *visit) error {
	for _, p := range v.reading.Centre.Persons {
		if p.Name == v.r.PostFormValue("name") && v.mayBe(p) {
			v.session.is(p.Name)
			return v.see(cmp.Or(v.here(v.r.PostFormValue("back")), "/"))
		}
	}
	return no("there is nobody of that name here")
}
