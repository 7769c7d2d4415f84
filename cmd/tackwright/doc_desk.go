/*
# tackwright desk

tackwright desk FOLDER

Opens a page in the browser on which the week is planned and posted, the day
mended, and the pull list ticked off, on this computer alone. It needs no network
and nothing beside itself, and ends at Ctrl-C. Everything on it works with the
keyboard, and without script.

To have it on phones too, give an address with --listen, such as 0.0.0.0:8080 or
that of this computer, and pass phrases: --phrases is a file, kept outside the
folder, with a line for each role that may come in:

	barn = "..."          sees sheets, and ticks the pull list
	instructor = "..."    notes what changed or takes a slip back, and mends a day
	office = "..."        does all

Each has 12 letters or more. After it a person says who she is, of those whose
role in the folder is no higher; what she notes and posts carries her name. Give a
certificate too, or whoever else is on the network can read along.

Example:

	tackwright desk examples/sallowdene

Flags:

	--listen ADDRESS serve on this ADDRESS and port; this computer alone, on a
	                 port that is free, if not said
	--no-open       open no browser
	--phrases FILE  pass phrases by role, in this FILE
	--name NAME     browsers may call this computer by this NAME too, beside its
	                address; may be said again
	--cert FILE     the certificate for TLS in this FILE
	--key FILE      its key in this FILE
*/
package main
