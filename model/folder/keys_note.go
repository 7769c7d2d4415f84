package folder

import (
	"fmt"
	"slices"

	"tackwright/model"
)

var noteKeys = &table[model.Note]{
	head:  "[[note]]",
	about: "What changed on a date. A file a date, in notes/, only added to.",
	keys: []key[model.Note]{
		is("number", within(integer, 1, 1e8, "notes are numbered from 1"), "its number, unique in the folder", "", func(n *model.Note, v int) { n.Number = v }),
		is("kind", oneOf("a kind of note", model.NoteKinds...), "what it says", "it says only what it undoes", func(n *model.Note, v model.NoteKind) { n.Kind = v }),
		is("at", instants, "when it was written", "", func(n *model.Note, v model.Instant) { n.At = v }),
		is("by", person, "who wrote it", "", func(n *model.Note, v *model.Person) { n.By = v }),
		is("undoes", within(integer, 1, 1e8, "notes are numbered from 1"), "number of an earlier note that no longer stands", "none", func(n *model.Note, v int) { n.Undoes = v }).eg(`2`),
		is("date", dates, "the date that it is for", "that of at", func(n *model.Note, v model.Date) { n.Date = v }),
		is("through", dates, "the last date that it is for", "the one date, or until it is ended", func(n *model.Note, v model.Date) { n.Through = v }),
		is("from", times, "from this time", "from midnight", func(n *model.Note, v model.Minute) { n.From = v }).eg(`07:40`),
		is("until", times, "to this time", "to the end of the date, or until it is ended", func(n *model.Note, v model.Minute) { n.Until = v }).eg(`12:00`),
		is("horse", horse, "the horse", "none", func(n *model.Note, v *model.Horse) { n.Horse = v }),
		is("tack", tack, "tag of the piece", "none", func(n *model.Note, v *model.Piece) { n.Piece = v }),
		is("rider", rider, "the rider", "none", func(n *model.Note, v *model.Rider) { n.Rider = v }),
		is("lesson", lesson, "the lesson", "none, or all", func(n *model.Note, v *model.Lesson) { n.Lesson = v }),
		is("arena", arena, "the arena", "none, or as it was", func(n *model.Note, v *model.Arena) { n.Arena = v }),
		is("instructor", person, "who takes the lesson, or who is away", "none", func(n *model.Note, v *model.Person) { n.Instructor = v }),
		is("seat", tack, "tag of the seat to keep", "any", func(n *model.Note, v *model.Piece) { n.Seat = v }),
		is("why", oneOf("a reason", model.Lame, model.Ill, model.VetStop, model.Appointment), "why a horse is out", "none", func(n *model.Note, v model.OutWhy) { n.Why = v }),
		is("review", dates, "when somebody looks again", "the next date", func(n *model.Note, v model.Date) { n.Review = v }),
		is("leaders", some, "leaders of the lesson", "no number given", func(n *model.Note, v int) { n.Hands.Leaders = v }),
		is("sidewalkers", some, "sidewalkers of the lesson", "no number given", func(n *model.Note, v int) { n.Hands.Sidewalkers = v }),
		is("words", text, "what is to be said beside", "none", func(n *model.Note, v string) { n.Words = v }).eg(`"thunder expected"`),
		is("warmth", within(integer, -40, 130, "degrees Fahrenheit"), "air temperature, °F", "not said", func(n *model.Note, v int) { n.Warmth = v }).eg(`84`),
		is("humidity", within(integer, 0, 100, "per cent"), "relative humidity, %", "not said", func(n *model.Note, v int) { n.Humidity = v }).eg(`60`),
	},
}

// everyNote are the keys that count whatever the kind.
var everyNote = []string{"number", "kind", "at", "by", "undoes", "date", "words"}

// noteNeeds says for each kind which keys it must have, which it may have
// beside, and who must write it.
var noteNeeds = map[model.NoteKind]struct {
	must, may []string
	by        model.Ends
}{
	model.NoteHorseOut:    {must: []string{"horse", "why"}, may: []string{"from", "until", "through", "review"}},
	model.NoteHorseBack:   {must: []string{"horse"}, may: []string{"from"}, by: model.EndsVetStop},
	model.NoteOwnTack:     {must: []string{"horse"}, may: []string{"from"}},
	model.NoteOwnTackEnd:  {must: []string{"horse"}, may: []string{"from"}, by: model.EndsVetStop},
	model.NotePieceOut:    {must: []string{"tack"}, may: []string{"from"}},
	model.NotePieceBack:   {must: []string{"tack"}, may: []string{"from"}, by: model.EndsCheck},
	model.NoteCleaned:     {must: []string{"tack"}, may: []string{"from"}, by: model.EndsCleaning},
	model.NoteRiderAway:   {must: []string{"rider"}, may: []string{"lesson", "from", "until", "through"}},
	model.NoteRiderAdded:  {must: []string{"rider", "lesson"}},
	model.NoteCancelled:   {must: []string{"lesson"}, may: []string{"through"}},
	model.NoteMoved:       {must: []string{"lesson"}, may: []string{"from", "until", "arena", "through"}},
	model.NoteShortened:   {must: []string{"lesson", "until"}, may: []string{"through"}},
	model.NoteHands:       {must: []string{"lesson"}, may: []string{"leaders", "sidewalkers", "through"}},
	model.NoteWeather:     {must: []string{"warmth", "humidity"}, may: []string{"from", "arena"}},
	model.NoteArenaClosed: {must: []string{"arena"}, may: []string{"from", "until", "through"}},
	model.NoteInstructor:  {must: []string{"lesson", "instructor"}, may: []string{"through"}},
	model.NoteAway:        {must: []string{"instructor"}, may: []string{"from", "until", "through"}},
	model.NoteKeep:        {must: []string{"rider", "horse"}, may: []string{"lesson", "seat", "through"}},
	model.NoteNever:       {must: []string{"rider", "horse"}, may: []string{"lesson", "through"}},
	model.NoteWorkOff:     {must: []string{"horse"}, may: []string{"from"}},
	model.NoteForm:        {must: []string{"rider", "through"}, by: model.EndsForm},
}

