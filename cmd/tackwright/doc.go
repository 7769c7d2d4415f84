/*
Tackwright plans who rides which horse in which tack at an adaptive riding
centre, and prints what to pull in the morning.

Commands:

	new    make a folder for a centre, to be filled in
	check  name what is wrong or missing, and what to measure first
	keys   explain every table and key of a folder
	term   find the standing pairings of a term
	plan   plan a week, a day, or from a date on
	pull   print what to pull from the tack room for a day
	audit  name every rule that a plan breaks, also one edited by hand
	repair mend what was posted for a day, with as few changes as can be

More of one: tackwright help COMMAND

Exit status: 0 done (also where a plan is not proved, which is then said),
1 the answer is no (a mistake in the folder, a broken rule; a ride on the ground
only where --all-ride asks), 2 wrong use, 3 could not be done (disk, lock).

A fit is for a saddle fitter, lameness for a vet, a rider's health for a
physician, the go-ahead for the instructor; local codes come first.

# tackwright new

tackwright new FOLDER

Makes a folder of files with a worked example of each table, which you replace
by your own horses, tack, riders and lessons. Nothing is written into a folder
that holds files already.

Example:

	tackwright new larkfield --name "Larkfield Riding Centre"

Flags:

	--name NAME     the centre's NAME (else that of the folder)
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

# tackwright check

tackwright check FOLDER

Reads a folder and names, all at once, its mistakes (what cannot be read, names
nothing, is there twice or cannot be) and its findings (what is missing, has
run out or is in conflict). Each has its file, line and column, the line
itself, and how to mend it. Findings come in the order of how many rides of the
coming week wait for them: the first is what to measure first.

A mistake stops every command that plans, and ends this one with status 1.
Findings never do: they are planned around.

Example:

	tackwright check examples/sallowdene

Flags:

	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	mistakes[]                 what stops every plan
	mistakes[].file            within the folder; "" where it is none
	mistakes[].line            from 1; 0 where no line is meant
	mistakes[].column          in letters, from 1
	mistakes[].message
	mistakes[].mend            how to put it right
	mistakes[].text            the line itself
	mistakes[].waits           rides of the coming week that wait for it
	findings[]                 what is planned around, most rides waiting first;
	                           with the keys of mistakes[]

# tackwright keys

tackwright keys [TABLE]

Prints the page of every table and key that a folder can have, as Markdown; or
one TABLE of it: horse, tack, lesson ...

Example:

	tackwright keys horse

# tackwright term

tackwright term FOLDER [TERM]

Plans the term's ordinary week: every lesson and work that is held each week,
with its standing riders, and nothing that comes and goes (bookings, notes,
what was posted and ridden, closures, absences and days off with a date,
appointments). A horse that a note says is out counts as back; one that the
centre's own files say is out does not. The week is the fullest of the term
from now on, as fits and forms are then. Where riders ride every other week, it
is one of the two kinds of week; the other is planned after it, with those who
ride in both on the horse and in the seat that the first gave them as far as
can be, and the riders who ride only then get theirs from it.

It prints who rides which horse in which seat and what was proved, and writes
nothing. Only with --write, and the name of whoever takes it, do horses and
seats become the term's standing pairings, in standing/ of the folder: from
then on they are each rider's usual horse and seat, and plan tells what differs
from them. A pairing in the centre's own files stands before those of that
rider. A rider on the ground gets none.

TERM is a name; left out, it is the term that today is in, or the next.

Example:

	tackwright term examples/sallowdene "Autumn 2026"

Flags:

	--write         make these the standing pairings of the term
	--by NAME       the NAME of the person who takes them
	--limit TIME    search each week no longer than this TIME; 60s if not said
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	term
	weeks[]                    the ordinary week, and the other one where riders
	                           ride every other week
	weeks[].centre
	weeks[].from               first date
	weeks[].until              last date, which counts
	weeks[].now                rides that had started then are facts
	weeks[].open_rides         rides to be planned
	weeks[].seated             those of them that have a horse
	weeks[].on_usual_horse     those of them that are on their usual horse
	weeks[].have_usual_horse   those of them that have one
	weeks[].changeovers        pieces that go from one horse to another within a
	                           date
	weeks[].busiest            the horse that has least of its week left
	weeks[].busiest.horse
	weeks[].busiest.percent    of what it may work in a calendar week, rounded up
	weeks[].summary            these counts in words
	weeks[].could_be           how far from best it can be, where that was not
	                           proved
	weeks[].started            rides that are facts
	weeks[].off[]              rides that count in no goal
	weeks[].off[].why
	weeks[].off[].rides        how many
	weeks[].rides[]            open and started ones, by date, start, lesson and
	                           rider
	weeks[].rides[].date
	weeks[].rides[].start      24-hour clock
	weeks[].rides[].end
	weeks[].rides[].lesson
	weeks[].rides[].arena
	weeks[].rides[].instructor
	weeks[].rides[].rider      first name, and a mark where two share it
	weeks[].rides[].started    it is a fact
	weeks[].rides[].horse      none: on the ground
	weeks[].rides[].seat       tag
	weeks[].rides[].pads[]     tags, from the horse's back
	weeks[].rides[].girth      tag
	weeks[].rides[].extras[]   tags
	weeks[].rides[].ground[]   what stands in the way
	weeks[].differs[]          rides that are not as their standing pairing has
	                           them
	weeks[].differs[].date
	weeks[].differs[].start
	weeks[].differs[].lesson
	weeks[].differs[].rider
	weeks[].differs[].horse    that it has in this plan
	weeks[].differs[].seat     tag
	weeks[].differs[].usual_horse of the standing pairing
	weeks[].differs[].usual_seat tag; none stated where it is missing
	weeks[].differs[].why      what keeps it from that
	weeks[].suspended[]        what was to be kept and could not be
	weeks[].goals[]            in order; less is better
	weeks[].goals[].name       its stable name
	weeks[].goals[].words      what is counted
	weeks[].goals[].value      what the plan reaches
	weeks[].goals[].bound      no plan that is as good in the goals before has
	                           less
	weeks[].goals[].proved     the value is the least there is
	weeks[].proved             every goal is
	weeks[].file               where the plan was written
	weeks[].kept               where an older one is kept that was edited by hand
	back[]                     horses that a note says are out and that count as
	                           back
	pairings[]                 by date, start, lesson and rider
	pairings[].rider           first name, and a mark where two share it
	pairings[].lesson
	pairings[].horse
	pairings[].seat            tag
	written                    the file, as seen from the folder, where they were
	                           written

# tackwright plan

tackwright plan FOLDER [WHEN]

Finds a plan that keeps every rule and seats as many rides as can be, writes it
into plans/ of the folder, and prints who rides what, who is on the ground and
what stands in the way, what differs from the term's standing pairings and why,
and what was proved. Nothing is called best that was not proved to be.

WHEN is any date of the week that is meant: 2026-11-25, today, tomorrow or a
weekday (the next of that name, today counted in). Left out, it is the calendar
week that today is in. --day plans one date alone, --from the rest of its week.

Rides that have started are facts. Where the dates planned have today among
them, and today is the computer's own, those are the rides up to now; --now says
another time, and where neither holds none has started.

When --limit is over, or at Ctrl-C, the plan found so far is audited and kept,
and it says how many more could ride at most. A plan in plans/ is pencilled: no
other plan takes notice of it.

Example:

	tackwright plan examples/sallowdene 2026-10-14

Flags:

	--day DATE      plan this DATE alone
	--from DATE     plan from this DATE to the end of its week
	--limit TIME    search no longer than this TIME, such as 90s or 5m; 60s if not
	                said
	--now TIME      rides up to this TIME, such as 10:30 or 2026-11-25T10:30, have
	                started
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--all-ride      end with status 1 where a ride is on the ground
	--json          answer as JSON

With --json:

	centre
	from                       first date
	until                      last date, which counts
	now                        rides that had started then are facts
	open_rides                 rides to be planned
	seated                     those of them that have a horse
	on_usual_horse             those of them that are on their usual horse
	have_usual_horse           those of them that have one
	changeovers                pieces that go from one horse to another within a
	                           date
	busiest                    the horse that has least of its week left
	busiest.horse
	busiest.percent            of what it may work in a calendar week, rounded up
	summary                    these counts in words
	could_be                   how far from best it can be, where that was not
	                           proved
	started                    rides that are facts
	off[]                      rides that count in no goal
	off[].why
	off[].rides                how many
	rides[]                    open and started ones, by date, start, lesson and
	                           rider
	rides[].date
	rides[].start              24-hour clock
	rides[].end
	rides[].lesson
	rides[].arena
	rides[].instructor
	rides[].rider              first name, and a mark where two share it
	rides[].started            it is a fact
	rides[].horse              none: on the ground
	rides[].seat               tag
	rides[].pads[]             tags, from the horse's back
	rides[].girth              tag
	rides[].extras[]           tags
	rides[].ground[]           what stands in the way
	differs[]                  rides that are not as their standing pairing has
	                           them
	differs[].date
	differs[].start
	differs[].lesson
	differs[].rider
	differs[].horse            that it has in this plan
	differs[].seat             tag
	differs[].usual_horse      of the standing pairing
	differs[].usual_seat       tag; none stated where it is missing
	differs[].why              what keeps it from that
	suspended[]                what was to be kept and could not be
	goals[]                    in order; less is better
	goals[].name               its stable name
	goals[].words              what is counted
	goals[].value              what the plan reaches
	goals[].bound              no plan that is as good in the goals before has
	                           less
	goals[].proved             the value is the least there is
	proved                     every goal is
	file                       where the plan was written
	kept                       where an older one is kept that was edited by hand

# tackwright pull

tackwright pull FOLDER DATE

Prints, for the volunteers in the tack room, what each horse wears by when,
which tack goes from horse to horse between rides, and what goes back where.
DATE is 2026-11-25, today, tomorrow or a weekday (the next of that name, today
counted in).

The plan is the one that was posted for that date; where none was, the
pencilled one in plans/, or the one that --plan names. It is audited first: a
plan that breaks a rule is not printed, its broken rules are, and the status
is 1. The sheet names riders by first name, and never a weight.

Example:

	tackwright pull examples/sallowdene tomorrow

Flags:

	--csv           print a row for each thing to carry, for a spreadsheet
	--json          answer as JSON
	--plan FILE     pull for the plan in this FILE
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	centre
	date                       such as 2026-11-26
	day                        the date in words
	plan                       "pencilled in ...", or "version 3, posted by ..."
	version                    of a posted plan
	pencilled                  so it has no version
	hash                       of a pencilled plan: another one after any change
	                           of who rides what
	printed                    "2026-11-26 07:10"
	rides                      seated
	horses                     that carry them
	on_the_ground[]            rides without a horse
	on_the_ground[].start      24-hour clock
	on_the_ground[].end
	on_the_ground[].horse      none: on the ground
	on_the_ground[].rider      first name and mark
	on_the_ground[].work       of a horse's other work: schooling, lunging
	on_the_ground[].by         who does that work
	on_the_ground[].lesson     none: other work
	on_the_ground[].arena
	on_the_ground[].instructor
	on_the_ground[].mounting[] places that rider, horse and arena share, first
	                           choice first; none: not recorded
	on_the_ground[].leaders    that are needed
	on_the_ground[].sidewalkers that are needed
	on_the_ground[].new_tack   tack changes before it: see the changeovers
	other_work[]               of horses, with no rider of a lesson; with the keys
	                           of on_the_ground[]
	not_working[]              horses; no reason is ever given
	not_checked[]              what nobody recorded, so that no rule could look at
	                           it
	not_checked[].what         what is not known
	not_checked[].of[]         of which pieces, horses or lessons
	not_checked_here[]         records that the centre keeps elsewhere
	cautions[]                 that every sheet for the barn carries
	deferral                   who decides what the program does not
	cross_ties                 where the centre states how many
	cross_ties.bays            how many there are
	cross_ties.first           when the first horse goes in
	cross_ties.too_few[]       horses that cannot all be tacked up in time
	cross_ties.too_few[].horses[]
	cross_ties.too_few[].from  the earliest that any of them can begin
	cross_ties.too_few[].until the latest that any of them must be ready
	cross_ties.too_few[].without the horse that is left without a bay
	tack_ups[]                 in the order in which helpers begin
	tack_ups[].on_by           when all must be on
	tack_ups[].horse
	tack_ups[].looks           what the eye finds
	tack_ups[].kept            stall or field
	tack_ups[].again           it was tacked up before, and has rested
	tack_ups[].cross_ties      when it stands in a bay
	tack_ups[].cross_ties.from
	tack_ups[].cross_ties.until
	tack_ups[].no_bay          no bay of the cross ties is free in time
	tack_ups[].pieces[]        beside its own bridle or halter
	tack_ups[].pieces[].kind   saddle, pad, girth ...
	tack_ups[].pieces[].layer  of two pads and more: 1 lies on the horse's back
	tack_ups[].pieces[].piece  tag
	tack_ups[].pieces[].size   of a girth in the centre's units
	tack_ups[].pieces[].rack   its spot, or that of the seat it is kept with
	tack_ups[].pieces[].kept_with the seat that it is kept with
	tack_ups[].pieces[].kept_at the horse that it is kept with
	tack_ups[].pieces[].travels carried with that seat: nobody looks for it
	tack_ups[].pieces[].looks  what the eye finds
	tack_ups[].pieces[].from   the horse that wears it before
	tack_ups[].pieces[].waits  a rest or longer since then: it hangs at its rack
	tack_ups[].pieces[].off_at when that ride ends
	tack_ups[].pieces[].on_again when the horse it came off wears it again
	tack_ups[].waits_for[]     those of them that come off another horse too late
	                           for the ready time; with the keys of
	                           tack_ups[].pieces[]
	tack_ups[].others_by       then: when all others are at the horse
	tack_ups[].rides[]         in order; what changes between them is a
	                           changeover; with the keys of on_the_ground[]
	tack_ups[].off_from        when it is untacked
	changeovers[]              tack that goes to another horse, or a horse that
	                           changes tack
	changeovers[].off_at       when the earlier ride ends
	changeovers[].on_by        when it must be on
	changeovers[].from         the horse that gives; the same where it changes
	                           tack; with the keys of on_the_ground[]
	changeovers[].to           the horse that gets; with the keys of
	                           on_the_ground[]
	changeovers[].on[]         put on; with the keys of tack_ups[].pieces[]
	changeovers[].off[]        taken off, and not for another horse; with the keys
	                           of tack_ups[].pieces[]
	changeovers[].stays_on[]   tags of what the horse keeps on
	changeovers[].waits        a rest or longer: it may hang at its rack until
	                           then
	changeovers[].no_time      the next ride starts as the last one ends: it is
	                           done in the ring
	beside_the_ring[]          what riders wear themselves
	beside_the_ring[].start    when the ride starts
	beside_the_ring[].arena
	beside_the_ring[].lesson
	beside_the_ring[].rider    first name and mark
	beside_the_ring[].things[] what the rider wears, such as a helmet or a gait
	                           belt
	put_away[]                 by rack spot
	put_away[].from            when that use ends
	put_away[].horse           that wears it last
	put_away[].piece           what goes back; with the keys of
	                           tack_ups[].pieces[]
	put_away[].with[]          what is kept with the seat, and came off with it;
	                           with the keys of tack_ups[].pieces[]

# tackwright audit

tackwright audit FOLDER [PLAN]

Reads a plan as a file of plans/ and names every rule that it breaks, in words,
with what the rule asks and its class: care (welfare, safety and health: nothing
bends it), stock (what the tack room and the herd hold), timetable (what the
centre set and may change). What facts alone break (rides that started, works,
posted rides) is inherited, and stands apart. It also says whether what was
proved of the plan still covers it: an edit of the plan, or of the folder, ends
that.

PLAN is a file; left out, it is the plan in plans/ of the week that today is in.
A broken rule ends with status 1.

Example:

	tackwright audit examples/sallowdene examples/sallowdene/plans/2026-10-12.toml

Flags:

	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	file
	from                       first date
	until                      last date, which counts
	open_rides                 rides to be planned
	seated                     those of them that have a horse
	broken[]                   rules that the plan breaks
	broken[].rule              its stable name
	broken[].class             care, stock or timetable
	broken[].words             what is wrong
	broken[].sentence          what the rule asks
	broken[].rides[]           rides and works that take part
	inherited[]                rules that facts break without the plan; with the
	                           keys of broken[]
	covered                    what was proved still covers the plan
	goals[]                    in order; less is better
	goals[].name               its stable name
	goals[].words              what is counted
	goals[].value              what the plan reaches
	goals[].bound              no plan that is as good in the goals before has
	                           less
	goals[].proved             the value is the least there is

# tackwright repair

tackwright repair FOLDER [DATE]

Takes the day as it was posted, with all notes and edits since, and finds the
plan that differs from it in as few places as can be. DATE is today unless said.
Rides that have started by --from (the time now, unless said) are facts. First,
who was told that she rides still does; then as few rides as can be change their
horse, then their tack; then whoever else can ride does; then the goals of any
plan. Later days are left as posted, unless --through names the last to change.

Prints each ride that changes, before and after, with the reason; what the barn
is to fetch and return, in order of time; who is to be told; and the rides posted
for later dates that no longer keep every rule, for the office. It changes
nothing: with --post the plan stands as the next version.

Example:

	tackwright repair examples/sallowdene 2026-10-14 --from 07:40

Flags:

	--from TIME     rides up to this TIME, such as 10:30 or 2026-11-25T10:30, have
	                started
	--through DATE  change the dates up to this DATE too, at most seven in all
	--limit TIME    search no longer than this TIME
	--post          make the repaired plan stand
	--by NAME       the NAME of the person who posts it
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	from                       first date
	until                      last date, which counts
	now                        rides that had started then are facts
	changes[]                  rides that are not as posted
	changes[].date
	changes[].start
	changes[].lesson
	changes[].rider
	changes[].how              another horse, other tack, rides, on the ground,
	                           does not ride
	changes[].before           horse and tags as posted; none: on the ground
	changes[].after            horse and tags now; none: on the ground
	changes[].why
	moved[]                    the sheet of each date on which something moved
	moved[].centre
	moved[].date               such as 2026-11-26
	moved[].day                the date in words
	moved[].plan               "pencilled in ...", or "version 3, posted by ..."
	moved[].version            of a posted plan
	moved[].pencilled          so it has no version
	moved[].hash               of a pencilled plan: another one after any change
	                           of who rides what
	moved[].printed            "2026-11-26 07:10"
	moved[].rides              seated
	moved[].horses             that carry them
	moved[].on_the_ground[]    rides without a horse
	moved[].on_the_ground[].start 24-hour clock
	moved[].on_the_ground[].end
	moved[].on_the_ground[].horse none: on the ground
	moved[].on_the_ground[].rider first name and mark
	moved[].on_the_ground[].work of a horse's other work: schooling, lunging
	moved[].on_the_ground[].by who does that work
	moved[].on_the_ground[].lesson none: other work
	moved[].on_the_ground[].arena
	moved[].on_the_ground[].instructor
	moved[].on_the_ground[].mounting[] places that rider, horse and arena share,
	                                   first choice first; none: not recorded
	moved[].on_the_ground[].leaders that are needed
	moved[].on_the_ground[].sidewalkers that are needed
	moved[].on_the_ground[].new_tack tack changes before it: see the changeovers
	moved[].other_work[]       of horses, with no rider of a lesson; with the keys
	                           of moved[].on_the_ground[]
	moved[].not_working[]      horses; no reason is ever given
	moved[].not_checked[]      what nobody recorded, so that no rule could look at
	                           it
	moved[].not_checked[].what what is not known
	moved[].not_checked[].of[] of which pieces, horses or lessons
	moved[].not_checked_here[] records that the centre keeps elsewhere
	moved[].cautions[]         that every sheet for the barn carries
	moved[].deferral           who decides what the program does not
	moved[].moves[]            for the barn, by time
	moved[].moves[].start
	moved[].moves[].rider
	moved[].moves[].lesson
	moved[].moves[].how        another horse, other tack, rides, on the ground,
	                           does not ride
	moved[].moves[].was        the horse that was posted
	moved[].moves[].now        the horse that carries it now
	moved[].moves[].fetch[]    what this horse did not wear for it before
	moved[].moves[].fetch[].kind saddle, pad, girth ...
	moved[].moves[].fetch[].layer of two pads and more: 1 lies on the horse's back
	moved[].moves[].fetch[].piece tag
	moved[].moves[].fetch[].size of a girth in the centre's units
	moved[].moves[].fetch[].rack its spot, or that of the seat it is kept with
	moved[].moves[].fetch[].kept_with the seat that it is kept with
	moved[].moves[].fetch[].kept_at the horse that it is kept with
	moved[].moves[].fetch[].travels carried with that seat: nobody looks for it
	moved[].moves[].fetch[].looks what the eye finds
	moved[].moves[].fetch[].from the horse that wears it before
	moved[].moves[].fetch[].waits a rest or longer since then: it hangs at its
	                              rack
	moved[].moves[].fetch[].off_at when that ride ends
	moved[].moves[].fetch[].on_again when the horse it came off wears it again
	moved[].moves[].return[]   what it would have worn, and is not needed here;
	                           with the keys of moved[].moves[].fetch[]
	moved[].people[]           who is to be told, and what
	moved[].people[].to
	moved[].people[].role      instructor or family
	moved[].people[].words[]
	later[]                    what is posted for later dates and no longer keeps
	                           every rule
	gone[]                     rides that were posted and that the folder no
	                           longer has
	goals[]                    in order; less is better
	goals[].name               its stable name
	goals[].words              what is counted
	goals[].value              what the plan reaches
	goals[].bound              no plan that is as good in the goals before has
	                           less
	goals[].proved             the value is the least there is
	proved                     every goal is
	posted                     the version under which it stands
*/
package main
