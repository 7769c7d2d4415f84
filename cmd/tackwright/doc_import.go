/*
# tackwright import

tackwright import [FOLDER [FILE ...]]

Reads horses, riders, tack, the fit chart, lessons with their riders, standing
pairings, people, arenas, terms and the rest from an XLSX file, or from CSV files
or a directory of them, and writes them into the folder as tables that you can
read and edit. A folder that is not there is made.

What a sheet lists is told by its name (Horses, Riders, Tack, Fit chart ...), what
a column holds by its head (name, weight, form until ...). The template has all of
them, with lists to choose from, an example and a remark on each head:

	tackwright import --template larkfield.xlsx

With a folder before it the template is filled with what the folder has. A name
that ends in .csv or has no ending makes a directory of CSV files.

A centre's own sheets and heads are explained in a mapping, a file of TOML:

	dates = "day first"           # of 3/4/2027; left out, such a date is a mistake
	[[sheet]]
	name = "Ponies"               # its tab, or the CSV file without .csv
	is = "horses"                 # what it lists, by the template's name
	not_read = ["Owner"]
	columns = { "Pony" = "name", "Wt" = "weight (lb)" }   # your head = ours
	[[sheet]]
	name = "Saddles"
	is = "tack"
	always = { kind = "saddle" }  # what holds in every row
	words = { "GP" = "jumping", "Lg" = "long" }   # your word in a cell = ours

All mistakes are named at once, by sheet and cell, and nothing is written while
there is one. What is written is one change of the folder, and can be undone.

It can be run again as often as you like, and doubles nothing. What is still as
import wrote it becomes as the sheet says. What was written or changed by hand
stays as it is, as does what the sheet no longer has: it is listed, the folder's
and the sheet's, and --take NAME takes the sheet's.

Example:

	tackwright import larkfield larkfield.xlsx --by "Kim Alder"

Flags:

	--template FILE write the template into this FILE
	--mapping FILE  read the sheets as this FILE says
	--take NAME     take the sheet's for the entry of this NAME, as it is listed;
	                may be said again
	--dry-run       say what would be done, and write nothing
	--name NAME     the centre's NAME, of a folder that is made (else that of the
	                folder)
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	change                     number of the change that was written; 0 none
	files[]                    that were written, as seen from the folder
	added[]
	added[].table
	added[].name
	added[].why                it is listed
	added[].keys[]
	added[].keys[].key
	added[].keys[].folder      as a cell has it; "" nothing
	added[].keys[].sheet
	changed[]                  was as an import wrote it, or was taken by name;
	                           with the keys of added[]
	listed[]                   stays as it is, though the sheet says otherwise;
	                           with the keys of added[]
	same                       entries that are as the sheet says
	read_as[]                  what was understood: names that were taken for
	                           fuller ones, in words
	not_read[]                 sheets and columns, in words
	mistakes[]                 where there are any nothing is written
	mistakes[].at              the cell, such as Horses!C7; or row, sheet or file
	mistakes[].head            of its column
	mistakes[].message
	mistakes[].mend            how to put it right
	mistakes[].also[]          other cells with the same mistake
	template                   the file or directory of a template that was
	                           written; all else is then empty
*/
package main
