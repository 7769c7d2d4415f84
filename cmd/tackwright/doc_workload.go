/*
# tackwright workload

tackwright workload FOLDER

Prints the written record of each horse's daily work (in England a duty: SI
2018/486, Schedule 5, paragraph 6(3)), planned and ridden, against its limits of
a day, a run with no rest, a week and dates in a row. What is over is marked, and
said in words as audit says it: the sums are the same.

Planned is as last posted, with the works of the folder. Ridden is as posted and
noted and, where the date was closed, as recorded then. A date that is not closed
counts as posted and is marked not confirmed, one that is to come as such. Pencilled
plans do not count. The record names no rider.

Without dates it is of the calendar week that today is in.

Example:

	tackwright workload examples/sallowdene --from 2026-10-05 --until 2026-10-10

Flags:

	--from DATE     first DATE
	--until DATE    last DATE, which counts; the first where only that is said
	--horse NAME    of the horse of this NAME alone
	--to FILE       write it to this FILE; its ending says as what: .pdf, .html,
	                .svg, .csv or .txt
	--paper SIZE    lay that out for SIZE: A4 or Letter (else the centre's)
	--csv           print a row for each date of a horse, for a spreadsheet
	--json          answer as JSON
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	centre
	from                       first date
	until                      last date, which counts
	printed                    "2026-11-26 07:10"
	horses[]                   in the centre's order
	horses[].horse
	horses[].limits            0: none is stated
	horses[].limits.day_minutes
	horses[].limits.day_sessions
	horses[].limits.run_minutes with no rest between
	horses[].limits.run_sessions
	horses[].limits.week_minutes
	horses[].limits.week_dates
	horses[].limits.dates_in_a_row
	horses[].dates[]           on which work was planned or done
	horses[].dates[].date
	horses[].dates[].confirmed the date is closed; else it counts as posted
	horses[].dates[].to_come   the date is still to come, so ridden is as posted
	horses[].dates[].closed_by
	horses[].dates[].planned_minutes by the factors of lesson, work and horse;
	                                 gaps shorter than a rest count
	horses[].dates[].ridden_minutes likewise
	horses[].dates[].sessions  ridden or worked
	horses[].dates[].runs[]    of what was ridden, with no rest between
	horses[].dates[].runs[].start 24-hour clock
	horses[].dates[].runs[].end
	horses[].dates[].runs[].minutes
	horses[].dates[].runs[].sessions
	horses[].dates[].row       dates worked in a row, with this one; 0: it did not
	                           work
	horses[].dates[].over[]    rules of a date whose limits are exceeded
	horses[].dates[].planned[] as last posted, and the works of the folder
	horses[].dates[].planned[].start 24-hour clock
	horses[].dates[].planned[].end
	horses[].dates[].planned[].what name of the lesson, or kind of the work
	horses[].dates[].ridden[]  with the keys of horses[].dates[].planned[]
	horses[].weeks[]           calendar weeks, each whole, in which it works
	horses[].weeks[].from
	horses[].weeks[].minutes   gaps not counted
	horses[].weeks[].dates     on which it works
	horses[].weeks[].over
	horses[].over[]            limits that are exceeded, in words
	deferral                   who decides what the program does not
*/
package main
