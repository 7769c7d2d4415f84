package folder

import (
	"fmt"
	"path/filepath"
)

// replace puts a file in place whole or not at all.
func replace(path string, data []byte) error {
	if err := disk(filepath.Dir(path)).put(filepath.Base(path), data); err != nil {
		return &DiskError{Err: fmt.Errorf("%s: %w", filepath.Base(path), err)}
	}
	return nil
}
