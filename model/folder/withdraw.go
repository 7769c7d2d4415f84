package folder

import "tackwright/model"

// A posted version is never deleted and never changed. One that was posted by
// mistake is withdrawn by a later one, which says nothing but that: on each date
// of the withdrawn version the one before it stands again, under the new number,
// so that on paper the higher number is always the one to go by. A date that
// none had covered has then nothing posted. To withdraw a withdrawal makes the
// version stand again.
//
// What had started when it was withdrawn was ridden as it was told until then,
// and stays told so.

// versions are all that were posted, in order, withdrawals among them.
type versions struct {
	all       []*model.Posted
	withdraws map[*model.Posted]int // by number
}

// withdraw is what the versions say once those that withdraw others are obeyed.
func (r *reader) withdraw(all []*model.Posted, withdraws map[*model.Posted]int) []*model.Posted {
	vs := &versions{all, withdraws}
	void := vs.void(len(all))
	var out []*model.Posted
	for i, v := range all {
		switch {
		case void[v.Version]:
		case withdraws[v] != 0:
			out = append(out, r.standAgain(vs, i)...)
		default:
			out = append(out, v)
		}
	}
	return out
}

// void are the numbers of those versions that one of the first n withdraws.
func (vs *versions) void(n int) map[int]bool {
	void := map[int]bool{}
	for i := n - 1; i >= 0; i-- {
		if v := vs.all[i]; vs.withdraws[v] != 0 && !void[v.Version] {
			void[vs.withdraws[v]] = true
		}
	}
	return void
}

// on is which of the first n versions stands on a date, nil where none does, and
// what is told for the date by them.
func (vs *versions) on(d model.Date, n int) (stands *model.Posted, told []model.Told) {
	for i := n - 1; i >= 0; i-- {
		if v := vs.all[i]; v.From <= d && d <= v.Until {
			if vs.withdraws[v] == 0 {
				return v, of(d, v)
			}
			return vs.again(d, i)
		}
	}
	return nil, nil
}

// again is what stands and is told for a date by the withdrawal that is number i.
// Where a version later than the withdrawn one stands, it goes on standing.
func (vs *versions) again(d model.Date, i int) (stands *model.Posted, told []model.Told) {
	v, void := vs.all[i], vs.void(i+1)
	for _, x := range vs.all[:i] {
		if vs.withdraws[x] == 0 && !void[x.Version] && x.From <= d && d <= x.Until {
			stands = x
		}
	}
	if stands != nil && stands.Version > vs.withdraws[v] {
		return vs.on(d, i)
	}
	started := func(t model.Told) bool { return !v.At.Before(model.Instant{Date: d, Minute: t.Start}) }
	before, was := vs.on(d, i)
	for _, t := range was {
		if started(t) {
			t.Notes = max(t.Notes, before.Notes)
			told = append(told, t)
		}
	}
	switch {
	case stands != nil:
		for _, t := range of(d, stands) {
			if !started(t) {
				told = append(told, t)
			}
		}
	case len(told) > 0:
		stands = before
	}
	return stands, told
}

// of is what a version tells for a date.
func of(d model.Date, v *model.Posted) (told []model.Told) {
	for _, t := range v.Told {
		if t.Date == d {
			told = append(told, t)
		}
	}
	return told
}

// standAgain are the earlier versions as the withdrawal that is number i posts
// them again, each on the dates on which it is the latest.
func (r *reader) standAgain(vs *versions, i int) []*model.Posted {
	v := vs.all[i]
	var out []*model.Posted
	var last *model.Posted
	for d := v.From; d <= v.Until; d++ {
		stands, told := vs.again(d, i)
		if stands == nil || stands.Version > vs.withdraws[v] {
			last = nil
			continue
		}
		if stands != last {
			last = stands
			again := &model.Posted{Version: v.Version, By: v.By, At: v.At, From: d, Notes: stands.Notes}
			r.entries[again] = r.entries[stands]
			out = append(out, again)
		}
		p := out[len(out)-1]
		p.Until, p.Told = d, append(p.Told, told...)
	}
	return out
}
