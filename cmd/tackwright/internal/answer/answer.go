// Package answer makes what commands answer fit for machines.
package answer

import "reflect"

// Whole makes every list within what v points to that is nil an empty one, so
// that JSON has all lists always: [], never null.
func Whole(v any) { whole(reflect.ValueOf(v)) }

func whole(v reflect.Value) {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			whole(v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Type().Field(i); f.IsExported() {
				whole(v.Field(i))
			}
		}
	case reflect.Slice:
		if v.IsNil() && v.CanSet() {
			v.Set(reflect.MakeSlice(v.Type(), 0, 0))
		}
		for i := range v.Len() {
			whole(v.Index(i))
		}
	}
}
