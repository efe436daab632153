package journal

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"io"
	"io/fs"
	"os"
	"strings"
	"sync"
	"syscall"
	"time"
)

// entry is a record: the head of a file, an edit kept, or a cell being typed.
type entry struct {
	Kind string `json:"k"`

	Path   string    `json:"path,omitempty"`
	Text   string    `json:"text,omitempty"`
	Dirty  bool      `json:"dirty,omitempty"`
	Host   string    `json:"host,omitempty"`
	Pid    int       `json:"pid,omitempty"`
	Start  string    `json:"start,omitempty"`
	Opened time.Time `json:"opened,omitzero"`

	At   int    `json:"at,omitempty"` // byte At: Gone bytes became New
	Gone int    `json:"gone,omitempty"`
	New  string `json:"new,omitempty"`

	Typed *Typed `json:"typed,omitempty"`
}

const (
	kindHead   = "trivet-journal-1"
	kindCommit = "c"
	kindTyping = "t" // without Typed: given up
)

// maxFile bounds what is read of a journal: begin writes it anew long before.
const maxFile = 16 << 20

// crc is that of Castagnoli, for which processors have an instruction. It is
// never written to; its table takes a fifth of a millisecond to make.
var crc = sync.OnceValue(func() *crc32.Table { return crc32.MakeTable(crc32.Castagnoli) })

// record writes an entry as a line: checksum, blank, JSON.
func record(e entry) []byte {
	body, err := json.Marshal(e)
	if err != nil {
		return nil // cannot be: an entry holds texts and numbers only
	}
	return fmt.Appendf(nil, "%08x %s\n", crc32.Checksum(body, crc()), body)
}

// parse reads a line with its line end.
func parse(line []byte) (entry, bool) {
	var e entry
	sum, body, ok := bytes.Cut(line, []byte{' '})
	body, whole := bytes.CutSuffix(body, []byte{'\n'})
	if !ok || !whole || string(sum) != fmt.Sprintf("%08x", crc32.Checksum(body, crc())) {
		return e, false
	}
	return e, json.Unmarshal(body, &e) == nil
}

// kept is what a journal holds.
type kept struct {
	entry        // the head
	text  string // after the last edit kept
	typed *Typed
}

// read goes through a journal up to the first record that is torn or does not fit.
func read(r io.Reader) (kept, bool) {
	var k kept
	b := bufio.NewReader(io.LimitReader(r, maxFile))
	for first := true; ; first = false {
		line, err := b.ReadBytes('\n')
		e, ok := parse(line)
		switch {
		case first && (!ok || e.Kind != kindHead):
			return k, false
		case !ok || err != nil:
			return k, true
		case first:
			k.entry, k.text = e, e.Text
		case e.Kind == kindCommit && e.At >= 0 && e.Gone >= 0 && e.At <= len(k.text) && e.Gone <= len(k.text)-e.At:
			k.text, k.typed = k.text[:e.At]+e.New+k.text[e.At+e.Gone:], nil
		case e.Kind == kindTyping:
			k.typed = e.Typed
		default:
			return k, true
		}
	}
}

// dirty tells whether there is anything that was not saved.
func (k kept) dirty() bool { return k.Dirty || k.text != k.Text || k.typed != nil }

// between gives the change from one text to another: at a byte, how many are
// gone, what is new. Its ends lie between characters, since JSON holds those.
func between(old, now string) (at, gone int, text string) {
	for at < len(old) && at < len(now) && old[at] == now[at] {
		at++
	}
	end := 0
	for end < len(old)-at && end < len(now)-at && old[len(old)-1-end] == now[len(now)-1-end] {
		end++
	}
	for at > 0 && at < len(now) && continues(now[at]) || at > 0 && at < len(old) && continues(old[at]) {
		at--
	}
	for end > 0 && (continues(now[len(now)-end]) || continues(old[len(old)-end])) {
		end--
	}
	return at, len(old) - end - at, now[at : len(now)-end]
}

// continues tells a byte in the middle of a character.
func continues(b byte) bool { return b&0xc0 == 0x80 }

// cause leaves the path out of a system error.
func cause(err error) string {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.Is(err, syscall.ENOSPC), errors.Is(err, syscall.EDQUOT):
		return "the disk of the state folder is full"
	case errors.Is(err, syscall.EROFS), errors.Is(err, fs.ErrPermission):
		return "nothing may be written in the state folder"
	case errors.As(err, &p):
		return strings.TrimSpace(p.Op + ": " + p.Err.Error())
	case errors.As(err, &l):
		return l.Op + ": " + l.Err.Error()
	}
	return err.Error()
}
