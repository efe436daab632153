package problem

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// private begins the names of tables, rows and keys that a sheet keeps for itself:
// nothing reads them, and nothing is said of them.
const private = "x-"

// Private tells that a table, a row or a key of this name is kept and not read.
func Private(name string) bool { return strings.HasPrefix(name, private) }

// Rows gives the rows of a table that are read: all but the private ones.
func Rows(s *sheet.Sheet, table string) []sheet.Row {
	rows := s.Table(table).Rows
	if !slices.ContainsFunc(rows, isPrivate) {
		return rows
	}
	return slices.DeleteFunc(slices.Clone(rows), isPrivate)
}

func isPrivate(row sheet.Row) bool { return Private(row.Name) }

// maxUnread is how many notes are made of what is unread: nobody mends more at once,
// and a sheet of thousands must not be slow to type in.
const maxUnread = 100

// noteUnread notes what is typed and read by nothing, each where it stands: tables
// and keys that are not known, or that the kind of their row does not use.
func (r *reading) noteUnread() {
	for i := range r.s.Tables {
		t := &r.s.Tables[i]
		if Private(t.Name) {
			continue
		}
		info, known := tableByName[t.Name]
		switch {
		case !known:
			r.unread(sheet.Ref{Table: t.Name}, UnknownName, unknownTable(t))
			continue
		case t.Listed:
			r.unread(sheet.Ref{Table: t.Name}, NoSort, note{"[[" + t.Name + "]] is a list of tables, and its entries are not read", "[" + t.Name + ".A], with a name for each entry"})
		}
		for k := range t.Rows {
			if len(r.p.Unread) >= maxUnread {
				break
			}
			row := &t.Rows[k]
			switch _, known := info.keys[row.Name]; {
			case Private(row.Name):
			case !info.Fixed:
				r.unreadCells(info, row)
			case !known:
				r.unread(sheet.Ref{Table: t.Name, Row: row.Name}, UnknownName, r.unknownSetting(info, row.Name))
			}
		}
	}
	if len(r.p.Unread) > 0 && len(r.errs) > 0 { // what has an error already is not ignored
		r.p.Unread = slices.DeleteFunc(r.p.Unread, func(e Error) bool {
			return slices.ContainsFunc(r.errs, func(other Error) bool { return other.Ref == e.Ref })
		})
	}
}

// unusedGravity notes a given value that is named as the acceleration of gravity, and that
// no cell uses: it is most likely meant for all weights.
func (r *reading) unusedGravity(row *sheet.Row) {
	i := r.givens[row.Name]
	if r.usedGivens[i] || row.Name != "g" && !slices.Contains(synonyms[plainly(row.Name)], "g") || len(r.errs) > 0 {
		return
	}
	r.unread(r.p.Givens[i].Ref, NoSort, note{"no cell uses the given " + row.Name + "; weights use the g of the sheet",
		cmp.Or(row.Text(""), row.Text("value")) + " as the g of the sheet"})
}

// note is what a note says, before it has its place.
type note struct{ says, try string }

func (r *reading) unread(ref sheet.Ref, sort Sort, n note) {
	r.p.Unread = append(r.p.Unread, Error{Ref: ref, InName: true, Sort: sort, Error: diag.Error{Msg: n.says, Hint: n.try}})
}

