package model

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"sync"
)

// ProofCovers reports whether the plan's proof is of this very plan and week.
func (w *Week) ProofCovers(p *Plan) bool {
	return p.Proof.Hash != "" && p.Proof.Hash == w.Fingerprint(p)
}

// Fingerprint binds a proof to the week, the goals and the plan that it was
// made for: 32 hexadecimal digits that change with any of them.
func (w *Week) Fingerprint(p *Plan) string {
	sum := new(bytes.Buffer)
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
	return digest(sum)
}

func digest(of *bytes.Buffer) string {
	sum := sha256.Sum256(of.Bytes())
	return hex.EncodeToString(sum[:16])
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
// in a list at the top is written whole; deeper, by its name. It is asked for with
// every plan, of all that the centre has: hence what is not left to fmt.
func write(to *bytes.Buffer, v reflect.Value, top bool) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			to.WriteString("none;")
			return
		}
		if !top {
			if name, ok := key(v); ok {
				to.Write(strconv.AppendQuote(to.AvailableBuffer(), name))
				to.WriteByte(';')
				return
			}
		}
		write(to, v.Elem(), false)
	case reflect.Struct:
		for i, name := range fieldsOf(v.Type()) {
			to.WriteString(name)
			to.WriteByte('=')
			write(to, v.Field(i), false)
		}
	case reflect.Slice:
		to.Write(strconv.AppendInt(to.AvailableBuffer(), int64(v.Len()), 10))
		to.WriteByte('[')
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
	case reflect.Int, reflect.Int8, reflect.Int16, reflect.Int32, reflect.Int64:
		to.Write(append(strconv.AppendInt(to.AvailableBuffer(), v.Int(), 10), ';'))
	case reflect.String:
		to.Write(append(strconv.AppendQuote(to.AvailableBuffer(), v.String()), ';'))
	case reflect.Bool:
		to.Write(append(strconv.AppendBool(to.AvailableBuffer(), v.Bool()), ';'))
	default:
		fmt.Fprintf(to, "%#v;", v)
	}
}

var fields sync.Map // of each type of struct: the names of its fields

func fieldsOf(t reflect.Type) []string {
	if names, ok := fields.Load(t); ok {
		return names.([]string)
	}
	var names []string
	for i := range t.NumField() {
		names = append(names, t.Field(i).Name)
	}
	fields.Store(t, names)
	return names
}
