//go:build chromium

package desk_test

import (
	"context"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"tackwright/cmd/tackwright/internal/desk"
	"tackwright/model"
)

// These drive a real Chromium. AXE names the file of axe-core, whose rules of
// accessibility each view must keep; SHOTS a directory for pictures of each.

// screen is a window of Chromium on a desk.
type screen struct {
	t     *testing.T
	ctx   context.Context
	at    string
	width int64
	axe   string
}

func (d *opened) screen(t *testing.T, width, height int64) *screen {
	t.Helper()
	axe, err := os.ReadFile(os.Getenv("AXE"))
	if err != nil {
		t.Fatalf("AXE must name axe-core's file: %v", err)
	}
	ctx, cancel := chromedp.NewContext(t.Context(), chromedp.WithAllocatorOptions(append(chromedp.DefaultExecAllocatorOptions[:], chromedp.NoSandbox, chromedp.DisableGPU)...))
	t.Cleanup(cancel)
	ctx, cancel = context.WithTimeout(ctx, 4*time.Minute)
	t.Cleanup(cancel)
	s := &screen{t: t, ctx: ctx, at: strings.TrimSuffix(d.address, "/"), width: width, axe: string(axe)}
	if err := chromedp.Do(ctx, chromedp.EmulateViewport(width, height)); err != nil { // it starts here, and lasts as long as ctx
		t.Fatal(err)
	}
	return s
}

func (s *screen) do(steps ...chromedp.Action[chromedp.Void]) {
	s.t.Helper()
	ctx, cancel := context.WithTimeout(s.ctx, 30*time.Second)
	defer cancel()
	err := chromedp.Do(ctx, steps...)
	for ctx.Err() == nil && err != nil && strings.Contains(err.Error(), "Could not find node with given id") {
		err = chromedp.Do(ctx, steps...) // it was on a page that another has just replaced
	}
	if err != nil {
		page, _ := chromedp.Run(s.ctx, chromedp.Text(chromedp.CSS("body")))
		s.t.Fatalf("%v; the page: %s", err, page)
	}
}

// is what a script of the page's comes to.
func is[T any](s *screen, script string, options ...chromedp.EvaluateOption) T {
	s.t.Helper()
	x, err := chromedp.Run(s.ctx, chromedp.Evaluate[T](script, options...))
	if err != nil {
		s.t.Fatal(err)
	}
	return x
}

func (s *screen) opens(path string) { s.t.Helper(); s.do(chromedp.Navigate(s.at + path)) }

// touch clicks what is named by its words: a link or a button.
func (s *screen) touch(words string) {
	s.t.Helper()
	s.do(chromedp.Click(chromedp.Search(`//*[self::a or self::button or self::summary][contains(normalize-space(.), "`+words+`")]`), chromedp.NodeVisible))
}

// sees waits for words on the page.
func (s *screen) sees(words string) {
	s.t.Helper()
	s.do(chromedp.WaitVisible(chromedp.Search(`//main//*[contains(normalize-space(.), "` + words + `")]`)))
}

// looks at the view: axe finds nothing, nothing is wider than the screen, what is
// touched is large enough.
func (s *screen) looks(name string) {
	s.t.Helper()
	is[any](s, s.axe+"; null")
	found := is[string](s, `axe.run().then(r => JSON.stringify(r.violations.map(v => [v.id, v.help, v.nodes.map(n => n.html.slice(0, 200))])))`, chromedp.EvalAwaitPromise)
	wide := is[int](s, `document.documentElement.scrollWidth`)
	small := is[[]string](s, `[...document.querySelectorAll("button, .button, select, input:not([type=hidden]), summary, nav a, .herd a")].filter(e => e.offsetParent && e.getBoundingClientRect().height < 44).map(e => e.outerHTML.slice(0, 100))`)
	var violations []any
	if err := json.Unmarshal([]byte(found), &violations); err != nil {
		s.t.Fatal(err)
	}
	for _, v := range violations {
		s.t.Errorf("%s at %d: axe finds %v", name, s.width, v)
	}
	if int64(wide) > s.width {
		s.t.Errorf("%s is %d wide on a screen of %d", name, wide, s.width)
	}
	if len(small) > 0 {
		s.t.Errorf("%s at %d: small to touch are %q", name, s.width, small)
	}
	if dir := os.Getenv("SHOTS"); dir != "" {
		picture, err := chromedp.Run(s.ctx, chromedp.FullScreenshot(100))
		if err != nil {
			s.t.Fatal(err)
		}
		file := filepath.Join(dir, name+map[bool]string{true: "-phone", false: ""}[s.width < 600]+".png")
		if err := os.WriteFile(file, picture, 0o666); err != nil {
			s.t.Fatal(err)
		}
	}
}

