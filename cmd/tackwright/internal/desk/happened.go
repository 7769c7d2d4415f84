package desk

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"

	"tackwright/model"
)

// happening is something that can be noted of a day, as the command note has it.
type happening struct {
	word, says string
	fields     []happeningField // in the order in which the command takes them
}

// happeningField is what is to be said of it.
type happeningField struct {
	label, kind string // kind: of what it names; or "time", "number"
	flag        string // that it stands behind; "" none
	after       string // a word behind it
	may         bool   // it may be left empty
}

// happenings in the order in which they come up; what is said of horses and of
// single rides is said on their own pages.
var happenings = []happening{
	{"piece-out", "A piece cannot be used", []happeningField{{label: "Piece", kind: "tack"}, {label: "From", kind: "time", flag: "--from", may: true}}},
	{"piece-back", "A piece is mended and checked", []happeningField{{label: "Piece", kind: "tack"}}},
	{"cleaned", "A piece was cleaned", []happeningField{{label: "Piece", kind: "tack"}}},
	{"close", "An arena is closed", []happeningField{{label: "Arena", kind: "arena"}, {label: "From", kind: "time", may: true}, {label: "Until", kind: "time", may: true}}},
	{"instructor-away", "An instructor does not come", []happeningField{{label: "Who", kind: "person"}, {label: "From", kind: "time", may: true}, {label: "Until", kind: "time", may: true}}},
	{"instructor", "Somebody else takes a lesson", []happeningField{{label: "Lesson", kind: "lesson"}, {label: "Who takes it", kind: "person"}}},
	{"helpers", "A lesson has other helpers", []happeningField{{label: "Lesson", kind: "lesson"}, {label: "Leaders", kind: "number", after: "leaders"}, {label: "Sidewalkers", kind: "number", after: "sidewalkers"}}},
	{"cancel", "A lesson is not held", []happeningField{{label: "Lesson", kind: "lesson"}}},
	{"move", "A lesson begins at another time", []happeningField{{label: "Lesson", kind: "lesson"}, {label: "Begins at", kind: "time"}}},
	{"shorten", "A lesson ends early", []happeningField{{label: "Lesson", kind: "lesson"}, {label: "Minutes that it then lasts", kind: "number"}}},
	{"add", "A rider joins a lesson", []happeningField{{label: "Rider", kind: "rider"}, {label: "Lesson", kind: "lesson"}}},
	{"own-tack", "A horse keeps its tack to itself", []happeningField{{label: "Horse", kind: "horse"}}},
	{"weather", "How warm and humid it is", []happeningField{{label: "Temperature, such as 84F or 29C", kind: "text"}, {label: "Humidity in percent", kind: "number"}}},
}

// happenedView are the forms for what happened.
type happenedView struct {
	Date  model.Date
	Kinds []happenedForm
	Wrong string
}

type happenedForm struct {
	Word, Says string
	Open       bool // something is said in it
	Fields     []happenedField
}

type happenedField struct {
	ID, Name, Label, Kind string
	Value                 string // that was said
	Choices               []string
	May                   bool
}

func showHappened(v *visit) error {
	v.reading.Lock()
	defer v.reading.Unlock()
	if v.refilled() {
		return v.happened(http.StatusOK, notSent)
	}
	return v.happened(http.StatusOK, "")
}

func (v *visit) happened(status int, wrong string) error {
	x := &happenedView{Date: v.date(), Wrong: wrong}
	held := []string{}
	for _, m := range v.reading.bare(x.Date).week.Meetings {
		held = append(held, m.Name)
	}
	for _, h := range happenings {
		f := happenedForm{Word: h.word, Says: h.says, Open: h.word == v.r.PostForm.Get("kind")}
		for _, y := range h.fields {
			z := happenedField{Name: fieldName(y), Label: y.label, Kind: y.kind, May: y.may}
			z.ID = h.word + "-" + z.Name
			if f.Open {
				z.Value = normal(v.r.PostForm.Get(z.Name))
			}
			switch y.kind {
			case "lesson":
				z.Choices = held
			case "tack", "arena", "person", "rider", "horse":
				z.Choices = v.namesOf(y.kind)
			}
			if z.Choices != nil {
				z.Kind = "choice"
			}
			f.Fields = append(f.Fields, z)
		}
		x.Kinds = append(x.Kinds, f)
	}
	return v.page(status, "happened", "What happened on "+x.Date.Words()+"?", x)
}

func fieldName(f happeningField) string {
	return strings.ToLower(strings.NewReplacer(" ", "-", ",", "").Replace(f.label))
}

// happen notes what happened, and where something posted goes otherwise because of
// it begins to mend the day.
func happen(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	i := slices.IndexFunc(happenings, func(h happening) bool { return h.word == v.r.PostFormValue("kind") })
	if i < 0 {
		return no("say what happened")
	}
	d := v.date()
	if d < v.reading.Today {
		return no("%s is over", d.Words())
	}
	args := []string{"note", "--date", d.String(), "--by", by.Name, "--json"}
	said := []string{"--", v.Dir, happenings[i].word}
	for _, f := range happenings[i].fields {
		value := form(v, fieldName(f))
		switch {
		case value == "" && f.may:
		case value == "":
			return v.happened(http.StatusConflict, "say: "+strings.ToLower(f.label))
		case f.flag != "":
			args = append(args, f.flag, value)
		default:
			said = append(said, value)
			if f.after != "" {
				said = append(said, f.after)
			}
		}
	}
	a := v.Command(v.r.Context(), append(args, said...))
	v.readings.forget()
	if a.Status != 0 {
		v.reading.Lock()
		defer v.reading.Unlock()
		return v.happened(http.StatusConflict, a.Complaint())
	}
	var answer struct {
		Breaks, Off, Lessons, Added []any
	}
	if err := json.Unmarshal([]byte(a.Out), &answer); err != nil {
		return err
	}
	moved := len(answer.Breaks)+len(answer.Off)+len(answer.Lessons)+len(answer.Added) > 0
	if moved && v.reading.Centre.VersionOn(d) > 0 {
		return v.mend(d, v.reading.noteAt(d))
	}
	return v.see("/day/" + d.String())
}

// noteAt is noteFrom for a caller who does not hold the reading's lock.
func (r *reading) noteAt(d model.Date) model.Minute {
	r.Lock()
	defer r.Unlock()
	return r.noteFrom(d)
}