// unreadCells looks through a row that the user named.
func (r *reading) unreadCells(t *tableKeys, row *sheet.Row) {
	if b, ok := r.bodies[row.Name]; ok && t.Name == "bodies" && r.p.Bodies[b].Particle && len(row.Cells) > 0 {
		r.unread(sheet.Ref{Table: t.Name, Row: row.Name}, NoSort, note{row.Name + " is a particle, so its row among the bodies is ignored", "a line of the kind weight at " + row.Name})
		return
	}
	if t.Name == "given" {
		r.unusedGravity(row)
	}
	kind, hasKind := "", false
	for _, c := range row.Cells {
		ref := sheet.Ref{Table: t.Name, Row: row.Name, Key: c.Key}
		k, known := t.keys[c.Key]
		switch {
		case c.Key == "" && t.Plain == "":
			try := "[" + t.Name + "." + row.Name + "]"
			if c.Readable {
				try = row.Name + " = { " + t.Keys[0].Name + " = " + strconv.Quote(c.Text) + " }"
			}
			r.p.Unread = append(r.p.Unread, Error{Ref: ref, Sort: NoKeys, Error: diag.Error{Span: whole(c.Text), Msg: "the " + t.Row + " " + row.Name + " has no keys, so its value is ignored", Hint: try}})
		case c.Key == "" || Private(c.Key):
		case !known:
			kind, hasKind = kindOfRow(t, row)
			r.unread(ref, UnknownName, unknownKey(t, row, c.Key, kind, hasKind))
		case strings.TrimSpace(c.Text) == "":
		default:
			n := note{}
			if k.Kinds != nil {
				if kind, hasKind = kindOfRow(t, row); hasKind && !k.UsedBy(kind) {
					n = unusedKey(k, kind)
				}
			}
			if n.says == "" && r.p.Planar && t.Name == "joints" {
				n = unusedInPlane(row, c.Key)
			}
			if n.says == "" {
				n = r.besides(t, row, c.Key)
			}
			if n.says != "" {
				r.unread(ref, UnusedCell, n)
			}
		}
		if c.Key == "on" && t.Name == "lines" {
			r.unreadBody(ref, row.Name, c.Text)
		}
	}
}

// kindOfRow is the kind of a line, a joint or a load by its first name; ok is false
// where it has none that reads, so that it can't be said what it uses.
func kindOfRow(t *tableKeys, row *sheet.Row) (kind string, ok bool) {
	word, words := row.Text("kind"), t.keys["kind"].Words
	if i := wordOf(words, word); i >= 0 {
		return words[i].Text, true
	}
	return word, t.Name == "distributed"
}

// unusedKey words a key that rows of other kinds use.
func unusedKey(k KeyInfo, kind string) note {
	n := note{says: aKind(kind) + " does not use " + strconv.Quote(k.Name), try: "remove it"}
	switch {
	case k.Name == "friction" && kind != Cable.String() && k.UsedBy(BeltKind.String()): // a line that does not go round a drum
		n.try = "a joint of the kind " + say.Or(rough...) + ", or remove it"
	case len(k.Kinds) <= 2:
		n.try = "the kind " + say.Or(k.Kinds...) + ", or remove it"
	}
	return n
}

func aKind(kind string) string {
	switch kind {
	case "fixed":
		return "a fixed support"
	case "":
		return "a load without a kind"
	}
	return "a " + kind
}

// besides words a key that is not read beside another one of its row, or without it.
func (r *reading) besides(t *tableKeys, row *sheet.Row, key string) note {
	has := func(key string) bool { return row.Text(key) != "" }
	beside := func(what string) note {
		return note{"the " + t.Row + " " + row.Name + " has " + what + ", so its " + strconv.Quote(key) + " is ignored", "remove one of them"}
	}
	without := func(needs string) note {
		return note{"the answer " + row.Name + " has no " + strconv.Quote(needs) + ", so its " + strconv.Quote(key) + " is ignored", "add " + needs}
	}
	misspelt := func(c sheet.Cell) bool { _, known := t.keys[c.Key]; return !known }
	path := func() []word { return fields(row.Text("path")) }
	switch at := t.Name + "." + key; {
	case at == "lines.at" && has("path") && !r.agrees(row):
		return beside("a path")
	case at == "lines.path" && has("components") && len(path()) > 1 && !isBelt(*row):
		return note{"the line " + row.Name + " has components, so only the first point of its path is used", "at " + path()[0].text}
	case at == "lines.along" && has("components"), at == "couples.turn" && has("components"):
		return beside("components")
	case at == "lines.natural" && has("magnitude") && !has("stiffness"):
		return beside("a magnitude")
	case at == "answers.within" && !has(t.Plain):
		return without(t.Plain)
	case at == "answers.why" && !has("within"):
		return without("within")
	case at == "bodies.centre" && !has("weight") && !slices.ContainsFunc(row.Cells, misspelt): // which says so itself
		return note{"the body " + row.Name + " has no weight, so its centre is not used", "add a weight"}
	}
	return note{}
}

