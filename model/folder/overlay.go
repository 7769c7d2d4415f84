package folder

import (
	"errors"
	"slices"
	"strings"
)

// with is the folder as it will be when files hold other texts; nil is that a
// file is gone. Nothing is written.
func (f *Folder) with(texts map[string][]byte) (*Folder, error) {
	d := disk(f.Dir)
	at, err := state(f.Dir)
	if err != nil {
		return nil, err
	}
	over := &journal{}
	if at.under != nil {
		over.Files = slices.DeleteFunc(slices.Clone(at.under.Files), func(x journalled) bool { _, anew := texts[x.Name]; return anew })
	}
	for _, name := range sortedKeys(texts) {
		now, err := d.read(name)
		if err != nil {
			return nil, err
		}
		over.Files = append(over.Files, journalled{name, digest(now), texts[name], texts[name] == nil})
	}
	return open(f.Dir, 0, states{at.last, over})
}

// Begin is a folder for a centre that has none yet: it is read as if it were
// there, and made with the first thing that is written into it.
func Begin(dir, name string) (*Folder, error) {
	text, err := beginning(name)
	if err != nil {
		return nil, err
	}
	fresh := map[string][]byte{"centre.toml": text}
	f, err := (&Folder{Dir: dir}).with(fresh)
	if err != nil {
		return nil, err
	}
	f.fresh = fresh
	delete(f.known, "centre.toml")
	return f, nil
}

// Begins reports whether the folder is one of [Begin] that is not there yet.
func (f *Folder) Begins() bool { return len(f.fresh) > 0 }

func (f *Folder) isFresh(file string) bool { return f.fresh[file] != nil }

// beginning is the file of a centre that begins: the one of a new folder, without
// the examples in it.
func beginning(name string) ([]byte, error) {
	if bad := badName(name); bad != "" {
		return nil, errors.New(bad)
	}
	text, err := newFiles.ReadFile("new/centre.toml")
	settings, _, _ := strings.Cut(string(text), "\n# Everybody")
	settings = strings.Replace(settings, "\nlevels =", "\n# levels =", 1)
	return []byte(strings.ReplaceAll(settings, "{name}", quote(name))), err
}
