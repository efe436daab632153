package tui

import (
	"reflect"
	"testing"
	"time"

	tea "charm.land/bubbletea/v2"
)

// The pulse reaches for a field of the library: another version may name it so no more.
func TestTheLibraryHasTheTickerThatThePulseSlowsDown(t *testing.T) {
	f, ok := reflect.TypeFor[tea.Program]().FieldByName("ticker")
	if !ok || f.Type != reflect.TypeFor[*time.Ticker]() {
		t.Errorf("tea.Program has no ticker any more: an idle workbench wakes %d times a second", frames)
	}
	if got := tickerOf(tea.NewProgram(nil)); got != nil {
		t.Error("a program that does not run has a ticker")
	}
}

// Whatever the order of messages and rests, the ticker is fast after a message, and
// slow only after nothing came for a while.
func TestThePulseIsFastAfterAMessage(t *testing.T) {
	u := &pulse{ticker: time.NewTicker(time.Hour), timer: time.AfterFunc(time.Hour, func() {})}
	defer u.ticker.Stop()
	u.beat(nil)
	u.tire()
	if u.slow {
		t.Error("it rests right after a message")
	}
	u.last = time.Now().Add(-2 * awake)
	if u.tire(); !u.slow {
		t.Error("it does not rest though nothing came")
	}
	if u.beat(nil); u.slow {
		t.Error("it rests on after a message")
	}
	select {
	case <-u.ticker.C: // comes at the pace of frames, not within the hour
	case <-time.After(patience):
		t.Error("the ticker is not fast again")
	}
	u.last = time.Now().Add(-2 * awake)
	u.end()
	if u.tire(); u.slow {
		t.Error("it touches the ticker of a program that has ended")
	}
}
