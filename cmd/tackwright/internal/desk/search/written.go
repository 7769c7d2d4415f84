package search

import "tackwright/model"

// written is a plan by the names of what it is made of.
type written struct {
	Turns  []*turn
	Ground [][]string
	Proof  model.Proof
}

type turn struct {
	Horse  string
	Seat   string   `json:",omitempty"`
	Pads   []string `json:",omitempty"`
	Girth  string   `json:",omitempty"`
	Extras []string `json:",omitempty"`
}

func write(p *model.Plan) *written {
	x := &written{Ground: p.Ground, Proof: p.Proof}
	tags := func(ps []*model.Piece) (tags []string) {
		for _, p := range ps {
			tags = append(tags, p.Tag)
		}
		return tags
	}
	for _, t := range p.Turns {
		if t == nil {
			x.Turns = append(x.Turns, nil)
			continue
		}
		y := &turn{Horse: t.Horse.Name, Pads: tags(t.Pads), Extras: tags(t.Extras)}
		if t.Seat != nil {
			y.Seat = t.Seat.Tag
		}
		if t.Girth != nil {
			y.Girth = t.Girth.Tag
		}
		x.Turns = append(x.Turns, y)
	}
	return x
}

// read is the plan in the nouns of a week. What has started is as it was told,
// whatever it is called there.
func (x *written) read(w *model.Week) (*model.Plan, error) {
	if len(x.Turns) != len(w.Rides) {
		return nil, ErrChanged
	}
	horses := map[string]*model.Horse{}
	for _, h := range w.Centre.Horses {
		horses[h.Name] = h
	}
	pieces := map[string]*model.Piece{}
	for _, p := range w.Centre.Pieces {
		pieces[p.Tag] = p
	}
	known := true
	piece := func(tag string) *model.Piece {
		known = known && pieces[tag] != nil
		return pieces[tag]
	}
	p := &model.Plan{Turns: make([]*model.Turn, len(w.Rides)), Ground: x.Ground, Proof: x.Proof}
	for i, y := range x.Turns {
		switch {
		case w.Rides[i].State == model.Started:
			p.Turns[i] = w.Rides[i].Told
			continue
		case y == nil:
			continue
		}
		t := &model.Turn{Horse: horses[y.Horse]}
		known = known && t.Horse != nil
		if y.Seat != "" {
			t.Seat = piece(y.Seat)
		}
		if y.Girth != "" {
			t.Girth = piece(y.Girth)
		}
		for _, tag := range y.Pads {
			t.Pads = append(t.Pads, piece(tag))
		}
		for _, tag := range y.Extras {
			t.Extras = append(t.Extras, piece(tag))
		}
		p.Turns[i] = t
	}
	if !known {
		return nil, ErrChanged
	}
	return p, nil
}
