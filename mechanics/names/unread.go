package names

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"trivet/mechanics/diag"
	"trivet/mechanics/problem"
	"trivet/mechanics/say"
	"trivet/mechanics/sheet"
	"trivet/units"
)

// maxUnread is how many notes are made of what is unread: nobody mends more at once,
// and a sheet of thousands must not be slow to type in.
const maxUnread = 100

// noteUnread notes what is typed and read by nothing, each where it stands: tables
// and keys that are not known, or that the kind of their row does not use.
func (n *notes) noteUnread() {
	for _, t := range n.s.Tables {
		info, known := problem.TableNamed(t.Name)
		at := sheet.Ref{Table: t.Name}
		switch {
		case problem.Private(t.Name):
			continue
		case !known:
			n.unread(at, problem.UnknownName, unknownTable(t))
			continue
		case t.Listed:
			n.unread(at, problem.NoSort, diag.New("[["+t.Name+"]] is a list of tables, and its entries are not read", "["+t.Name+".A], with a name for each entry"))
		}
		for _, row := range t.Rows {
			if len(n.Unread) >= maxUnread {
				break
			}
			switch _, known := info.Key(row.Name); {
			case problem.Private(row.Name):
			case !info.Fixed:
				n.unreadCells(info, row)
			case !known:
				n.unread(sheet.Ref{Table: t.Name, Row: row.Name}, problem.UnknownName, n.unknownSetting(info, row.Name))
			}
		}
	}
	n.Unread = slices.DeleteFunc(n.Unread, func(e problem.Error) bool { // what has an error already is not ignored
		return slices.ContainsFunc(n.errs, func(other problem.Error) bool { return other.Ref == e.Ref })
	})
}

// unread adds a note.
func (n *notes) unread(ref sheet.Ref, sort problem.Sort, e *diag.Error) {
	if e != nil {
		n.Unread = append(n.Unread, problem.Note(ref, sort, e))
	}
}

// unusedGravity notes a given value that is named as the acceleration of gravity, and that
// no cell uses: it is most likely meant for all weights.
func (n *notes) unusedGravity(row sheet.Row) *diag.Error {
	if row.Name != "g" && !slices.Contains(synonyms[plainly(row.Name)], "g") || len(n.errs) > 0 || len(UsesOf(n.s, problem.AGiven, row.Name)) > 0 {
		return nil
	}
	return diag.New("no cell uses the given "+row.Name+"; weights use the g of the sheet", cmp.Or(row.Text(""), row.Text("value"))+" as the g of the sheet")
}

// unreadCells looks through a row that the user named.
func (n *notes) unreadCells(t problem.TableInfo, row sheet.Row) {
	ref := sheet.Ref{Table: t.Name, Row: row.Name}
	switch b, ok := n.Find(row.Name, problem.ABody); {
	case t.Name == "given":
		n.unread(ref, problem.NoSort, n.unusedGravity(row))
	case t.Name == "bodies" && ok && n.Bodies[b.Index].Particle && len(row.Cells) > 0:
		n.unread(ref, problem.NoSort, diag.New(row.Name+" is a particle, so its row among the bodies is ignored", "a line of the kind weight at "+row.Name))
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
			n.unread(ref, problem.NoKeys, diag.At(diag.Whole(c.Text), "the "+t.Row+" "+row.Name+" has no keys, so its value is ignored", try))
		case c.Key == "" || problem.Private(c.Key):
		case !known:
			n.unread(ref, problem.UnknownName, unknownKey(t, row, c.Key))
		case strings.TrimSpace(c.Text) != "":
			n.unread(ref, problem.UnusedCell, n.unused(t, row, k))
		}
		if t.Name == "lines" && c.Key == "on" {
			n.unreadBody(ref, row.Name, c.Text)
		}
	}
}

// kindOfRow is the kind of a line, a joint or a load by its first name; ok is false
// where it has none that reads, so that it can't be said what it uses.
func kindOfRow(t problem.TableInfo, row sheet.Row) (kind string, ok bool) {
	k, _ := t.Key("kind")
	word := row.Text("kind")
	if i := problem.WordOf(k.Words, word); i >= 0 {
		return k.Words[i].Text, true
	}
	return word, t.Name == "distributed"
}

// quoted is a key of a row that a note speaks of.
func quoted(table, key string) string { return `"` + diag.Key(table, key) + `"` }

// unusedKey words a key that rows of other kinds use.
func unusedKey(table string, k problem.KeyInfo, kind string) (msg, try string) {
	try = "remove it"
	switch {
	case k.Name == "friction" && kind != problem.Cable.String() && k.UsedBy(problem.BeltKind.String()): // a line that does not go round a drum
		rough, _ := problem.CellKey("joints", "", "friction")
		try = "a joint of the kind " + say.Or(rough.Kinds...) + ", or remove it"
	case len(k.Kinds) <= 2:
		try = "the kind " + say.Or(k.Kinds...) + ", or remove it"
	}
	return problem.AKind(kind) + " does not use " + quoted(table, k.Name), try
}

