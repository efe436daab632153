package call

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// week has a problem for everyone and one of which each person has a variant.
const week = `title = "A week"
[problems]
lamp = { sheet = "lamp.toml", points = 4 }
load = { sheet = "more/ranged.toml", variant = true }
`

// inFolder makes a call in a folder that holds these files besides the usual ones, or
// in their place.
func inFolder(t *testing.T, files map[string]string, lines ...string) said {
	t.Helper()
	t.Chdir(t.TempDir())
	all := sheets()
	maps.Copy(all, map[string]string{"week.toml": week, "more/ranged.toml": ranged})
	maps.Copy(all, files)
	for name, text := range all {
		if err := os.MkdirAll(filepath.Dir(name), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	var got said
	for _, line := range lines {
		var out, says strings.Builder
		c := New(strings.NewReader(week), &out, &says, []string{"XDG_CONFIG_HOME=" + filepath.Join(t.TempDir(), "none")})
		args := strings.Fields(line)
		for i := range args {
			args[i] = strings.ReplaceAll(args[i], "_", " ") // of a name
		}
		got.code = run(c, args...)
		got.out, got.err = got.out+filepath.ToSlash(out.String()), got.err+filepath.ToSlash(says.String())
	}
	return got
}

func TestCheckSet(t *testing.T) {
	const lampWell, loadWell = "ok    lamp.toml: determinate, 6 checks\n", "ok    more/ranged.toml: determinate, 6 checks\n"
	problems := func(rows string) map[string]string {
		return map[string]string{"week.toml": "[problems]\n" + rows + "\n"}
	}
	for _, c := range []struct {
		files map[string]string
		line  string
		want  said
	}{
		{nil, "check week.toml", said{lampWell + loadWell, "", 0}},
		{nil, "check week.toml misprint.toml", said{lampWell + loadWell + "FAILS misprint.toml: T = 10.000 N differs from the reference 11 N\n", "", Failed}},
		// a sheet that two problems share is checked once
		{problems(`a = { sheet = "lamp.toml" }` + "\n" + `b = { sheet = "./lamp.toml" }`), "check week.toml", said{lampWell, "", 0}},
		{problems(`a = { sheet = "misprint.toml" }`), "check week.toml", said{"FAILS misprint.toml: T = 10.000 N differs from the reference 11 N\n", "", Failed}},
		{problems(`a = { sheet = "half.toml" }`), "check week.toml", said{"FAILS half.toml: unreadable\n", halfSays, CantDo}},
		{problems(`a = { sheet = "lamb.toml" }`), "check week.toml", said{"FAILS lamb.toml: unreadable\n",
			"week.toml:2:16: there is no sheet \"lamb.toml\". Try: check the name\na = { sheet = \"lamb.toml\" }\n               ^~~~~~~~~\n", CantDo}},
		{problems(`a = { sheet = "week.toml" }`), "check week.toml", said{"FAILS week.toml: unreadable\n",
			"week.toml: this is a set of problems, not a sheet. Try: one of its sheets, or `trivet check` with the file of the set\n", CantDo}},
		{problems(`a = { sheet = "lamp.toml", variant = true }`), "check week.toml", said{lampWell,
			"week.toml:2:38: the sheet \"lamp.toml\" has no variants: no given has a range. Try: W = { value = \"400 N\", range = \"300 N .. 500 N\", step = \"50 N\" }\n" +
				"a = { sheet = \"lamp.toml\", variant = true }\n" + strings.Repeat(" ", 37) + "^~~~\n", Failed}},
		{map[string]string{"week.toml": "[problems]\na = { sheet = \"one.toml\", variant = true }\n", "one.toml": strings.Replace(ranged, ".. 20 N", ".. 14 N", 1)},
			"check week.toml", said{"ok    one.toml: determinate, 6 checks\n", "", 0}},
		{problems(`a = { sheet = "lamp.toml", point = 4 }`), "check week.toml lamp.toml", said{"FAILS week.toml: unreadable\n" + lampWell,
			"week.toml:2:28: unknown key \"point\" of a problem. Try: points\na = { sheet = \"lamp.toml\", point = 4 }\n                           ^~~~~\n", CantDo}},
		{nil, "check -", said{"FAILS standard input: unreadable\n",
			"standard input: this is a set of problems, not a sheet. Try: one of its sheets, or `trivet check` with the file of the set\n", CantDo}},
		{nil, "solve week.toml", said{"", "week.toml: this is a set of problems, not a sheet. Try: one of its sheets, or `trivet check` with the file of the set\n", CantDo}},
	} {
		if got := inFolder(t, c.files, c.line); got != c.want {
			t.Errorf("%v trivet %s:\n%+v, want\n%+v", c.files, c.line, got, c.want)
		}
	}
}

// A whole set in one call: variants, pages to hand out, worked solutions, keys, tables to
// fill in, and what is being done meanwhile.
func TestVarySet(t *testing.T) {
	got := inFolder(t, nil, "vary week.toml -n 2 -o class --seed 7 --as md")
	const wants = `seed 7
class/lamp.toml: the same for everyone
class/lamp.md: the page to hand out
class/lamp-worked.md: the worked solution, for the instructor
class/lamp-answers.csv: answers, with the names to fill in
class/load-01.toml: W = 20 N
class/load-02.toml: W = 18 N
class/load-key.csv: the key, for the instructor
class/load-01.md: the page to hand out
class/load-01-worked.md: the worked solution, for the instructor
class/load-02.md: the page to hand out
class/load-02-worked.md: the worked solution, for the instructor
class/load-answers.csv: answers, with the names to fill in
`
	if got != (said{wants, "lamp, problem 1 of 2: writing 4 files\nload, problem 2 of 2: writing 8 files\n", 0}) {
		t.Errorf("%+v", got)
	}
	for file, want := range map[string]string{
		"lamp.toml": lamp, "lamp-answers.csv": "name,sheet,T\n,lamp,\n,lamp,\n", "load-answers.csv": "name,sheet,T\n,load-01,\n,load-02,\n",
		"load-key.csv": "variant,seed,W (N),T (N)\nload-01,7,20,20.0\nload-02,7,18,18.0\n",
	} {
		if text, err := os.ReadFile(filepath.Join("class", file)); err != nil || string(text) != want {
			t.Errorf("%s: %v\n%s", file, err, text)
		}
	}
	for file, result := range map[string]bool{"load-01.md": false, "load-01-worked.md": true} {
		text, err := os.ReadFile(filepath.Join("class", file))
		if err != nil || strings.Contains(string(text), "20.0") != result {
			t.Errorf("%s (%v) has the result: %v\n%s", file, err, !result, text)
		}
	}

	// the same sheet and seed give the same variants as of the sheet alone
	one := inFolder(t, nil, "vary more/ranged.toml -n 2 -o class --seed 7")
	if !strings.Contains(one.out, "ranged-01.toml: W = 20 N\nclass/ranged-02.toml: W = 18 N\n") {
		t.Errorf("%+v", one)
	}
}

// What is filled in is marked as any class.
func TestVarySetIsMarked(t *testing.T) {
	filled := map[string]string{"load.csv": "name,sheet,T\nAda,load-01,20\nBen,load-02,20\n"}
	got := inFolder(t, filled, "vary week.toml -n 2 -o class --seed 7 --as svg", "mark class load.csv --format csv")
	if got.code != 0 || !strings.Contains(got.out, "Ada,load-01,1,") || !strings.Contains(got.out, "Ben,load-02,0,") {
		t.Errorf("%+v", got)
	}
}

func TestPageSet(t *testing.T) {
	got := inFolder(t, nil, "page week.toml -o class --as html")
	const wants = `class/lamp.html: the page to hand out
class/lamp-worked.html: the worked solution, for the instructor
class/lamp-answers.csv: answers, with the names to fill in
class/load.html: the page to hand out
class/load-worked.html: the worked solution, for the instructor
class/load-answers.csv: answers, with the names to fill in
`
	if got != (said{wants, "lamp, problem 1 of 2: writing 3 files\nload, problem 2 of 2: writing 3 files\n", 0}) {
		t.Errorf("%+v", got)
	}
	if got := inFolder(t, nil, "page week.toml -o class"); got.code != 0 || !strings.Contains(got.out, "class/lamp.pdf: ") {
		t.Errorf("%+v", got)
	}
	pages, _ := filepath.Glob("class/*.pdf")
	if len(pages) != 4 {
		t.Errorf("%q", pages)
	}
}

// A call that can't be done says so, and leaves nothing behind.
func TestSetsRefuse(t *testing.T) {
	const twice = "[problems]\nlamp = { sheet = \"lamp.toml\" }\nlamp-worked = { sheet = \"lamp.toml\" }\n"
	for _, c := range []struct{ text, line, want string }{
		{week, "page week.toml", "trivet: the pages of a set need a folder. Try: -o class\n"},
		{week, "page week.toml -o - --as pdf", "trivet: the pages of a set need a folder. Try: -o class\n"},
		{week, "page week.toml -o class.pdf", "trivet: the pages of a set need a folder, and \"class.pdf\" is called as a page. Try: -o class --as pdf\n"},
		{week, "page week.toml -o class --task", "trivet: each problem of a set gets a page to hand out and a worked solution. Try: leave out --task and --field\n"},
		{week, "page week.toml -o class --as doc", "trivet: unknown format .doc of a page. Try: a name that ends with .md, .tex, .html, .pdf, .svg or .png\n"},
		{week, "page week.toml lamp.toml -o class.pdf", "trivet: a page contains one sheet, but 2 are named. Try: one of them\n"},
		{week, "page week.toml -o there.svg/class", "there.svg/class: part of the path is a file, not a folder. Try: save it under another name\n"},
		{week, "vary week.toml -n 2 -o class --as doc", "trivet: unknown format .doc of a page. Try: a name that ends with .md, .tex, .html, .pdf, .svg or .png\n"},
		{week, "vary week.toml -n 9 -o class", "more/ranged.toml: the ranges give 4 combinations besides the sheet itself, but 9 variants are asked for. Try: a smaller step or a wider range\n"},
		{twice, "page week.toml -o class", "class/lamp-worked.pdf: two files of the set would have this name. Try: rename one of its problems\n"},
		{"[problems]\na = { sheet = \"missing.toml\" }\n", "page week.toml -o class", missingSays},
		{"[problems]\na = { sheet = \"missing.toml\" }\n", "vary week.toml -n 2 -o class", missingSays},
		{"[problems]\n", "vary week.toml -n 2 -o class", "week.toml:1:2: the set has no problem. Try: beam = { sheet = \"beam.toml\", points = 4 }\n[problems]\n ^~~~~~~~\n"},
		{"[problems]\n", "page week.toml -o class", "week.toml:1:2: the set has no problem. Try: beam = { sheet = \"beam.toml\", points = 4 }\n[problems]\n ^~~~~~~~\n"},
	} {
		if got := inFolder(t, map[string]string{"week.toml": c.text}, c.line); got != (said{"", c.want, CantDo}) {
			t.Errorf("trivet %s:\n%+v, want\n%s", c.line, got, c.want)
		}
		if left, _ := filepath.Glob("class*/*"); len(left) > 0 {
			t.Errorf("trivet %s leaves %q", c.line, left)
		}
	}
}

// What is there stays, and what an earlier, larger set has left is named.
func TestVarySetAgain(t *testing.T) {
	got := inFolder(t, nil, "vary week.toml -n 3 -o class --seed 7 --as md", "vary week.toml -n 2 -o class --seed 7 --as md")
	if got.code != CantDo || !strings.HasSuffix(got.err, "class/lamp.toml: a file of this name exists already. Try: another folder, or --force to overwrite it\n") {
		t.Errorf("%+v", got)
	}
	got = inFolder(t, nil, "vary week.toml -n 3 -o class --seed 7 --as md", "vary week.toml -n 2 -o class --seed 7 --as md --force")
	if got.code != 0 || !strings.HasSuffix(got.err, "class/load-03.toml: this variant is of an earlier set and is not in the key\n") {
		t.Errorf("%+v", got)
	}
	files, _ := os.ReadDir("class")
	var names []string
	for _, f := range files {
		names = append(names, f.Name())
	}
	if !slices.Contains(names, "load-03.toml") {
		t.Error(fmt.Sprint(names))
	}
}
