package folder

import (
	"errors"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"github.com/natefinch/atomic"
)

// before is asked ahead of every single thing that is done to the disk. Tests
// count there, let it fail there, or end the process there.
var before = func(doing, file string) error { return nil }

// halfDone begins the name of every file that is not yet in its place. It is
// hidden and no TOML, so that nothing reads it; the next write clears it away.
const halfDone = ".writing-"

// disk is a centre's folder as files; names are relative to it, with "/".
type disk string

func (d disk) path(name string) string { return filepath.Join(string(d), filepath.FromSlash(name)) }

// read is the content of a file; nil is that there is none, and an empty file
// is not nil.
func (d disk) read(name string) ([]byte, error) {
	data, err := os.ReadFile(d.path(name))
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err == nil && data == nil {
		data = []byte{}
	}
	return data, err
}

// stage writes a file under a name that nothing reads, beside where it is to be,
// and brings it to the disk.
func (d disk) stage(name string, data []byte) (staged string, err error) {
	if err := d.makeDirs(path.Dir(name)); err != nil {
		return "", err
	}
	if err := before("create", name); err != nil {
		return "", err
	}
	f, err := os.CreateTemp(d.path(path.Dir(name)), halfDone+"*")
	if err != nil {
		return "", err
	}
	staged = path.Join(path.Dir(name), filepath.Base(f.Name()))
	defer func() {
		if err != nil {
			f.Close()
			os.Remove(f.Name())
		}
	}()
	for _, half := range [][]byte{data[:len(data)/2], data[len(data)/2:]} { // a crash may fall between
		if err := before("write", name); err != nil {
			return "", err
		}
		if _, err := f.Write(half); err != nil {
			return "", err
		}
	}
	mode := fs.FileMode(0o644) // a temporary file is for its owner alone
	if old, err := os.Stat(d.path(name)); err == nil {
		mode = old.Mode().Perm()
	}
	if err := f.Chmod(mode); err != nil && runtime.GOOS != "windows" {
		return "", err
	}
	if err := before("sync", name); err != nil {
		return "", err
	}
	if err := f.Sync(); err != nil {
		return "", err
	}
	return staged, f.Close()
}

// place renames a staged file over the one that it is to be.
func (d disk) place(staged, name string) error {
	if err := before("rename", name); err != nil {
		return err
	}
	return patiently(func() error { return atomic.ReplaceFile(d.path(staged), d.path(name)) })
}

// put stages and places a file, and brings its place to the disk too.
func (d disk) put(name string, data []byte) error {
	staged, err := d.stage(name, data)
	if err != nil {
		return err
	}
	if err := d.place(staged, name); err != nil {
		os.Remove(d.path(staged))
		return err
	}
	return d.syncDir(path.Dir(name))
}

// remove removes a file; that it is not there is no error.
func (d disk) remove(name string) error {
	if err := before("remove", name); err != nil {
		return err
	}
	err := patiently(func() error { return os.Remove(d.path(name)) })
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}

// syncDir brings the names in a directory to the disk. Windows has no such call:
// there the rename itself is written through.
func (d disk) syncDir(dir string) error {
	if runtime.GOOS == "windows" {
		return nil
	}
	if err := before("sync", dir+"/"); err != nil {
		return err
	}
	f, err := os.Open(d.path(dir))
	if err != nil {
		return err
	}
	defer f.Close()
	return f.Sync()
}

// makeDirs makes a directory and those above it, as far as they are not there.
func (d disk) makeDirs(dir string) error {
	if info, err := os.Stat(d.path(dir)); err == nil && info.IsDir() {
		return nil
	}
	if up := path.Dir(dir); up != dir {
		if err := d.makeDirs(up); err != nil {
			return err
		}
	}
	if err := before("mkdir", dir+"/"); err != nil {
		return err
	}
	if err := os.Mkdir(d.path(dir), 0o777); err != nil && !errors.Is(err, fs.ErrExist) {
		return err
	}
	return d.syncDir(path.Dir(dir))
}

// clear removes what a crash or a full disk left half done.
func (d disk) clear() error {
	dirs := []string{".", "plans", "notes", "posted", "ridden", "standing", "history", "ticks"}
	shards, err := d.shards()
	if err != nil {
		return err
	}
	dirs = append(dirs, shards[:min(2, len(shards))]...)
	for _, dir := range dirs {
		entries, err := os.ReadDir(d.path(dir))
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		for _, e := range entries {
			if strings.HasPrefix(e.Name(), halfDone) && !e.IsDir() {
				if err := d.remove(path.Join(dir, e.Name())); err != nil {
					return err
				}
			}
		}
	}
	return nil
}

// patiently does a thing again where Windows refuses it while somebody reads
// the file or a scanner of viruses looks at it.
func patiently(do func() error) error {
	err := do()
	for wait := 10 * time.Millisecond; err != nil && !errors.Is(err, fs.ErrNotExist) && runtime.GOOS == "windows" && wait < time.Second; wait *= 2 {
		time.Sleep(wait)
		err = do()
	}
	return err
}
