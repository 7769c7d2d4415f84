package desk

import "strconv"

// historyView is what was changed through the program.
type historyView struct{ Changes []*changeLine }

type changeLine struct {
	Number   int
	When, By string
	What     string
}

func showHistory(v *visit) error {
	all, err := v.reading.History(40)
	if err != nil {
		return err
	}
	x := &historyView{}
	for _, c := range all {
		x.Changes = append(x.Changes, &changeLine{c.Number, instantWords(v.reading.Centre, c.At), c.By, c.What})
	}
	return v.show("history", "What was changed", x)
}

// undo takes a change back, which is a change too.
func undo(v *visit) error {
	by, err := v.person()
	if err != nil {
		return err
	}
	n, err := strconv.Atoi(v.r.PostFormValue("change"))
	if err != nil || n < 1 {
		return no("say which change")
	}
	_, err = v.reading.Undo(n, by, v.reading.At())
	v.readings.forget()
	if err != nil {
		return err
	}
	return v.see("/history")
}
