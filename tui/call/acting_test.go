package call

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"unicode"

	"trivet/mechanics/printable"
	"trivet/mechanics/problem"
	"trivet/mechanics/report"
)

// acting are all the characters that act on a terminal, those of names and of files'
// names alone, and sequences that clear the screen and set the window's title.
func acting() (all, name, file string) {
	for r := rune(0); r <= 0xfeff; r++ {
		if !printable.Acts(r) {
			continue
		}
		all += string(r)
		if !unicode.IsSpace(r) { // no name holds one
			name += string(r)
		}
		if r != 0 {
			file += string(r)
		}
	}
	const sequences = "\x1b[2J\x1b]0;mine\x07\u009b2J"
	return all + sequences, name + sequences, file + sequences + "\x9b2J\xff"
}

// quoted is a text as a basic string of TOML, which has C0 and DEL as escapes; the
// others may stand there as they are.
func quoted(text string) string {
	var b strings.Builder
	for _, r := range text {
		if r < ' ' || r == 0x7f || r == '"' || r == '\\' {
			fmt.Fprintf(&b, `\u%04X`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return `"` + b.String() + `"`
}

// steered is a beam of 4 m on a pin and a roller, with everything named and said that
// a sheet can name and say, each text with # replaced by one that acts, and @ by one
// that a name may hold. Its reactions are By = (2 kN·3 m + 1 kN/m·4 m·2 m - 2 kN m)/4 m = 3 kN
// and Ay = 3 kN.
func steered() string {
	all, name, _ := acting()
	text := `title = "beam #"
statement = "a beam # of 4 m carries W = 2 kN. # Find all."
plane = "xy"
asked = "A@y B@ beam@.loads.size T@"
[units]
length = "m"
force = "kN"
[given]
W = { value = "2 kN ± 0.1 kN", range = "1 kN .. 3 kN", step = "1 kN" }
[points]
"A@" = { at = "0, 0", on = "beam@" }
"B@" = { at = "4, 0", on = "beam@" }
"C@" = { at = "3, 0", on = "beam@" }
"P@" = { at = "0, 5", on = "particle" }
"Q@" = "0, 8"
[lines]
"F@" = { kind = "force", at = "C@", along = "-y", magnitude = "W" }
"T@" = { kind = "cable", path = "P@ Q@", limit = "0.9 kN" }
"G@" = { kind = "force", at = "P@", along = "-y", magnitude = "1 kN" }
[joints]
"A@" = { kind = "pin" }
"B@" = { kind = "roller", normal = "+y" }
[couples]
"M@" = { on = "beam@", magnitude = "2 kN m" }
[distributed]
"q@" = { on = "beam@", path = "A@ B@", along = "-y", magnitude = "1 kN/m" }
[answers]
source = "a book #"
"B@" = "3.1 kN"
"T@" = "1 kN"
`
	return expand(text, all, name)
}

// expand puts texts that act into the strings of a sheet.
func expand(text, all, name string) string {
	inside := func(s string) string { return strings.Trim(quoted(s), `"`) }
	return strings.NewReplacer("#", inside(all), "@", inside(name)).Replace(text)
}

// nothingActs holds what would go to a terminal to texts alone, and to some of them. A
// table for spreadsheets begins with the mark by which they know UTF-8.
func nothingActs(t *testing.T, what, text string) {
	t.Helper()
	if strings.Contains(what, "csv") || strings.Contains(what, "key") {
		text = strings.TrimPrefix(text, "\ufeff")
	}
	if clean := printable.Text(text); clean != text || strings.ContainsRune(text, '\r') {
		at := 0
		for at < min(len(text), len(clean)) && text[at] == clean[at] {
			at++
		}
		t.Errorf("%s: this acts on a terminal: %.80q", what, text[at:])
	}
}

// here writes files into a folder of the test's own, and goes there.
func here(t *testing.T, files map[string]string) {
	t.Helper()
	t.Chdir(t.TempDir())
	for name, text := range files {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Skipf("no file of this name can be made here: %v", err)
		}
	}
}

// call makes a call where the test stands.
func call(args ...string) said {
	var out, says strings.Builder
	code := run(New(strings.NewReader(lamp), &out, &says, []string{"XDG_CONFIG_HOME=none"}), args...)
	return said{out.String(), says.String(), code}
}

// Whatever a sheet says and names, and however its file is called, nothing that acts on
// a terminal comes out of any command in any form; JSON has every text as it is.
func TestNothingOfASheetActs(t *testing.T) {
	all, name, fileName := acting()
	file := "beam" + fileName + ".toml"
	plain := func(text string) string { return strings.ReplaceAll(text, "\x00", "") } // a table holds no NUL
	csv := "name,B" + plain(name) + ",remark\n\"Ada " + plain(all) + "\",\"3 kN" + plain(all) + "\",x\nBen" + plain(name) + ",5 kN,\n"
	here(t, map[string]string{file: steered(), "plain.toml": strings.ReplaceAll(steered(), `\u0000`, ""), "answers.csv": csv, "Ada" + file: steered(), "Ben" + file: strings.Replace(steered(), "3.1 kN", "5 kN", 1)})
	var calls [][]string
	for _, f := range report.Formats {
		calls = append(calls, []string{"solve", file, "--format", f, "--ask", "T" + name + ".x", "--ask", "beam" + name + ".loads.y"})
	}
	for _, f := range []string{"text", "markdown", "latex", "html"} {
		calls = append(calls, []string{"solve", file, "--working", "--format", f})
	}
	for _, f := range report.TableFormats {
		calls = append(calls, []string{"sweep", file, "W", "--format", f})
	}
	for _, f := range report.TableFormats {
		calls = append(calls, []string{"mark", "plain.toml", "answers.csv", "--format", f}, []string{"mark", file, "Ada" + file, "Ben" + file, "--format", f})
	}
	for _, f := range []string{"md", "tex", "html", "svg"} {
		for _, more := range []string{"", "--field", "--task"} {
			args := []string{"page", file, "--as", f, "-o", "-", "--by", "a rigger " + all, "--date", "today " + all}
			if more != "" {
				args = append(args, more)
			}
			calls = append(calls, args)
		}
	}
	calls = append(calls, []string{"check", file}, []string{"solve", file, file}, []string{"vary", file, "-n", "2", "-o", "class" + fileName, "--format", "csv,markdown"},
		[]string{"vary", file, "-n", "2", "-o", "class" + fileName}, []string{"__complete", "sweep", file, ""})
	for _, args := range calls {
		what := strings.ReplaceAll(strings.Join(args[:1], " ")+" "+strings.Join(args[min(2, len(args)):], " "), fileName, "")
		what = printable.Line(what[:min(len(what), 60)])
		got := call(args...)
		nothingActs(t, what, got.out)
		nothingActs(t, what+", said", got.err)
		if got.out == "" && !slices.Contains(args, "class"+fileName) {
			t.Errorf("%s: nothing is printed: %s", what, got.err)
		}
	}
	var whole struct {
		Sheet, Title string
		Unknowns     []struct{ Name string }
	}
	got := call("solve", file, "--format", "json")
	if err := json.Unmarshal([]byte(got.out), &whole); err != nil || whole.Title != "beam "+all || whole.Unknowns[0].Name != "T"+name || whole.Sheet != strings.ToValidUTF8(file, "\ufffd") {
		t.Errorf("JSON does not hold the texts as they are: %v, %q", err, whole)
	}
	for _, page := range []string{"a.md", "a.tex", "a.html", "a.svg"} {
		for _, more := range [][]string{{}, {"--field"}, {"--task"}} {
			if got := call(append([]string{"page", file, "-o", page, "--force", "--by", "a rigger " + all, "--date", all}, more...)...); got.code == CantDo {
				t.Fatalf("%+v", got)
			}
			text, err := os.ReadFile(page)
			if err != nil {
				t.Fatal(err)
			}
			nothingActs(t, "the file "+page, string(text))
		}
	}
	keys, _ := filepath.Glob("class*/*-key.*")
	if len(keys) != 2 {
		t.Errorf("keys: %q", keys)
	}
	for _, key := range keys {
		text, err := os.ReadFile(key)
		if err != nil {
			t.Fatal(err)
		}
		nothingActs(t, "the key", string(text))
	}
}

// Every cell of a sheet may be wrong, and what is said of it names it.
func TestNothingOfAFaultActs(t *testing.T) {
	all, name, _ := acting()
	var sheets []string
	for _, table := range problem.Tables() {
		for _, text := range []string{all, name, "P" + name, "1 m" + name, "T" + name + " + 1 N"} {
			for _, key := range table.Keys {
				row := key.Name + " = " + quoted(text) + "\n"
				switch {
				case table.Name == "":
					sheets = append(sheets, row)
				case table.Fixed:
					sheets = append(sheets, "["+table.Name+"]\n"+row)
				default:
					sheets = append(sheets, "["+table.Name+"]\nx = { "+key.Name+" = "+quoted(text)+" }\n")
				}
			}
			if table.Name != "" {
				sheets = append(sheets, "["+table.Name+"]\n"+quoted(text)+" = "+quoted(text)+"\n", "["+table.Name+"]\nx = { "+quoted(text)+" = "+quoted(text)+" }\n")
			}
			sheets = append(sheets, "["+quoted(text)+"]\nx = 1\n", "["+quoted(text)+"."+quoted(text)+"]\n"+quoted(text)+" = 1\n", quoted(text)+" = "+quoted(text)+"\n")
		}
	}
	for _, r := range all { // as they are, which TOML takes for some and refuses for others
		sheets = append(sheets, "title "+string(r)+" =\n", "title = \""+string(r)+"\"\n[points]\nA = '"+string(r)+"'\n", "# "+string(r)+"\n[lines]\nT"+string(r)+" = 1\n")
	}
	here(t, nil)
	for _, text := range sheets {
		if !strings.Contains(text, "[points]") {
			text += lamp[strings.Index(lamp, "[points]"):]
		}
		for _, args := range [][]string{{"solve", "-"}, {"solve", "-", "--format", "json"}, {"check", "-"}} {
			var out, says strings.Builder
			run(New(strings.NewReader(text), &out, &says, nil), args...)
			what := fmt.Sprintf("%s of %.40q", args, text)
			nothingActs(t, what, out.String())
			nothingActs(t, what+", said", says.String())
			if len(args) > 2 && !json.Valid([]byte(out.String())) {
				t.Errorf("%s: no JSON: %q", what, &out)
			}
		}
	}
}

// What is typed on the command line comes back in messages, each on one line.
func TestNothingOfACallActs(t *testing.T) {
	_, _, x := acting()
	here(t, map[string]string{"lamp.toml": lamp, "ranged.toml": ranged, "answers.csv": "name,T\nAda,1\n", "variants.csv": "name,sheet,T\nAda,a\x1b[2J,1\n"})
	for _, args := range [][]string{
		{"solve", x}, {"check", x}, {x, x}, {"page", x, "-o", "a.svg"}, {"sweep", x, "W"}, {"mark", x, x}, {"mark", "lamp.toml", x}, {"vary", x, "-n", "1", "-o", "a"},
		{"solve", "lamp.toml", "--format", x}, {"solve", "lamp.toml", "--ask", x}, {"solve", "--" + x}, {"solve", "-" + x}, {"solve", "---" + x, "lamp.toml"}, {"solve", "lamp.toml", "--working=" + x},
		{"page", "lamp.toml", "-o", x}, {"page", "lamp.toml", "-o", x + ".svg", "--as", x}, {"page", "lamp.toml", "-o", "-", "--as", x}, {"page", "lamp.toml", "-o", x + "/a.svg"},
		{"sweep", "ranged.toml", x}, {"sweep", "ranged.toml", "W", "--from", x, "--to", x}, {"sweep", "ranged.toml", "W", "--steps", x}, {"sweep", "ranged.toml", "W", "--format", x},
		{"mark", "lamp.toml", "answers.csv", "--format", x}, {"mark", "lamp.toml", "answers.csv", "--within", x}, {"mark", ".", "variants.csv"}, {"mark", "lamp.toml", "lamp.toml", x},
		{"vary", "ranged.toml", "-n", x, "-o", "a"}, {"vary", "ranged.toml", "-n", "1", "-o", x, "--format", x}, {"vary", "ranged.toml", "-n", "1", "-o", "lamp.toml/" + x}, {"vary", "ranged.toml", "-n", "1", "-o", x, "--seed", x},
		{"new", x, x}, {"new", x + "/a.toml"}, {"new", "--from", x, "a.toml"}, {"schema", x}, {"completion", x}, {"completion", "bash", x}, {"help", x}, {x, "--help"}, {"solve", "--most", x},
	} {
		got := call(args...)
		what := fmt.Sprintf("%.60q", args)
		nothingActs(t, what, got.out)
		nothingActs(t, what+", said", got.err)
		if args[0] == "check" && strings.Count(got.out, "\n") != 1 {
			t.Errorf("%s prints %q, want one line per sheet", what, got.out)
		}
		if got.code == 0 && !slices.Contains(args, "--help") || got.code != 0 && strings.Count(got.err, "\n") != 1 {
			t.Errorf("%s: exit code %d, not one line: %q", what, got.code, got.err)
		}
	}
}

// The scripts that a shell runs are what they were before they were cleaned.
func TestCompletionIsAsItWas(t *testing.T) {
	for _, shell := range []string{"bash", "zsh", "fish", "powershell"} {
		var clean, plain, says bytes.Buffer
		run(New(nil, &clean, &says, nil), "completion", shell)
		run(&Call{Stdout: &plain, Stderr: &says}, "completion", shell)
		if clean.Len() < 1000 || !bytes.Equal(clean.Bytes(), plain.Bytes()) {
			t.Errorf("%s: %d bytes, uncleaned %d", shell, clean.Len(), plain.Len())
		}
	}
}

// A sheet and a page in PDF or PNG go to a file or a program byte by byte.
func TestBytesGoAsTheyAre(t *testing.T) {
	here(t, map[string]string{"lamp.toml": lamp})
	for _, form := range []string{"pdf", "png"} {
		if got := call("page", "lamp.toml", "-o", "a."+form); got.code != 0 {
			t.Fatalf("%+v", got)
		}
		want, err := os.ReadFile("a." + form)
		if got := call("page", "lamp.toml", "-o", "-", "--as", form); err != nil || got.out != string(want) || printable.Text(got.out) == got.out {
			t.Errorf("%s: %v, %d bytes, want %d", form, err, len(got.out), len(want))
		}
	}
	if got := call("new", "-"); got.code != 0 || !strings.HasPrefix(got.out, "title ") {
		t.Errorf("%+v", got)
	}
}
