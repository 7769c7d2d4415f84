package folder

import "testing"

func TestEveryFindingIsNamedWithTheRidesThatWaitForIt(t *testing.T) {
	eachCase(t, "findings", func(f *Folder) string {
		if ms := f.Mistakes(); len(ms) > 0 {
			t.Errorf("the folder has mistakes:\n%s", shown(ms))
		}
		return shown(f.Findings(0))
	})
}
