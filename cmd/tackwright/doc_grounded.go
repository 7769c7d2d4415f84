/*
# tackwright grounded

tackwright grounded FOLDER [TERM]

Lists each rider who was on the ground on the dates of a term that are over: how
often, of how many rides, when and why. Left out, TERM is the one that today is in,
else the last before. --from and --until say other dates.

It goes by what was ridden, as far as it is known: as posted and noted, and where
a date was closed as recorded then. A rider who was away, and a lesson that was
not held, do not count. tackwright why mentions it of a rider.

Example:

	tackwright grounded examples/sallowdene

Flags:

	--from DATE     first DATE
	--until DATE    last DATE, which counts
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	from                       first date
	until                      last date, which counts
	term
	rides                      of all riders, those on the ground counted in
	ground                     of those, on the ground
	riders[]                   those who were on the ground, the most often first
	riders[].rider
	riders[].rides
	riders[].times[]           on the ground
	riders[].times[].date
	riders[].times[].start
	riders[].times[].lesson
	riders[].times[].why[]     as it was posted or noted
	never                      how many riders were not
*/
package main
