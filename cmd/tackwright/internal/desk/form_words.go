package desk

// formPart is a part of a form: the first of a table is what a person needs mostly,
// the others are folded while nothing is said in them.
type formPart struct {
	name string
	keys []keyWords
}

// keyWords are what a key is called where people fill it in.
type keyWords struct{ key, label string }

// formParts are the forms by their tables. Each key of the table is in one of them.
var formParts = map[string][]formPart{
	"horse": {
		{"", []keyWords{{"name", "Name"}, {"looks", "What a helper sees"}, {"kept", "Stall or field"}, {"foaled", "Foaled"},
			{"weight", "Body weight"}, {"weighed", "Weighed on"}, {"height", "Height at the withers"}, {"barrel", "Barrel"},
			{"mounting", "Mounting places it stands at"}, {"skills", "What it can do"}, {"levels", "Levels of riders it takes"}}},
		{"When it does not work", []keyWords{{"out", "Lame, ill, stopped by the vet, or at an appointment"}, {"days_off", "Days off"}, {"arrived", "Came here on"},
			{"quarantine_until", "In quarantine until"}, {"in_foal_until", "In foal until"}}},
		{"What it may carry", []keyWords{{"load", "Most load, as a share of its weight"}, {"max_load", "Most load, as a weight"}, {"max_load_support", "Most load with a rider who needs support"}}},
		{"How much it may work", []keyWords{{"limits.day", "Work in a day"}, {"limits.day_sessions", "Lessons or works in a day"},
			{"limits.run", "Work with no rest"}, {"limits.run_sessions", "Lessons or works with no rest"},
			{"limits.week", "Work in a week"}, {"limits.week_days", "Days worked in a week"}, {"limits.days_in_a_row", "Days worked in a row"}, {"factor", "How hard work is for it"}}},
		{"Weight by tape", []keyWords{{"weight.girth", "Heart girth"}, {"weight.length", "Length of body"}}},
		{"Other horses, tack and names", []keyWords{{"must_be_led", "Led whoever rides"}, {"apart", "Never in one lesson with"}, {"own_tack_only", "Its tack goes to no other horse"}, {"was", "Earlier names"}}},
	},
	"rider": {
		{"", []keyWords{{"name", "Name"}, {"weight", "Weight, dressed to ride"}, {"height", "Height"}, {"form_until", "Form valid until"},
			{"support", "Needs support"}, {"leader", "Needs a leader"}, {"sidewalkers", "Sidewalkers needed"}, {"mounting", "Mounting places she can use"},
			{"level", "Level"}, {"styles", "Styles of seat, best first"}, {"usual_horse", "Usual horse"}, {"never_on", "Never on"}, {"cautions", "Cautions, for the instructor alone"}}},
		{"How sheets call her", []keyWords{{"first", "First name"}, {"mark", "Mark beside the first name"}, {"was", "Earlier names"}}},
		{"What horse and tack suit her", []keyWords{{"barrels", "Barrels that suit her"}, {"horse_height", "Heights of horses that suit her"}, {"skills", "What her horse must be able to do"},
			{"seat", "Size of English seat"}, {"thigh", "Buttock to knee"}, {"extras", "What she needs beside"}, {"wears", "What she wears herself"}, {"mounting_time", "How long mounting takes"}}},
		{"What she likes", []keyWords{{"likes", "Likes"}, {"dislikes", "Dislikes"}}},
		{"When she comes, and the wait list", []keyWords{{"away", "Away"}, {"sessions", "Lessons wanted in a week"}, {"free", "When she could come"}, {"waiting_since", "On the wait list since"},
			{"may_change", "May be moved to another lesson"}, {"ride_first", "Last to be left on the ground"}}},
	},
	"tack": {
		{"", []keyWords{{"tag", "Tag"}, {"kind", "Kind"}, {"looks", "What the eye finds"}, {"rack", "Spot in the tack room"}, {"size", "Size"},
			{"weight", "Weight"}, {"check_due", "Next check due"}, {"out", "Out of use"}}},
		{"Of a seat", []keyWords{{"style", "Style"}, {"billets", "Billets"}, {"own_girth", "Has a girth of its own"}, {"bars", "Stirrups can hang on it"}, {"needs_pad", "Needs a pad beneath"}}},
		{"Of a girth", []keyWords{{"family", "Family"}}},
		{"Of an extra", []keyWords{{"goes_on", "Seats it goes on"}, {"hangs_on_bars", "Hangs on a seat's bars"}}},
		{"Where it is kept, and cleaning", []keyWords{{"with_seat", "Kept with the seat"}, {"with_horse", "Kept with the horse"}, {"touches_skin", "Lies on the horse's skin"}, {"cleaned", "Cleaned"}, {"was", "Earlier tags"}}},
	},
	"fit": {
		{"", []keyWords{{"horse", "Horse"}, {"seat", "Seat"}, {"girth", "Sizes of girth that fit"}, {"by", "Approved by"}, {"approved", "Approved on"}, {"until", "To be checked again by"}}},
		{"Pads, and girths by tag", []keyWords{{"pads", "Pads, from the horse's back"}, {"pad_sizes", "Sizes of loose pads"}, {"girths", "Girths, by tag"}}},
	},
	"lesson": {
		{"", []keyWords{{"name", "Name"}, {"day", "Weekday"}, {"start", "Starts"}, {"length", "How long it is"}, {"arena", "Arena"}, {"instructor", "Instructor"},
			{"riders", "Riders"}, {"size", "Riders at once"}, {"leaders", "Leaders it can count on"}, {"sidewalkers", "Sidewalkers it can count on"}}},
		{"Who may join", []keyWords{{"kind", "Kind of lesson"}, {"level", "Level"}, {"open", "Open to riders of other lessons"}}},
		{"On one date, from or until a date, in a term", []keyWords{{"on", "Held once, on"}, {"end", "Ends, in place of a length"}, {"from", "From"}, {"until", "Until"}, {"term", "Term"}}},
		{"Other helpers on a date, and earlier names", []keyWords{{"helpers_on", "Helpers on a date"}, {"was", "Earlier names"}}},
	},
	"booking": {
		{"", []keyWords{{"on", "Date"}, {"lesson", "Lesson"}, {"rider", "Rider"}, {"why", "Why"}}},
		{"For a part of the lesson", []keyWords{{"start", "Starts"}, {"end", "Ends"}}},
	},
	"arena": {
		{"", []keyWords{{"name", "Name"}, {"riders_at_once", "Riders at once"}, {"indoor", "Has a roof"}, {"mounting", "Mounting places"}, {"closed", "Closed"}}},
		{"Earlier names", []keyWords{{"was", "Earlier names"}}},
	},
	"person": {
		{"", []keyWords{{"name", "Name"}, {"role", "Role"}, {"may_end", "What she may end"}, {"riders_at_once", "Riders she teaches at once"}, {"away", "Away"}}},
		{"Earlier names", []keyWords{{"was", "Earlier names"}}},
	},
}
