/*
# tackwright pull

tackwright pull FOLDER DATE

Prints, for the volunteers in the tack room, what each horse wears by when,
which tack goes from horse to horse between rides, and what goes back where.
DATE is 2026-11-25, today, tomorrow or a weekday (the next of that name, today
counted in).

The plan is the one that was posted for that date; where none was, the
pencilled one in plans/, or the one that --plan names. It is audited first: a
plan that breaks a rule is not printed, its broken rules are, and the status
is 1. What only facts break is a warning. Where notes for that date are later than
the posted plan, the sheet says up to which it goes by them; where a file cannot be
read, what was posted is printed all the same, and the sheet says so. It names
riders by first name, and never a weight.

Example:

	tackwright pull examples/sallowdene tomorrow

Flags:

	--csv           print a row for each thing to carry, for a spreadsheet
	--json          answer as JSON
	--to FILE       write it to this FILE; its ending says as what: .pdf, .html,
	                .svg, .csv or .txt
	--paper SIZE    lay that out for SIZE: A4 or Letter (else the centre's)
	--plan FILE     pull for the plan in this FILE
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)

With --json:

	centre
	date                       such as 2026-11-26
	day                        the date in words
	plan                       "pencilled in ...", or "version 3, posted by ..."
	version                    of a posted plan
	with_notes_up_to           number of the latest note for the date that was
	                           written since the plan was posted
	pencilled                  so it has no version
	hash                       of a pencilled plan: another one after any change
	                           of who rides what
	printed                    "2026-11-26 07:10"
	rides                      seated
	horses                     that carry them
	on_the_ground[]            rides without a horse
	on_the_ground[].start      24-hour clock
	on_the_ground[].end
	on_the_ground[].horse      none: on the ground
	on_the_ground[].rider      first name and mark
	on_the_ground[].work       of a horse's other work: schooling, lunging
	on_the_ground[].by         who does that work
	on_the_ground[].lesson     none: other work
	on_the_ground[].arena
	on_the_ground[].instructor
	on_the_ground[].mounting[] places that rider, horse and arena share, first
	                           choice first; none: not recorded
	on_the_ground[].leaders    that are needed
	on_the_ground[].sidewalkers that are needed
	on_the_ground[].new_tack   tack changes before it: see the changeovers
	other_work[]               of horses, with no rider of a lesson; with the keys
	                           of on_the_ground[]
	not_working[]              horses; no reason is ever given
	not_checked[]              what nobody recorded, so that no rule could look at
	                           it
	not_checked[].what         what is not known
	not_checked[].of[]         of which pieces, horses or lessons
	not_checked_here[]         records that the centre keeps elsewhere
	cautions[]                 that every sheet for the barn carries
	deferral                   who decides what the program does not
	cross_ties                 where the centre states how many
	cross_ties.bays            how many there are
	cross_ties.first           when the first horse goes in
	cross_ties.too_few[]       horses that cannot all be tacked up in time
	cross_ties.too_few[].horses[]
	cross_ties.too_few[].from  the earliest that any of them can begin
	cross_ties.too_few[].until the latest that any of them must be ready
	cross_ties.too_few[].without the horse that is left without a bay
	tack_ups[]                 in the order in which helpers begin
	tack_ups[].on_by           when all must be on
	tack_ups[].horse
	tack_ups[].looks           what the eye finds
	tack_ups[].kept            stall or field
	tack_ups[].again           it was tacked up before, and has rested
	tack_ups[].cross_ties      when it stands in a bay
	tack_ups[].cross_ties.from
	tack_ups[].cross_ties.until
	tack_ups[].no_bay          no bay of the cross ties is free in time
	tack_ups[].pieces[]        beside its own bridle or halter
	tack_ups[].pieces[].kind   saddle, pad, girth ...
	tack_ups[].pieces[].layer  of two pads and more: 1 lies on the horse's back
	tack_ups[].pieces[].piece  tag
	tack_ups[].pieces[].size   of a girth in the centre's units
	tack_ups[].pieces[].rack   its spot, or that of the seat it is kept with
	tack_ups[].pieces[].kept_with the seat that it is kept with
	tack_ups[].pieces[].kept_at the horse that it is kept with
	tack_ups[].pieces[].travels carried with that seat: nobody looks for it
	tack_ups[].pieces[].looks  what the eye finds
	tack_ups[].pieces[].from   the horse that wears it before
	tack_ups[].pieces[].waits  a rest or longer since then: it hangs at its rack
	tack_ups[].pieces[].off_at when that ride ends
	tack_ups[].pieces[].on_again when the horse it came off wears it again
	tack_ups[].waits_for[]     those of them that come off another horse too late
	                           for the ready time; with the keys of
	                           tack_ups[].pieces[]
	tack_ups[].others_by       then: when all others are at the horse
	tack_ups[].rides[]         in order; what changes between them is a
	                           changeover; with the keys of on_the_ground[]
	tack_ups[].off_from        when it is untacked
	changeovers[]              tack that goes to another horse, or a horse that
	                           changes tack
	changeovers[].off_at       when the earlier ride ends
	changeovers[].on_by        when it must be on
	changeovers[].from         the horse that gives; the same where it changes
	                           tack; with the keys of on_the_ground[]
	changeovers[].to           the horse that gets; with the keys of
	                           on_the_ground[]
	changeovers[].on[]         put on; with the keys of tack_ups[].pieces[]
	changeovers[].off[]        taken off, and not for another horse; with the keys
	                           of tack_ups[].pieces[]
	changeovers[].stays_on[]   tags of what the horse keeps on
	changeovers[].waits        a rest or longer: it may hang at its rack until
	                           then
	changeovers[].no_time      the next ride starts as the last one ends: it is
	                           done in the ring
	beside_the_ring[]          what riders wear themselves
	beside_the_ring[].start    when the ride starts
	beside_the_ring[].arena
	beside_the_ring[].lesson
	beside_the_ring[].rider    first name and mark
	beside_the_ring[].things[] what the rider wears, such as a helmet or a gait
	                           belt
	put_away[]                 by rack spot
	put_away[].from            when that use ends
	put_away[].horse           that wears it last
	put_away[].piece           what goes back; with the keys of
	                           tack_ups[].pieces[]
	put_away[].with[]          what is kept with the seat, and came off with it;
	                           with the keys of tack_ups[].pieces[]
*/
package main
