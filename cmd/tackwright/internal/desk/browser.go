package desk

import (
	"os/exec"
	"runtime"
)

// OpenBrowser shows an address in the browser of whoever sits at this computer.
// Where there is none nothing happens: the address is printed as well.
func OpenBrowser(address string) {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	case "darwin":
		name = "open"
	}
	cmd := exec.Command(name, args...)
	if cmd.Start() == nil {
		go cmd.Wait()
	}
}
