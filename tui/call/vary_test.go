package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const noRange = "lamp.toml: no given has a range. Try: W = { value = \"400 N\", range = \"300 N .. 500 N\", step = \"50 N\" }\n"

func TestVaryRefuses(t *testing.T) {
	allRefused(t, []refused{
		{"vary", "trivet: no sheet is named. Try: a file, or - for standard input\n"},
		{"vary lamp.toml", "trivet: the number of variants is missing. Try: -n 24\n"},
		{"vary lamp.toml -n -3", "trivet: a class set has 1 to 999 variants, not -3\n"},
		{"vary lamp.toml -n 1000 -o x", "trivet: a class set has 1 to 999 variants, not 1000\n"},
		{"vary lamp.toml -n 3", "trivet: the folder for the variants is missing. Try: -o class\n"},
		{"vary lamp.toml -n three", "trivet: --count needs a whole number, not \"three\". Try: --count 24\n"},
		{"vary lamp.toml -n 3 -o x --seed -1", "trivet: --seed needs a whole number, not \"-1\". Try: --seed 24\n"},
		{"vary lamp.toml -n 3 -o x --format xls", "trivet: unknown format \"xls\" of a key. Try: csv, markdown or csv,markdown\n"},
		{"vary lamp.toml push.toml -n 3 -o x", "trivet: variants are made of one sheet, but 2 are named. Try: name one\n"},
		{"vary lamp.toml -n 3 -o x", noRange},
		{"vary half.toml -n 3 -o x", halfSays},
		{"vary missing.toml -n 3 -o x", missingSays},
		{"vary ranged.toml -n 9 -o x", "ranged.toml: the ranges give 4 combinations besides the sheet itself, but 9 variants are asked for. Try: a smaller step or a wider range\n"},
		{"vary ranged.toml -n 3 -o lamp.toml", "lamp.toml: part of the path is a file, not a folder. Try: save it under another name\n"},
		{"vary limited.toml -n 4 -o x", "limited.toml: of all 4 combinations, 3 have the same verdict, but 4 variants are asked for. Try: ranges in which the verdict is the same, or fewer variants\n  W = 20 N: T exceeds its limit of 19.0 N\n"},
	})
	for _, folder := range []string{"x", "class"} {
		if _, err := os.Stat(folder); err == nil {
			t.Errorf("%s was made", folder)
		}
	}
}

// A character that acts is an escape in the files that are written of a sheet, as it was
// in the sheet.
func TestVaryKeepsEscapes(t *testing.T) {
	here(t, map[string]string{"a.toml": `title = "A \u202E\u2028\u200B\u2060\uFEFF\u009B lamp"` + "\n" + ranged})
	if got := call("vary", "a.toml", "-n", "2", "-o", "class"); got.code != 0 {
		t.Fatalf("%+v", got)
	}
	for _, file := range []string{"class/a-01.toml", "class/a-02.toml"} {
		written, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		nothingActs(t, file, string(written))
		if want := `title = "A \u202E\u2028\u200B\u2060\uFEFF\u009B lamp, variant `; !strings.HasPrefix(string(written), want) {
			t.Errorf("%s begins with %.60q, want %q", file, written, want)
		}
	}
}

// What was written is said, and what is there is kept as a whole.
func TestVary(t *testing.T) {
	got := calls(t, strings.Fields("vary ranged.toml -n 4 -o class/new --seed 7")...)
	want := "seed 7\n" +
		"class/new/ranged-01.toml: W = 20 N\nclass/new/ranged-02.toml: W = 18 N\nclass/new/ranged-03.toml: W = 14 N\nclass/new/ranged-04.toml: W = 16 N\n" +
		"class/new/ranged-key.csv: the key, for the instructor\n"
	if got != (said{filepath.FromSlash(want), "", 0}) {
		t.Errorf("%+v", got)
	}
	key, err := os.ReadFile("class/new/ranged-key.csv")
	if string(key) != "variant,seed,W (N),T (N)\nranged-01,7,20,20.0\nranged-02,7,18,18.0\nranged-03,7,14,14.0\nranged-04,7,16,16.0\n" {
		t.Errorf("%v, %s", err, key)
	}
	if err := os.Remove("class/new/ranged-02.toml"); err != nil {
		t.Fatal(err)
	}
	var out, says strings.Builder
	c := &Call{Stdout: &out, Stderr: &says}
	if code := run(c, strings.Fields("vary ranged.toml -n 4 -o class/new --seed 8")...); code != CantDo || out.Len() > 0 ||
		says.String() != "class/new/ranged-01.toml: a file of this name exists already. Try: another folder, or --force to overwrite it\n" {
		t.Errorf("exit code %d: %s%s", code, &out, &says)
	}
	if _, err := os.Stat("class/new/ranged-02.toml"); err == nil {
		t.Error("one was written though another could not be")
	}
	says.Reset()
	c = &Call{Stdout: &out, Stderr: &says}
	if code := run(c, strings.Fields("vary ranged.toml -n 2 -o class/new --seed 8 --force")...); code != 0 ||
		says.String() != "class/new: 2 variants, ranged-03.toml to ranged-04.toml, are of an earlier set and are not in the key\n" {
		t.Errorf("exit code %d: %s%s", code, &out, &says)
	}
}

// A seed that was not given is printed, and gives the same again.
func TestVaryAnySeed(t *testing.T) {
	got := calls(t, strings.Fields("vary - -n 2 -o a")...)
	if got.code != CantDo || got.err != strings.Replace(noRange, "lamp.toml", "standard input", 1) {
		t.Errorf("%+v", got)
	}
	got = calls(t, strings.Fields("vary ranged.toml -n 3 -o a")...)
	seed, _, _ := strings.Cut(strings.TrimPrefix(got.out, "seed "), "\n")
	var out strings.Builder
	c := &Call{Stdout: &out, Stderr: &out}
	if code := run(c, "vary", "ranged.toml", "-n", "3", "-o", "b", "--seed", seed); code != 0 || strings.ReplaceAll(out.String(), "b"+string(filepath.Separator), "a"+string(filepath.Separator)) != got.out {
		t.Errorf("exit code %d: %s, and at first\n%s", code, &out, got.out)
	}
}
