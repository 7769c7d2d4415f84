/*
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
*/
package main
