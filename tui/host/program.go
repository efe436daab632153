package host

import (
	"context"
	"fmt"
	"io"
	"os/exec"
)

// program does the verbs in a process of its own: a sheet that is made to take
// hours is ended with it, has one core at most, and gives way to the host. Nothing
// of the host's environment goes along.
func program(path string) Run {
	return func(ctx context.Context, args []string, stdin io.Reader, stdout, stderr io.Writer) int {
		cmd := exec.CommandContext(ctx, path, args...)
		cmd.Env = []string{"GOMAXPROCS=1", "GOMEMLIMIT=" + programMemory}
		cmd.Dir = "/"
		cmd.Stdin, cmd.Stdout, cmd.Stderr = stdin, stdout, stderr
		apart(cmd)
		cmd.WaitDelay = outputLimit
		if err := cmd.Start(); err != nil {
			fmt.Fprintln(stderr, "trivet: the host cannot do that now: try again in a moment")
			return cannotDo
		}
		giveWay(cmd.Process.Pid)
		_ = cmd.Wait() // how it ended is in the state
		if code := cmd.ProcessState.ExitCode(); code >= 0 {
			return code
		}
		return cannotDo // ended by a signal
	}
}
