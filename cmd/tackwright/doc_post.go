/*
# tackwright post

tackwright post FOLDER [WHEN]

Takes the pencilled plan of a week from plans/ and posts it: from then on it is
what people go by, what limits and later plans count, and what the pull list
prints, with its version and who posted it. WHEN, --day and --from mean the same
dates as in tackwright plan.

The plan is audited first: one that breaks a rule is not posted. Nor is one whose
week has changed since it was pencilled, by a note, an edit or what was ridden:
plan again, and post that. A plan that was edited by hand is posted if it keeps
every rule, and nothing is then said to be proved of it. What has started stays
as it was told. Every version is kept; what it stood in for can be had back:
tackwright undo.

Example:

	tackwright post examples/sallowdene 2026-10-14 --by "Nell Ashworthy"

Flags:

	--day DATE      post the plan of this DATE alone
	--from DATE     post the plan from this DATE to the end of its week
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	version                    under which it stands
	from                       first date
	until                      last date, which counts
	by
	at
	open_rides                 rides of the plan
	seated                     those of them that have a horse
	replaces[]                 versions that stood on those dates
	edited                     the plan was edited by hand, so nothing is proved
	                           of it
	proved                     every goal is
*/
package main
