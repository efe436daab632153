package layout

// Turns is what one looks at: the pane that has the keys, and which of the panes that
// share a place shows there.
type Turns struct {
	Focus Pane
	Side  Pane // what shows beside the cells of a small screen: Picture or a result
	Turn  Pane // the result that shows where there is one place for results
	Third Pane // the one beside System and Checks, where there are three
	Large bool // the pane with the keys has all the room
}

// Go gives a pane the keys and shows it.
func (t *Turns) Go(p Pane) {
	t.Focus = p
	t.show(p)
}

// show takes a pane for the places that it shares; the keys stay where they are.
func (t *Turns) show(p Pane) {
	if p.Result() {
		t.Turn = p
	}
	if p.Third() {
		t.Third = p
	}
	if p >= System {
		t.Side = p
	}
}

// give gives one pane's place to another, and the keys with it where it has them.
func (t *Turns) give(from, to Pane) {
	if t.Focus == from {
		t.Focus = to
	}
	t.show(to)
}

// Switch shows the next of the panes that share a place. The keys stay where they are,
// unless their pane goes.
func (t *Turns) Switch(shared Sharing) {
	switch {
	case shared == ResultTurn:
		t.give(t.Turn, t.Turn.next(1, Pane.Result))
	case shared == ThirdTurn:
		t.give(t.Third, t.Third.next(1, Pane.Third))
	case t.Side == Picture:
		t.give(t.Side, t.Turn)
	default:
		t.give(t.Turn, Picture)
	}
}

// NextResult goes on among the results. From elsewhere it shows the next in their place;
// one that gave way to another pane comes back first.
func (t *Turns) NextResult(shared Sharing, by int) {
	switch {
	case t.Focus.Result():
		t.Go(t.Focus.next(by, Pane.Result))
	case t.Focus == Picture && shared == SideTurns:
		t.Go(t.Turn)
	case shared == ThirdTurn:
		t.give(t.Third, t.Third.next(by, Pane.Third))
	case shared == SideTurns && !t.Side.Result():
		t.give(t.Side, t.Turn)
	default:
		t.give(t.Turn, t.Turn.next(by, Pane.Result))
	}
}
