package command

import (
	"slices"
	"strconv"
	"strings"

	"tackwright/model"
)

// noteKind is one kind of note as it is typed.
type noteKind struct {
	word, args  string // "move", "LESSON [TIME]"
	kind        model.NoteKind
	about       string   // lines of at most 74 letters
	flags       []string // that it takes, beside everyNoteTakes
	least, most int      // arguments
	fill        func(*saying, *model.Note) error
}

func (k *noteKind) usage() string {
	return strings.TrimSpace("tackwright note FOLDER " + k.word + " " + k.args)
}

// noteKinds are all kinds, in the order of the manual.
var noteKinds = []*noteKind{
	{"out", "HORSE --lame|--ill|--vet|--appointment", model.NoteHorseOut,
		"a horse does not work from now, or --from, on; --review is when somebody\nlooks again, and \"back\" alone ends it. An appointment ends --until.",
		[]string{"lame", "ill", "vet", "appointment", "from", "until", "through", "review"}, 1, 1, sayOut},
	{"back", "HORSE", model.NoteHorseBack, "it is sound again, on the word of somebody who may end a vet's stop", fromFlag, 1, 1, sayHorse},
	{"own-tack", "HORSE", model.NoteOwnTack, "its tack goes to no other horse; lists who was exposed in the 14 days before", fromFlag, 1, 1, sayHorse},
	{"own-tack-end", "HORSE", model.NoteOwnTackEnd, "that is over, on the word of somebody who may end a vet's stop", fromFlag, 1, 1, sayHorse},
	{"piece-out", "TAG", model.NotePieceOut, "a piece is not used", fromFlag, 1, 1, sayPiece},
	{"piece-back", "TAG", model.NotePieceBack, "it is mended and checked, by somebody who may end a check", fromFlag, 1, 1, sayPiece},
	{"cleaned", "TAG", model.NoteCleaned, "it was cleaned, by somebody who may end a cleaning", fromFlag, 1, 1, sayPiece},
	{"away", "RIDER", model.NoteRiderAway, "a rider does not come, or not to --lesson, or not --from TIME --until TIME",
		[]string{"lesson", "from", "until", "through"}, 1, 1, sayAway},
	{"add", "RIDER LESSON", model.NoteRiderAdded, "a rider joins a lesson on that date", nil, 2, 2, sayAdd},
	{"cancel", "LESSON", model.NoteCancelled, "a lesson is not held", []string{"through"}, 1, 1, sayCancel},
	{"move", "LESSON [TIME]", model.NoteMoved, "a lesson begins at another time, as long as it was, or is in another --arena",
		[]string{"arena", "through"}, 1, 2, sayMove},
	{"shorten", "LESSON LENGTH", model.NoteShortened, "a lesson ends after 30m", []string{"through"}, 2, 2, sayShorten},
	{"helpers", "LESSON 2 leaders 1 sidewalkers", model.NoteHands, "what helpers a lesson can count on", []string{"through"}, 3, 5, sayHelpers},
	{"weather", "TEMPERATURE HUMIDITY", model.NoteWeather,
		"84F 60%, or 29C 60%; answers go, caution or stop. A person decides: it\ncloses and shortens nothing.", []string{"from", "arena"}, 2, 2, sayWeather},
	{"close", "ARENA [TIME TIME]", model.NoteArenaClosed, "an arena is closed, from one time to another or all day", []string{"through"}, 1, 3, sayClose},
	{"instructor", "LESSON NAME", model.NoteInstructor, "somebody else takes a lesson", []string{"through"}, 2, 2, sayInstructor},
	{"instructor-away", "NAME [TIME TIME]", model.NoteAway, "an instructor does not come, or is away for some hours", []string{"through"}, 1, 3, sayInstructorAway},
	{"keep", "RIDER HORSE", model.NoteKeep, "the rider has this horse, and --seat, or is on the ground", []string{"lesson", "seat", "through"}, 2, 2, sayPair},
	{"never", "RIDER HORSE", model.NoteNever, "the rider does not have this horse", []string{"lesson", "through"}, 2, 2, sayPair},
	{"leave-out", "HORSE [TIME]", model.NoteWorkOff, "its other work, or that which begins then, is left out", nil, 1, 2, sayLeaveOut},
	{"lift", "NUMBER", "", "an earlier note, which keeps a rider or says never, no longer stands", nil, 1, 1, sayLift},
	{"form", "RIDER DATE", model.NoteForm, "her form is good up to this date, on the word of somebody who may extend one", nil, 2, 2, sayForm},
}