// agrees tells whether a line with a path acts at the point under at, too.
func (r *reading) agrees(row *sheet.Row) bool {
	i, ok := r.lines[row.Name]
	if !ok {
		return false // a belt acts along its path alone
	}
	l := &r.p.Lines[i]
	point, known := r.points[row.Text("at")]
	if !known || !slices.Contains(l.Path, point) {
		return false
	}
	return l.Kind.Info().Path || slices.ContainsFunc(l.Acts, func(a Act) bool { return a.Point == point })
}

// unusedInPlane words a key that a kind uses in space alone.
func unusedInPlane(row *sheet.Row, key string) note {
	if k, ok := jointKindOf(row.Text("kind")); ok && key == "moments" && k.Info().MayLack && k.Where(true).Moments == HoldNone {
		return note{"in the plane " + aKind(k.String()) + " does not use \"moments\"", "remove it"}
	}
	return note{}
}

// unreadBody notes a word under on that is no body of a point that the line runs
// through.
func (r *reading) unreadBody(ref sheet.Ref, line, text string) {
	var path []int
	for _, i := range r.linesOf(line) {
		if !r.p.Lines[i].OK {
			return
		}
		path = append(path, r.p.Lines[i].Path...)
	}
	for _, w := range fields(text) {
		b, known := r.bodies[w.text]
		if w.text == groundWord || known && slices.ContainsFunc(path, func(at int) bool { return onBody(&r.p.Points[at], b) }) {
			continue
		}
		var there []string
		for _, at := range path {
			for _, b := range r.p.Points[at].Bodies {
				if other := r.p.Bodies[b].Name; !slices.Contains(there, other) {
					there = append(there, other)
				}
			}
		}
		r.p.Unread = append(r.p.Unread, Error{Ref: ref, Sort: NotItsBody, Error: diag.Error{Span: w.Span, Msg: "no point of the line " + line + " is on " + strconv.Quote(w.text) + ", so the name is ignored", Hint: say.Or(there...)}})
	}
}

// unknownTable words a table that nothing reads.
func unknownTable(t *sheet.Table) note {
	if slices.Contains(later, t.Name) {
		return note{"this version does not know " + bracketed(t.Name), "a newer version"}
	}
	n := note{says: "unknown table " + bracketed(t.Name)}
	if _, ok := tableByName[""].keys[t.Name]; ok {
		n.try = t.Name + " = \"...\" before the first table"
		return n
	}
	var best string
	for _, name := range synonyms[plainly(t.Name)] {
		if info, ok := tableByName[name]; ok && name != "" && (best == "" || info.likeness(t) > tableByName[best].likeness(t)) {
			best = name
		}
	}
	if best == "" {
		best = units.Suggest(t.Name, tableNames)
	}
	if n.try = "[" + best + "]"; best == "" {
		n.try = keepUnread("[", t.Name, "]")
	}
	return n
}

// likeness counts the keys in a table's rows that this one knows.
func (t *tableKeys) likeness(of *sheet.Table) (n int) {
	for i := range of.Rows {
		for _, c := range of.Rows[i].Cells {
			if _, known := t.keys[c.Key]; known || c.Key == "" && t.Plain != "" {
				n++
			}
		}
	}
	return n
}

// unknownSetting words a key before the first table, or in [units].
func (r *reading) unknownSetting(t *tableKeys, name string) note {
	if slices.Contains(later, strings.TrimPrefix(t.Name+".", ".")+name) {
		return note{"this version does not know the key " + strconv.Quote(name), "a newer version"}
	}
	n := note{says: "unknown key " + strconv.Quote(name)}
	if t.Name != "" {
		n.says += " in [" + t.Name + "]"
	}
	if near := nearest(name, t.keyNames()); near != "" {
		_, taken := r.s.Table(t.Name).Row(near)
		return n.insteadOf(near, taken)
	}
	_, unit := tableByName["units"].keys[name]
	_, header := tableByName[""].keys[name]
	_, table := tableByName[name]
	switch {
	case unit:
		n.try = name + " in [units]"
	case header:
		n.try = name + " before the first table"
	case table:
		n.try = "[" + name + "]"
	case t.Name == "" && plainly(name) == "source":
		n.try = "source in [answers]"
	default:
		n.try = keepUnread("", name, "")
	}
	return n
}

