/*
# tackwright check

tackwright check FOLDER

Reads a folder and names, all at once, its mistakes (what cannot be read, names
nothing, is there twice or cannot be) and its findings (what is missing, has
run out or is in conflict). Each has its file, line and column, the line
itself, and how to mend it. Dates that nobody has closed come first: they count
as posted, not confirmed. The other findings come in the order of how many rides
of the coming week wait for them: the first is what to measure first.

A mistake stops every command that plans, and ends this one with status 1.
Findings never do: they are planned around.

Example:

	tackwright check examples/sallowdene

Flags:

	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	mistakes[]                 what stops every plan
	mistakes[].file            within the folder; "" where it is none
	mistakes[].line            from 1; 0 where no line is meant
	mistakes[].column          in letters, from 1
	mistakes[].message
	mistakes[].mend            how to put it right
	mistakes[].text            the line itself
	mistakes[].waits           rides of the coming week that wait for it
	findings[]                 what is planned around: open dates, then most rides
	                           waiting first; with the keys of mistakes[]
*/
package main