// sizes are a phone in a hand, and an office's screen.
var sizes = []struct {
	name          string
	width, height int64
}{{"phone", 360, 740}, {"office", 1280, 900}}

func TestChromiumDoesTheThreeJobsOnPhoneAndInTheOffice(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			dir := demo(t)
			d := open(t, dir, nil)
			s := d.screen(t, size.width, size.height)

			s.opens("/")
			s.looks("day-unplanned")
			s.touch("say who you are")
			s.sees("carries your name")
			s.looks("name")
			s.touch("Nell Ashworthy")
			s.sees("To the week, to plan it")
			s.touch("Week")
			s.sees("no plan yet")
			s.looks("week-unplanned")
			s.touch("Plan this week")
			s.sees("Proved: no plan does better")
			s.looks("planned")
			s.touch("Compare and post")
			s.sees("Nothing is posted for these dates yet")
			s.looks("compare")
			s.touch("Post it")
			s.sees("version 6")
			s.looks("week")

			s.opens("/day/" + wednesday)
			s.sees("Version 6, posted by Nell Ashworthy")
			s.looks("day")
			s.touch("Wicket") // the first touch
			s.sees("Lame: mend the day")
			s.looks("horse")
			s.touch("Lame: mend the day") // the second
			s.sees("Before and after")
			s.sees("Proved:")
			s.looks("mended")
			s.touch("Post it")
			s.sees("It stands, as version 7")
			s.looks("mended-posted")
			s.sees("Print what moved")

			s.touch("Pull list")
			s.sees("0 of ")
			s.looks("pull")
			s.do(chromedp.Click(chromedp.CSS(".tick")), chromedp.WaitVisible(chromedp.CSS(".tick[name=untick]")))
			s.sees("1 of ")
			s.looks("pull-ticked")
			s.do(chromedp.Reload())
			s.sees("done, Nell Ashworthy")
			if got, err := read(t, dir).Ticked(model.DateOf(morning)); err != nil || len(got) != 1 {
				t.Errorf("on the disk is ticked: %v, %v", got, err)
			}

			s.touch("Tack room")
			s.sees("The same as a table")
			s.looks("tack")
			s.opens("/day/" + wednesday)
			s.touch("Felix")
			s.sees("On the ground")
			s.looks("ride")
			s.touch("What would seat")
			s.sees("Back to the ride")
			s.looks("ways")
			s.touch("Back to the ride")
			s.sees("Keep, or never")
			s.touch("Why, in full")
			s.sees("could ride alone")
			s.looks("why")
			s.opens("/check")
			s.looks("check")
			s.opens("/day/" + wednesday + "/close")
			s.looks("close")
			s.opens("/day/" + wednesday + "/happened")
			s.touch("An arena is closed")
			s.looks("happened")
			s.opens("/records")
			s.touch("Horses")
			s.looks("records")
			s.touch("Quince")
			s.sees("Leave it as it is")
			s.looks("form")
			s.opens("/import")
			s.looks("import")
			s.opens("/add/lesson")
			s.looks("add")
			s.opens("/history")
			s.looks("history")
			s.opens("/day/" + wednesday)
			s.touch("Alban")
			s.touch("Alban's week")
			s.sees("Rides of the week")
			s.looks("rider")
		})
	}
}

