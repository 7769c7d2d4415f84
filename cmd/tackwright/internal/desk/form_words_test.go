package desk

import (
	"slices"
	"testing"

	"tackwright/model/folder"
)

func TestEachKeyOfARecordIsOnceInItsForm(t *testing.T) {
	for _, r := range records {
		var has, said []string
		for _, c := range folder.Columns(r.table) {
			has = append(has, c.Key)
		}
		labels := map[string]bool{}
		for _, p := range formParts[r.table] {
			for _, k := range p.keys {
				said = append(said, k.key)
				if labels[k.label] {
					t.Errorf("%s: two keys are called %q", r.table, k.label)
				}
				labels[k.label] = true
			}
		}
		slices.Sort(has)
		slices.Sort(said)
		if !slices.Equal(has, said) {
			t.Errorf("%s has %q, its form %q", r.table, has, said)
		}
	}
}