var fromFlag = []string{"from"}

func noteKindOf(word string) (*noteKind, error) {
	i := slices.IndexFunc(noteKinds, func(k *noteKind) bool { return k.word == word })
	if i < 0 {
		var words []string
		for _, k := range noteKinds {
			words = append(words, k.word)
		}
		return nil, wrongUse("there is no note %q; notes are: %s", word, strings.Join(words, ", "))
	}
	return noteKinds[i], nil
}

func sayHorse(s *saying, n *model.Note) (err error) {
	s.fromNow(n)
	n.Horse, err = horseNamed(s.centre, s.args[0])
	return err
}

func sayPiece(s *saying, n *model.Note) (err error) {
	s.fromNow(n)
	n.Piece, err = pieceTagged(s.centre, s.args[0])
	return err
}

func sayOut(s *saying, n *model.Note) error {
	for _, x := range []struct {
		said bool
		why  model.OutWhy
	}{{s.opts.lame, model.Lame}, {s.opts.ill, model.Ill}, {s.opts.vet, model.VetStop}, {s.opts.appointment, model.Appointment}} {
		switch {
		case x.said && n.Why != "":
			return wrongUse("say one reason: --%s or --%s", word(n.Why), word(x.why))
		case x.said:
			n.Why = x.why
		}
	}
	switch {
	case n.Why == "":
		return wrongUse("say why: --lame, --ill, --vet or --appointment")
	case n.Why == model.Appointment && n.Review != 0:
		return wrongUse("an appointment ends by itself, so nobody looks again: leave --review out")
	case n.Why != model.Appointment && (n.Until != 0 || n.Through != 0):
		return wrongUse("a horse that is %s comes back on a person's word: say --review DATE, not when it ends", n.Why)
	}
	return sayHorse(s, n)
}

// word is how a reason is typed.
func word(why model.OutWhy) string {
	if why == model.VetStop {
		return "vet"
	}
	return string(why)
}

func sayAway(s *saying, n *model.Note) (err error) {
	n.Rider, err = riderNamed(s.centre, s.args[0])
	return err
}

func sayAdd(s *saying, n *model.Note) (err error) {
	if n.Rider, err = riderNamed(s.centre, s.args[0]); err != nil {
		return err
	}
	if n.Lesson, err = s.lesson(s.args[1], n); err != nil {
		return err
	}
	if _, err = s.meeting(n); err != nil {
		return err
	}
	for _, r := range s.centre.Week(n.Date, 1, model.Instant{}).Rides {
		if r.Rider == n.Rider && r.Meeting.Lesson == n.Lesson && r.State == model.Open {
			return no("%s rides in %s on %s already", n.Rider.Name, n.Lesson.Name, n.Date.Words())
		}
	}
	return nil
}

func sayCancel(s *saying, n *model.Note) (err error) {
	n.Lesson, err = s.lesson(s.args[0], n)
	return err
}

func sayMove(s *saying, n *model.Note) (err error) {
	if n.Lesson, err = s.lesson(s.args[0], n); err != nil {
		return err
	}
	m, err := s.meeting(n)
	if err != nil {
		return err
	}
	if len(s.args) == 1 {
		if n.Arena == nil {
			return wrongUse("say where to: a time, or --arena")
		}
		return nil
	}
	if n.From, err = timeOfDay(s.args[1]); err != nil {
		return err
	}
	if n.Until = n.From + m.End - m.Start; n.Until > 24*60 {
		return no("%s would end on the next date", m.Name)
	}
	return nil
}

func sayShorten(s *saying, n *model.Note) (err error) {
	if n.Lesson, err = s.lesson(s.args[0], n); err != nil {
		return err
	}
	m, err := s.meeting(n)
	if err != nil {
		return err
	}
	length, err := minutes(s.args[1])
	switch {
	case err != nil:
		return err
	case length == 0 || m.Start+length >= m.End:
		return no("%s is %d minutes long on %s, so %d minutes are no shorter; to leave it out, cancel it", m.Name, m.End-m.Start, n.Date.Words(), length)
	}
	n.Until = m.Start + length
	return nil
}

func sayHelpers(s *saying, n *model.Note) (err error) {
	if n.Lesson, err = s.lesson(s.args[0], n); err != nil {
		return err
	}
	if _, err = s.meeting(n); err != nil {
		return err
	}
	rest := s.args[1:]
	if len(rest)%2 != 0 {
		return wrongUse("it is written: 2 leaders 1 sidewalkers, or one of them")
	}
	for ; len(rest) > 0; rest = rest[2:] {
		count, err := strconv.Atoi(rest[0])
		if err != nil || count < 0 {
			return wrongUse("%q is not a number of helpers", rest[0])
		}
		switch rest[1] {
		case "leader", "leaders":
			n.Hands.Leaders = count
		case "sidewalker", "sidewalkers":
			n.Hands.Sidewalkers = count
		default:
			return wrongUse("%q are not helpers: say leaders or sidewalkers", rest[1])
		}
	}
	return s.otherHands(n)
}

