/*
# tackwright room

tackwright room FOLDER [RIDER...]

Of one RIDER: names each lesson of the week that could take her by kind, level,
size and her free hours, with horse and tack: first where nobody is disturbed,
then where one rider would have another horse, and so on; nobody who rides would
stand down. Private and closed lessons take nobody in, and who is away keeps her
place. Of several riders, or with none named of all who wait, it finds the most
that can have a place at once, each in one lesson, those who wait longest first,
and proves it where there is time.

It goes by the plan that is posted for each date, else by the pencilled one; where
the week has none it plans first. Who is on the ground in it stays there. It writes
nothing and places nobody: a rider is placed by the office, with a form in date
and the instructor's go-ahead, and who would have another horse is asked first, but
for riders who may be changed freely.
It looks at one week: before a standing place is given, ask of other weeks too.

Example:

	tackwright room examples/sallowdene "Ivor Tranmoor"

Flags:

	--week DATE     the week of this DATE: 2026-11-25, today, tomorrow or a
	                weekday; this week if not said
	--limit TIME    search no longer than this TIME; 30s if not said
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	centre
	from                       first date
	until                      last date, which counts
	plan                       that it goes by: posted, pencilled, posted and
	                           pencilled, or made now
	on_the_ground              rides that are on the ground in it, and stay there
	riders[]                   who waits longest first
	riders[].rider
	riders[].waiting_since
	riders[].sessions          lessons that she wants in a week
	riders[].has               lessons of the week that she is in
	riders[].lessons[]         of the week: first with room, where fewest are
	                           disturbed; then by date and start
	riders[].lessons[].date
	riders[].lessons[].start   24-hour clock
	riders[].lessons[].end
	riders[].lessons[].lesson
	riders[].lessons[].arena
	riders[].lessons[].instructor
	riders[].lessons[].takes_her_not why the lesson does not take her in, whatever
	                                 horses there are
	riders[].lessons[].not_checked[] what is not known, of the lesson, her, the
	                                 horse and the tack, and so was not checked
	riders[].lessons[].alone[] what stands in her way even with every other open
	                           ride on the ground
	riders[].lessons[].no_horse proved: no horse and tack for her with all that
	                            ride now
	riders[].lessons[].horse   that she would have; none: there is no room, or
	                           none was found in the time given
	riders[].lessons[].seat    tag
	riders[].lessons[].pads[]  tags, from the horse's back
	riders[].lessons[].girth   tag
	riders[].lessons[].extras[] tags
	riders[].lessons[].changes[] rides that would have another horse, then those
	                             in other tack
	riders[].lessons[].changes[].now its horse then; the same: in other tack
	riders[].lessons[].changes[].ask_first her entry does not say that she may be
	                                       changed freely
	riders[].lessons[].fewest  proved: no fewer
	riders[].place             of more than one rider: what she has at once with
	                           the others; with the keys of riders[].lessons[]
	at_once                    of more than one rider; none: nothing was found in
	                           the time given
	at_once.placed             riders that have a place
	at_once.at_most            no plan places more
	at_once.proved             they are equal
	at_once.changes[]          with the keys of riders[].lessons[].changes[]
	at_once.fewest             proved: no fewer changes with those placed
	cautions[]                 who decides
	to_place                   how a rider is placed
*/
package main