// unknownKey words a key of a row.
func unknownKey(t *tableKeys, row *sheet.Row, key, kind string, hasKind bool) note {
	if slices.Contains(later, t.Name+"."+key) {
		return note{"this version does not know the key " + strconv.Quote(key), "a newer version"}
	}
	n := note{says: "unknown key " + strconv.Quote(key)}
	if n, ok := n.fromEndToEnd(t, row, key); ok {
		return n
	}
	all := t.keyNames()
	used := slices.DeleteFunc(slices.Clone(all), func(name string) bool { return hasKind && !t.keys[name].UsedBy(kind) })
	near := nearest(key, used)
	if kind == SpringKind.String() && plainly(key) == "length" {
		near = "natural" // of other lines it is no key
	}
	if near != "" {
		_, taken := row.Cell(near)
		if _, plain := row.Cell(""); plain && near == t.Plain {
			taken = true
		}
		if n = n.insteadOf(near, taken); !taken {
			c, _ := row.Cell(key)
			n.try += proviso(plainly(key), c.Text, kind, t.keys[near])
		}
		return n
	}
	if near := nearest(key, all); near != "" {
		other := unusedKey(t.keys[near], kind)
		return note{n.says + ", and " + other.says, other.try}
	}
	for _, other := range []string{"lines", "joints"} {
		for _, name := range append([]string{key}, synonyms[plainly(key)]...) {
			k, ok := tableByName[other].keys[name]
			if !ok || other == t.Name || k.Kinds == nil || !hasKind || t.Name == "distributed" {
				continue
			}
			unused := unusedKey(k, kind)
			if len(k.Kinds) == 1 {
				unused.try = "a " + tableByName[other].Row + " of the kind " + k.Kinds[0] + ", or remove it"
			}
			if name != key {
				unused.says = n.says + ", and " + unused.says
			}
			return unused
		}
	}
	n.try = keepUnread("", key, "")
	return n
}

// insteadOf offers the key that is most likely meant; where it is there already, one of
// the two is too many.
func (n note) insteadOf(near string, taken bool) note {
	if taken {
		return note{n.says + " beside " + strconv.Quote(near), "remove one of them"}
	}
	n.try = near
	return n
}

// fromEndToEnd offers the intensities at the two ends of a load, typed apart, as its
// magnitude.
func (n note) fromEndToEnd(t *tableKeys, row *sheet.Row, key string) (note, bool) {
	_, hasStart := row.Cell("start")
	_, hasEnd := row.Cell("end")
	taken := row.Text("magnitude") != ""
	switch {
	case t.Name != "distributed" || key != "start" && key != "end":
		return n, false
	case taken || !hasStart || !hasEnd:
		return n.insteadOf("magnitude", taken), true
	}
	n.try = "the magnitude " + row.Text("start") + " .. " + row.Text("end")
	return n, true
}

func keepUnread(open, name, shut string) string {
	if rest, capital := strings.CutPrefix(name, strings.ToUpper(private)); capital {
		name = rest // X-foo is not x-X-foo
	}
	if !bareName(name) {
		return "remove it"
	}
	return open + private + name + shut + ", which is kept but ignored"
}

func bracketed(name string) string {
	if bareName(name) {
		return "[" + name + "]"
	}
	return "[" + strconv.Quote(name) + "]"
}

// bareName tells whether TOML takes a name without quotes.
func bareName(s string) bool {
	return s != "" && !strings.ContainsFunc(s, func(c rune) bool {
		return c != '-' && c != '_' && (c < '0' || c > '9') && (c < 'a' || c > 'z') && (c < 'A' || c > 'Z')
	})
}

// nearest gives the known name that is most likely meant by another, or "": one that
// it is another word for, or one that is mistyped.
func nearest(wrong string, known []string) string {
	word := plainly(wrong)
	for _, name := range append(slices.Clone(synonyms[word]), word) {
		if slices.Contains(known, name) {
			return name
		}
	}
	return units.Suggest(wrong, known)
}

// plainly is a name in lower case with - between its words.
func plainly(name string) string {
	return strings.NewReplacer("_", "-", " ", "-").Replace(strings.ToLower(name))
}
