package folder

import (
	"fmt"
	"time"

	"tackwright/model"
)

// A write that returns an error has changed nothing (but see Uncertain), and says
// why in one of these types. Anything else that it returns is that the folder cannot be read.

// DiskError is that the disk did not take a change: it is full, or the folder
// may not be written. A program ends with status 3 for it.
type DiskError struct {
	Err       error
	Uncertain bool // the disk failed in the one moment in which nobody can tell: look whether the change is there
}

func (e *DiskError) Error() string {
	if e.Uncertain {
		return fmt.Sprintf("the disk failed, and the change may be there or not; open the folder and look: %s", e.Err)
	}
	return fmt.Sprintf("nothing was changed, because the folder cannot be written: %s", e.Err)
}

func (e *DiskError) Unwrap() error { return e.Err }

// BusyError is that somebody else was writing into the folder all the while. A
// program ends with status 3 for it.
type BusyError struct {
	By    string    // who; "" not known
	Host  string    // on which computer
	Since time.Time // from when on
}

func (e *BusyError) Error() string {
	if e.By == "" {
		return "nothing was changed, because another program is writing into this folder; try again in a moment"
	}
	return fmt.Sprintf("nothing was changed, because %s has been writing into this folder on the computer %s since %s; try again in a moment",
		e.By, e.Host, e.Since.Format("15:04:05"))
}

// ChangedError is that a file has changed since the folder was opened, so that
// what was to be written goes by what is no longer there. Opening the folder
// again and repeating is always safe.
type ChangedError struct {
	File   string  // relative to the folder
	Change *Change // of the program, by another sitting; nil: by hand
}

func (e *ChangedError) Error() string {
	if c := e.Change; c != nil {
		return fmt.Sprintf("nothing was changed, because %s is newer than what was read of the folder: %s, by %s, %s; look at it, and do this again", e.File, c.What, c.By, instantText(c.At))
	}
	return fmt.Sprintf("nothing was changed, because %s was edited since the folder was read; look at it, and do this again: the edit then counts", e.File)
}

// RefusedError is that a change makes no sense, or is not allowed. A program
// ends with status 1 for it.
type RefusedError struct{ Why string }

func (e *RefusedError) Error() string { return "nothing was changed: " + e.Why }

func refuse(format string, args ...any) error { return &RefusedError{fmt.Sprintf(format, args...)} }

// instantText is a date and time as TOML has it.
func instantText(i model.Instant) string { return i.Date.String() + "T" + i.Minute.String() }
