/*
# tackwright forget

tackwright forget FOLDER RIDER

Takes a rider out of the folder: her entry, her places and bookings, her name in
what was posted, noted, ridden and changed. What the horses did stays whole: it
is then told of a rider without a name. Pencilled plans that name her go. It
cannot be undone, and so the whole name is asked for, and --for-good.

It names the files that still hold the name: copies, letters, and what backups
and sync services keep are for a person to look after, as is a first name alone
in a remark. Rides of hers in weeks to come are to be planned anew.

Example:

	tackwright forget examples/sallowdene "Otis Bramley" --for-good --by "Nell Ashworthy"

Flags:

	--for-good      it cannot be undone, and is meant
	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	as                         what records call the rider now
	left[]                     files that still hold the name, for a person to
	                           look after
	posted[]                   dates to come on which a ride of hers was posted,
	                           to be mended
*/
package main