// unused words a key that its row does not use: of another kind, or beside another key or
// without it. It is nil where the row uses it.
func (n *notes) unused(t problem.TableInfo, row sheet.Row, k problem.KeyInfo) *diag.Error {
	if kind, ok := kindOfRow(t, row); ok && !k.UsedBy(kind) {
		return diag.New(unusedKey(t.Name, k, kind))
	}
	has := func(key string) bool { return row.Text(key) != "" }
	ignored := func(what, try string) *diag.Error {
		return diag.New("the "+t.Row+" "+row.Name+" has "+what+", so its "+quoted(t.Name, k.Name)+" is ignored", try)
	}
	misspelt := func(c sheet.Cell) bool { _, known := t.Key(c.Key); return !known }
	kinds, _ := t.Key("kind")
	kind := problem.WordOf(kinds.Words, row.Text("kind"))
	path := problem.Fields(row.Text("path"))
	switch at := t.Name + "." + k.Name; {
	case at == "joints.moments" && kind >= 0 && n.Planar && problem.JointKind(kind).Info().MayLack && problem.JointKind(kind).Where(true).Moments == problem.HoldNone:
		return diag.New("in the plane "+problem.AKind(problem.JointKind(kind).String())+" does not use "+quoted(t.Name, k.Name), "remove it")
	case at == "lines.at" && has("path") && !n.agrees(row):
		return diag.New("the line "+row.Name+" has a path, so the point "+row.Text("at")+" is ignored", "remove one of them")
	case at == "lines.path" && has("components") && len(path) > 1 && !problem.IsBelt(row):
		return diag.New("the line "+row.Name+" has components, so only the first point under "+quoted(t.Name, "path")+" is used", diag.Key(t.Name, "at")+" "+path[0].Text)
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
func (n *notes) agrees(row sheet.Row) bool {
	line, ok := n.Find(row.Name, problem.ALine)
	if !ok {
		return false // a belt acts along its path alone
	}
	l := &n.Lines[line.Index]
	point, known := n.Find(row.Text("at"), problem.APoint)
	if !known || !slices.Contains(l.Path, point.Index) {
		return false
	}
	return l.Kind.Info().Path || slices.ContainsFunc(l.Acts, func(a problem.Act) bool { return a.Point == point.Index })
}

// unreadBody notes a word under on that is no body of a point that the line runs
// through.
func (n *notes) unreadBody(ref sheet.Ref, line, text string) {
	var there []string
	for _, l := range n.Lines {
		if l.Ref.Row != line {
			continue
		}
		if !l.OK {
			return
		}
		for _, at := range l.Path {
			for _, b := range n.Points[at].Bodies {
				if name := n.Bodies[b].Name; !slices.Contains(there, name) {
					there = append(there, name)
				}
			}
		}
	}
	for _, w := range problem.Fields(text) {
		if w.Text != problem.GroundWord && !slices.Contains(there, w.Text) {
			n.unread(ref, problem.NotItsBody, diag.At(w.Span, "no point of the line "+line+" is on "+strconv.Quote(w.Text)+", so the name is ignored", say.Or(there...)))
		}
	}
}

// unknownTable words a table that nothing reads.
func unknownTable(t sheet.Table) *diag.Error {
	best, most := "", -1
	for _, name := range synonyms[plainly(t.Name)] {
		if info, ok := problem.TableNamed(name); ok && likeness(info, t) > most {
			best, most = name, likeness(info, t)
		}
	}
	if best == "" {
		tables := say.Each(problem.Tables()[1:], func(info problem.TableInfo) string { return info.Name })
		best = units.Suggest(t.Name, tables)
	}
	try := "[" + best + "]"
	if _, ok := problem.CellKey("", t.Name, ""); ok {
		try = t.Name + " = \"...\" before the first table"
	} else if best == "" {
		try = keepUnread("[", t.Name, "]")
	}
	return unknown(t.Name, "table ["+sheet.EncodeName(t.Name)+"]", try)
}

// likeness counts the keys in a table's rows that this one knows.
func likeness(t problem.TableInfo, of sheet.Table) (n int) {
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
func (n *notes) unknownSetting(t problem.TableInfo, name string) *diag.Error {
	path, what := name, "key "+strconv.Quote(name)
	if t.Name != "" {
		path, what = t.Name+"."+name, what+" in ["+t.Name+"]"
	}
	_, unit := problem.CellKey("units", name, "")
	_, header := problem.CellKey("", name, "")
	_, table := problem.TableNamed(name)
	near := nearest(name, t.KeyNames())
	_, taken := n.s.Table(t.Name).Row(near)
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
func unknownKey(t problem.TableInfo, row sheet.Row, key string) *diag.Error {
	path, what := t.Name+"."+key, "key "+strconv.Quote(key)
	kind, hasKind := kindOfRow(t, row)
	all := t.KeyNames()
	near := nearest(key, slices.DeleteFunc(slices.Clone(all), func(name string) bool { k, _ := t.Key(name); return hasKind && !k.UsedBy(kind) }))
	ends := t.Name == "distributed" && (key == "start" || key == "end") // intensities, typed apart
	switch {
	case ends:
		near = "magnitude"
	case kind == problem.SpringKind.String() && plainly(key) == "length":
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
		msg, try := unusedKey(t.Name, k, kind)
		return unknown(path, what+", and "+msg, try)
	}
	for _, other := range []struct{ table, entry string }{{"lines", "line"}, {"joints", "joint"}} {
		for _, name := range append([]string{key}, synonyms[plainly(key)]...) {
			k, ok := problem.CellKey(other.table, "", name)
			if !ok || other.table == t.Name || k.Kinds == nil || !hasKind || t.Name == "distributed" {
				continue
			}
			msg, try := unusedKey(t.Name, k, kind)
			if len(k.Kinds) == 1 {
				try = "a " + other.entry + " of the kind " + k.Kinds[0] + ", or remove it"
			}
			if name != key {
				msg = "unknown " + what + ", and " + msg
			}
			return diag.New(msg, try)
		}
	}
	return unknown(path, what, keepUnread("", key, ""))
}

// unknown says that a key or a table, at a path of the sheet, is known to later versions or to none.
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
	if rest, capital := strings.CutPrefix(name, strings.ToUpper(problem.PrivatePrefix)); capital {
		name = rest // X-foo is not x-X-foo
	}
	if name == "" || sheet.EncodeName(name) != name {
		return "remove it"
	}
	return open + problem.PrivatePrefix + name + shut + ", which is kept but ignored"
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
