package desk_test

import (
	"bytes"
	"context"
	"io"
	"net/http"
	"net/http/cookiejar"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/command"
	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/cmd/tackwright/internal/desk/search"
	"tackwright/model"
	"tackwright/model/folder"
)

// morning is a Wednesday at the demo centre, before its first lesson.
var morning = time.Date(2026, time.October, 14, 6, 35, 0, 0, time.UTC) // 07:35 there

// demo is the demo centre with the computer's own today.
func demo(t testing.TB) string {
	t.Helper()
	dir := filepath.Join(t.TempDir(), "sallowdene")
	if err := os.CopyFS(dir, os.DirFS("../../../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	for _, own := range []string{"plans", "history"} { // what the README's first command leaves there
		if err := os.RemoveAll(filepath.Join(dir, own)); err != nil {
			t.Fatal(err)
		}
	}
	file := filepath.Join(dir, "centre.toml")
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	text = regexp.MustCompile(`(?m)^today = .*$`).ReplaceAll(text, nil)
	if err := os.WriteFile(file, text, 0o666); err != nil {
		t.Fatal(err)
	}
	return dir
}

// here runs a command in this process.
func here(ctx context.Context, args []string) search.Answer {
	var out, wrong bytes.Buffer
	status := command.Run(ctx, command.Env{Now: func() time.Time { return morning }}, nil, &out, &wrong, args)
	return search.Answer{Status: status, Out: out.String(), Wrong: wrong.String()}
}

func searchHere(ctx context.Context, in io.Reader, out io.Writer) error {
	return search.Serve(ctx, in, out, here)
}

// opened is a desk that is served.
type opened struct {
	t       testing.TB
	address string
	close   func() // and waits until it is closed
}

// open serves a folder until the test ends, or until it is closed before.
func open(t testing.TB, dir string, change func(*desk.Options)) *opened {
	t.Helper()
	ctx, cancel := context.WithCancel(t.Context())
	address, ended := make(chan string, 1), make(chan error, 1)
	o := desk.Options{Dir: dir, Now: func() time.Time { return morning }, Search: searchHere, Command: here, Opened: func(a string) { address <- a }}
	if change != nil {
		change(&o)
	}
	go func() { ended <- desk.Serve(ctx, o) }()
	d := &opened{t: t}
	d.close = func() {
		cancel()
		if err := <-ended; err != nil {
			t.Error(err)
		}
		ended <- nil
	}
	select {
	case d.address = <-address:
	case err := <-ended:
		t.Fatal(err)
	}
	t.Cleanup(d.close)
	return d
}

// browser is one person's: it keeps cookies, and follows where it is sent.
type browser struct {
	*opened
	http.Client
	at string // the address where it was sent last
}

func (d *opened) browser() *browser {
	jar, err := cookiejar.New(nil)
	if err != nil {
		d.t.Fatal(err)
	}
	return &browser{opened: d, Client: http.Client{Jar: jar}}
}

// nell is a browser at which the coordinator has said who she is.
func (d *opened) nell() *browser {
	b := d.browser()
	b.get("/", http.StatusOK)
	b.post("/name", http.StatusOK, "name", "Nell Ashworthy")
	return b
}

func (b *browser) done(r *http.Response, err error, path string, want int) string {
	b.t.Helper()
	if err != nil {
		b.t.Fatal(err)
	}
	defer r.Body.Close()
	text, err := io.ReadAll(r.Body)
	if err != nil {
		b.t.Fatal(err)
	}
	b.at = strings.TrimPrefix(r.Request.URL.String(), strings.TrimSuffix(b.address, "/"))
	if r.StatusCode != want {
		b.t.Fatalf("%s: %d, not %d: %s", path, r.StatusCode, want, words(string(text)))
	}
	return string(text)
}

func (b *browser) get(path string, want int) string {
	b.t.Helper()
	r, err := b.Get(strings.TrimSuffix(b.address, "/") + path)
	return b.done(r, err, path, want)
}

// post sends a form of names and values.
func (b *browser) post(path string, want int, form ...string) string {
	b.t.Helper()
	values := url.Values{}
	for i := 0; i < len(form); i += 2 {
		values.Add(form[i], form[i+1])
	}
	r, err := b.PostForm(strings.TrimSuffix(b.address, "/")+path, values)
	return b.done(r, err, path, want)
}

// found waits for a search that was begun to end, and is what was found.
func (b *browser) found() string {
	b.t.Helper()
	job := b.at
	if !strings.HasPrefix(job, "/job/") {
		b.t.Fatalf("no search was begun: %s", job)
	}
	events := b.get(job+"/events", http.StatusOK)
	if !strings.Contains(events, "event: over") {
		b.t.Fatalf("the search does not say that it is over: %s", events)
	}
	return b.get(job, http.StatusOK)
}

var tag = regexp.MustCompile(`<[^>]*>|\s+`)

// words of a page, without its tags.
func words(page string) string {
	if _, body, ok := strings.Cut(page, "<main"); ok {
		page = body
	}
	return strings.Join(strings.Fields(tag.ReplaceAllString(page, " ")), " ")
}

func says(t testing.TB, page string, all ...string) {
	t.Helper()
	for _, want := range all {
		if !strings.Contains(words(page), want) {
			t.Errorf("the page does not say %q: %s", want, words(page))
		}
	}
}

func read(t testing.TB, dir string) *folder.Folder {
	t.Helper()
	f, err := folder.OpenAround(dir, model.DateOf(morning))
	if err != nil {
		t.Fatal(err)
	}
	return f
}
