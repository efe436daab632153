package schema_test

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/pelletier/go-toml/v2"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/schema"
	"trivet/mechanics/sheet"
)

func compiled(t testing.TB) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(schema.JSON()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource("sheet.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("sheet.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// held gives what the schema has against a sheet; nil for nothing.
func held(t testing.TB, s *jsonschema.Schema, text string) error {
	t.Helper()
	var all map[string]any
	if err := toml.Unmarshal([]byte(text), &all); err != nil {
		t.Fatal(err)
	}
	// By way of JSON, since that is what a validator knows.
	b, err := json.Marshal(all)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return s.Validate(doc)
}

func TestSchemaIsOne(t *testing.T) {
	s := compiled(t) // against the metaschema that it names
	if s.DraftVersion != 2020 {
		t.Errorf("draft %d", s.DraftVersion)
	}
	if !bytes.Equal(schema.JSON(), schema.JSON()) || !bytes.HasSuffix(schema.JSON(), []byte("}\n")) {
		t.Error("the schema is not the same each time")
	}
	if !bytes.Contains(schema.JSON(), []byte(`"description": "an answer"`)) || bytes.Contains(schema.JSON(), []byte("a answer")) {
		t.Error("an answer has no article of its own")
	}
	// Every key, kind and joint of the tables is in it, with what it means.
	text := string(schema.JSON())
	for _, table := range problem.Tables() {
		for _, k := range table.Keys {
			if !strings.Contains(text, `"`+k.Name+`": {`) || !strings.Contains(text, k.Says) {
				t.Errorf("[%s] %s is not there", table.Name, k.Name)
			}
			for _, w := range k.Words {
				if w.Text != "" && !strings.Contains(text, `"const": "`+w.Text+`"`) {
					t.Errorf("[%s] %s: %s is not there", table.Name, k.Name, w.Text)
				}
			}
		}
	}
}

func TestFixturesHold(t *testing.T) {
	s := compiled(t)
	for _, f := range append(fixtures.Starts(), fixtures.Published()...) {
		if err := held(t, s, f.Answered()); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
	}
}

// What the reader takes the schema takes, and what is broken in form it refuses.
func TestSheets(t *testing.T) {
	s := compiled(t)
	for _, c := range []struct {
		name, text string
		holds      bool
	}{
		{"empty", "", true},
		{"bare numbers", "figures = 4\n[points]\nA = 4\n[given]\nh = 6\nk = { value = 2.5, step = 1 }\n", true},
		{"private keys and tables", "x-colour = \"red\"\n[x-views]\nx = 1\n[points]\nA = { at = \"1, 2\", x-note = \"here\" }\n", true},
		{"keys of some kinds", "[lines]\nK = { kind = \"spring\", path = \"A B\", stiffness = \"5 N/m\" }\n[joints]\nO = { kind = \"smooth pin\", axis = \"+x\" }\nC = { kind = \"rough\", normal = \"+y\", friction = 0.3, face = \"A B\" }\n", true},
		{"an empty cell of another kind", "[lines]\nT = { kind = \"cable\", path = \"A B\", stiffness = \"\" }\n", true},
		{"an alias", "[joints]\nO = { kind = \"ball\" }\n", true},
		{"blank cells", "plane = \"\"\nexpect = \"\"\n[lines]\nT = { kind = \"cable\", path = \"A B\", magnitude = \"\" }\n", true},
		{"an answer", "[answers]\nsource = \"own\"\nT1 = \"3 N\"\nT2 = { printed = \"3 N\", within = \"1 N\", why = \"rounded\" }\n", true},

		{"private rows", "[given]\nx-note = [\"see\", \"page 3\"]\n[points]\nx-P = 3\n[bodies]\nx-b = \"2 kN\"\n[lines]\nx-N = { knd = \"rope\" }\n[joints]\nx-J = 1\n[couples]\nx-M = {}\n[distributed]\nx-q = true\n[answers]\nx-note = { page = 3 }\n[units]\nx-time = 1\n", true},
		{"an old word", "expect = \"sense-broken\"\n", true},

		{"an unknown key", "colour = \"red\"\n", false},
		{"an unknown table", "[views]\nx = 1\n", false},
		{"a table of a later version", "[cases]\nx = { W = \"1 N\" }\n", false},
		{"an unknown unit", "[units]\ntime = \"s\"\n", false},
		{"an unknown key of a row", "[points]\nA = { at = \"1, 2\", note = \"here\" }\n", false},
		{"a key of another kind of line", "[lines]\nT = { kind = \"cable\", path = \"A B\", stiffness = \"5 N/m\" }\n", false},
		{"a key of another kind of joint", "[joints]\nO = { kind = \"roller\", normal = \"+y\", axis = \"+x\" }\n", false},
		{"a key of water without it", "[distributed]\nq = { path = \"A B\", along = \"-y\", magnitude = \"1 N/m\", width = \"2 m\" }\n", false},
		{"figures too many", "figures = 13\n", false},
		{"figures no number", "figures = \"three\"\n", false},
		{"plane", "plane = \"xz\"\n", false},
		{"up", "up = \"up\"\n", false},
		{"expect", "expect = \"fine\"\n", false},
		{"title a list", "title = [\"a\"]\n", false},
		{"no kind of line", "[lines]\nT = { kind = \"rope\", path = \"A B\" }\n", false},
		{"a line without a kind", "[lines]\nT = { path = \"A B\" }\n", false},
		{"a line as a plain value", "[lines]\nT = \"A B\"\n", false},
		{"no kind of joint", "[joints]\nO = { kind = \"glue\" }\n", false},
		{"moments", "[joints]\nO = { kind = \"hinge\", moments = \"some\" }\n", false},
		{"a point as a list", "[points]\nA = [1, 2, 3]\n", false},
		{"a place as a list", "[points]\nA = { at = [1, 2, 3] }\n", false},
		{"a table as a value", "points = \"A\"\n", false},
		{"a unit as a number", "[units]\nforce = 3\n", false},
		{"a boolean magnitude", "[lines]\nT = { kind = \"cable\", path = \"A B\", magnitude = true }\n", false},
		{"kind of load", "[distributed]\nq = { path = \"A B\", along = \"-y\", kind = \"snow\" }\n", false},
		{"a body as a text", "[bodies]\nboom = \"2 kN\"\n", false},
	} {
		err := held(t, s, c.text)
		if (err == nil) != c.holds {
			t.Errorf("%s: %v", c.name, err)
		}
		if c.holds || err == nil {
			continue
		}
		sh, perr := sheet.Parse([]byte(c.text))
		if perr != nil {
			t.Fatal(perr)
		}
		if p, errs := problem.Read(sh); len(errs)+len(p.Unread) == 0 {
			t.Errorf("%s: the reader has nothing against it", c.name)
		}
	}
}
