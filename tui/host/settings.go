package host

import (
	"errors"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/netip"
	"os"
	"path/filepath"
	"slices"

	gossh "golang.org/x/crypto/ssh"

	"trivet/mechanics/diag"
	"trivet/mechanics/printable"
	"trivet/tui"
	"trivet/tui/host/door"
	"trivet/tui/host/pace"
	"trivet/tui/host/store"
)

// Settings are what the command is called with.
type Settings struct {
	Listen     string
	Sheet      string // to present
	Private    string // or a folder of sheets, for a workbench each
	Set        string // or the file of a set, to practise
	Presenters string // files of keys
	Watchers   string
	Word       bool
	Open       bool
	State      string // the host's own folder
	Log        string // a file; empty for standard error
	Most       int    // visitors in all
	ByPlace    int    // and from one address

	Env []string // the host's own environment: where its journals are
}

// The defaults of the command.
const (
	defaultListen  = "127.0.0.1:2222"
	defaultMax     = 1100
	defaultByPlace = 200
)

// loopback tells whether only this machine reaches an address. A name that is
// not localhost counts as reached by others.
func loopback(address string) (bool, error) {
	name, _, err := net.SplitHostPort(address)
	if err != nil {
		return false, diag.New(fmt.Sprintf("%q is not an address to listen on", address), "127.0.0.1:2222, or :2222 for every address of this machine")
	}
	if name == "localhost" {
		return true, nil
	}
	a, err := netip.ParseAddr(name)
	return err == nil && a.IsLoopback(), nil
}

// check refuses what is contradictory or opens a door that nobody asked to open.
func (o Settings) check() error {
	switch named := slices.DeleteFunc([]string{o.Sheet, o.Private, o.Set}, func(s string) bool { return s == "" }); len(named) {
	case 0:
		return diag.New("no sheet to present is named", "`trivet host mast.toml`, a folder with --private, or a set with --set")
	case 1:
	default:
		return diag.New("a host presents a sheet, or offers a folder with --private, or a set with --set", "one of them")
	}
	if o.Most < 1 || o.ByPlace < 1 {
		return errors.New("--most and --per-address are at least 1")
	}
	if o.Open && (o.Word || o.Watchers != "") {
		return diag.New("--open lets anybody in, so --word and --watchers have no effect", "leave one of them out")
	}
	near, err := loopback(o.Listen)
	if err != nil {
		return err
	}
	if !near && !o.Open && !o.Word && o.Watchers == "" && o.Presenters == "" {
		return diag.New(o.Listen+" is reached from other machines, but nobody is admitted", "--watchers FILE, --word or --presenters FILE, or --open for anybody")
	}
	return nil
}

// private tells that each visitor has a workbench.
func (o Settings) private() bool { return o.Private != "" || o.Set != "" }

// New makes a host. The log goes to logTo unless the settings name a file.
func New(o Settings, run Run, logTo io.Writer) (*Host, error) {
	if err := o.check(); err != nil {
		return nil, err
	}
	near, _ := loopback(o.Listen)
	key, err := door.HostKey(o.State)
	if err != nil {
		return nil, err
	}
	doors := &door.Admission{Open: o.Open, Private: o.private(), Wait: pace.Sleep}
	for _, r := range []struct {
		file string
		to   *door.Roster
	}{{o.Presenters, &doors.Presenters}, {o.Watchers, &doors.Watchers}} {
		if r.file != "" {
			if *r.to, err = door.ReadRoster(r.file); err != nil {
				return nil, err
			}
		}
	}
	if near && !o.Word && o.Watchers == "" {
		doors.Open = true // whoever is at this machine
	}
	if o.Word {
		doors.Word = door.NewWord()
	}
	h := &Host{
		log: slog.New(slog.NewTextHandler(printable.NewWriter(logTo), nil)), key: key, doors: doors, run: run,
		gate:     door.NewGate(o.Most, o.ByPlace),
		limit:    o.Most,
		refusals: pace.NewLog(pace.LinesBurst),
		anybody:  doors.Private || near && doors.Open && !o.Open,
		commands: make(chan struct{}, pace.CommandsAtOnce), inputs: make(chan struct{}, inputsAtOnce),
	}
	h.gate.Refused = h.refused
	switch {
	case o.Private != "":
		h.service, err = newLibrary(h.log, o.Private, o.State)
		return h, err
	case o.Set != "":
		h.service, err = newPractice(h.log, o.Set, o.State)
		return h, err
	}
	file, err := filepath.EvalSymlinks(o.Sheet) // the host's own links may lead anywhere
	if err != nil {
		file = o.Sheet // and what is not there is said below
	}
	root, err := os.OpenRoot(filepath.Dir(file))
	if err != nil {
		return nil, fmt.Errorf("%s: the folder of the sheet cannot be opened: %w", o.Sheet, err)
	}
	name := filepath.Base(file)
	st := store.OfSheet(root, name, func() (*os.Root, error) {
		rescued := filepath.Join(o.State, store.RescuedFolder)
		if err := os.MkdirAll(rescued, store.FolderMode); err != nil {
			return nil, err
		}
		return os.OpenRoot(rescued)
	})
	first, stamp, err := st.Load(name)
	if err != nil {
		return nil, atFile(o.Sheet, err)
	}
	opt := tui.Options{Path: name, Sheet: first, Stamp: stamp, Save: st.Save}
	o.keep(&opt, filepath.Dir(file), h.log)
	h.service = newClassroom(h.log, opt, st, doors.Word, h.Fingerprint())
	return h, nil
}

// journalFolder, below the host's own folder, has the journal of a sheet that is
// presented where the folder of everybody's journals takes none: a service has no
// home.
const journalFolder = "journal"

// keep has what is typed kept in a journal, where the workbench on the same file
// finds it too.
func (o Settings) keep(opt *tui.Options, folder string, log *slog.Logger) {
	opt.Journal, opt.Every, opt.Env, opt.Folder = true, tui.WatchEvery, o.Env, folder
	opt.Journals = []string{filepath.Join(o.State, journalFolder)}
	opt.Trouble = func(says string) { log.Error(says) }
}

// Fingerprint is what visitors compare when they come for the first time.
func (h *Host) Fingerprint() string { return gossh.FingerprintSHA256(h.key.PublicKey()) }

func atFile(file string, err error) error {
	return errors.New(diag.Of(err).Short(file))
}

// gcPercent trades time for memory: a private workbench takes megabytes, which
// are better collected soon; of the many who watch each takes little, and what
// the collector goes through again and again is their many stacks.
func (o Settings) gcPercent() int {
	if o.private() {
		return 40
	}
	return 200
}
