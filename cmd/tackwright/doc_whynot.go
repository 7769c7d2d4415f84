/*
# tackwright whynot

tackwright whynot FOLDER RIDER

Says why a ride is not on the horse of --horse, or not in the seat of --seat (or
one alike), in the plan that was posted for its date, else in the pencilled one:
what forbids it even with every other open ride on the ground, and that is the
end of it; else at what price it is possible, with the goals before and after.
Where it cannot be with all that ride now, the reason says what forbids that.
With --seat alone it is asked of the horse that the ride has.

With --lesson, or --at for the one that begins then, it is asked why she does not
ride in that lesson in the place of hers, on its date or --on another of the plan:
its kind, level, size and her hours come first, then the rest as above.

RIDER is the rider's name, or its beginning. Where she has more than one ride,
say the date, and the time where she has two on it. Rules of care are never bent.

Example:

	tackwright whynot examples/sallowdene Barnaby --date 2026-10-17 --horse Quince

Flags:

	--horse NAME    the horse of this NAME
	--seat TAG      the seat of this TAG
	--lesson NAME   the lesson of this NAME
	--at TIME       the lesson that begins at this TIME
	--on DATE       the lesson on this DATE; the ride's if not said
	--date DATE     the ride on this DATE: 2026-11-25, today, tomorrow or a
	                weekday
	--time TIME     the ride that starts at this TIME, such as 10:30
	--plan FILE     in the plan in this FILE
	--limit TIME    search no longer than this TIME; 10s if not said
	--json          answer as JSON
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	ride                       that is asked about
	ride.date
	ride.start                 24-hour clock
	ride.lesson
	ride.rider                 first name, and a mark where two share it
	ride.horse                 that it has in the plan; none: on the ground
	horse                      asked for
	seat                       asked for, or one alike; tag
	lesson                     asked for, in the place of the ride's
	on                         its date
	alone                      what forbids it with every other open ride on the
	                           ground; none: it is possible
	rule                       that forbids it, where it is one
	care_alone                 that is a rule of care, which is never bent
	together                   why it cannot be with all that ride now
	together.rides[]           that ride besides; with the keys of ride
	together.rules[]           names of the rules that take part
	together.care_alone        they are all rules of care, which are never bent
	together.irreducible       without any one of rides and limits the others
	                           forbid nothing
	together.said[]            the reason in sentences
	choice                     plans in which it is so
	choice.fewer               rides that the best plan with it has less than this
	                           one; 0: as many could ride
	choice.proved              that is the least
	choice.displaced[]         that ride now and would not; as few as can be where
	                           fewest is true; with the keys of ride
	choice.fewest
	choice.price               what the best plan with it costs
	choice.price.decides       the first goal in which the plans differ; none: a
	                           tie
	choice.price.settled       that is proved
	choice.price.near          of the plans that leave other dates as they are;
	                           others were not looked at long enough
	choice.price.goals[]
	choice.price.goals[].name
	choice.price.goals[].words what is counted; less is better
	choice.price.goals[].before in the plan
	choice.price.goals[].after in the one with what is asked for
	choice.price.changes[]     rides that have another horse, or none
	choice.price.changes[].now its horse then; none: on the ground
	take                       the command that changes the lesson, where all that
	                           ride now still can
	said[]                     all of this in sentences
*/
package main
