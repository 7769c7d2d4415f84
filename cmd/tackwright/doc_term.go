/*
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
rider. A rider on the ground gets none. What was not proved best in the time is
written only with --unproved.

TERM is a name; left out, it is the term that today is in, or the next.

Example:

	tackwright term examples/sallowdene "Autumn 2026"

Flags:

	--write         make these the standing pairings of the term
	--by NAME       the NAME of the person who takes them
	--unproved      take them though they are not proved best
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
*/
package main
