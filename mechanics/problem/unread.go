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
	return slices.DeleteFunc(slices.Clone(s.Table(table).Rows), func(row sheet.Row) bool { return Private(row.Name) })
}

// maxUnread is how many notes are made of what is unread: nobody mends more at once,
// and a sheet of thousands must not be slow to type in.
const maxUnread = 100

// noteUnread notes what is typed and read by nothing, each where it stands: tables
// and keys that are not known, or that the kind of their row does not use.
func (r *reading) noteUnread() {
	for _, t := range r.s.Tables {
		info, known := tableNamed(t.Name)
		at := sheet.Ref{Table: t.Name}
		switch {
		case Private(t.Name):
			continue
		case !known:
			r.unread(at, UnknownName, unknownTable(t))
			continue
		case t.Listed:
			r.unread(at, NoSort, diag.New("[["+t.Name+"]] is a list of tables, and its entries are not read", "["+t.Name+".A], with a name for each entry"))
		}
		for _, row := range t.Rows {
			if len(r.p.Unread) >= maxUnread {
				break
			}
			switch _, known := info.Key(row.Name); {
			case Private(row.Name):
			case !info.Fixed:
				r.unreadCells(info, row)
			case !known:
				r.unread(sheet.Ref{Table: t.Name, Row: row.Name}, UnknownName, r.unknownSetting(info, row.Name))
			}
		}
	}
	r.p.Unread = slices.DeleteFunc(r.p.Unread, func(e Error) bool { // what has an error already is not ignored
		return slices.ContainsFunc(r.errs, func(other Error) bool { return other.Ref == e.Ref })
	})
}

// unread adds a note: of the name of what ref names where it has no span.
func (r *reading) unread(ref sheet.Ref, sort Sort, e *diag.Error) {
	if e != nil {
		r.p.Unread = append(r.p.Unread, Error{Ref: ref, InName: e.Span == diag.Span{}, Sort: sort, Error: *e})
	}
}

// unusedGravity notes a given value that is named as the acceleration of gravity, and that
// no cell uses: it is most likely meant for all weights.
func (r *reading) unusedGravity(row sheet.Row) *diag.Error {
	if r.used[row.Name] || row.Name != "g" && !slices.Contains(synonyms[plainly(row.Name)], "g") || len(r.errs) > 0 {
		return nil
	}
	return diag.New("no cell uses the given "+row.Name+"; weights use the g of the sheet", cmp.Or(row.Text(""), row.Text("value"))+" as the g of the sheet")
}

// unreadCells looks through a row that the user named.
func (r *reading) unreadCells(t TableInfo, row sheet.Row) {
	ref := sheet.Ref{Table: t.Name, Row: row.Name}
	switch b, ok := r.find(ABody, row.Name); {
	case t.Name == "given":
		r.unread(ref, NoSort, r.unusedGravity(row))
	case t.Name == "bodies" && ok && r.p.Bodies[b].Particle && len(row.Cells) > 0:
		r.unread(ref, NoSort, diag.New(row.Name+" is a particle, so its row among the bodies is ignored", "a line of the kind weight at "+row.Name))
		return
	}
	for _, c := range row.Cells {
		ref.Key = c.Key
		switch k, known := t.Key(c.Key); {
		case c.Key == "" && t.Plain == "":
			try := "[" + t.Name + "." + row.Name + "]"
			if c.Readable {
				try = row.Name + " = { " + t.Keys[0].Name + " = " + strconv.Quote(c.Text) + " }"
			}
			r.unread(ref, NoKeys, diag.At(whole(c.Text), "the "+t.Row+" "+row.Name+" has no keys, so its value is ignored", try))
		case c.Key == "" || Private(c.Key):
		case !known:
			r.unread(ref, UnknownName, unknownKey(t, row, c.Key))
		case strings.TrimSpace(c.Text) != "":
			r.unread(ref, UnusedCell, r.unused(t, row, k))
		}
		if t.Name == "lines" && c.Key == "on" {
			r.unreadBody(ref, row.Name, c.Text)
		}
	}
}

// kindOfRow is the kind of a line, a joint or a load by its first name; ok is false
// where it has none that reads, so that it can't be said what it uses.
func kindOfRow(t TableInfo, row sheet.Row) (kind string, ok bool) {
	k, _ := t.Key("kind")
	word := row.Text("kind")
	if i := wordOf(k.Words, word); i >= 0 {
		return k.Words[i].Text, true
	}
	return word, t.Name == "distributed"
}

