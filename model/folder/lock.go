package folder

import (
	"bytes"
	"encoding/json"
	"os"
	"time"

	"github.com/gofrs/flock"
)

const (
	lockFile   = "history/lock"   // empty; the system knows who holds it, and lets go when he dies
	holderFile = "history/holder" // who holds it, for the one who is refused; of no account otherwise
)

// lockWait is how long a write waits for another to end. A write takes
// milliseconds.
var lockWait = 3 * time.Second

// holder is who writes.
type holder struct {
	By    string
	Host  string
	Since time.Time
}

// lock makes this the only writer of the folder until it is released.
func (d disk) lock(by string) (release func(), err error) {
	if err := d.makeDirs("history"); err != nil {
		return nil, &DiskError{Err: err}
	}
	if err := before("lock", lockFile); err != nil {
		return nil, &DiskError{Err: err}
	}
	l := flock.New(d.path(lockFile), flock.SetPermissions(0o666))
	for end := time.Now().Add(lockWait); ; time.Sleep(5 * time.Millisecond) {
		got, err := l.TryLock()
		if err != nil {
			return nil, &DiskError{Err: err}
		}
		if got {
			break
		}
		if time.Now().After(end) {
			return nil, d.busy()
		}
	}
	host, _ := os.Hostname() // not known: a name is all that is lost
	text, err := json.Marshal(holder{by, host, time.Now()})
	if err == nil {
		if err = before("write", holderFile); err == nil {
			err = os.WriteFile(d.path(holderFile), text, 0o666)
		}
	}
	if err != nil {
		l.Unlock()
		return nil, &DiskError{Err: err}
	}
	return func() {
		os.Remove(d.path(holderFile))
		l.Unlock()
	}, nil
}

// busy says who holds the lock.
func (d disk) busy() error {
	var h holder
	text, err := d.read(holderFile)
	if err != nil || json.NewDecoder(bytes.NewReader(text)).Decode(&h) != nil {
		h = holder{}
	}
	return &BusyError{By: h.By, Host: h.Host, Since: h.Since}
}
