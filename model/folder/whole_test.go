package folder

import (
	"fmt"
	"os"
	"reflect"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2/unstable"
)

// whole is a folder that uses every key of every table, each with a value other
// than what holds without it.
func whole(t testing.TB) string {
	text, err := os.ReadFile("testdata/whole.toml")
	if err != nil {
		t.Fatal(err)
	}
	return strings.ReplaceAll(string(text), "\r\n", "\n")
}

func TestEveryKeyOfEveryTableIsReadAndCounts(t *testing.T) {
	text := whole(t)
	f := openText(t, text)
	if got := shown(f.Mistakes()); got != "" {
		t.Fatal(got)
	}
	want := dump(f)
	root, _ := parse("all.toml", []byte(text))
	used := map[string]bool{}
	var walk func(head string, n *node)
	walk = func(head string, n *node) {
		for _, x := range n.items {
			walk(head, x)
		}
		for _, p := range n.pairs {
			path := head + "." + p.key
			used[strings.TrimPrefix(path, ".")] = true
			walk(path, p.val)
			if head == "" || p.val.kind == unstable.Array && p.val.made == byHeader {
				continue
			}
			without := text[:p.start] + text[p.val.end:]
			if rest := strings.TrimLeft(text[p.val.end:], " "); strings.HasPrefix(rest, ",") {
				without = text[:p.start] + rest[1:]
			}
			g := openText(t, without)
			if len(g.Mistakes()) == 0 && dump(g) == want {
				t.Errorf("%s at %s says nothing that the centre does not have without it", path, p.span())
			}
		}
	}
	walk("", root)
	for _, s := range sections {
		for _, l := range s.sheet.lines {
			if !used[s.name+"."+l.name] {
				t.Errorf("testdata/whole.toml does not use %s of %s", l.name, s.sheet.head)
			}
		}
	}
}

// dump is everything that a centre holds, with nouns within others by name.
func dump(f *Folder) string {
	var b strings.Builder
	write(&b, reflect.ValueOf(f.Centre).Elem(), 0)
	return b.String()
}

func write(b *strings.Builder, v reflect.Value, depth int) {
	switch v.Kind() {
	case reflect.Pointer:
		if v.IsNil() {
			b.WriteString("none")
		} else if name := v.Elem().FieldByName("Name"); depth > 2 && name.IsValid() {
			fmt.Fprint(b, name)
		} else if tag := v.Elem().FieldByName("Tag"); depth > 2 && tag.IsValid() {
			fmt.Fprint(b, tag)
		} else {
			write(b, v.Elem(), depth+1)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			b.WriteString(v.Type().Field(i).Name + " ")
			write(b, v.Field(i), depth+1)
			b.WriteString("\n")
		}
	case reflect.Slice:
		for i := range v.Len() {
			write(b, v.Index(i), depth+1)
			b.WriteString(", ")
		}
	case reflect.Map:
		fmt.Fprint(b, v) // fmt sorts its keys
	default:
		fmt.Fprint(b, v)
	}
}
