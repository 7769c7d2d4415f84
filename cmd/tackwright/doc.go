/*
Tackwright plans who rides which horse in which tack at an adaptive riding
centre, and prints what to pull in the morning.

Commands:

	new      make a folder for a centre, to be filled in
	desk     the plan on a page in the browser, for people who type no commands
	import   take a centre's spreadsheet into its folder; or write the template of one
	check    name what is wrong or missing, and what to measure first
	keys     explain every table and key of a folder
	term     find the standing pairings of a term
	plan     plan a week, a day, or from a date on
	why      say why a ride is on the ground
	whynot   say why a rider is not on a horse, in a seat, or in another lesson
	ways     say what would help a ride that is on the ground
	take     take a way out: note it, and plan so that a rider rides
	grounded list who was on the ground in a term, how often, and why
	buy      say what one more piece, girth size or horse would bring
	room     find room for riders from the wait list
	pull     print what to pull from the tack room for a day
	sheet    print a sheet for the wall, the barn or the instructor, also as PDF or page
	calendar print an instructor's lessons, or a horse's rides, for a phone
	audit    name every rule that a plan breaks, also one edited by hand
	post     make a pencilled plan stand, as the next version
	note     note what changed on a day: a lame horse, a rider away, a closed arena
	close    confirm what was ridden on a day, or say where it differed
	repair   mend what was posted for a day, with as few changes as can be
	undo     undo a change: the latest, or one that history lists
	history  list what was changed through the program, by whom and when
	due      list the dates to close, and what runs out and the rides it stops
	workload print each horse's daily record of work, against its limits
	forget   take a rider out of all files and history, for good

More of one: tackwright help COMMAND

Exit status: 0 done (also where a plan is not proved, which is then said),
1 the answer is no (a mistake in the folder, a broken rule; a ride on the ground
only where --all-ride asks), 2 wrong use, 3 could not be done (disk, lock).

A fit is for a saddle fitter, lameness for a vet, a rider's health for a
physician, the go-ahead for the instructor; local codes come first.
*/
package main
