/*
# tackwright new

tackwright new FOLDER

Makes a folder of files with a worked example of each table, which you replace
by your own horses, tack, riders and lessons. Nothing is written into a folder
that holds files already. Who comes from a spreadsheet has no need of it:
tackwright import makes the folder of what that holds.

Example:

	tackwright new larkfield --name "Larkfield Riding Centre"

Flags:

	--name NAME     the centre's NAME (else that of the folder)
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
*/
package main
