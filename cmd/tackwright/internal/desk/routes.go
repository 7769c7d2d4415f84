package desk

import "tackwright/model"

// routes are all that can be asked for once a session is open, and from which
// role on.
func routes() []route {
	return []route{
		{"GET /{$}", model.Barn, func(v *visit) error { return v.see("/day/" + v.reading.Today.String()) }},
		{"GET /name", model.Barn, showName},
		{"POST /name", model.Barn, setName},
		{"POST /leave", model.Barn, leave},
		{"GET /check", model.Instructor, showCheck},

		{"GET /week/{date}", model.Barn, showWeek},
		{"GET /day/{date}", model.Barn, showDay},
		{"GET /tack/{date}", model.Barn, showTack},
		{"GET /pull/{date}", model.Barn, showPull},
		{"GET /print/{date}/{file}", model.Barn, printSheet},
		{"GET /horse/{horse}", model.Barn, showHorse},
		{"GET /rider/{rider}", model.Instructor, showRider},
		{"GET /ride/{date}/{ride}", model.Barn, showRide},

		{"POST /pull/{date}", model.Barn, tick},

		{"POST /horse/{horse}/out", model.Instructor, horseOut},
		{"POST /horse/{horse}/back", model.Instructor, horseBack},
		{"POST /ride/{date}/{ride}/away", model.Instructor, riderAway},
		{"POST /ride/{date}/{ride}/keep", model.Instructor, pair(model.NoteKeep)},
		{"POST /ride/{date}/{ride}/never", model.Instructor, pair(model.NoteNever)},
		{"POST /lift", model.Instructor, lift},
		{"POST /ride/{date}/{ride}/why", model.Instructor, askWhy},
		{"POST /ride/{date}/{ride}/whynot", model.Instructor, askWhyNot},
		{"POST /ride/{date}/{ride}/ways", model.Instructor, askWays},
		{"GET /day/{date}/close", model.Instructor, showClose},
		{"POST /day/{date}/close", model.Instructor, closeDay},
		{"GET /day/{date}/happened", model.Instructor, showHappened},
		{"POST /day/{date}/happened", model.Instructor, happen},
		{"POST /day/{date}/mend", model.Instructor, mendDay},

		{"GET /records", model.Office, showRecords},
		{"GET /edit/{table}/{entry}", model.Office, showForm},
		{"POST /edit/{table}/{entry}", model.Office, saveForm},
		{"GET /add/{table}", model.Office, showForm},
		{"POST /add/{table}", model.Office, saveForm},
		{"GET /import", model.Office, showImport},
		{"POST /import", model.Office, importSheet},
		{"GET /template.xlsx", model.Office, giveTemplate},
		{"GET /history", model.Office, showHistory},
		{"POST /undo", model.Office, undo},

		{"POST /week/{date}/plan", model.Office, planWeek},
		{"GET /week/{date}/post", model.Office, showCompare},
		{"POST /week/{date}/post", model.Office, postWeek},
		{"POST /week/{date}/room", model.Office, askRoom},
		{"POST /week/{date}/buy", model.Office, askBuy},
		{"POST /rider/{rider}/room", model.Office, askRoomFor},
		{"POST /job/{job}/take", model.Office, takeWay},

		{"GET /job/{job}", model.Instructor, showJob},
		{"GET /job/{job}/events", model.Instructor, watchJob},
		{"POST /job/{job}/stop", model.Instructor, stopJob},
		{"POST /job/{job}/post", model.Instructor, postMended},
		{"GET /job/{job}/moved.pdf", model.Instructor, printMoved},
	}
}
