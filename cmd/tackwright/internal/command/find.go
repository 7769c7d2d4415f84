package command

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"tackwright/model"
)

// mostNames is how many names are listed where none is the one that was typed.
const mostNames = 12

// find is the noun that a person means by what she typed: by its whole name or
// an old one, else in any case of letters, else by a beginning that no other has,
// of the name or of a word in it.
func find[T any](what, said string, all []T, names func(T) []string) (T, error) {
	var none T
	for _, like := range []func(name, said string) bool{
		func(name, said string) bool { return name == said },
		strings.EqualFold,
		func(name, said string) bool {
			return said != "" && strings.HasPrefix(strings.ToLower(name), strings.ToLower(said))
		},
		func(name, said string) bool {
			return said != "" && strings.Contains(strings.ToLower(name), " "+strings.ToLower(said))
		},
		func(name, said string) bool { // by a keyboard that has no accents
			name, said = plain(name), plain(said)
			return said != "" && (strings.HasPrefix(name, said) || strings.Contains(name, " "+said))
		},
	} {
		var found []T
		for _, x := range all {
			if slices.ContainsFunc(names(x), func(name string) bool { return like(name, said) }) {
				found = append(found, x)
			}
		}
		switch {
		case len(found) == 1:
			return found[0], nil
		case len(found) > 1:
			return none, no("%q can be %s; say the whole name of one", said, namesOf(found, names))
		}
	}
	if len(all) == 0 {
		return none, no("there is no %s %q; the folder has none", what, said)
	}
	near := slices.DeleteFunc(slices.Clone(all), func(x T) bool {
		return len(all) > mostNames && !strings.EqualFold(firstLetter(names(x)[0]), firstLetter(said))
	})
	switch {
	case len(near) == len(all):
		return none, no("there is no %s %q; the folder has: %s", what, said, namesOf(all, names))
	case len(near) == 0 || len(near) > mostNames:
		return none, no("there is no %s %q in the folder", what, said)
	}
	return none, no("there is no %s %q in the folder; of that letter it has: %s", what, said, namesOf(near, names))
}

// unlike are letters that are no other letter with an accent, as they are typed
// where a keyboard does not have them.
var unlike = strings.NewReplacer("ł", "l", "ø", "o", "đ", "d", "ð", "d", "þ", "th", "ß", "ss", "æ", "ae", "œ", "oe", "ı", "i", "’", "'")

// plain is a name in small letters, without accents.
func plain(s string) string {
	marked := norm.NFD.String(strings.ToLower(s))
	return unlike.Replace(strings.Map(func(r rune) rune {
		if unicode.Is(unicode.Mn, r) {
			return -1
		}
		return r
	}, marked))
}

func firstLetter(s string) string {
	for _, r := range s {
		return string(r)
	}
	return ""
}

func namesOf[T any](all []T, names func(T) []string) string {
	var out []string
	for _, x := range all {
		out = append(out, fmt.Sprintf("%q", names(x)[0]))
	}
	return strings.Join(out, ", ")
}

func horseNamed(c *model.Centre, said string) (*model.Horse, error) {
	return find("horse", said, c.Horses, func(h *model.Horse) []string { return append([]string{h.Name}, h.Was...) })
}

func pieceTagged(c *model.Centre, said string) (*model.Piece, error) {
	return find("tag", said, c.Pieces, func(p *model.Piece) []string { return append([]string{p.Tag}, p.Was...) })
}

// answersTo is what a command calls a rider: what sheets call her, where no other
// answers to it, else her whole name.
func answersTo(c *model.Centre, r *model.Rider) string {
	if found, err := riderNamed(c, r.Called()); err == nil && found == r {
		return r.Called()
	}
	return r.Name
}

func (q *asked) answersTo(r *model.Rider) string { return answersTo(q.folder.Centre, r) }

// riderNamed goes by what sheets call a rider as well.
func riderNamed(c *model.Centre, said string) (*model.Rider, error) {
	return find("rider", said, c.Riders, func(r *model.Rider) []string { return append([]string{r.Name, r.Called()}, r.Was...) })
}

func lessonNamed(c *model.Centre, said string) (*model.Lesson, error) {
	return find("lesson", said, c.Lessons, func(l *model.Lesson) []string { return append([]string{l.Name}, l.Was...) })
}

func arenaNamed(c *model.Centre, said string) (*model.Arena, error) {
	return find("arena", said, c.Arenas, func(a *model.Arena) []string { return append([]string{a.Name}, a.Was...) })
}

// colleague is a person who is spoken of; who acts is named in full.
func colleague(c *model.Centre, said string) (*model.Person, error) {
	return find("person", said, c.Persons, func(p *model.Person) []string { return append([]string{p.Name}, p.Was...) })
}
