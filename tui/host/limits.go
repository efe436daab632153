package host

import "time"

// What one visitor, one address or all together may take, but for what the rooms below
// bound. A class in one room often comes from one address; what it needs in all is set by
// the command.
const (
	maxPayload       = 4 << 10 // bytes of one request on a session: a command, a terminal's name
	maxEnvBytes      = 1 << 10 // of all variables of a session together
	resizeEvery      = 200 * time.Millisecond
	resizeBurst      = 10 // changes of size at that pace, then
	resizesPerSecond = 0.5
	asksBurst        = 2000             // requests on a session at once: a window is drawn to another size for half a minute
	asksPerSecond    = 50               // and after that, or the connection ends
	longestWhy       = 200              // bytes of what is logged of a reason
	privateIdle      = 2 * time.Hour    // without a key in a private workbench
	commandLimit     = 10 * time.Second // of computing
	commandWait      = 20 * time.Second // for those before
	inputsAtOnce     = 16               // sheets that come in at a time
	inputLimit       = 30 * time.Second
	maxOutput        = 16 << 20         // bytes of an answer
	outputLimit      = 2 * time.Second  // for what is still to be sent once the process has ended
	programNice      = 10               // visitors' commands give way to the host
	programMemory    = "512MiB"         // from where on they collect garbage rather than grow
	savingLimit      = 10 * time.Second // to save what private visitors had not, at the end
	privateRests     = 3                // times the time of a solve: at most a quarter of a core each
	farewellLimit    = 2 * time.Second  // for the last words to a visitor
)
