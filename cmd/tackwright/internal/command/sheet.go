package command

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"tackwright/cmd/tackwright/internal/sheet"
	"tackwright/cmd/tackwright/internal/sheet/paper"
	"tackwright/model"
)

var sheetCommand = &command{
	name: "sheet", args: "FOLDER KIND [DATE]",
	short:   "print a sheet for the wall, the barn or the instructor, also as PDF or page",
	about:   sheetAbout(),
	example: "tackwright sheet examples/sallowdene chart tomorrow --to chart.pdf",
	least:   2, most: 3, answer: paper.Answer{},
	flags: func(fs *pflag.FlagSet) func(*call) error {
		var o sheetOptions
		o.putOptions = putFlags(fs)
		fs.StringVar(&o.horse, "horse", "", "of the horse of this `NAME` alone")
		fs.StringVar(&o.instructor, "instructor", "", "of the lessons of the instructor of this `NAME` alone")
		fs.StringVar(&o.plan, "plan", "", "from the plan in this `FILE`")
		o.today = todayFlag(fs)
		return func(c *call) error { return printSheet(c, &o) }
	},
}

type sheetOptions struct {
	putOptions
	horse, instructor, plan string
	today                   *string
}

// sheetKind is one of the sheets that can be asked for.
type sheetKind struct {
	name, short string
	of          string // which of --horse, --instructor it takes
	make        func(*call, *sheetOptions) (*paper.Sheet, error)
}

// sheetKinds in the order of the day.
func sheetKinds() []sheetKind {
	return []sheetKind{
		{"chart", "for the wall: each lesson's riders, horses, tack and mounting, and lines for helpers' names", "",
			ofDay(sheet.LessonChart)},
		{"wall", "the day as a picture: lessons across, horses down, an arrow where tack goes", "",
			ofDay(sheet.WallChart)},
		{"tack", "the tack room's day as a picture, drawn to time", "",
			ofDay(sheet.TackDay)},
		{"pull", "the pull list: what to carry to which horse by when, what moves, what goes back", "",
			ofPullList((*sheet.PullList).Sheet)},
		{"rack", "the pull list in walking order along the racks", "",
			ofPullList((*sheet.PullList).RackSheet)},
		{"cards", "for each horse its day, its tack, and what of its limits it uses", "horse",
			ofNamed((*sheetOptions).horseOf, sheet.HorseCards)},
		{"week", "each horse's week against its limits, as a picture", "horse",
			ofNamed((*sheetOptions).horseOf, sheet.HorseWeeks)},
		{"instructor", "for the instructor alone: riders, cautions on file, a box for each check of a girth", "instructor",
			ofNamed((*sheetOptions).instructorOf, sheet.InstructorSheet)},
		{"fit", "the fit chart: seats, pads and girths of each horse, approved by whom, due when", "horse",
			ofFolder(func(c *model.Centre, today model.Date, stamp sheet.Stamp, o *sheetOptions) (*paper.Sheet, error) {
				h, err := o.horseOf(c)
				return sheet.FitChart(c, today, stamp, h), err
			})},
		{"tags", "tags to tie on pieces", "",
			ofFolder(func(c *model.Centre, today model.Date, stamp sheet.Stamp, o *sheetOptions) (*paper.Sheet, error) {
				return sheet.Tags(c, today, stamp), nil
			})},
		{"blank-chart", "a lesson chart to fill in by hand", "",
			ofFolder(func(c *model.Centre, today model.Date, stamp sheet.Stamp, o *sheetOptions) (*paper.Sheet, error) {
				return sheet.BlankChart(c, today, stamp), nil
			})},
		{"blank-pull", "a pull list to fill in by hand", "",
			ofFolder(func(c *model.Centre, today model.Date, stamp sheet.Stamp, o *sheetOptions) (*paper.Sheet, error) {
				return sheet.BlankPull(c, today, stamp), nil
			})},
	}
}

// horseOf is the horse that --horse names, nil where it was not said.
func (o *sheetOptions) horseOf(c *model.Centre) (*model.Horse, error) {
	if o.horse == "" {
		return nil, nil
	}
	return horseNamed(c, o.horse)
}