// unusedKey words a key that rows of other kinds use.
func unusedKey(k KeyInfo, kind string) *diag.Error {
	try := "remove it"
	switch {
	case k.Name == "friction" && kind != Cable.String() && k.UsedBy(BeltKind.String()): // a line that does not go round a drum
		try = "a joint of the kind " + say.Or(rough...) + ", or remove it"
	case len(k.Kinds) <= 2:
		try = "the kind " + say.Or(k.Kinds...) + ", or remove it"
	}
	return diag.New(aKind(kind)+" does not use "+strconv.Quote(k.Name), try)
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

// unused words a key that its row does not use: of another kind, or beside another key or
// without it. It is nil where the row uses it.
func (r *reading) unused(t TableInfo, row sheet.Row, k KeyInfo) *diag.Error {
	if kind, ok := kindOfRow(t, row); ok && !k.UsedBy(kind) {
		return unusedKey(k, kind)
	}
	has := func(key string) bool { return row.Text(key) != "" }
	ignored := func(what, try string) *diag.Error {
		return diag.New("the "+t.Row+" "+row.Name+" has "+what+", so its "+strconv.Quote(k.Name)+" is ignored", try)
	}
	misspelt := func(c sheet.Cell) bool { _, known := t.Key(c.Key); return !known }
	joint := wordOf(jointWords, row.Text("kind"))
	path := fields(row.Text("path"))
	switch at := t.Name + "." + k.Name; {
	case at == "joints.moments" && joint >= 0 && r.p.Planar && joints[joint].MayLack && joints[joint].Plane.Moments == HoldNone:
		return diag.New("in the plane "+aKind(joints[joint].Name)+" does not use \"moments\"", "remove it")
	case at == "lines.at" && has("path") && !r.agrees(row):
		return ignored("a path", "remove one of them")
	case at == "lines.path" && has("components") && len(path) > 1 && !isBelt(row):
		return diag.New("the line "+row.Name+" has components, so only the first point of its path is used", "at "+path[0].text)
	case at == "lines.along" && has("components"), at == "couples.turn" && has("components"):
		return ignored("components", "remove one of them")
	case at == "lines.natural" && has("magnitude") && !has("stiffness"):
		return ignored("a magnitude", "remove one of them")
	case at == "answers.within" && !has(t.Plain):
		return ignored("no "+strconv.Quote(t.Plain), "add "+t.Plain)
	case at == "answers.why" && !has("within"):
		return ignored(`no "within"`, "add within")
	case at == "bodies.centre" && !has("weight") && !slices.ContainsFunc(row.Cells, misspelt): // which says so itself
		return diag.New("the body "+row.Name+" has no weight, so its centre is not used", "add a weight")
	}
	return nil
}

// agrees tells whether a line with a path acts at the point under at, too.
func (r *reading) agrees(row sheet.Row) bool {
	i, ok := r.find(ALine, row.Name)
	if !ok {
		return false // a belt acts along its path alone
	}
	l := &r.p.Lines[i]
	point, known := r.find(APoint, row.Text("at"))
	if !known || !slices.Contains(l.Path, point) {
		return false
	}
	return l.Kind.Info().Path || slices.ContainsFunc(l.Acts, func(a Act) bool { return a.Point == point })
}

// unreadBody notes a word under on that is no body of a point that the line runs
// through.
func (r *reading) unreadBody(ref sheet.Ref, line, text string) {
	var there []string
	for _, i := range r.linesOf(line) {
		if !r.p.Lines[i].OK {
			return
		}
		for _, at := range r.p.Lines[i].Path {
			for _, b := range r.p.Points[at].Bodies {
				if name := r.p.Bodies[b].Name; !slices.Contains(there, name) {
					there = append(there, name)
				}
			}
		}
	}
	for _, w := range fields(text) {
		if w.text != groundWord && !slices.Contains(there, w.text) {
			r.unread(ref, NotItsBody, diag.At(w.Span, "no point of the line "+line+" is on "+strconv.Quote(w.text)+", so the name is ignored", say.Or(there...)))
		}
	}
}

// unknownTable words a table that nothing reads.
func unknownTable(t sheet.Table) *diag.Error {
	if slices.Contains(later, t.Name) {
		return diag.New("this version does not know "+bracketed(t.Name), "a newer version")
	}
	best, most := "", -1
	for _, name := range synonyms[plainly(t.Name)] {
		if info, ok := tableNamed(name); ok && info.likeness(t) > most {
			best, most = name, info.likeness(t)
		}
	}
	if best == "" {
		var names []string
		for _, info := range tables[1:] {
			names = append(names, info.Name)
		}
		best = units.Suggest(t.Name, names)
	}
	try := "[" + best + "]"
	if _, ok := cellKey("", t.Name, ""); ok {
		try = t.Name + " = \"...\" before the first table"
	} else if best == "" {
		try = keepUnread("[", t.Name, "]")
	}
	return diag.New("unknown table "+bracketed(t.Name), try)
}

// likeness counts the keys in a table's rows that this one knows.
func (t TableInfo) likeness(of sheet.Table) (n int) {
	for _, row := range of.Rows {
		for _, c := range row.Cells {
			if _, known := t.Key(c.Key); known || c.Key == "" && t.Plain != "" {
				n++
			}
		}
	}
	return n
}

// unknownSetting words a key before the first table, or in [units].
func (r *reading) unknownSetting(t TableInfo, name string) *diag.Error {
	path, what := name, "key "+strconv.Quote(name)
	if t.Name != "" {
		path, what = t.Name+"."+name, what+" in ["+t.Name+"]"
	}
	_, unit := cellKey("units", name, "")
	_, header := cellKey("", name, "")
	_, table := tableNamed(name)
	near := nearest(name, t.keyNames())
	_, taken := r.s.Table(t.Name).Row(near)
	try := keepUnread("", name, "")
	switch {
	case near != "":
		return insteadOf(path, what, near, near, taken)
	case unit:
		try = name + " in [units]"
	case header:
		try = name + " before the first table"
	case table:
		try = "[" + name + "]"
	case t.Name == "" && plainly(name) == "source":
		try = "source in [answers]"
	}
	return unknown(path, what, try)
}

// unknownKey words a key of a row.
func unknownKey(t TableInfo, row sheet.Row, key string) *diag.Error {
	path, what := t.Name+"."+key, "key "+strconv.Quote(key)
	kind, hasKind := kindOfRow(t, row)
	all := t.keyNames()
	near := nearest(key, slices.DeleteFunc(slices.Clone(all), func(name string) bool { k, _ := t.Key(name); return hasKind && !k.UsedBy(kind) }))
	ends := t.Name == "distributed" && (key == "start" || key == "end") // intensities, typed apart
	switch {
	case ends:
		near = "magnitude"
	case kind == SpringKind.String() && plainly(key) == "length":
		near = "natural" // of other lines it is no key
	}
	if k, ok := t.Key(near); ok {
		_, plain := row.Cell("")
		_, taken := row.Cell(near)
		c, _ := row.Cell(key)
		try := near + proviso(plainly(key), c.Text, kind, k)
		if start, end := row.Text("start"), row.Text("end"); ends && start != "" && end != "" {
			try = "the magnitude " + start + " .. " + end
		}
		return insteadOf(path, what, near, try, taken || plain && near == t.Plain)
	}
	if k, ok := t.Key(nearest(key, all)); ok {
		other := unusedKey(k, kind)
		return unknown(path, what+", and "+other.Msg, other.Hint)
	}
	for _, other := range []string{"lines", "joints"} {
		for _, name := range append([]string{key}, synonyms[plainly(key)]...) {
			k, ok := cellKey(other, "", name)
			if !ok || other == t.Name || k.Kinds == nil || !hasKind || t.Name == "distributed" {
				continue
			}
			unused := unusedKey(k, kind)
			if len(k.Kinds) == 1 {
				unused.Hint = "a " + strings.TrimSuffix(other, "s") + " of the kind " + k.Kinds[0] + ", or remove it"
			}
			if name != key {
				unused.Msg = "unknown " + what + ", and " + unused.Msg
			}
			return unused
		}
	}
	return unknown(path, what, keepUnread("", key, ""))
}

// unknown says that a key, at a path of the sheet, is known to later versions or to none.
func unknown(path, what, try string) *diag.Error {
	if slices.Contains(later, path) {
		return diag.New("this version does not know the "+what, "a newer version")
	}
	return diag.New("unknown "+what, try)
}

// insteadOf offers the key that is most likely meant; where it is there already, one of
// the two is too many.
func insteadOf(path, what, near, try string, taken bool) *diag.Error {
	if taken {
		what, try = what+" beside "+strconv.Quote(near), "remove one of them"
	}
	return unknown(path, what, try)
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
