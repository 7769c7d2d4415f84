package folder

import (
	"fmt"
	"regexp"
)

// A rider who was forgotten stands in the records under a name that says no
// more than that, so that the horses' record stays whole.

var forgottenNames = regexp.MustCompile(`^rider forgotten (\d+)$`)

func forgottenName(n int) string { return fmt.Sprintf("rider forgotten %d", n) }

func isForgotten(name string) bool { return forgottenNames.MatchString(name) }

var forgottenAnywhere = regexp.MustCompile(`rider forgotten (\d+)`)
