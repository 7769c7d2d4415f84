/*
# tackwright close

tackwright close FOLDER DATE

Closes a date: it was ridden as posted and noted, but for what is said here. Each
may be said more than once, a text between quotes:

	--no-show "RIDER"                      she did not ride
	--other   "RIDER on HORSE with TAGS"   on another horse, or in other tack
	--extra   "RIDER in LESSON on HORSE with TAGS at 10:00-10:30"
	                                       rode who was not told that she rides
	--short   "RIDER until 10:20"          it ended early
	--work    "HORSE lunging 12:30-12:50 in ARENA by PERSON"

A rider with more than one ride that day is named with the lesson, "RIDER in
LESSON", or with the start of her part of it, "RIDER at 14:00". "with" names the
tags of all tack; left out, the tack is not recorded. "in", "by" and the hours
of an extra ride may be left out: they are then the lesson's.

It can be done at any hour, and again: what was said before stays, unless it is
said anew of the same ride, or --anew starts over. Limits, wishes, fairness and
the written record go by what was ridden. A date that nobody closes counts as
posted, and is marked as not confirmed.

Example:

	tackwright close examples/sallowdene 2026-10-10 --no-show "Otis Bramley" --by "Dev Marchbank"

Flags:

	--no-show TEXT  TEXT: a rider who did not ride
	--other TEXT    TEXT: a rider and the horse that she had instead
	--extra TEXT    TEXT: a rider who rode besides
	--short TEXT    TEXT: a rider, and when her ride ended
	--work TEXT     TEXT: a horse's work besides
	--anew          forget what was said of this date before
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	date
	by
	at
	as_posted                  rides that were ridden as told
	rides[]                    that were ridden, in order of time
	rides[].start              24-hour clock
	rides[].end
	rides[].lesson
	rides[].rider              first name, and a mark where two share it
	rides[].horse              none: on the ground
	rides[].differs            in what it was not as told: other horse, extra
	                           ride, cut short
	no_shows[]                 that were told, and not ridden; with the keys of
	                           rides[]
	works[]                    other work besides what the folder plans
	works[].start
	works[].end
	works[].horse
	works[].kind
	open[]                     earlier dates that nobody has closed
*/
package main
