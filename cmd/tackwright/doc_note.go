/*
# tackwright note

tackwright note FOLDER KIND ...

Writes one day note into notes/ of the folder, with a number, the time and who
wrote it, and answers with what follows from it: holds and works that it
suspends, posted rides that can no longer be as they were told, and the command
that mends the day. It plans nothing and posts nothing by itself.

KIND, and what is written behind it:

	out HORSE --lame|--ill|--vet|--appointment
	    a horse does not work from now, or --from, on; --review is when somebody
	    looks again, and "back" alone ends it. An appointment ends --until.
	back HORSE
	    it is sound again, on the word of somebody who may end a vet's stop
	own-tack HORSE
	    its tack goes to no other horse; lists who was exposed in the 14 days before
	own-tack-end HORSE
	    that is over, on the word of somebody who may end a vet's stop
	piece-out TAG
	    a piece is not used
	piece-back TAG
	    it is mended and checked, by somebody who may end a check
	cleaned TAG
	    it was cleaned, by somebody who may end a cleaning
	away RIDER
	    a rider does not come, or not to --lesson, or not --from TIME --until TIME
	add RIDER LESSON
	    a rider joins a lesson on that date
	cancel LESSON
	    a lesson is not held
	move LESSON [TIME]
	    a lesson begins at another time, as long as it was, or is in another --arena
	shorten LESSON LENGTH
	    a lesson ends after 30m
	helpers LESSON 2 leaders 1 sidewalkers
	    what helpers a lesson can count on
	weather TEMPERATURE HUMIDITY
	    84F 60%, or 29C 60%; answers go, caution or stop. A person decides: it
	    closes and shortens nothing.
	close ARENA [TIME TIME]
	    an arena is closed, from one time to another or all day
	instructor LESSON NAME
	    somebody else takes a lesson
	instructor-away NAME [TIME TIME]
	    an instructor does not come, or is away for some hours
	keep RIDER HORSE
	    the rider has this horse, and --seat, or is on the ground
	never RIDER HORSE
	    the rider does not have this horse
	leave-out HORSE [TIME]
	    its other work, or that which begins then, is left out
	lift NUMBER
	    an earlier note, which keeps a rider or says never, no longer stands
	form RIDER DATE
	    her form is good up to this date, on the word of somebody who may extend one

A name can be cut short to a beginning, of it or of a word in it, that no other
has. A note on health, weather or absence is always taken. Only a keep or a never
is refused that breaks a care rule by itself or contradicts a note in force; both
are named. What only some may end (may_end of a person) one of them ends.

A note is for today unless --date says another; it is never changed, only undone
by a later one: tackwright undo.

Example:

	tackwright note examples/sallowdene out Wicket --lame --from 07:40 --by "Wilf Garrick-Lane"

Flags:

	--by NAME       the NAME of the person who does this; else the name that
	                TACKWRIGHT_BY holds on this computer
	--date DATE     it is for this DATE: 2026-11-25, tomorrow or a weekday; today
	                if not said
	--through DATE  and for all dates up to this DATE
	--from TIME     from this TIME of the day on
	--until TIME    up to this TIME of the day
	--lame          why a horse is out: it is lame
	--ill           it is ill
	--vet           a vet has stopped it
	--appointment   farrier, dentist: it ends by itself
	--review DATE   somebody looks at the horse again on this DATE; the next day
	                if not said
	--lesson NAME   in the lesson of this NAME alone
	--arena NAME    in the arena of this NAME
	--seat TAG      in the seat of this TAG
	--words TEXT    a TEXT to be kept beside it
	--now TIME      take this TIME, such as 10:30 or 2026-11-25T10:30, for now
	--today DATE    take DATE for today (else the folder's today, else the
	                computer's)
	--json          answer as JSON

With --json:

	number                     of the note
	kind
	date                       that it is for
	by                         who wrote it
	suspended[]                holds and works that it makes impossible
	breaks[]                   what of the posted plans no longer keeps every rule
	                           because of it
	breaks[].date
	breaks[].rule              its stable name
	breaks[].words
	breaks[].rides[]           that take part
	off[]                      posted rides that do not take place because of it
	off[].date
	off[].start
	off[].lesson
	off[].rider                first name, and a mark where two share it
	off[].horse                that was posted
	lessons[]                  that have other hours, another arena or another
	                           instructor because of it
	lessons[].date
	lessons[].lesson
	lessons[].start
	lessons[].end
	lessons[].arena
	lessons[].instructor
	added[]                    rides that it adds, and that no plan has yet; with
	                           the keys of off[]
	may_ride[]                 posted rides on the ground that it may let ride: a
	                           repair tells; with the keys of off[]
	exposed[]                  who shared skin contact with a horse that is on its
	                           own tack from now on, in the 14 days before
	exposed[].horse            none: a piece
	exposed[].tack             tag; of a horse: of a piece that it shared
	exposed[].last             when it was shared last, or worn
	exposed[].direct           with that very horse; else over others
	heat                       of weather: go, caution or stop; a person decides
	next[]                     commands that mend what it breaks
	doubt                      why it may not be what was meant
	unsaid                     a file of the centre has a mistake, so what follows
	                           from the note cannot be said yet
*/
package main