// With keys alone: to the page itself, and from there to a tick.
func TestChromiumTicksThePullListWithoutAMouse(t *testing.T) {
	d := open(t, demo(t), nil)
	d.nell().planned()
	s := d.screen(t, 1280, 900)
	s.opens("/pull/" + wednesday)
	s.do(chromedp.KeyEvent(kb.Tab))
	if on := is[string](s, `document.activeElement.textContent`); on != "To the page itself" {
		t.Errorf("the first key leads to %q", on)
	}
	s.do(chromedp.KeyEvent(kb.Enter))
	on := ""
	for i := 0; i < 12 && on != "tick"; i++ {
		s.do(chromedp.KeyEvent(kb.Tab))
		on = is[string](s, `document.activeElement.name || ""`)
	}
	s.do(chromedp.KeyEvent(kb.Enter), chromedp.WaitVisible(chromedp.CSS(".tick[name=untick]")))
	if on = is[string](s, `document.activeElement.name || ""`); on != "untick" {
		t.Errorf("after the tick the keys are at %q", on)
	}
}

// A list in a hand that cannot be looked at anew says so.
func TestChromiumSaysThatAPullListMayBeOutOfDate(t *testing.T) {
	d := open(t, demo(t), nil)
	d.nell().planned()
	s := d.screen(t, 360, 740)
	s.opens("/pull/" + wednesday)
	s.sees("0 of ")
	wake := `document.dispatchEvent(new Event("visibilitychange")); null`
	is[any](s, wake)
	if is[bool](s, `document.getElementById("stale").offsetParent !== null`) {
		t.Error("it is out of date while the desk answers")
	}
	d.close()
	is[any](s, wake)
	s.sees("may be out of date")
	s.looks("pull-stale")
}

func TestChromiumComesInWithAPassPhrase(t *testing.T) {
	d := open(t, demo(t), withPhrases)
	s := d.screen(t, 360, 740)
	s.opens("/")
	s.sees("Pass phrase of the barn")
	s.looks("enter")
	s.do(chromedp.SendKeys(chromedp.CSS("#phrase"), "hay in the rain"+kb.Enter))
	s.sees("carries your name")
	s.looks("name-barn")
}

// Her session runs out while she fills in a form, and what she typed is there again.
func TestChromiumFillsAFormInAgainAfterThePassPhrase(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			var c clock
			d := open(t, demo(t), func(o *desk.Options) { withPhrases(o); o.Now = c.now })
			s := d.screen(t, size.width, size.height)
			enters := func() {
				s.do(chromedp.SendKeys(chromedp.CSS("#phrase"), phrases[model.Office]+kb.Enter))
				s.sees("carries your name")
				s.touch("Nell Ashworthy")
			}
			s.opens("/records")
			enters()
			s.sees("What is changed here")
			s.touch("Horses")
			s.touch("Teasel")
			s.sees("Leave it as it is")
			s.looks("form-folded")
			s.do(chromedp.SendKeys(chromedp.CSS("#field10"), ", back paddock"))
			c.passes(13 * time.Hour)
			s.touch("Save")
			s.sees("nothing was saved yet")
			s.looks("enter-kept")
			enters()
			s.sees("Nothing of this was saved yet")
			s.looks("form-again")
			s.touch("Save")
			s.sees("What is changed here")
		})
	}
}

func TestChromiumTakesBackTheWrongHorse(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			d := open(t, demo(t), nil)
			d.nell().planned()
			s := d.screen(t, size.width, size.height)
			s.opens("/name")
			s.touch("Nell Ashworthy")
			s.sees("Touch a horse")
			s.opens("/horse/Wicket?on=" + wednesday)
			s.touch("Lame: mend the day")
			s.sees("You noted: horse out, Wicket, lame")
			s.sees("Before and after")
			s.opens("/day/" + wednesday)
			s.sees("If that was a slip")
			s.looks("day-slip")
			s.touch("Take note")
			s.sees("no longer stands: horse out, Wicket, lame")
			s.looks("day-slip-taken-back")
		})
	}
}
