package importing

import (
	"regexp"
	"slices"
	"strings"
)

// head is what a column's head says.
type head struct {
	key  string // of the kind's columns; "" it is not read
	unit string // of figures that have none
	turn int    // of names in two columns: 1 comes first
}

// first and last name in columns of their own make one name.
var halves = map[string]int{"firstname": 1, "forename": 1, "givenname": 1, "surname": 2, "lastname": 2, "familyname": 2}

// other are words of the trade, and of offices, for our own heads.
var other = map[string]map[string]string{
	"centre": {"center": "name", "timezone": "zone"},
	"person": {"instructor": "name", "staff": "name"},
	"arena":  {"arena": "name", "ring": "name", "maxriders": "riders_at_once"},
	"horse": {"ht": "height", "wt": "weight", "horse": "name", "pony": "name", "horsename": "name", "colour": "looks", "color": "looks", "description": "looks", "stall": "kept",
		"stable": "kept", "field": "kept", "born": "foaled", "yearborn": "foaled", "yearofbirth": "foaled", "dateofbirth": "foaled", "dob": "foaled"},
	"tack": {"no": "tag", "number": "tag", "id": "tag", "type": "kind", "description": "looks", "location": "rack", "nextcheck": "check_due"},
	"fit": {"saddle": "seat", "pony": "horse", "saddlepads": "pads", "girthsize": "girth", "approvedby": "by", "fitter": "by",
		"approvedon": "approved", "date": "approved", "nextcheck": "until", "due": "until", "checkdue": "until", "validuntil": "until"},
	"rider": {"ht": "height", "wt": "weight", "rider": "name", "ridername": "name", "client": "name", "participant": "name", "student": "name", "formexpires": "form_until",
		"formvaliduntil": "form_until", "formexpiry": "form_until", "usualpony": "usual_horse", "never": "never_on", "saddlesize": "seat", "seatsize": "seat"},
	"lesson": {"lesson": "name", "class": "name", "weekday": "day", "time": "start", "starttime": "start", "endtime": "end",
		"duration": "length", "minutes": "length (min)", "mins": "length (min)", "ring": "arena", "teacher": "instructor", "coach": "instructor", "rider": "riders",
		"student": "riders", "students": "riders", "client": "riders", "clients": "riders", "participant": "riders", "participants": "riders", "maxriders": "size", "pony": "horse", "saddle": "seat"},
	"lesson riders": {"student": "rider", "client": "rider", "participant": "rider"},
	"term":          {"term": "name", "start": "first", "from": "first", "end": "last", "until": "last"},
	"term pairings": {"pony": "horse", "saddle": "seat", "student": "rider", "client": "rider", "participant": "rider"},
	"booking":       {"date": "on"},
	"work":          {"pony": "horse", "date": "on"},
}

var (
	unitBehind = regexp.MustCompile(`(?i)^(.*?)[\s,/]*[(\[ ]\s*(?:in )?(kg|kgs|kilos?|g|lbs?|pounds|st|hh|h\.h\.|hands|cm|mm|in|ins|inch|inches|"|ft|min|mins|minutes|h|hrs?|hours|%)\s*[)\]]?\s*$`)
	unitNames  = map[string]string{"kgs": "kg", "kilo": "kg", "kilos": "kg", "lbs": "lb", "pounds": "lb", "h.h.": "hh", "hands": "hh", "ins": "in",
		"inch": "in", "inches": "in", `"`: "in", "mins": "min", "minutes": "min", "hr": "h", "hrs": "h", "hours": "h"}
)

// readHead is what a head says in a sheet of a kind; false is that it is none.
func (k *kind) readHead(text string) (head, bool) {
	if h, ok := k.plainHead(text); ok {
		return h, true
	}
	if m := unitBehind.FindStringSubmatch(text); m != nil {
		if h, ok := k.plainHead(m[1]); ok {
			h.unit = strings.ToLower(m[2])
			if u := unitNames[h.unit]; u != "" {
				h.unit = u
			}
			return h, true
		}
	}
	return head{}, false
}

func (k *kind) plainHead(text string) (head, bool) {
	said := bare(text)
	for _, c := range k.columns() {
		if bare(c.Key) == said {
			return head{key: c.Key}, true
		}
	}
	if turn := halves[said]; turn > 0 && k.column("name") != nil {
		return head{key: "name", turn: turn}, true
	}
	if rest, ok := strings.CutPrefix(said, "needs"); ok && rest != "" {
		return k.plainHead(rest)
	}
	if key := other[strings.TrimSpace(k.table+" "+k.items)][said]; key != "" {
		return k.readHead(key)
	}
	return head{}, false
}

// headOf is our own head for a key.
func headOf(key string) string { return strings.NewReplacer("_", " ", ".", " ").Replace(key) }

// heads are our own for a kind.
func (k *kind) heads() []string {
	var all []string
	for _, c := range k.columns() {
		all = append(all, headOf(c.Key))
	}
	return all
}

// near is our own head that a text is written most like; "" is none. It is one
// letter wrong, or two in a long word.
func (k *kind) near(text string) string {
	said := bare(text)
	for _, h := range k.heads() {
		if d := distance(said, bare(h)); d == 1 && len(said) > 3 || d == 2 && len(said) > 5 {
			return h
		}
	}
	return ""
}

// distance is how many letters must be put in, left out or changed to make b from a.
func distance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		last := row[0]
		row[0] = i + 1
		for j := range len(b) {
			next := min(row[j+1], row[j]) + 1
			if a[i] == b[j] {
				next = min(next, last)
			} else {
				next = min(next, last+1)
			}
			last, row[j+1] = row[j+1], next
		}
	}
	return row[len(b)]
}

// findHeads finds the row of heads: of the first rows the one with most heads that
// are known, and the keys of its columns.
func (r *reading) findHeads(s *source) (row int, heads []head, found bool) {
	most := 0
	for i, cells := range s.Rows[:min(len(s.Rows), 20)] {
		n := 0
		var here []head
		for _, text := range cells {
			h, ok := s.readHead(text)
			if ok && text != "" {
				n++
			}
			here = append(here, h)
		}
		if n > most {
			row, heads, most = i, here, n
		}
	}
	needed := slices.ContainsFunc(heads, func(h head) bool {
		c := s.kind.column(h.key)
		return c != nil && c.Must
	})
	return row, heads, most > 1 || most == 1 && (needed || len(s.kind.columns()) > 0 && strings.EqualFold(s.kind.table, "house"))
}
