/*
# tackwright due

tackwright due FOLDER

Lists first the dates that were posted, are over and that nobody has closed: they
count as posted, not confirmed. Then what has run out, and what does in 7, 30 and
60 days: riders' forms, fits of the chart, checks of tack, weighings (where the
centre says weigh_every), and when somebody looks again at a horse that is out.

Each has the rides of the next 60 days that it stops: those that the rules would
let go again by the fewest renewals, with this one among them. So a ride that
either of two would save counts with both, and so does one that needs two; one
that another horse or piece can still carry counts with none. Each ride is looked
at alone: limits of work, and what other rides take, are left out. Of posted
rides it is also said how many were told to go by it and then cannot.

What has no date at all is named by check.

Example:

	tackwright due examples/sallowdene

Flags:

	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	centre
	today
	until                      last date that is looked at
	open_dates[]               posted and over, and nobody has closed them: they
	                           count as posted, not confirmed
	open_dates[].date
	open_dates[].rides         that were posted with a horse
	due[]                      what has run out or does, the earliest first
	due[].kind                 review (of a horse that is out), form, fit, tack
	                           check or weighing
	due[].of                   a rider's whole name, for the office; a horse; a
	                           tag
	due[].horse                of a fit: the horse
	due[].why                  of a review: why the horse is out
	due[].date                 last date on which it holds, or on which to look
	                           again or weigh; none: no date is stated
	due[].within               days: 7, 30 or 60; 0: it has run out
	due[].stops                rides up to the last date that it stops unless it
	                           is renewed
	due[].first                date of the first of them
	due[].posted               posted rides that were told to go by it, and then
	                           cannot
*/
package main
