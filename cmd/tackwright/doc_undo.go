/*
# tackwright undo

tackwright undo FOLDER [NUMBER]

Undoes a change by its number in tackwright history; left out, the latest that
is not undone. Nothing that was posted or noted is ever taken away: a note no
longer stands, by a new note that says so, and in place of a posted version the
one before it stands again, under a new number. To undo is a change too, and can
be undone. A change is not undone where its file has changed since, and nobody
who was forgotten comes back.

Example:

	tackwright undo examples/sallowdene --by "Nell Ashworthy"

Flags:

	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	number
	at
	by
	what                       in words
	undoes                     number of the change that it undid
*/
package main
