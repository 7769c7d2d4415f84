package model

// NoteKind is what a day note says.
type NoteKind string

const (
	NoteHorseOut    NoteKind = "horse out"
	NoteHorseBack   NoteKind = "horse back" // ends a horse out
	NoteOwnTack     NoteKind = "own tack only"
	NoteOwnTackEnd  NoteKind = "own tack ended"
	NotePieceOut    NoteKind = "piece out"
	NotePieceBack   NoteKind = "piece back" // checked by a named person
	NoteCleaned     NoteKind = "cleaned"
	NoteRiderAway   NoteKind = "rider away"
	NoteRiderAdded  NoteKind = "rider added"
	NoteCancelled   NoteKind = "lesson cancelled"
	NoteMoved       NoteKind = "lesson moved"     // another time, arena or both
	NoteShortened   NoteKind = "lesson shortened" // ends earlier
	NoteHands       NoteKind = "helpers"          // a lesson's helpers on a date
	NoteWeather     NoteKind = "weather"          // recorded; closes or shortens only by the next two
	NoteArenaClosed NoteKind = "arena closed"
	NoteInstructor  NoteKind = "instructor swapped"
	NoteAway        NoteKind = "instructor away"
	NoteKeep        NoteKind = "keep"  // this rider on this horse
	NoteNever       NoteKind = "never" // this rider not on this horse
	NoteForm        NoteKind = "form extended"
	NoteWorkOff     NoteKind = "work left out" // other work of a horse on a date
)

// NoteKinds are all the kinds, in the order of the manual.
var NoteKinds = []NoteKind{NoteHorseOut, NoteHorseBack, NoteOwnTack, NoteOwnTackEnd, NotePieceOut,
	NotePieceBack, NoteCleaned, NoteRiderAway, NoteRiderAdded, NoteCancelled, NoteMoved,
	NoteShortened, NoteHands, NoteWeather, NoteArenaClosed, NoteInstructor, NoteAway, NoteKeep,
	NoteNever, NoteForm, NoteWorkOff}

// Note is what changed on a date. Which fields count depends on its kind.
type Note struct {
	Number int
	Kind   NoteKind
	At     Instant // when it was written
	By     *Person
	Undoes int // number of an earlier note that no longer stands

	Date       Date // the date it is for; with From and Until for the time of day
	Through    Date // last date it is for; 0: Date alone (or until ended)
	From       Minute
	Until      Minute // 0: to the end of the date (horse out, piece out: until ended)
	Horse      *Horse
	Piece      *Piece
	Rider      *Rider
	Lesson     *Lesson
	Arena      *Arena
	Instructor *Person // who takes the lesson; or who is away
	Seat       *Piece  // of a keep; nil: any
	Why        OutWhy  // of a horse out
	Review     Date
	Hands      Hands
	Words      string // what the person wrote beside it
	Warmth     int    // °F, of weather
	Humidity   int    // % relative
}

// Standing are the notes that no later note undoes, in order. A note that is
// itself undone undoes nothing.
func Standing(notes []*Note) []*Note {
	undone := map[int]bool{}
	for i := len(notes) - 1; i >= 0; i-- {
		if n := notes[i]; n.Undoes != 0 && !undone[n.Number] {
			undone[n.Undoes] = true
		}
	}
	var out []*Note
	for _, n := range notes {
		if !undone[n.Number] {
			out = append(out, n)
		}
	}
	return out
}

// isFor reports whether the note is for the date.
func (n *Note) isFor(d Date) bool { return n.Date <= d && d <= max(n.Date, n.Through) }

// known is when the note was known to those on the yard. Where nothing says when
// it was written, that is the start of its date.
func (n *Note) known() Instant {
	if n.At.IsZero() {
		return Instant{Date: n.Date}
	}
	return n.At
}
