package main

import (
	"bufio"
	"io"
	"net/http"
	"net/http/cookiejar"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
)

// The desk as it is handed over: one file, that starts itself again for a search,
// and ends at Ctrl-C while one goes on.
func TestTheDeskIsOneFileThatSearchesInAProcessOfItsOwn(t *testing.T) {
	dir := t.TempDir()
	program := filepath.Join(dir, "tackwright.exe")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	centre := filepath.Join(dir, "sallowdene")
	if err := os.CopyFS(centre, os.DirFS("../../examples/sallowdene")); err != nil {
		t.Fatal(err)
	}
	desk := exec.Command(program, "desk", centre, "--no-open")
	said, err := desk.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := desk.Start(); err != nil {
		t.Fatal(err)
	}
	defer desk.Process.Kill()
	line, err := bufio.NewReader(said).ReadString('\n')
	address := regexp.MustCompile(`http://[0-9.:]+`).FindString(line)
	if err != nil || address == "" {
		t.Fatalf("it says %q, %v", line, err)
	}
	jar, err := cookiejar.New(nil)
	if err != nil {
		t.Fatal(err)
	}
	browser := http.Client{Jar: jar}
	got := func(r *http.Response, err error) string {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		defer r.Body.Close()
		text, err := io.ReadAll(r.Body)
		if err != nil || r.StatusCode != http.StatusOK {
			t.Fatalf("%d, %v: %s", r.StatusCode, err, text)
		}
		return r.Request.URL.Path + "\n" + string(text)
	}
	plan := func() (job string) {
		t.Helper()
		job, _, _ = strings.Cut(got(browser.Post(address+"/week/2026-10-14/plan", "", nil)), "\n")
		return job
	}
	got(browser.Get(address))
	job := plan()
	if events := got(browser.Get(address + job + "/events")); !strings.Contains(events, "event: over") {
		t.Errorf("it goes on: %s", events)
	}
	if page := got(browser.Get(address + job)); !strings.Contains(page, "Proved: no plan does better") {
		t.Errorf("what was found: %s", page)
	}
	// What it pencilled is what the command pencils.
	name := filepath.Join("plans", "2026-10-12.toml")
	pencilled, err := os.ReadFile(filepath.Join(centre, name))
	if err != nil {
		t.Fatal(err)
	}
	if out, err := exec.Command(program, "plan", centre).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	if typed, err := os.ReadFile(filepath.Join(centre, name)); err != nil || string(typed) != string(pencilled) {
		t.Errorf("the command pencils another plan: %v", err)
	}
	if runtime.GOOS == "windows" {
		return // nobody can press Ctrl-C for it there
	}
	plan()
	if err := desk.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if err := desk.Wait(); err != nil {
		t.Errorf("it ends with %v", err)
	}
}
