/*
# tackwright buy

tackwright buy FOLDER [WHEN]

Says how many more could ride with one more of each piece, of each girth size that
the fit chart names, and with a horse like each of the herd, each by itself: the
most that any plan seats with it, against the most without. Of the five best it
plans the whole week and says what becomes of wishes and changeovers. It writes
nothing.

Each counts only if it fits, and that is not for this program to say. A copy is
taken to be approved wherever the piece that it copies is, new and in use, with
the pieces kept with it; a horse to be sound, rested, past its quarantine, and
approved, kept apart and ridden as the one is that it is like. Before a piece is
used a saddle fitter approves it for the horse; before a horse is, a vet sees it,
and a fitter its tack.

WHEN is any date of the week that is meant, as in tackwright plan. --weeks adds up
as many weeks from that one on, each planned by itself from what the folder says
now. Nothing is called proved that was not proved. When --limit is over, or at
Ctrl-C, it says how far it came.

Example:

	tackwright buy examples/sallowdene 2026-10-14 --weeks 2

Flags:

	--weeks NUMBER  over this NUMBER of weeks, 1 to 26; 1 if not said
	--limit TIME    search no longer than this TIME, for all of it; 30s if not
	                said
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	centre
	from                       first date
	until                      last date, which counts
	weeks
	open_rides                 rides of these weeks to be planned
	seated                     the most of them that were found to ride with what
	                           there is
	at_most                    no plan seats more with what there is; equal to
	                           seated where that is proved
	wishes                     weight of wishes not met as it is; none: not looked
	                           at
	changeovers                pieces that go from one horse to another within a
	                           date, as it is
	spares[]                   each counts if it fits; the best first
	spares[].kind              piece, girth size or horse
	spares[].what              in words
	spares[].like[]            tags of the pieces, or the name of the horse, of
	                           which it is a copy
	spares[].more_rides        rides that plans found with it seat more
	spares[].at_most           no plan with it seats more than this many more
	spares[].proved            more_rides is what it brings
	spares[].best              the best plans with it, of the few that were
	                           planned whole
	spares[].best.wishes       weight of wishes not met, to set against wishes
	                           above
	spares[].best.changeovers  to set against changeovers above
	spares[].best.proved       wishes are proved the least, here and as it is
	spares[].best.rides[]      rides of these plans that are on the ground as it
	                           is
	spares[].best.rides[].date
	spares[].best.rides[].start 24-hour clock
	spares[].best.rides[].lesson
	spares[].best.rides[].rider first name, and a mark where two share it
	spares[].best.rides[].horse that it has in the plan; none: on the ground
	spares[].best.ground[]     rides on the ground in them that ride as it is;
	                           with the keys of spares[].best.rides[]
	cautions[]                 who decides
*/
package main
