/*
# tackwright take

tackwright take FOLDER RIDER [KIND ...]

Takes what tackwright ways offers, or any other change of these kinds: writes it as
day notes, and plans so that RIDER rides with all that ride now. As few of them as
can be have another horse, then other tack; other dates stay as they are. Where no
such plan is found, nothing is written. KIND is as in tackwright note:

	piece-back TAG          lift NUMBER             leave-out HORSE [TIME]
	helpers LESSON ...      instructor LESSON NAME  move LESSON [TIME] [--arena NAME]
	change RIDER LESSON     a rider rides in that lesson, --on another date of the
	                        plan, in the place of hers
	swap OTHER              RIDER and another change places

Left out, it takes the better plan that tackwright why has found, where there is
one. Nobody is asked by this: ask first.

Where the plan was posted, the new one is posted as the next version; else it
takes the place of the pencilled one. Nothing is proved of it but that it keeps
every rule. tackwright undo takes back what was noted and posted.

Example:

	tackwright take examples/sallowdene Lionel helpers "Thu 13:30" 5 sidewalkers --date 2026-10-15 --by "Nell Ashworthy"

Flags:

	--date DATE     the ride on this DATE: 2026-11-25, today, tomorrow or a
	                weekday
	--time TIME     the ride that starts at this TIME, such as 10:30
	--plan FILE     in the plan in this FILE
	--limit TIME    search no longer than this TIME; 10s if not said
	--json          answer as JSON
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--arena NAME    in the arena of this NAME
	--on DATE       in the lesson of this DATE
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now

With --json:

	notes[]                    numbers of the notes that were written
	ride                       as it is now
	ride.date
	ride.start                 24-hour clock
	ride.lesson
	ride.rider                 first name, and a mark where two share it
	ride.horse                 that it has in the plan; none: on the ground
	seat
	changes[]                  others that have another horse
	changes[].now              its horse then; none: on the ground
	tack[]                     others that have other tack on the same horse; with
	                           the keys of changes[]
	posted                     the version under which it stands
	file                       where the pencilled plan is
	kept                       where an older one is kept that was edited by hand
*/
package main
