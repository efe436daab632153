package journal

import (
	"os"
	"time"
)

// session is what a journal says of the one that writes it.
func session() entry {
	return entry{Kind: kindHead, Host: hostname(), Pid: os.Getpid(), Start: started(os.Getpid()), Opened: time.Now()}
}

func hostname() string {
	name, err := os.Hostname()
	if err != nil {
		return "unknown"
	}
	return name
}

// beats is how long a session that can't be seen counts as living after its
// last sign of life, three of the beats asked for.
const beats = 90 * time.Second

// living judges a session whose file has no lock to ask: on this machine by its
// process, which must have begun when the journal says, since numbers are used
// again; elsewhere by its last sign of life.
func living(e entry, last time.Time) bool {
	if e.Host != hostname() {
		return time.Since(last) < beats
	}
	exists, known := running(e.Pid)
	if !known {
		return time.Since(last) < beats
	}
	return exists && (e.Start == "" || started(e.Pid) == e.Start)
}

func touch(name string) {
	now := time.Now()
	_ = os.Chtimes(name, now, now) // a beat that is missed is made up for by the next
}