// otherHands leaves the helpers of which nothing was said as they are.
func (s *saying) otherHands(n *model.Note) error {
	m, err := s.meeting(n)
	if err != nil {
		return err
	}
	if n.Hands.Leaders < 0 {
		n.Hands.Leaders = m.Hands.Leaders
	}
	if n.Hands.Sidewalkers < 0 {
		n.Hands.Sidewalkers = m.Hands.Sidewalkers
	}
	return nil
}

func sayWeather(s *saying, n *model.Note) (err error) {
	s.fromNow(n)
	if n.Warmth, err = warmth(s.args[0], s.centre.House.Units); err != nil {
		return err
	}
	if n.Warmth < -40 || n.Warmth > 130 {
		return wrongUse("%s is no temperature of the air; say 84F or 29C", s.args[0])
	}
	n.Humidity, err = percent(s.args[1])
	return err
}

func sayClose(s *saying, n *model.Note) (err error) {
	if n.Arena, err = arenaNamed(s.centre, s.args[0]); err != nil {
		return err
	}
	return s.hours(n)
}

func sayInstructorAway(s *saying, n *model.Note) (err error) {
	if n.Instructor, err = colleague(s.centre, s.args[0]); err != nil {
		return err
	}
	return s.hours(n)
}

// hours are the two times behind a name, if any.
func (s *saying) hours(n *model.Note) (err error) {
	switch len(s.args) {
	case 2:
		n.From, err = timeOfDay(s.args[1])
	case 3:
		n.From, n.Until, err = hours(s.args[1] + "-" + s.args[2])
	}
	return err
}

func sayInstructor(s *saying, n *model.Note) (err error) {
	if n.Lesson, err = s.lesson(s.args[0], n); err != nil {
		return err
	}
	if _, err = s.meeting(n); err != nil {
		return err
	}
	n.Instructor, err = colleague(s.centre, s.args[1])
	return err
}

func sayPair(s *saying, n *model.Note) (err error) {
	if n.Rider, err = riderNamed(s.centre, s.args[0]); err != nil {
		return err
	}
	if n.Horse, err = horseNamed(s.centre, s.args[1]); err != nil {
		return err
	}
	for d := n.Date; d <= max(n.Date, n.Through); d++ {
		for _, r := range s.centre.Week(d, 1, model.Instant{}).Rides {
			if r.Rider == n.Rider && (n.Lesson == nil || n.Lesson == r.Meeting.Lesson) {
				return nil
			}
		}
	}
	return no("%s has no ride then, so there is nothing to keep; for another date say --date", n.Rider.Name)
}

func sayForm(s *saying, n *model.Note) (err error) {
	if n.Rider, err = riderNamed(s.centre, s.args[0]); err != nil {
		return err
	}
	n.Through, err = s.clock.date(s.args[1])
	return err
}

// sayLeaveOut is of a work that is on the date of the note.
func sayLeaveOut(s *saying, n *model.Note) (err error) {
	if n.Horse, err = horseNamed(s.centre, s.args[0]); err != nil {
		return err
	}
	if len(s.args) == 2 {
		if n.From, err = timeOfDay(s.args[1]); err != nil {
			return err
		}
	}
	if !slices.ContainsFunc(s.centre.Works, func(x *model.Work) bool {
		return x.Horse == n.Horse && x.IsOn(n.Date) && (n.From == 0 || n.From == x.Start)
	}) {
		return no("%s has no such work on %s; for another date say --date", n.Horse.Name, n.Date.Words())
	}
	return nil
}

// sayLift undoes a keep or a never that stands.
func sayLift(s *saying, n *model.Note) error {
	number, err := strconv.Atoi(s.args[0])
	if err != nil {
		return wrongUse("%q is not the number of a note", s.args[0])
	}
	for _, x := range model.Standing(s.centre.Notes) {
		if x.Number == number && (x.Kind == model.NoteKeep || x.Kind == model.NoteNever) {
			n.Undoes = number
			return nil
		}
	}
	return no("no note %d stands that keeps a rider or says never; what else is no longer so, tackwright undo takes back", number)
}
