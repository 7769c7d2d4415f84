package folder

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"tackwright/model"
)

//go:embed new/*.toml
var newFiles embed.FS

// New makes a folder for a centre: files with a worked example of each table,
// to be filled in, in which there is no mistake and, from today on, no finding.
// It refuses a folder that holds files already, but for hidden ones.
func New(dir, name string, today model.Date) error {
	if bad := badName(name); bad != "" {
		return errors.New(bad)
	}
	entries, err := os.ReadDir(dir)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("the folder cannot be made: %w", err)
	}
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			return fmt.Errorf("the folder %s is not empty: it holds %s", dir, e.Name())
		}
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return fmt.Errorf("the folder cannot be made: %w", err)
	}
	fill := strings.NewReplacer("{name}", quote(name), "{today}", today.String(), "{half}", (today + 182).String(),
		"{year}", (today + 365).String(), "{foaled}", fmt.Sprint(today.Year()-12))
	files, err := fs.Glob(newFiles, "new/*.toml")
	if err != nil {
		return err
	}
	for _, file := range files {
		text, err := newFiles.ReadFile(file)
		if err != nil {
			return err
		}
		if err := replace(filepath.Join(dir, filepath.Base(file)), []byte(fill.Replace(string(text)))); err != nil {
			return err
		}
	}
	return nil
}