// readNote reads one note and reports whether it can be obeyed.
func (r *reader) readNote(n *node) (*model.Note, bool) {
	note := &model.Note{Hands: model.NoHands}
	r.noun, r.entries[note] = note, n
	before := len(r.troubles)
	forgotten := n.get("rider") != nil && isForgotten(n.get("rider").val.text)
	r.history = forgotten || r.isPast(n)
	noteKeys.read(r, n, note)
	r.history = false
	if forgotten && len(r.troubles) == before { // it says nothing any more, but that it was written
		return &model.Note{Number: note.Number, At: note.At, By: note.By, Undoes: note.Undoes, Date: note.At.Date}, true
	}
	if note.Date == 0 {
		note.Date = note.At.Date
	}
	if note.Kind == "" {
		if n.get("kind") == nil && note.Undoes == 0 && !n.torn {
			r.mistake(n.span(), "a note has a kind, or undoes another note", `add a line such as: kind = "rider away"`)
		}
		return note, len(r.troubles) == before
	}
	need := noteNeeds[note.Kind]
	for _, k := range need.must {
		if n.get(k) == nil && !n.torn {
			r.mistake(n.span(), fmt.Sprintf("a note of the kind %q has no %s", note.Kind, k), "add it: "+k+" = "+noteKeys.key(k).shown())
		}
	}
	for _, p := range n.pairs {
		if noteKeys.key(p.key) != nil && !slices.Contains(everyNote, p.key) && !slices.Contains(need.must, p.key) && !slices.Contains(need.may, p.key) {
			r.mistake(p.span(), fmt.Sprintf("%s does not belong to a note of the kind %q", p.key, note.Kind), "leave it out, or mend kind")
		}
	}
	if need.by != "" && note.By != nil && !note.By.May(need.by) {
		r.mistake(n.spot("by"), fmt.Sprintf("%s may not end this", note.By.Name),
			r.whoMay(need.by, note.By))
	}
	if need.by != "" && note.Kind != model.NoteForm && note.IsToCome() {
		at := n.spot("date")
		if note.Date == note.At.Date {
			at = n.spot("from")
		}
		r.mistake(at, fmt.Sprintf("it was written on %s, before it was so: nothing is ended ahead of time", note.At), "note it when it is so; until then leave this note out")
	}
	r.inOrder(n, "date", "through", note.Date, note.Through)
	if note.Until != 0 && note.Kind != model.NoteShortened && max(note.Date, note.Through) == note.Date && note.Until <= note.From {
		r.mistake(n.spot("until"), fmt.Sprintf("until %s is not after from %s", note.Until, note.From), "mend from or until")
	}
	if note.Kind == model.NoteMoved && (n.get("from") == nil) != (n.get("until") == nil) {
		r.mistake(n.span(), "a lesson that is moved has both from and until, or neither", "add the other")
	}
	return note, len(r.troubles) == before
}

// isPast reports whether a note is for dates before today, so that what it
// names may be gone.
func (r *reader) isPast(n *node) bool {
	last := model.Date(0)
	for _, key := range []string{"at", "date", "through"} {
		if p := n.get(key); p != nil && len(p.val.text) >= 10 {
			if d, err := model.ParseDate(p.val.text[:10]); err == nil {
				last = max(last, d)
			}
		}
	}
	return last != 0 && last < r.today
}

// numberNotes puts the notes in order and checks what they undo.
func (r *reader) numberNotes() {
	c := r.centre
	slices.SortStableFunc(c.Notes, func(a, b *model.Note) int { return a.Number - b.Number })
	at := map[int]*model.Note{}
	for _, n := range c.Notes {
		r.noun = n
		if old := at[n.Number]; old != nil {
			r.mistake(r.at(n, "number"), fmt.Sprintf("two notes of the number %d: the other is at %s", n.Number, r.at(old, "number")), "give the later one the next free number")
			continue
		}
		if n.Undoes != 0 && at[n.Undoes] == nil {
			r.mistake(r.at(n, "undoes"), fmt.Sprintf("there is no earlier note %d", n.Undoes), "name the number of an earlier note")
		}
		at[n.Number] = n
	}
}
