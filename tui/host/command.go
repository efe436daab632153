package host

import (
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"os"
	"os/signal"
	"path/filepath"
	"runtime/debug"
	"syscall"

	"github.com/spf13/cobra"

	"trivet/mechanics/diag"
	"trivet/tui/host/store"
	"trivet/tui/xdg"
)

const long = `Shows a sheet live over SSH to a class, or with --private gives each visitor a workbench, or with --set problems to practise. Visitors need nothing but ssh.

On the loopback address (127.0.0.1) whoever is at this machine comes in. Anywhere else the host does not start without --presenters, --watchers, --word or --open.

ctrl+c, SIGTERM or the presenter's e ends it: what is not saved is saved, and everybody is told.`

const example = `trivet host mast.toml
trivet host mast.toml --listen :2222 --presenters staff.keys --word
trivet host --private sheets --listen :2222 --watchers crew.keys
trivet host --set week4.toml --listen :2222 --watchers class.keys
ssh -p 2222 HOST`

// Command is "trivet host".
func Command(stdin io.Reader, stdout, stderr io.Writer) *cobra.Command {
	var o Settings
	cmd := &cobra.Command{
		Use: "host SHEET", Short: "show a sheet live over SSH", Long: long, Example: example,
		Annotations: map[string]string{"topics": "host class"},
		Args: func(_ *cobra.Command, args []string) error {
			if len(args) > 1 {
				return diag.New(fmt.Sprintf("the host presents one sheet, but %d are named", len(args)), "name one")
			}
			return nil
		},
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return []string{"toml"}, cobra.ShellCompDirectiveFilterFileExt
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				o.Sheet = args[0]
			}
			return serve(cmd.Context(), o, stdin, stdout, stderr)
		},
	}
	f := cmd.Flags()
	f.StringVar(&o.Listen, "listen", defaultListen, "`ADDRESS` and port to listen on")
	f.StringVar(&o.Private, "private", "", "`FOLDER` of sheets that each visitor gets copies of")
	f.StringVar(&o.Set, "set", "", "`FILE` of a set of problems that each visitor practises")
	f.StringVar(&o.Presenters, "presenters", "", "`FILE` of keys that may present")
	f.StringVar(&o.Watchers, "watchers", "", "`FILE` of keys that may watch")
	f.BoolVar(&o.Word, "word", false, "ask for a class word, a new one each time")
	f.BoolVar(&o.Word, "code", false, "as --word, in older scripts")
	_ = f.MarkHidden("code")
	f.BoolVar(&o.Open, "open", false, "let anybody in")
	f.StringVar(&o.State, "state", "", "`FOLDER` of the host's key and the visitors' sheets")
	f.StringVar(&o.Log, "log", "", "`FILE` for the log; by default standard error, or host.log below --state while presenting here")
	f.IntVar(&o.Most, "most", defaultMax, "`VISITORS` at a time")
	f.IntVar(&o.ByPlace, "per-address", defaultByPlace, "`VISITORS` at a time from one address")
	return cmd
}

func serve(ctx context.Context, o Settings, stdin io.Reader, stdout, stderr io.Writer) error {
	if err := o.check(); err != nil {
		return err
	}
	in, out, here := terminals(stdin, stdout)
	here = here && !o.private()
	if !here && !o.private() && o.Presenters == "" {
		return diag.New("there is no terminal to present in", "run it in a terminal, or name those who may present with --presenters FILE")
	}
	if err := o.ownFolder(); err != nil {
		return err
	}
	logTo, done, err := o.logFile(here, stderr)
	if err != nil {
		return err
	}
	defer done()
	o.Env = os.Environ()
	own, err := os.Executable()
	if err != nil {
		return fmt.Errorf("the program cannot find its own file, for commands without a terminal: %w", err)
	}
	h, err := New(o, program(own), logTo)
	if err != nil {
		return err
	}
	l, err := net.Listen("tcp", o.Listen)
	if err != nil {
		return fmt.Errorf("no address to listen on: %w", err)
	}
	fmt.Fprint(stderr, h.welcome(l.Addr()))
	ctx, stop := signal.NotifyContext(ctx, os.Interrupt, syscall.SIGTERM, syscall.SIGHUP)
	defer stop()
	debug.SetGCPercent(o.gcPercent())
	if !here {
		return h.Serve(ctx, l)
	}
	served := make(chan error, 1)
	go func() { served <- h.Serve(ctx, l) }()
	if err = h.present(in, out, os.Environ()); err != nil {
		stop()
	}
	// The presenter's terminal is left where the session has ended, or the sheet
	// was handed over and this terminal let go: the host goes on until its end.
	return errors.Join(err, <-served)
}

func (h *Host) welcome(at net.Addr) string {
	_, port, _ := net.SplitHostPort(at.String())
	text := fmt.Sprintf("trivet host: listening on %s; visitors come with: ssh -p %s HOST\nhost key: %s\n", at, port, h.Fingerprint())
	if h.doors.Word != "" {
		text += "class word: " + h.doors.Word + "\n"
	}
	return text
}

// ownFolder is where the host keeps its key and its visitors' sheets.
func (o *Settings) ownFolder() error {
	if o.State == "" {
		o.State = os.Getenv("STATE_DIRECTORY") // a service's, by systemd
	}
	if o.State == "" {
		own, err := xdg.State(os.Environ())
		if err != nil {
			return diag.New("there is no home folder for the host's key", "--state FOLDER")
		}
		o.State = own + "-host"
	}
	if err := os.MkdirAll(o.State, store.FolderMode); err != nil {
		return fmt.Errorf("the host's own folder cannot be made: %w", err)
	}
	return nil
}

func (o *Settings) logFile(here bool, stderr io.Writer) (io.Writer, func(), error) {
	name := o.Log
	if name == "" && here {
		name = filepath.Join(o.State, "host.log")
	}
	if name == "" {
		return stderr, func() {}, nil
	}
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_APPEND, store.SheetMode)
	if err != nil {
		return nil, nil, fmt.Errorf("the log cannot be written: %w", err)
	}
	return f, func() { _ = f.Close() }, nil
}
