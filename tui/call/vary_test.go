package call

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

const noRange = "lamp.toml: no given has a range: write for example W = { value = \"400 N\", range = \"300 N .. 500 N\", step = \"50 N\" }\n"

func TestVaryRefuses(t *testing.T) {
	allRefused(t, []refused{
		{"vary", "trivet: no sheet named: write a file, or - for standard input\n"},
		{"vary lamp.toml", "trivet: how many variants: write for example -n 24\n"},
		{"vary lamp.toml -n -3", "trivet: a class set has 1 to 999 variants, and here are -3\n"},
		{"vary lamp.toml -n 1000 -o x", "trivet: a class set has 1 to 999 variants, and here are 1000\n"},
		{"vary lamp.toml -n 3", "trivet: the variants have no folder to go to: write for example -o class\n"},
		{"vary lamp.toml -n three", "trivet: --count takes a whole number, and here is \"three\": write for example --count 24\n"},
		{"vary lamp.toml -n 3 -o x --seed -1", "trivet: --seed takes a whole number, and here is \"-1\": write for example --seed 24\n"},
		{"vary lamp.toml -n 3 -o x --format xls", "trivet: there is no format \"xls\" of a key: write csv, markdown, or csv,markdown\n"},
		{"vary lamp.toml push.toml -n 3 -o x", "trivet: variants are made of one sheet, and here are 2: name one\n"},
		{"vary lamp.toml -n 3 -o x", noRange},
		{"vary half.toml -n 3 -o x", halfSays},
		{"vary missing.toml -n 3 -o x", missingSays},
		{"vary ranged.toml -n 9 -o x", "ranged.toml: the ranges give 4 combinations beside the sheet itself, and 9 variants are asked: write a smaller step, or a wider range\n"},
		{"vary ranged.toml -n 3 -o lamp.toml", "lamp.toml: part of the path is a file, not a folder: save it under another name\n"},
		{"vary limited.toml -n 4 -o x", "limited.toml: of all 4 combinations 3 keep the verdict, and 4 variants are asked: narrow the ranges to what holds, or ask for fewer\n  W = 20 N: T exceeds its limit of 19.0 N\n"},
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
		says.String() != "class/new/ranged-01.toml: there is a file of this name already: name another folder, or write over it with --force\n" {
		t.Errorf("exit code %d: %s%s", code, &out, &says)
	}
	if _, err := os.Stat("class/new/ranged-02.toml"); err == nil {
		t.Error("one was written though another could not be")
	}
	says.Reset()
	c = &Call{Stdout: &out, Stderr: &says}
	if code := run(c, strings.Fields("vary ranged.toml -n 2 -o class/new --seed 8 --force")...); code != 0 ||
		says.String() != "class/new: 2 variants were there before, ranged-03.toml to ranged-04.toml, and are not in the key\n" {
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
