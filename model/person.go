package model

// Role is what a person does at the centre, and so what she may do here.
type Role string

const (
	Barn       Role = "barn"
	Instructor Role = "instructor"
	Office     Role = "office"
)

// Ends is something that only a named person may bring to an end.
type Ends string

const (
	EndsVetStop  Ends = "vet's stop" // a horse lame, ill or stopped by a vet
	EndsCleaning Ends = "cleaning"   // a contact with a horse on its own tack only
	EndsCheck    Ends = "check"      // a piece out of use
	EndsForm     Ends = "form"       // extends a rider's form
)

// Person is somebody who works at the centre. Every note and posted plan names
// one.
type Person struct {
	Name         string
	Was          []string // earlier names
	Role         Role
	RidersAtOnce int      // that an instructor teaches; 0: no limit stated
	Away         []Period // hours away
	MayEnd       []Ends
}

// May reports whether the person may bring e to an end.
func (p *Person) May(e Ends) bool {
	for _, x := range p.MayEnd {
		if x == e {
			return true
		}
	}
	return false
}

// Arena is a place for lessons and work.
type Arena struct {
	Name         string
	Was          []string
	RidersAtOnce int // 0: no limit stated
	Indoor       bool
	Mounting     []string // mounting places; none: not recorded
	Closures     []Period
}
