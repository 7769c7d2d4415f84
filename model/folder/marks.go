package folder

import (
	"slices"
	"strings"
	"unicode"

	"tackwright/model"
)

// mostOfSurname are as many letters of a surname as a mark may tell; never all of it.
const mostOfSurname = 3

// giveMarks gives riders of one first name whose entries state no mark one of their
// surname: as many of its letters as tell them apart. Where none do it is its first,
// and a finding.
func (r *reader) giveMarks() {
	stated := map[*model.Rider]bool{}
	for _, x := range r.centre.Riders {
		stated[x] = x.Mark != ""
	}
	for _, x := range r.centre.Riders {
		if stated[x] {
			continue
		}
		var others []*model.Rider
		for _, y := range r.centre.Riders {
			if x != y && x.First == y.First {
				others = append(others, y)
			}
		}
		if len(others) == 0 {
			continue
		}
		x.Mark = short(surname(x.Name), 1)
		for n := 1; n <= min(mostOfSurname, max(1, len([]rune(surname(x.Name)))-1)); n++ {
			mark := short(surname(x.Name), n)
			if !slices.ContainsFunc(others, func(y *model.Rider) bool {
				return stated[y] && y.Mark == mark || !stated[y] && short(surname(y.Name), n) == mark
			}) {
				x.Mark = mark
				break
			}
		}
	}
}

// short are the first letters of a surname, with a point.
func short(surname string, n int) string {
	letters := []rune(surname)
	if len(letters) == 0 {
		return ""
	}
	return string(unicode.ToUpper(letters[0])) + string(letters[1:min(n, len(letters))]) + "."
}

// surname is what stands behind the first name, by its last word; of "Marsh, Cleo"
// what stands before the comma; "" none.
func surname(name string) string {
	if before, behind, ok := strings.Cut(name, ","); ok && strings.TrimSpace(behind) != "" {
		return strings.TrimSpace(before)
	}
	if i := strings.LastIndex(name, " "); i >= 0 {
		return name[i+1:]
	}
	return ""
}
