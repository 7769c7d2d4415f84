/*
# tackwright audit

tackwright audit FOLDER [PLAN]

Reads a plan as a file of plans/ and names every rule that it breaks, in words,
with what the rule asks and its class: care (welfare, safety and health: nothing
bends it), stock (what the tack room and the herd hold), timetable (what the
centre set and may change). What facts alone break (rides that started, works,
posted rides) is inherited, and stands apart. It also says whether what was
proved of the plan still covers it: an edit of the plan, or of the folder, ends
that.

PLAN is a file, or a date: then it is what was posted for that date, with all notes
since, else what is pencilled. Left out, it is the plan in plans/ of the week that
today is in. A broken rule ends with status 1.

Example:

	tackwright audit examples/sallowdene examples/sallowdene/plans/2026-10-12.toml

Flags:

	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	file                       none: it was posted
	version                    of a posted plan
	from                       first date
	until                      last date, which counts
	open_rides                 rides to be planned
	seated                     those of them that have a horse
	broken[]                   rules that the plan breaks
	broken[].rule              its stable name
	broken[].class             care, stock or timetable
	broken[].words             what is wrong
	broken[].sentence          what the rule asks
	broken[].rides[]           rides and works that take part
	inherited[]                rules that facts break without the plan; with the
	                           keys of broken[]
	covered                    what was proved still covers the plan
	goals[]                    in order; less is better
	goals[].name               its stable name
	goals[].words              what is counted
	goals[].value              what the plan reaches
	goals[].bound              no plan that is as good in the goals before has
	                           less
	goals[].proved             the value is the least there is
*/
package main
