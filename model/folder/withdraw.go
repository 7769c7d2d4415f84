package folder

import "tackwright/model"

// A posted version is never deleted and never changed. One that was posted by
// mistake is withdrawn by a later one, which says nothing but that: on each date
// of the withdrawn version the one before it stands again, under the new number,
// so that on paper the higher number is always the one to go by. A date that
// none had covered has then nothing posted. To withdraw a withdrawal makes the
// version stand again.

// withdraw is what the versions say once those that withdraw others are obeyed.
func (r *reader) withdraw(versions []*model.Posted, withdraws map[*model.Posted]int) []*model.Posted {
	void := map[int]bool{} // by number
	for i := len(versions) - 1; i >= 0; i-- {
		if v := versions[i]; withdraws[v] != 0 && !void[v.Version] {
			void[withdraws[v]] = true
		}
	}
	var plain, out []*model.Posted
	for _, v := range versions {
		switch {
		case withdraws[v] != 0:
			out = append(out, r.standAgain(v, withdraws[v], plain, void)...)
		case !void[v.Version]:
			out = append(out, v)
		}
		if withdraws[v] == 0 && !void[v.Version] {
			plain = append(plain, v)
		}
	}
	return out
}

// standAgain are the earlier versions as the withdrawal v posts them again, each
// on the dates on which it is the latest; those on which a version later than the
// withdrawn one stands are left to that one.
func (r *reader) standAgain(v *model.Posted, withdrawn int, plain []*model.Posted, void map[int]bool) []*model.Posted {
	if void[v.Version] {
		return nil
	}
	var out []*model.Posted
	var last *model.Posted
	for d := v.From; d <= v.Until; d++ {
		var stands *model.Posted
		for _, x := range plain {
			if x.From <= d && d <= x.Until {
				stands = x
			}
		}
		if stands == nil || stands.Version > withdrawn {
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
		p.Until = d
		for _, t := range stands.Told {
			if t.Date == d {
				p.Told = append(p.Told, t)
			}
		}
	}
	return out
}
