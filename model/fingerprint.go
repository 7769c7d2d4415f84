package model

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"reflect"
	"slices"
)

// Fingerprint binds a proof to the week, the goals and the plan that it was
// made for: 32 hexadecimal digits that change with any of them.
func (w *Week) Fingerprint(p *Plan) string {
	sum := sha256.New()
	c := w.Centre
	for _, v := range []any{w.House, w.From, w.Until, w.Now, w.Mends, c.Persons, c.Arenas, c.Horses, c.Pieces, c.Chart,
		c.Riders, w.Meetings, w.Rides, w.Facts} {
		write(sum, reflect.ValueOf(v), true)
	}
	for _, m := range w.Meetings {
		if l := m.Lesson; l != nil {
			fmt.Fprintf(sum, "lesson %q %q %d;", l.Name, l.Kind, l.Size) // the rest of it is in the meeting
		}
	}
	for _, r := range w.Rides { // a wish for what the plan does not have leaves its score as it is
		if horse, seat := w.Usual(r); horse != nil {
			fmt.Fprintf(sum, "usual %d %q", r.Index, horse.Name)
			if seat != nil {
				fmt.Fprintf(sum, " %q", seat.Tag)
			}
		}
	}
	w.writeBefore(sum)
	for _, g := range w.Score(p) {
		fmt.Fprint(sum, g)
	}
	write(sum, reflect.ValueOf(p.Turns), true)
	return hex.EncodeToString(sum.Sum(nil)[:16])
}

// writeBefore writes what the dates before the week leave behind.
func (w *Week) writeBefore(to io.Writer) {
	for _, r := range w.Centre.Riders {
		if w.Grounded(r) {
			fmt.Fprint(to, "on the ground last time ", r.Name)
		}
	}
	for _, piece := range w.Centre.Pieces {
		for _, x := range w.contacts[piece] {
			fmt.Fprint(to, "contact ", piece.Tag, x.horse.Name, x.from)
		}
	}
}

// key is the name by which a noun that is only referred to is written.
func key(v reflect.Value) (string, bool) {
	switch x := v.Interface().(type) {
	case *Horse:
		return x.Name, true
	case *Piece:
		return x.Tag, true
	case *Rider:
		return x.Name, true
	case *Person:
		return x.Name, true
	case *Arena:
		return x.Name, true
	case *Lesson:
		return x.Name, true
	case *Term:
		return x.Name, true
	case *Meeting:
		return x.Date.String() + x.Name, true
	case *Ride:
		return fmt.Sprint("ride ", x.Index), true
	}
	return "", false
}

// write writes a value so that equal values read the same in every run. A noun
// in a list at the top is written whole; deeper, by its name.
func write(to io.Writer, v reflect.Value, top bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			fmt.Fprint(to, "none;")
			return
		}
		if name, ok := key(v); ok && !top {
			fmt.Fprintf(to, "%q;", name)
			return
		}
		write(to, v.Elem(), false)
	case reflect.Struct:
		for i := range v.NumField() {
			fmt.Fprint(to, v.Type().Field(i).Name, "=")
			write(to, v.Field(i), false)
		}
	case reflect.Slice:
		fmt.Fprint(to, v.Len(), "[")
		for i := range v.Len() {
			write(to, v.Index(i), top)
		}
	case reflect.Map:
		keys := v.MapKeys()
		slices.SortFunc(keys, func(a, b reflect.Value) int { return cmp.Compare(fmt.Sprint(a), fmt.Sprint(b)) })
		for _, k := range keys {
			fmt.Fprint(to, k, ":")
			write(to, v.MapIndex(k), false)
		}
	default:
		fmt.Fprintf(to, "%#v;", v)
	}
}
