package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"tackwright/model"
	"tackwright/model/folder"
)

// yearsBehind is how many weeks a folder has behind it that were posted: three years of them.
const yearsBehind = 156

// writeCentre writes a drawn centre as a folder in a person's way, with the plan of its week posted, and
// the same posted for each week of the three years before. Only what package weeks draws is written.
func writeCentre(dir string, w *model.Week, p *model.Plan) error {
	c := w.Centre
	files := map[string][]byte{"centre.toml": centreText(c, w.From+2), "horses.toml": horsesText(c), "tack.toml": tackText(c),
		"fit.toml": fitText(c), "riders.toml": ridersText(c), "lessons.toml": lessonsText(c)}
	first, err := post(filepath.Join(dir, "first"), files, nil, w, p)
	if err != nil {
		return err
	}
	text, sources, _ := bytes.Cut(first, []byte("\n[[source]]"))
	past := map[string][]byte{}
	for back := yearsBehind; back > 0; back-- {
		var pairs []string
		for d := w.From; d <= w.Until; d++ {
			pairs = append(pairs, d.String(), (d - model.Date(7*back)).String())
		}
		version := yearsBehind - back + 1
		pairs = append(pairs, "version = 1\n", fmt.Sprintf("version = %d\n", version))
		name := fmt.Sprintf("posted/%s-v%d.toml", w.From-model.Date(7*back), version)
		past[name] = append([]byte(strings.NewReplacer(pairs...).Replace(string(text))+"\n[[source]]"), sources...)
	}
	_, err = post(filepath.Join(dir, "centre"), files, past, w, p)
	return err
}

// post writes the files, posts the plan and returns the text of what is posted.
func post(dir string, files, past map[string][]byte, w *model.Week, p *model.Plan) ([]byte, error) {
	for _, some := range []map[string][]byte{files, past} {
		for name, text := range some {
			path := filepath.Join(dir, filepath.FromSlash(name))
			if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
				return nil, err
			}
			if err := os.WriteFile(path, text, 0o644); err != nil {
				return nil, err
			}
		}
	}
	f, err := folder.Open(dir)
	if err != nil {
		return nil, err
	}
	if wrong := f.Mistakes(); len(wrong) > 0 {
		return nil, fmt.Errorf("the folder written has a mistake: %s", wrong[0])
	}
	there := f.Centre.Week(w.From, 7, model.Instant{})
	plan := &model.Plan{Turns: make([]*model.Turn, len(there.Rides)), Ground: make([][]string, len(there.Rides))}
	for i, r := range there.Rides {
		k := slices.IndexFunc(w.Rides, func(x *model.Ride) bool {
			return x.Rider.Name == r.Rider.Name && x.Meeting.Name == r.Meeting.Name && x.Start == r.Start
		})
		if k >= 0 {
			plan.Turns[i] = turnIn(f.Centre, p.Turns[k])
		}
	}
	version, err := f.Post(there, plan, f.Centre.Persons[0], model.Instant{Date: w.From, Minute: 6 * 60})
	if err != nil {
		return nil, err
	}
	return os.ReadFile(filepath.Join(dir, "posted", fmt.Sprintf("%s-v%d.toml", w.From, version)))
}

// turnIn is a turn in the nouns of another reading of the centre.
func turnIn(c *model.Centre, t *model.Turn) *model.Turn {
	if t == nil {
		return nil
	}
	piece := func(x *model.Piece) *model.Piece {
		i := slices.IndexFunc(c.Pieces, func(y *model.Piece) bool { return x != nil && y.Tag == x.Tag })
		if i < 0 {
			return nil
		}
		return c.Pieces[i]
	}
	out := &model.Turn{Seat: piece(t.Seat), Girth: piece(t.Girth)}
	out.Horse = c.Horses[slices.IndexFunc(c.Horses, func(h *model.Horse) bool { return h.Name == t.Horse.Name })]
	for _, x := range t.Pads {
		out.Pads = append(out.Pads, piece(x))
	}
	for _, x := range t.Extras {
		out.Extras = append(out.Extras, piece(x))
	}
	return out
}
