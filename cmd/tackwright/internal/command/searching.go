package command

import (
	"context"
	"io"
	"os"
	"os/exec"
	"time"

	"tackwright/cmd/tackwright/internal/desk/search"
)

// searching is the word behind which the desk starts this program for a search.
// It is no command: it takes its request from standard input.
const searching = "(searching)"

// searcher has a search of the desk run by a process of its own.
func searcher(c *call) search.Runner {
	return func(ctx context.Context, in io.Reader, out io.Writer) error {
		self, err := os.Executable()
		if err != nil {
			return err
		}
		cmd := exec.CommandContext(ctx, self, searching)
		cmd.Stdin, cmd.Stdout, cmd.Stderr = in, out, c.err
		cmd.WaitDelay = 2 * time.Second
		return cmd.Run()
	}
}
