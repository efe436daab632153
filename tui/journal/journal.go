// Package journal keeps what is typed and not saved, so that a crash, a killed
// process or a lost line costs one keystroke at most.
//
// A journal is a file in the state folder: the text that a session began with,
// then a line for each edit kept and for each keystroke in a cell, with a
// checksum before it. A last line that is torn is passed over. There is one file a
// session, named after the sheet's absolute path, so that journals of one sheet
// are found together; the file is locked while the session lives, which is how
// two workbenches on one sheet see each other and how a dead one's is told. An
// orderly end removes it.
//
// Each record is written at once, so that it outlives the process; that takes
// about 4 µs for a keystroke (BenchmarkTyping) and does not wait for the disk. A session
// has it done beside its loop (Next, Note), so that a slow folder keeps no key waiting. The
// disk is flushed in the background, behind edits that were kept and behind
// saves; where this was measured that took 0.4 ms (BenchmarkFlush), too long to
// wait for at each key on a slower disk. So only a power failure can cost more
// than a keystroke: the cell being typed, and the last edit.
package journal

import (
	"crypto/rand"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"sync/atomic"

	"trivet/mechanics/sheet"
	"trivet/tui/xdg"
)

// Journal is the journal of one session. Its methods may be called from several
// goroutines, and never fail: where nothing can be written the session works on
// without, and Trouble says so once.
type Journal struct {
	mu      sync.Mutex
	folders []string // all in which journals may be
	folder  string   // of this one
	name    string   // of the file, "" before there is one
	file    *os.File // nil where nothing is kept
	size    int64
	limit   int64
	head    entry
	saved   string // the text that needs no journal
	text    string // of the last edit kept
	typed   *Typed // the cell being typed
	trouble string // not told yet
	wake    chan struct{}
	flushed chan struct{} // closed behind the last flush
	noted   int64         // the number of the last note
	asked   atomic.Int64  // that of the last one that was asked for
}

// Typed is a cell that was being typed. Where the sheet has no such row, it was
// the name of a new one or a result being asked for.
type Typed struct {
	sheet.Ref
	Text string
}

// maxJournal is how large a file may become before it is written anew, beside
// twice the sheet's text: some ten thousand keystrokes.
const maxJournal = 1 << 20

// Open begins the journal of a session with the sheet at path, "" for one that
// has no file yet, whose text counts as saved. env is the session's environment;
// where its state folder takes no journal, the first of the other folders does
// that can.
func Open(env []string, path, text string, others ...string) *Journal {
	j := &Journal{text: text, saved: text, head: session(), wake: make(chan struct{}, 1), flushed: make(chan struct{})}
	j.head.Path = absolute(path)
	go j.flush(j.wake)
	var err error
	j.folders, err = foldersOf(env, others)
	for _, j.folder = range j.folders {
		if err = os.MkdirAll(j.folder, 0o700); err == nil {
			err = j.begin()
		}
		if err == nil {
			break
		}
	}
	j.failed(err)
	return j
}

// foldersOf are all that journals may be in. The error counts where there is none.
func foldersOf(env, others []string) ([]string, error) {
	state, err := xdg.State(env)
	if err != nil {
		return others, err
	}
	return append([]string{filepath.Join(state, "journal")}, others...), nil
}

// failed gives up the journal, and keeps what was written so far for what it is worth.
func (j *Journal) failed(err error) {
	if err == nil {
		return
	}
	if j.file != nil {
		j.file.Close()
	}
	j.file = nil
	j.trouble = "no journal is kept, so a crash would cost what is not saved: " + cause(err)
}

// Trouble says, once, that no journal is kept and why; "" where there is nothing
// to say.
func (j *Journal) Trouble() string {
	j.mu.Lock()
	defer j.mu.Unlock()
	says := j.trouble
	j.trouble = ""
	return says
}

// Kept tells whether what was typed is in a file.
func (j *Journal) Kept() bool {
	j.mu.Lock()
	defer j.mu.Unlock()
	return j.file != nil
}

