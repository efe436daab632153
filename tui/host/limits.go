package host

import (
	"context"
	"io"
	"time"

	"golang.org/x/time/rate"
)

// What one visitor, one address or all together may take. A class in one room
// often comes from one address; what it needs in all is set by the command.
const (
	maxW, maxH        = 300, 100 // a larger screen shows the rest blank
	maxSessions       = 4        // open at a time on one connection
	maxOpens          = 64       // sessions opened and requests refused on one connection, in a burst
	opensPerSecond    = 1        // and after the burst
	maxPayload        = 4 << 10  // bytes of one request on a session: a command, a terminal's name
	maxEnvBytes       = 1 << 10  // of all variables of a session together
	keyBurst          = 1024     // events that count as one paste without marks round it
	keysPerSecond     = 200      // sustained; a held key repeats 30 times
	lookBurst         = 60       // the same for one who only watches
	looksPerSecond    = 40
	typedBurst        = 128 << 10 // bytes typed at once
	typedPerSecond    = 32 << 10  // sustained, more only waits
	lookedBurst       = 4 << 10   // and again for one who only watches
	lookedPerSecond   = 1 << 10
	maxTyped          = 1 << 20     // bytes within typedSpan, more ends the visit
	typedSpan         = time.Minute //
	maxSilent         = 256 << 10   // bytes that come to no key: a paste that never ends
	wireBurst         = 2 << 20     // bytes of a connection at once: a sheet of the largest size and more
	wirePerSecond     = 128 << 10   // and after that, whatever they are
	comesBurst        = 3           // connections of one address, times those that may be there at a time: all come again
	comesPerSecond    = 5           // and after those
	keyComesBurst     = 10          // visits of one private visitor's key at once, more only wait
	keyComesPerSecond = 0.5
	deadlineSteps     = 64 // of the idle time, by which a deadline is late at most
	resizeEvery       = 200 * time.Millisecond
	resizeBurst       = 10 // changes of size at that pace, then
	resizesPerSecond  = 0.5
	asksBurst         = 2000 // requests on a session at once: a window is drawn to another size for half a minute
	asksPerSecond     = 50   // and after that, or the connection ends
	linesBurst        = 100  // lines of the log about those not admitted, or about the commands of one address, then
	linesPerHour      = 600
	visitLinesBurst   = 4                // the same about visits of one address, times those that may be there at a time: all come, go and come again
	longestWhy        = 200              // bytes of what is logged of a reason
	socketBytes       = 64 << 10         // several frames of a large screen
	stalledLimit      = 10 * time.Second // a write that does not get on
	privateIdle       = 2 * time.Hour    // without a key in a private workbench
	authTries         = 8                // agents hold several keys
	strangersInAll    = 512              // connections that have not said who they are; a class types its word at once
	strangersPart     = 4                // of an address's allowance one in so many is for those who have not said who they are
	wordTries         = 10               // wrong class words of an address a minute before any waits, where it has few places; else as many as it has places
	wordTriesInAll    = 1000             // wrong class words of all addresses together a minute before any waits
	addressesKept     = 4096             // addresses whose connections and wrong class words are remembered
	keysKept          = 10000            // keys that may come back through a closed door, or without the class word
	commandsAtOnce    = 1                // solve and check without a terminal; a sheet as people make them takes some milliseconds
	commandLimit      = 10 * time.Second // of computing
	commandWait       = 20 * time.Second // for those before
	inputsAtOnce      = 16               // sheets that come in at a time
	inputsByKey       = 4                // of these from one key
	inputLimit        = 30 * time.Second
	maxOutput         = 16 << 20         // bytes of an answer
	outputLimit       = 2 * time.Second  // for what is still to be sent once the process has ended
	programNice       = 10               // visitors' commands give way to the host
	programMemory     = "512MiB"         // from where on they collect garbage rather than grow
	lastBytes         = 256 << 20        // of maxKept, for what is saved where a session ends: of 1000 visitors a sheet of the largest size
	savingLimit       = 10 * time.Second // to save what private visitors had not, at the end
	privateRests      = 3                // times the time of a solve: at most a quarter of a core each
	farewellLimit     = 2 * time.Second  // for the last words to a visitor
)

// times are how long a connection may take over what it does, and may stay.
type times struct {
	handshake time.Duration // to offer keys and type a class word; twice that to come to a session
	ask       time.Duration // how often a client is asked whether it is there: a quiet watcher stays as long as the terminal answers
	answer    time.Duration // to answer that
	idle      time.Duration // without even that, or without a session
	visit     time.Duration // in all
}

// usual are the times of the product; tests have shorter ones.
func usual() times {
	return times{handshake: time.Minute, ask: 30 * time.Second, answer: 30 * time.Second, idle: 2 * time.Minute, visit: 12 * time.Hour}
}

// take takes n from a limiter and waits for what was not there, at most until a visit
// ends. More than the limiter ever has counts as all of it.
func take(ctx context.Context, by *rate.Limiter, n int) error {
	return by.WaitN(ctx, min(n, by.Burst()))
}

// full tells whether all of a limiter's burst is there again.
func full(by *rate.Limiter) bool { return by.Tokens() >= float64(by.Burst()) }

// sleep waits, but not beyond the end of a visit.
func sleep(d time.Duration, over <-chan struct{}) error {
	select {
	case <-time.After(d):
		return nil
	case <-over:
		return io.EOF
	}
}
