package desk_test

import (
	"context"
	"fmt"
	"html"
	"io"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/model"
)

// stuck is a search that finds nothing until it is let go.
func stuck(held chan struct{}) search.Runner {
	return func(ctx context.Context, in io.Reader, out io.Writer) error {
		select {
		case <-held:
		case <-ctx.Done():
		}
		return nil
	}
}

var href = regexp.MustCompile(`(?:href|action)="(/[^"]*)"`)

// Every page that a link leads to is there, has one heading of the first level,
// asks for nothing from outside, and no address names a person.
func TestEveryLinkLeadsSomewhereAndNamesNobody(t *testing.T) {
	dir := demo(t)
	b := open(t, dir, nil).nell()
	b.planned()
	c := read(t, dir).Centre
	var names []string
	for _, r := range c.Riders {
		names = append(names, r.Name, r.First)
	}
	for _, p := range c.Persons {
		names = append(names, p.Name)
	}
	seen, next := map[string]bool{"/": true}, []string{"/"}
	for len(next) > 0 && len(seen) < 400 {
		path := next[0]
		next = next[1:]
		page := b.get(path, http.StatusOK)
		if strings.HasSuffix(path, ".pdf") || strings.HasSuffix(path, ".xlsx") || strings.HasPrefix(path, "/look/") {
			continue
		}
		if n := strings.Count(page, "<h1>"); n != 1 {
			t.Errorf("%s has %d headings of the first level", path, n)
		}
		if strings.Contains(page, "http://") && strings.Contains(strings.ReplaceAll(page, `"http://www.w3.org/2000/svg"`, ""), "http://") || strings.Contains(page, " style=") {
			t.Errorf("%s asks for something from outside, or has a style of its own", path)
		}
		for _, m := range href.FindAllStringSubmatch(page, -1) {
			to := html.UnescapeString(m[1])
			plain, err := url.PathUnescape(to)
			if err != nil {
				t.Error(err)
			}
			for _, name := range names {
				if strings.Contains(plain, name) && !strings.HasPrefix(to, "/horse/") {
					t.Errorf("%s names %s", to, name)
				}
			}
			far := regexp.MustCompile(`^/(week|day|tack|pull)/`).MatchString(to) && !strings.Contains(to, "2026-10-1")
			if !seen[to] && !far && strings.Contains(m[0], "href") {
				seen[to] = true
				next = append(next, to)
			}
		}
	}
	if len(seen) < 100 {
		t.Errorf("only %d pages were found", len(seen))
	}
}

func TestEveryAnswerIsGuarded(t *testing.T) {
	d := open(t, demo(t), nil)
	r, err := http.Get(d.address)
	if err != nil {
		t.Fatal(err)
	}
	r.Body.Close()
	for name, want := range map[string]string{"Content-Security-Policy": "default-src 'none'", "X-Content-Type-Options": "nosniff", "Cache-Control": "no-store"} {
		if got := r.Header.Get(name); !strings.Contains(got, want) {
			t.Errorf("%s: %q", name, got)
		}
	}
	if c := r.Request.Response.Cookies(); len(c) != 1 || !c[0].HttpOnly || c[0].SameSite != http.SameSiteStrictMode {
		t.Errorf("cookies: %v", c)
	}
}

// A page from elsewhere can neither send a form here nor, by a name of its own
// that leads here, read.
func TestPagesFromElsewhereReachNothing(t *testing.T) {
	d := open(t, demo(t), nil)
	for _, x := range []struct {
		method, host, header, value string
		want                        int
	}{
		{"GET", "evil.example", "", "", http.StatusMisdirectedRequest},
		{"GET", "192.0.2.7", "", "", http.StatusMisdirectedRequest},
		{"GET", "localhost", "", "", http.StatusOK},
		{"POST", "", "Origin", "http://evil.example", http.StatusForbidden},
		{"POST", "", "Sec-Fetch-Site", "cross-site", http.StatusForbidden},
		{"POST", "", "Sec-Fetch-Site", "same-origin", http.StatusConflict}, // nobody has said her name
	} {
		q, err := http.NewRequest(x.method, d.address+"name", nil)
		if x.method == "POST" {
			q, err = http.NewRequest(x.method, d.address+"week/"+wednesday+"/post", nil)
		}
		if err != nil {
			t.Fatal(err)
		}
		if x.host != "" {
			q.Host = x.host
		}
		if x.header != "" {
			q.Header.Set(x.header, x.value)
		}
		r, err := http.DefaultClient.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode != x.want {
			t.Errorf("%+v: %d", x, r.StatusCode)
		}
	}
}

var phrases = desk.Phrases{model.Barn: "hay in the rain", model.Instructor: "heels well down", model.Office: "paper and more paper"}

func withPhrases(o *desk.Options) { o.Phrases = phrases }