func (o *sheetOptions) instructorOf(c *model.Centre) (*model.Person, error) {
	if o.instructor == "" {
		return nil, nil
	}
	return colleague(c, o.instructor)
}

// ofFolder is a sheet that goes by no plan, as of a date.
func ofFolder(make func(*model.Centre, model.Date, sheet.Stamp, *sheetOptions) (*paper.Sheet, error)) func(*call, *sheetOptions) (*paper.Sheet, error) {
	return func(c *call, o *sheetOptions) (*paper.Sheet, error) {
		f, k, err := c.openOn(*o.today)
		if err != nil {
			return nil, err
		}
		date := k.Today
		if len(c.args) > 2 {
			if date, err = k.date(c.args[2]); err != nil {
				return nil, err
			}
		}
		o.layFor(&f.Centre.House)
		return make(f.Centre, date, k.printed(sheet.Stamp{}), o)
	}
}

func sheetAbout() string {
	var b strings.Builder
	b.WriteString(`Prints one of these sheets for a date, today unless said:

`)
	for _, k := range sheetKinds() {
		b.WriteString(wrap(fmt.Sprintf("  %-12s ", k.name), k.short))
	}
	b.WriteString(`
It is printed as text, or written to the FILE of --to: as PDF, as a page that
prints the same, as a picture, for a spreadsheet or as text. All are black on
white, at 12 points and more.
The plan is the one that pull takes. Sheets name riders by first name and mark,
and hold no weight; only the instructor's sheet holds cautions.
`)
	return b.String()
}

// ofPlan is a sheet that is made from the plan of its date.
func ofPlan(make func(*dayPlan, *sheetOptions) (*paper.Sheet, error)) func(*call, *sheetOptions) (*paper.Sheet, error) {
	return func(c *call, o *sheetOptions) (*paper.Sheet, error) {
		when := "today"
		if len(c.args) > 2 {
			when = c.args[2]
		}
		d, err := c.dayPlan(when, o.plan, *o.today)
		if err != nil {
			return nil, err
		}
		o.layFor(d.week.House)
		return make(d, o)
	}
}

func ofDay(make func(*model.Week, *model.Plan, model.Date, sheet.Stamp) (*paper.Sheet, error)) func(*call, *sheetOptions) (*paper.Sheet, error) {
	return ofPlan(func(d *dayPlan, o *sheetOptions) (*paper.Sheet, error) { return make(d.week, d.plan, d.date, d.stamp) })
}

// ofNamed is a sheet of the horse or instructor that was named, of all where none was.
func ofNamed[T any](named func(*sheetOptions, *model.Centre) (T, error), make func(*model.Week, *model.Plan, model.Date, sheet.Stamp, T) (*paper.Sheet, error)) func(*call, *sheetOptions) (*paper.Sheet, error) {
	return ofPlan(func(d *dayPlan, o *sheetOptions) (*paper.Sheet, error) {
		x, err := named(o, d.folder.Centre)
		if err != nil {
			return nil, err
		}
		return make(d.week, d.plan, d.date, d.stamp, x)
	})
}

func ofPullList(make func(*sheet.PullList) *paper.Sheet) func(*call, *sheetOptions) (*paper.Sheet, error) {
	return ofPlan(func(d *dayPlan, o *sheetOptions) (*paper.Sheet, error) {
		l, err := sheet.Pull(d.week, d.plan, d.date, d.stamp)
		if err != nil {
			return nil, err
		}
		return make(l), nil
	})
}

func printSheet(c *call, o *sheetOptions) error {
	if err := o.check(); err != nil {
		return err
	}
	var names []string
	for _, k := range sheetKinds() {
		names = append(names, k.name)
		if k.name != c.args[1] {
			continue
		}
		if o.horse != "" && k.of != "horse" || o.instructor != "" && k.of != "instructor" {
			return wrongUse("%s is of the whole centre; --horse and --instructor go with others", k.name)
		}
		s, err := k.make(c, o)
		if err != nil {
			return err
		}
		return c.put(s, o.putOptions)
	}
	return wrongUse("there is no sheet %q; there are: %s", c.args[1], strings.Join(names, ", "))
}
