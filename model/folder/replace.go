package folder

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"

	"github.com/natefinch/atomic"
)

// replace puts a file in place whole or not at all: it is written beside it,
// brought to the disk, and renamed over it.
func replace(path string, data []byte) error {
	_, err := os.Lstat(path)
	isNew := err != nil
	if err := atomic.WriteFile(path, bytes.NewReader(data)); err != nil {
		return fmt.Errorf("%s cannot be written: %w", filepath.Base(path), err)
	}
	if isNew { // a temporary file is for its owner alone
		if err := os.Chmod(path, 0o644); err != nil {
			return err
		}
	}
	if runtime.GOOS == "windows" {
		return nil // the rename itself is written through there
	}
	dir, err := os.Open(filepath.Dir(path))
	if err != nil {
		return err
	}
	defer dir.Close()
	return dir.Sync()
}