// begin writes a file with what there is now and puts it in the place of the
// old one, at once: there is never none, and never two of one sheet. It is
// locked before it has its name, so that nobody takes it for a dead session's.
func (j *Journal) begin() error {
	name := j.name
	if begins := prefix(j.head.Path); !strings.HasPrefix(filepath.Base(name), begins) {
		name = filepath.Join(j.folder, begins+rand.Text()[:10]+fileEnd)
	}
	f, err := os.OpenFile(name+tempEnd, os.O_WRONLY|os.O_CREATE|os.O_EXCL|os.O_APPEND, 0o600)
	if err != nil {
		return err
	}
	lock(f) // where it can't be locked, the process's number tells
	j.head.Text, j.head.Dirty = j.text, j.text != j.saved
	line := record(j.head)
	if j.typed != nil {
		line = append(line, record(entry{Kind: kindTyping, Typed: j.typed})...)
	}
	_, err = f.Write(line)
	if err == nil {
		err = os.Rename(name+tempEnd, name)
	}
	if err != nil {
		f.Close()
		os.Remove(name + tempEnd)
		return err
	}
	if j.file != nil {
		j.file.Close()
		if name != j.name {
			os.Remove(j.name)
		}
	}
	j.file, j.name = f, name
	j.size, j.limit = int64(len(line)), maxJournal+2*int64(len(j.text))
	j.signal()
	return nil
}

// write adds a record.
func (j *Journal) write(e entry) {
	if j.file == nil {
		return
	}
	line := record(e)
	if j.size+int64(len(line)) > j.limit {
		j.failed(j.begin()) // which has what the record says already
		return
	}
	n, err := j.file.Write(line)
	j.size += int64(n)
	j.failed(err)
}

// Next numbers a note as it is asked for: one that is written later than a newer one is
// dropped.
func (j *Journal) Next() int64 { return j.asked.Add(1) }

// Note keeps the sheet's text and the cell being typed, nil for none, as they were when
// the note was numbered. It may come from any goroutine.
func (j *Journal) Note(n int64, text string, typed *Typed) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if n < j.noted {
		return
	}
	j.noted = n
	if text != j.text || typed == nil {
		j.commit(text)
	}
	if typed != nil {
		j.typing(*typed)
	}
}

// Commit notes the sheet's text after an edit that was kept, undone or redone.
// The cell being typed is done with.
func (j *Journal) Commit(text string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	j.commit(text)
}

func (j *Journal) commit(text string) {
	if text == j.text && j.typed == nil {
		return
	}
	e := entry{Kind: kindCommit}
	e.At, e.Gone, e.New = between(j.text, text)
	j.text, j.typed = text, nil
	j.write(e)
	j.signal()
}

// Typing notes a cell as it is being typed; call it at every keystroke.
func (j *Journal) Typing(ref sheet.Ref, text string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	j.typing(Typed{ref, text})
}

func (j *Journal) typing(t Typed) {
	if j.typed != nil && *j.typed == t {
		return
	}
	j.typed = &t
	j.write(entry{Kind: kindTyping, Typed: j.typed})
}

// Cancelled notes that the cell being typed was given up.
func (j *Journal) Cancelled() {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.typed != nil {
		j.typed = nil
		j.write(entry{Kind: kindTyping})
	}
}

// Saved notes that a text was written to path, which may be a new one. What was
// kept or typed meanwhile stays in the journal.
func (j *Journal) Saved(path, text string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	j.head.Path, j.saved = absolute(path), text
	if j.file != nil {
		j.failed(j.begin())
	}
}

// Beat tells workbenches that can't see this process, on other machines with
// the same home, that the session lives. Once in half a minute is enough.
func (j *Journal) Beat() {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.file != nil {
		touch(j.name)
	}
}

// Close ends the session in order: there is nothing to recover.
func (j *Journal) Close() {
	j.end(func() { os.Remove(j.name) })
	<-j.flushed
}

// Leave ends the session and leaves what it has not saved to be recovered.
func (j *Journal) Leave() {
	j.end(func() { _ = j.file.Sync() })
	<-j.flushed
}

func (j *Journal) end(last func()) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.wake != nil {
		close(j.wake)
		j.wake = nil
	}
	if j.file != nil {
		last()
		j.file.Close()
		j.file = nil
	}
}

// signal asks for the disk to be flushed, and does not wait for it.
func (j *Journal) signal() {
	select {
	case j.wake <- struct{}{}:
	default: // it is asked for already, or the journal is closed
	}
}

func (j *Journal) flush(wake <-chan struct{}) {
	defer close(j.flushed)
	for range wake {
		j.mu.Lock()
		f := j.file
		j.mu.Unlock()
		if f != nil {
			// Where it fails, the next write says so; where the file was replaced
			// meanwhile, the new one is flushed next.
			_ = f.Sync()
		}
	}
}
