package journal

import (
	"os"
	"strconv"
	"strings"
)

// started tells a process from a later one with its number: the boot, and the
// clock ticks from there to its start (field 22 of /proc/PID/stat, proc(5)).
func started(pid int) string {
	stat, err := os.ReadFile("/proc/" + strconv.Itoa(pid) + "/stat")
	if err != nil {
		return ""
	}
	boot, _ := os.ReadFile("/proc/sys/kernel/random/boot_id")
	// The second field is a name in parentheses that may hold anything.
	fields := strings.Fields(string(stat[strings.LastIndexByte(string(stat), ')')+1:]))
	const start = 22 - 3 // the third field is the first behind the name
	if len(fields) <= start {
		return ""
	}
	return strings.TrimSpace(string(boot)) + " " + fields[start]
}
