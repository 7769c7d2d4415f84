/*
# tackwright sheet

tackwright sheet FOLDER KIND [DATE]

Prints one of these sheets for a date, today unless said:

	chart        for the wall: each lesson's riders, horses, tack and mounting,
	             and lines for helpers' names
	wall         the day as a picture: lessons across, horses down, an arrow where
	             tack goes
	tack         the tack room's day as a picture, drawn to time
	pull         the pull list: what to carry to which horse by when, what moves,
	             what goes back
	rack         the pull list in walking order along the racks
	cards        for each horse its day, its tack, and what of its limits it uses
	week         each horse's week against its limits, as a picture
	instructor   for the instructor alone: riders, cautions on file, a box for
	             each check of a girth
	fit          the fit chart: seats, pads and girths of each horse, approved by
	             whom, due when
	tags         tags to tie on pieces
	blank-chart  a lesson chart to fill in by hand
	blank-pull   a pull list to fill in by hand

It is printed as text, or written to the FILE of --to: as PDF, as a page that
prints the same, as a picture, for a spreadsheet or as text. All are black on
white, at 12 points and more.
The plan is the one that pull takes. Sheets name riders by first name and mark,
and hold no weight; only the instructor's sheet holds cautions.

Example:

	tackwright sheet examples/sallowdene chart tomorrow --to chart.pdf

Flags:

	--to FILE       write it to this FILE; its ending says as what: .pdf, .html,
	                .svg, .csv or .txt
	--paper SIZE    lay that out for SIZE: A4 or Letter (else the centre's)
	--csv           print its tables for a spreadsheet
	--json          answer as JSON
	--horse NAME    of the horse of this NAME alone
	--instructor NAME of the lessons of the instructor of this NAME alone
	--plan FILE     from the plan in this FILE
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	title
	date                       such as 2026-11-26; none: of no date
	plan                       "pencilled in ...", or "version 3, posted by ..."
	printed                    "2026-11-26 07:10"
	facts[]                    beneath the title, in words
	parts[]
	parts[].title
	parts[].says[]             above the table, in words
	parts[].heads[]            of the table's columns; empty: a column of boxes,
	                           or to write in
	parts[].rows[]
	parts[].rows[].over        what stands above it across the table, for it and
	                           those that follow
	parts[].rows[].says[]      beneath that
	parts[].rows[].cells[]     one a column, lines parted by semicolons; none: it
	                           has only what stands above
	cautions[]                 that every sheet for the barn carries
	deferral                   who decides what the program does not
*/
package main
