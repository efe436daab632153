// Package schema writes the JSON Schema of a sheet (draft 2020-12), by which
// editors complete and check the file. It is made from the tables that the
// reader itself goes by. A schema sees the form of a sheet, not its mechanics: an
// expression, a unit or a name that does not read is left to the reader. A table or a
// key that nothing reads, or that a row's kind does not use, is refused as it is by
// check, unless its name begins with x-.
package schema

import (
	"bytes"
	"encoding/json"
	"strings"

	"trivet/mechanics/problem"
	"trivet/units"
)

// private is the pattern of the names that a sheet keeps for itself.
const private = "^x-"

// node is a schema or a part of one; encoding/json writes its keys in order.
type node map[string]any

// JSON gives the schema as indented JSON with a line end.
func JSON() []byte {
	root := node{}
	for _, t := range problem.Tables() {
		if t.Name == "" { // the first one
			root = table(t)
		} else {
			root["properties"].(node)[t.Name] = table(t)
		}
	}
	root["$schema"], root["title"] = "https://json-schema.org/draft/2020-12/schema", "trivet sheet"
	root["description"] = "a free-body equilibrium problem: points, lines, joints and loads"
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	if err := e.Encode(root); err != nil {
		return nil // cannot be: texts and maps of them only
	}
	return out.Bytes()
}

// table is the schema of a table of rows, or of one whose rows are its keys.
func table(t problem.TableInfo) node {
	keys := node{}
	for _, k := range t.Keys {
		keys[k.Name] = cell(k)
	}
	if t.Fixed {
		return onlyThese(node{"type": "object", "description": t.Says, "properties": keys})
	}
	row := onlyThese(node{"type": "object", "description": t.ARow(), "properties": keys})
	if used := usedBy(t); len(used) > 0 {
		row["dependentSchemas"] = used
	}
	if k, ok := t.Key("kind"); ok && t.Name != "distributed" {
		row["required"] = []string{k.Name}
	}
	if plain, ok := t.Key(t.Plain); ok {
		whole := cell(plain)
		row = node{"description": t.ARow(), "anyOf": []node{whole, row}}
	}
	out := node{"type": "object", "description": t.Says, "additionalProperties": row, "patternProperties": node{private: true}}
	if t.Name == "answers" {
		out["properties"] = node{"source": node{"type": "string", "description": "author, title, edition, example number"}}
	}
	return out
}

// onlyThese makes an object's own properties its only ones, but for private ones.
func onlyThese(n node) node {
	n["additionalProperties"], n["patternProperties"] = false, node{private: true}
	return n
}

// usedBy says of which kinds a row is where it has a key that some kinds alone use; a
// cell left empty does no harm.
func usedBy(t problem.TableInfo) node {
	out := node{}
	kind, _ := t.Key("kind")
	for _, k := range t.Keys {
		if k.Kinds == nil {
			continue
		}
		var words []string
		for _, w := range kind.Words {
			if k.UsedBy(w.Text) {
				words = append(append(words, w.Text), w.Others...)
			}
		}
		out[k.Name] = node{"anyOf": []node{
			{"properties": node{k.Name: empty()}},
			{"properties": node{"kind": node{"enum": words}}, "required": []string{"kind"}},
		}}
	}
	return out
}

func empty() node { return node{"type": "string", "pattern": `^\s*$`} }

// cell is the schema of a cell. A cell is a string; a bare number will do.
func cell(k problem.KeyInfo) node {
	n := node{"description": says(k), "examples": examples(k)}
	switch k.Reads {
	case problem.ReadsText, problem.ReadsResults, problem.ReadsPoint, problem.ReadsPoints, problem.ReadsBody, problem.ReadsBodies,
		problem.ReadsUnit, problem.ReadsDirection, problem.ReadsTension:
		n["type"] = "string"
	case problem.ReadsCount:
		n["anyOf"] = []node{{"type": "integer", "minimum": 1, "maximum": 12}, {"type": "string", "pattern": `^\s*([1-9]|1[0-2])?\s*$`}}
	case problem.ReadsWord:
		n["anyOf"] = words(k)
		delete(n, "examples")
	default:
		n["type"] = []string{"string", "number"}
	}
	return n
}

// words lists the words of a cell, each with what it means; blanks around one do
// no harm, nor does a cell left empty.
func words(k problem.KeyInfo) []node {
	var out []node
	for _, w := range k.Words {
		if w.Text == "" {
			continue
		}
		out = append(out, node{"const": w.Text, "description": w.Says})
		for _, other := range w.Others {
			out = append(out, node{"const": other, "description": "read as " + w.Text, "deprecated": true})
		}
	}
	blank := empty()
	blank["description"] = "left empty"
	return append(out, blank)
}

func says(k problem.KeyInfo) string {
	if k.Dim == units.Number || k.Reads == problem.ReadsUnit {
		return k.Says
	}
	return k.Says + " (" + k.Dim.Name() + ")"
}

// examples are the one of the table of keys, and the unit symbols that fit it.
func examples(k problem.KeyInfo) []string {
	out := []string{k.Example}
	one := ""
	switch k.Reads {
	case problem.ReadsUnit:
	case problem.ReadsQuantity, problem.ReadsMagnitude:
		one = "1 "
	default:
		return out
	}
	for _, u := range units.DefaultSet().Choices(k.Dim) {
		if k.Example != "" && !strings.HasSuffix(" "+k.Example, " "+u.Symbol) {
			out = append(out, one+u.Symbol)
		}
	}
	return out
}
