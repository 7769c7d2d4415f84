/*
# tackwright history

tackwright history FOLDER

Lists the changes that the program made to a folder, the latest first: what was
posted, noted, closed, taken as standing and undone, by whom and when. Each has
a number: tackwright undo FOLDER NUMBER undoes that one. What is pencilled, and
what people write into their files by hand, is not among them.

Example:

	tackwright history examples/sallowdene

Flags:

	--last NUMBER   list no more than this NUMBER
	--json          answer as JSON

With --json:

	changes[]                  the latest first
	changes[].number
	changes[].at
	changes[].by
	changes[].what             in words
	changes[].undoes           number of the change that it undid
*/
package main
