package model

// Posted is a posted plan as history counts it: what each horse and piece was
// told to do. A version is never changed; a later one replaces it on the dates
// that it covers.
type Posted struct {
	Version     int
	By          *Person
	At          Instant
	Now         Instant // rides that had started then were facts of it; zero: none
	From, Until Date
	Notes       int // number of the latest note that it goes by; 0: none had been written
	Told        []Told
}

// Told is one ride of a posted plan; it stands alone, so that a lesson that was
// changed since does not change what was posted.
type Told struct {
	Date       Date
	Start, End Minute
	Lesson     *Lesson // nil where the lesson is no longer in the folder
	LessonName string
	Rider      *Rider // nil where the rider is no longer in the folder
	Arena      *Arena
	Instructor *Person
	Turn       *Turn    // nil: on the ground
	Ground     []string // why, as it was posted or as a note has it; nil where seated
	Work       int64    // minutes x percent of the lesson's kind x percent of the horse; 0 on the ground
	Extra      bool     // the ridden record alone tells of it
	Notes      int      // number of the latest note that it goes by, where that is later than its version's
}

// Ridden is the record of one date, closed by a person: as posted, but for
// where it differed.
type Ridden struct {
	Date    Date
	By      *Person
	At      Instant
	Differs []Differs
	Works   []*Work // other work of the date, beyond what was planned
}

// DiffersHow says in what a ride differed from the plan.
type DiffersHow string

const (
	NoShow     DiffersHow = "no-show"
	OtherHorse DiffersHow = "other horse" // or other tack
	ExtraRide  DiffersHow = "extra ride"
	CutShort   DiffersHow = "cut short"
)

// Differs is one ride that was not as posted.
type Differs struct {
	How        DiffersHow
	Lesson     *Lesson
	Rider      *Rider
	Turn       *Turn  // of another horse or an extra ride
	Start, End Minute // of an extra ride, each 0: the lesson's; of another, which part (0: any) and the end of one cut short
}
