package model

import (
	"fmt"
	"strings"
)

// workWords is work in minutes, with decimals only where a factor left some.
func workWords(work int64) string {
	if work%workUnit == 0 {
		return fmt.Sprint(work / workUnit)
	}
	return strings.TrimRight(fmt.Sprintf("%d.%04d", work/workUnit, work%workUnit), "0")
}
