package model

import "reflect"

// deepCopy copies a value with all that it leads to; what is shared, or leads
// back, is so in the copy as well. It is for nouns, which have exported fields
// alone.
func deepCopy[T any](v *T) *T {
	return copied(reflect.ValueOf(v), map[any]reflect.Value{}).Interface().(*T)
}

func copied(v reflect.Value, done map[any]reflect.Value) reflect.Value {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			return v
		}
		if c, ok := done[v.Interface()]; ok {
			return c
		}
		c := reflect.New(v.Type().Elem())
		done[v.Interface()] = c
		c.Elem().Set(copied(v.Elem(), done))
		return c
	case reflect.Struct:
		c := reflect.New(v.Type()).Elem()
		for i := range v.NumField() {
			c.Field(i).Set(copied(v.Field(i), done))
		}
		return c
	case reflect.Slice:
		if v.IsNil() {
			return v
		}
		c := reflect.MakeSlice(v.Type(), v.Len(), v.Len())
		for i := range v.Len() {
			c.Index(i).Set(copied(v.Index(i), done))
		}
		return c
	case reflect.Map:
		if v.IsNil() {
			return v
		}
		c := reflect.MakeMap(v.Type())
		for _, k := range v.MapKeys() {
			c.SetMapIndex(k, copied(v.MapIndex(k), done))
		}
		return c
	}
	return v
}
