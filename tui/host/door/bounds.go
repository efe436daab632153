package door

// What one address, or all together, may take of the door.
const (
	MaxSessions     = 4         // open at a time on one connection
	maxOpens        = 64        // sessions opened and requests refused on one connection, in a burst
	opensPerSecond  = 1         // and after the burst
	wireBurst       = 2 << 20   // bytes of a connection at once: a sheet of the largest size and more
	wirePerSecond   = 128 << 10 // and after that, whatever they are
	comesBurst      = 3         // connections of one address, times those that may be there at a time: all come again
	comesPerSecond  = 5         // and after those
	deadlineSteps   = 64        // of the idle time, by which a deadline is late at most
	visitLinesBurst = 4         // lines of the log about visits of one address, times those that may be there at a time: all come, go and come again
	socketBytes     = 64 << 10  // several frames of a large screen
	authTries       = 8         // agents hold several keys
	strangersInAll  = 512       // connections that have not said who they are; a class types its word at once
	strangersPart   = 4         // of an address's allowance one in so many is for those who have not said who they are
	wordTries       = 10        // wrong class words of an address a minute before any waits, where it has few places; else as many as it has places
	wordTriesInAll  = 1000      // wrong class words of all addresses together a minute before any waits
	addressesKept   = 4096      // addresses whose connections and wrong class words are remembered
	KeysKept        = 10000     // keys that may come back through a closed door, or without the class word
)