func TestOnTheHousesNetworkEachRoleMayDoItsOwn(t *testing.T) {
	d := open(t, demo(t), withPhrases)
	for _, x := range []struct {
		role                   model.Role
		tick, note, plan, name int
	}{
		{model.Barn, http.StatusConflict, http.StatusForbidden, http.StatusForbidden, http.StatusConflict},
		{model.Instructor, http.StatusConflict, http.StatusConflict, http.StatusForbidden, http.StatusConflict},
		{model.Office, http.StatusConflict, http.StatusConflict, http.StatusOK, http.StatusOK},
	} {
		b := d.browser()
		says(t, b.get("/week/"+wednesday, http.StatusOK), "Pass phrase of the barn")
		says(t, b.post("/enter", http.StatusOK, "phrase", phrases[x.role]), "Who are you?")
		b.get("/week/"+wednesday, http.StatusOK)
		b.post("/pull/"+wednesday, x.tick, "tick", "nothing")
		b.post("/horse/Wicket/out?on=2026-10-14", x.note, "from", "07:35", "why", "lame")
		b.post("/week/"+wednesday+"/plan", x.plan)
		b.post("/name", x.name, "name", "Nell Ashworthy") // of the office
		b.post("/leave", http.StatusOK)
		says(t, b.get("/", http.StatusOK), "Pass phrase of the barn")
	}
}

func TestWrongPassPhrasesHaveToWait(t *testing.T) {
	now := morning
	var mu sync.Mutex
	d := open(t, demo(t), func(o *desk.Options) {
		withPhrases(o)
		o.Now = func() time.Time { mu.Lock(); defer mu.Unlock(); return now }
	})
	b := d.browser()
	for range 5 {
		b.post("/enter", http.StatusForbidden, "phrase", "let me in please")
	}
	b.post("/enter", http.StatusTooManyRequests, "phrase", phrases[model.Office])
	mu.Lock()
	now = now.Add(61 * time.Second)
	mu.Unlock()
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Office])
}

func TestPassPhrasesAreLongAndNotTheSame(t *testing.T) {
	for _, p := range []desk.Phrases{{}, {model.Barn: "short"}, {model.Barn: "the very same one", model.Office: "the very same one"}} {
		if p.Check() == nil {
			t.Errorf("%v is taken", p)
		}
	}
	if err := phrases.Check(); err != nil {
		t.Error(err)
	}
}

func TestOthersAreServedOnlyWithPassPhrases(t *testing.T) {
	err := desk.Serve(t.Context(), desk.Options{Dir: demo(t), Listen: "0.0.0.0:0", Now: time.Now, Opened: func(string) { t.Error("it is open") }})
	if err == nil || !strings.Contains(err.Error(), "pass phrases") {
		t.Error(err)
	}
}

func TestTwoWhoWriteAtOnceLoseNothing(t *testing.T) {
	dir := demo(t)
	d := open(t, dir, nil)
	d.nell().planned()
	before := len(read(t, dir).Centre.Notes)
	rides := regexp.MustCompile(`href="(/ride/2026-10-1[67]/[0-9a-f]+)"`)
	var all []string
	b := d.nell()
	for _, day := range []string{"2026-10-16", "2026-10-17"} {
		for _, m := range rides.FindAllStringSubmatch(b.get("/day/"+day, http.StatusOK), -1) {
			all = append(all, m[1])
		}
	}
	all = all[:16]
	var two sync.WaitGroup
	for half := range 2 {
		b := d.nell()
		two.Go(func() {
			for i := half; i < len(all); i += 2 {
				r, err := b.PostForm(strings.TrimSuffix(b.address, "/")+all[i]+"/never", url.Values{"horse": {"Marigold"}})
				if err != nil {
					t.Error(err)
					return
				}
				r.Body.Close()
				if r.StatusCode != http.StatusOK {
					t.Error(fmt.Sprint(all[i], ": ", r.StatusCode))
				}
			}
		})
	}
	two.Wait()
	if n := len(read(t, dir).Centre.Notes) - before; n != len(all) {
		t.Errorf("of %d notes %d are there", len(all), n)
	}
}

// What sheets for the barn do not tell its pages do not tell either.
func TestTheBarnIsToldNoReasons(t *testing.T) {
	dir := demo(t)
	d := open(t, dir, nil)
	nell := d.nell()
	nell.planned()
	nell.post("/horse/Wicket/out?on=2026-10-14", http.StatusOK, "from", "07:35", "why", "lame")
	nell.found()
	felix := rideOf(t, nell.get("/day/"+wednesday, http.StatusOK), "Felix")
	b := open(t, dir, withPhrases).browser()
	b.post("/enter", http.StatusOK, "phrase", phrases[model.Barn])
	for _, path := range []string{"/day/" + wednesday, "/week/" + wednesday, "/horse/Wicket?on=2026-10-14", felix} {
		if page := b.get(path, http.StatusOK); strings.Contains(page, "(lame)") {
			t.Errorf("%s tells why: %s", path, words(page))
		}
	}
	if page := b.get("/pull/"+wednesday, http.StatusOK); strings.Contains(page, "(lame)") {
		t.Error("the pull list tells why")
	}
}
