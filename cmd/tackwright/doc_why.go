/*
# tackwright why

tackwright why FOLDER RIDER

Says why a ride is on the ground in the plan that was posted for its date, else
in the pencilled one. It asks three things, and stops at the first that tells:

	could it ride alone, with every other open ride on the ground?
	could it ride with all that ride now? Where not, it names rules, facts and
	  rides that forbid it, none of which could be left out
	could as many ride with it among them? Then it was a choice: the fewest that
	  it would displace are named, and the goal that decided, or that it is a tie

It says too how often she has been on the ground in the term (tackwright grounded).
Where the plan was not proved to seat the most and a better one is found, that is
told, and tackwright take takes it.

RIDER is the rider's name, or its beginning. Where more than one of her rides is
on the ground, say the date, and the time where she has two on it.

Example:

	tackwright why examples/sallowdene Clemency --date 2026-10-17

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
	alone[]                    what stands in its way with every other open ride
	                           on the ground; none: it could ride
	free_alone[]               horses that could carry it then
	together                   why it cannot ride with all that ride now
	together.rides[]           that ride besides; with the keys of ride
	together.rules[]           names of the rules that take part
	together.care_alone        they are all rules of care, which are never bent
	together.irreducible       without any one of rides and limits the others
	                           forbid nothing
	together.said[]            the reason in sentences
	better                     a plan in which it rides with all that ride now,
	                           where there is one
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
	choice                     plans in which it rides
	choice.fewer               rides that the best plan with it has less than this
	                           one; 0: as many could ride
	choice.proved              that is the least
	choice.displaced[]         that ride now and would not; as few as can be where
	                           fewest is true; with the keys of ride
	choice.fewest
	choice.price               what the best plan with it costs; with the keys of
	                           better
	next                       the command that takes the better plan, else the
	                           one that says what would help
	said[]                     all of this in sentences
*/
package main
