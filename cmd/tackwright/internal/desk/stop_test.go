package desk_test

import (
	"context"
	"io"
	"net/http"
	"strings"
	"testing"
	"time"

	"tackwright/cmd/tackwright/internal/desk"
)

// untilStopped is a search that stands still after a few lines, until it is stopped.
func untilStopped(lines int) func(*desk.Options) {
	return func(o *desk.Options) {
		o.Search = func(ctx context.Context, in io.Reader, out io.Writer) error {
			stop := make(chan struct{})
			return searchHere(ctx, &heard{in, stop}, &still{out, lines, stop})
		}
	}
}

// heard closes a channel where what is read ends: whoever asked says that it is enough.
type heard struct {
	io.Reader
	end chan struct{}
}

func (h *heard) Read(to []byte) (int, error) {
	n, err := h.Reader.Read(to)
	if err != nil {
		close(h.end)
	}
	return n, err
}

type still struct {
	io.Writer
	lines int
	until chan struct{}
}

func (s *still) Write(text []byte) (int, error) {
	if s.lines--; s.lines < 0 {
		<-s.until
		time.Sleep(100 * time.Millisecond) // the search hears of it too
	}
	return s.Writer.Write(text)
}

func TestASearchThatIsStoppedMidwayGivesTheBestItHas(t *testing.T) {
	b := open(t, demo(t), untilStopped(2)).nell()
	b.post("/week/"+wednesday+"/plan", http.StatusOK)
	job := b.at
	for try := 0; !strings.Contains(b.get(job, http.StatusOK), "being worked on"); try++ {
		if try == 200 {
			t.Fatal("no goal is worked on")
		}
		time.Sleep(20 * time.Millisecond)
	}
	page := b.post(job+"/stop", http.StatusOK)
	says(t, page, "Not proved to be best", "Compare and post")
	if strings.Contains(words(page), "Proved: no plan does better") {
		t.Error("it claims to be proved")
	}
	says(t, b.get("/week/"+wednesday, http.StatusOK), "Pencilled:", "Not proved to be best")
}
