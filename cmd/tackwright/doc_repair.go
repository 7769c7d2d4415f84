/*
# tackwright repair

tackwright repair FOLDER [DATE]

Takes the day as it was posted, with all notes and edits since, and finds the
plan that differs from it in as few places as can be. DATE is today unless said.
Rides that have started by --from (the time now, unless said) are facts, and a
day that is over is closed, not mended. First, who was told that she rides still
does; then as few rides as can be change their horse, then their tack; then
whoever else can ride does; then the goals of any plan. Later days are left as
posted, unless --through names the last to change; all of them must be posted.

Prints each ride that changes, before and after, with the reason; what the barn
is to fetch and return, in order of time; who is to be told; and the rides posted
for later dates that no longer keep every rule, for the office. It changes
nothing: with --post the plan stands as the next version.

A mistake in the folder stops it where it can matter to those dates; one in the
entry of a rider, lesson, horse or seat that they do not speak of is only told.
A note that cannot be read stops nobody: it does not count, and what is written of
it is printed first, since it may say that a horse is out. Such a plan is posted
with --seen alone: whoever posts it has read those notes herself.

Example:

	tackwright repair examples/sallowdene 2026-10-14 --from 07:40

Flags:

	--from TIME     rides up to this TIME, such as 10:30 or 2026-11-25T10:30, have
	                started
	--through DATE  change the dates up to this DATE too, at most seven in all
	--limit TIME    search no longer than this TIME
	--to FILE       write it to this FILE; its ending says as what: .pdf, .html,
	                .svg, .csv or .txt
	--paper SIZE    lay that out for SIZE: A4 or Letter (else the centre's)
	--post          make the repaired plan stand
	--seen          notes that could not be read are read by a person, and nothing
	                in them is against the plan
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	from                       first date
	until                      last date, which counts
	now                        rides that had started then are facts
	unread[]                   notes that could not be read and do not count:
	                           whoever goes by this reads them first
	unread[].file
	unread[].line
	unread[].why               it could not be read
	unread[].text              of it, as it is written
	changes[]                  rides that are not as posted
	changes[].date
	changes[].start
	changes[].end
	changes[].was_start        that was posted, where it is another
	changes[].was_end          that was posted, where it is another
	changes[].lesson
	changes[].rider
	changes[].how              another horse, other tack, another time, another
	                           arena, another instructor, rides, on the ground,
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
	moved[].with_notes_up_to   number of the latest note for the date that was
	                           written since the plan was posted
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
	moved[].moves[].was_start  that was posted, where it is another
	moved[].moves[].end
	moved[].moves[].was_end    that was posted, where it is another
	moved[].moves[].on_by      when all must be on the horse; none: it has none
	moved[].moves[].rider      none: a horse's other work
	moved[].moves[].lesson     or what other work it is
	moved[].moves[].how        another horse, other tack, another time, another
	                           arena, another instructor, rides, on the ground,
	                           does not ride, is not done (other work); as posted,
	                           where only its tack comes or goes otherwise
	moved[].moves[].was        the horse that was posted
	moved[].moves[].now        the horse that carries it now
	moved[].moves[].arena      where it is now, if it was posted for another
	moved[].moves[].fetch[]    what the posted list does not bring to this horse
	                           by then, or from elsewhere
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
	moved[].moves[].leave[]    what the posted list puts on that horse for it, and
	                           is now worn later: on_again is when it must be on;
	                           with the keys of moved[].moves[].fetch[]
	moved[].moves[].return[]   what goes back after this ride and not when the
	                           posted list says; without off_at: at once, since
	                           nobody wears it any more; with the keys of
	                           moved[].moves[].fetch[]
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
	same                       it is what stands already, so there is nothing to
	                           post
	posted                     the version under which it stands
*/
package main
