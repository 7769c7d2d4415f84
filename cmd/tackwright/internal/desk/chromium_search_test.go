//go:build chromium

package desk_test

import (
	"context"
	"io"
	"testing"

	"tackwright/cmd/tackwright/internal/desk"
)

// slow lets a few lines through, and the rest once it is let go.
type slow struct {
	io.Writer
	lines int
	held  chan struct{}
}

func (s *slow) Write(text []byte) (int, error) {
	if s.lines--; s.lines < 0 {
		<-s.held
	}
	return s.Writer.Write(text)
}

// The goals come in by themselves, and so does what was found.
func TestChromiumWatchesAWeekBeingPlanned(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			held := make(chan struct{})
			d := open(t, demo(t), func(o *desk.Options) {
				o.Search = func(ctx context.Context, in io.Reader, out io.Writer) error {
					return searchHere(ctx, in, &slow{out, 3, held})
				}
			})
			s := d.screen(t, size.width, size.height)
			s.opens("/week/" + wednesday)
			s.touch("Plan this week")
			s.sees("being worked on")
			s.looks("progress")
			close(held)
			s.sees("Compare and post")
		})
	}
}

// A search whose desk was closed does not look as if it went on.
func TestChromiumSaysThatASearchStandsStill(t *testing.T) {
	held, closed := make(chan struct{}), make(chan struct{})
	d := open(t, demo(t), func(o *desk.Options) {
		o.Search = func(ctx context.Context, in io.Reader, out io.Writer) error {
			return searchHere(ctx, in, &slow{out, 3, held})
		}
	})
	s := d.screen(t, 360, 740)
	s.opens("/week/" + wednesday)
	s.touch("Plan this week")
	s.sees("being worked on")
	go func() { d.close(); close(closed) }()
	s.sees("The desk does not answer")
	s.looks("progress-stands-still")
	close(held)
	<-closed
}

func TestChromiumAsksWhatAWeekHasRoomFor(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			d := open(t, demo(t), nil)
			d.nell().planned()
			s := d.screen(t, size.width, size.height)
			s.opens("/week/" + wednesday)
			s.touch("Room for the wait list")
			s.sees("By the plan")
			s.looks("room")
			s.touch("Back")
			s.touch("What would one thing more bring?")
			s.sees("What is not listed seats nobody more")
			s.looks("buy")
		})
	}
}

func TestChromiumStopsASearchAndTakesTheBestSoFar(t *testing.T) {
	for _, size := range sizes {
		t.Run(size.name, func(t *testing.T) {
			d := open(t, demo(t), untilStopped(2))
			s := d.screen(t, size.width, size.height)
			d.nell()
			s.opens("/week/" + wednesday)
			s.touch("Plan this week")
			s.sees("being worked on")
			s.touch("Stop, and take the best so far")
			s.sees("Not proved to be best")
			s.looks("stopped")
			s.opens("/week/" + wednesday)
			s.sees("Not proved to be best")
		})
	}
}
