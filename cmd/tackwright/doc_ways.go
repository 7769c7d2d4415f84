/*
# tackwright ways

tackwright ways FOLDER RIDER

Looks for what would seat a ride that is on the ground, with all that ride now,
in the plan that was posted for its date, else in the pencilled one: a piece back
from repair, a note that keeps a rider on a horse, a horse's other work, a helper
more, another arena or instructor, the lesson some minutes later, a rider in
another lesson that has room and takes her in, two riders who change places.

Each is one change, to that date (and to another of the same plan where a rider
comes on that). It has been planned with and audited; what else changes is told,
and one command takes it: tackwright take. Those that ask least come first. A
rider who is to come at another time is asked first, unless her entry says that
she may be moved freely; who is never to be moved is not. Private and closed
lessons take nobody in, and rules of care are never bent.

RIDER is the rider's name, or its beginning. Where more than one of her rides is
on the ground, say the date, and the time where she has two on it.

Example:

	tackwright ways examples/sallowdene Clemency --date 2026-10-17

Flags:

	--date DATE     the ride on this DATE: 2026-11-25, today, tomorrow or a
	                weekday
	--time TIME     the ride that starts at this TIME, such as 10:30
	--plan FILE     in the plan in this FILE
	--limit TIME    search no longer than this TIME; 10s if not said
	--json          answer as JSON
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	ride                       that is on the ground
	ride.date
	ride.start                 24-hour clock
	ride.lesson
	ride.rider                 first name, and a mark where two share it
	ride.horse                 that it has in the plan; none: on the ground
	better                     a plan in which it rides with all that ride now;
	                           nothing need change
	better.decides             the first goal in which the plans differ; none: a
	                           tie
	better.settled             that is proved
	better.near                of the plans that leave other dates as they are;
	                           others were not looked at long enough
	better.goals[]
	better.goals[].name
	better.goals[].words       what is counted; less is better
	better.goals[].before      in the plan
	better.goals[].after       in the one with what is asked for
	better.changes[]           rides that have another horse, or none
	better.changes[].now       its horse then; none: on the ground
	ways[]                     those that ask least first
	ways[].kind                piece back, note lifted, work left out, more
	                           helpers, another arena, another instructor, another
	                           lesson, lesson later or swap
	ways[].said                what it asks for
	ways[].ask[]               riders who are to be asked first
	ways[].date                on which the ride would be
	ways[].start
	ways[].lesson
	ways[].horse               that it would have
	ways[].seat
	ways[].changes[]           others that would have another horse; with the keys
	                           of better.changes[]
	ways[].tack[]              others that would have other tack on the same
	                           horse; with the keys of better.changes[]
	ways[].take                the command that takes it
	ways[].take_words[]        its words behind tackwright, without who does it
	whole                      each change was tried that is looked at
	care_alone                 rules of care alone stand in the way, and those are
	                           never bent
	take                       the command that takes the better plan
	take_words[]               its words behind tackwright, without who does it
	form                       the command that extends the form, where it is not
	                           in date
*/
package main
