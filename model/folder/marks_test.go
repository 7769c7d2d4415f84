package folder

import (
	"strings"
	"testing"

	"tackwright/model"
)

func TestRidersOfOneFirstNameAreToldApartByTheSurnamesFirstLetters(t *testing.T) {
	for _, x := range []struct {
		name, riders, want string // a rider a word: her name, and behind "=" the mark that is stated
	}{
		{"nobody shares it", "Mia_Adler Jo_Berg", "Mia, Jo"},
		{"the initial does", "Mia_Adler Mia_Conti", "Mia A., Mia C."},
		{"more than the initial", "Mia_Carr Mia_Conti", "Mia Ca., Mia Co."},
		{"never all of it", "Jo_Ng Jo_Nguyen", "Jo N., Jo Ngu."},
		{"one is stated", "Mia_Adler=A. Mia_Abel", "Mia A., Mia Ab."},
		{"both are stated", "Mia_Adler=1 Mia_Conti=2", "Mia 1, Mia 2"},
		{"a name of one word", "Mia Mia_Conti", "Mia, Mia C."},
		{"small letters", "Ana_de_souza Ana_Melo", "Ana S., Ana M."},
	} {
		r := newReader()
		r.centre = &model.Centre{}
		for _, word := range strings.Fields(x.riders) {
			name, mark, _ := strings.Cut(strings.ReplaceAll(word, "_", " "), "=")
			r.centre.Riders = append(r.centre.Riders, &model.Rider{Name: name, First: firstName(name), Mark: mark})
		}
		r.giveMarks()
		var got []string
		for _, y := range r.centre.Riders {
			got = append(got, y.Called())
		}
		if strings.Join(got, ", ") != x.want {
			t.Errorf("%s: %q, want %q", x.name, got, x.want)
		}
	}
}
