/*
# tackwright calendar

tackwright calendar FOLDER

Prints what is posted as iCalendar (RFC 5545): the lessons of the instructor whom
--instructor names, or the rides and other work of the horse that --horse does,
from today on unless --from says another date. A phone or a calendar program
reads the file; read again after the next posting it changes what it read
before, and what is no longer held goes.

It names riders by first name and mark, is marked private, and holds no caution.
Dates for which nothing is posted are not in it.

Example:

	tackwright calendar examples/sallowdene --instructor "Dev Marchbank" --to dev.ics

Flags:

	--instructor NAME lessons of the instructor of this NAME
	--horse NAME    rides of the horse of this NAME
	--from DATE     first DATE (else today)
	--until DATE    last DATE, which counts (else all that is posted)
	--to FILE       write it to this FILE, such as dev.ics
	--json          answer as JSON
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	name
	events[]                   by time
	events[].uid               the same for the same thing in every version
	events[].version           of the posted plan that it is from
	events[].start             "2026-11-26 09:50", the centre's time
	events[].end
	events[].summary
	events[].where             arena
	events[].words             lines
	events[].off               it was told and is not held
	events[].revised           when it was posted, or the latest note of the date
	                           was written
	events[].time_zone         of the centre
*/
package main
