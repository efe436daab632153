package settings

import (
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"

	"trivet/fixtures"
	"trivet/mechanics/problem"
	"trivet/mechanics/sheet"
)

// home is an environment of its own, with a settings file where text is not "-".
func home(t testing.TB, text string) (env []string, path string) {
	t.Helper()
	dir := t.TempDir()
	env = []string{"XDG_CONFIG_HOME=" + dir, "XDG_STATE_HOME=" + dir}
	path, err := Path(env)
	if err != nil {
		t.Fatal(err)
	}
	if text != "-" {
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	return env, path
}

func with(change func(*Settings)) Settings {
	s := Defaults()
	change(&s)
	return s
}

func TestLoad(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       Settings
		problems   string
	}{
		{"no file", "-", Defaults(), ""},
		{"empty", "", Defaults(), ""},
		{"all", "theme = \"dark\"\nscreen = \"linear\"\nascii = true\nfigures = 4\nup = \"+y\"\n[units]\nlength = \"ft\"\nforce = \"lb\"\nangle = \"rad\"\nmass = \"lbm\"\n",
			Settings{"ft", "lbf", "rad", "lbm", 4, "+y", "dark", true, "linear"}, ""},
		{"as texts", "ascii = \"true\"\nfigures = \" 5 \"\n", with(func(s *Settings) { s.ASCII, s.Figures = true, 5 }), ""},
		{"blank unit", "[units]\nforce = \"\"\n", Defaults(), ""},
		{"wrong values", "theme = \"pink\"\nascii = 1\nfigures = 13\nup = \"z\"\n[units]\nlength = \"kN\"\nforce = \"pounds\"\n", Defaults(),
			`:1:10: theme cannot be "pink". Try: auto, light, dark or plain
:2:9: ascii cannot be "1". Try: true or false
:3:11: figures is a whole number from 1 to 12, not "13". Try: 3
:4:7: up cannot be "z". Try: +z, +y, +x, -x, -y or -z
:6:11: expected a unit of length, but "kN" is a unit of force. Try: m
:7:10: unknown unit "pounds". Try: lbf`},
		{"unknown", "colour = \"red\"\nthem = \"dark\"\n[unit]\nlength = \"ft\"\n[units]\nforces = \"N\"\nfigures = 4\n", Defaults(),
			`:1:1: unknown setting "colour". Try: theme, ascii, screen, figures or up
:2:1: unknown setting "them". Try: theme
:3:2: unknown table "unit". Try: units
:6:1: unknown setting "forces" in [units]. Try: force
:7:1: unknown setting "figures" in [units]. Try: length, force, angle or mass`},
		{"not one value", "theme = { a = 1 }\nfigures = [3]\n", Defaults(),
			`:2:11: figures is a single value. Try: figures = 3
:1:1: unknown table "theme". Try: units`},
		{"no TOML", "theme = dark\n", Defaults(), `:1:9: this value is not in quotes. Try: "..."`},
		{"one wrong, one right", "theme = \"pink\"\nfigures = 4\n", with(func(s *Settings) { s.Figures = 4 }), `:1:10: theme cannot be "pink". Try: auto, light, dark or plain`},
	} {
		t.Run(c.name, func(t *testing.T) {
			env, path := home(t, c.text)
			got, problems := Load(env)
			if got != c.want {
				t.Errorf("%+v, want %+v", got, c.want)
			}
			var says []string
			for _, p := range problems {
				says = append(says, strings.TrimPrefix(p, path))
			}
			if strings.Join(says, "\n") != c.problems {
				t.Errorf("said\n%s\nwant\n%s", strings.Join(says, "\n"), c.problems)
			}
		})
	}
}

func TestLoadNowhere(t *testing.T) {
	if got, problems := Load(nil); got != Defaults() || problems != nil {
		t.Errorf("%+v %v", got, problems)
	}
	env, path := home(t, "-")
	if err := os.MkdirAll(path, 0o700); err != nil {
		t.Fatal(err)
	}
	if got, problems := Load(env); got != Defaults() || fmt.Sprint(problems) != "["+path+": this is a folder. Try: a file in it]" {
		t.Errorf("%+v %v", got, problems)
	}
}

func TestSave(t *testing.T) {
	const text = "# mine\ntheme = 'auto' # as it comes\nfuture = [1, 2]\nfigures = 3\n\n[units]\nforce = \"lb\" # pounds\n"
	for _, c := range []struct {
		name, text string
		change     func(*Settings)
		want       string
	}{
		{"nothing changed", text, func(*Settings) {}, text},
		{"comments stay", text, func(s *Settings) { s.Theme, s.Figures, s.Force = "dark", 4, "kN" },
			"# mine\ntheme = 'dark' # as it comes\nfuture = [1, 2]\nfigures = 4\n\n[units]\nforce = \"kN\" # pounds\n"},
		{"added", text, func(s *Settings) { s.ASCII, s.Length = true, "ft" },
			"# mine\ntheme = 'auto' # as it comes\nfuture = [1, 2]\nfigures = 3\nascii   = \"true\"\n\n[units]\nforce = \"lb\" # pounds\nlength = \"ft\"\n"},
		{"a new file", "-", func(s *Settings) { s.Theme, s.Mass = "plain", "lbm" }, "theme = \"plain\"\n\n[units]\nmass = \"lbm\"\n"},
		{"defaults need no file", "-", func(*Settings) {}, "-"},
		{"a wrong value is mended, another stays", "theme = \"pink\" # why\nfigures = [3]\n", func(s *Settings) { s.Theme = "light" }, "theme = \"light\" # why\nfigures = [3]\n"},
		{"a wrong value elsewhere stays", "theme = \"pink\"\nup = \"+y\"\n", func(s *Settings) { s.Up = "-z" }, "theme = \"pink\"\nup = \"-z\"\n"},
	} {
		t.Run(c.name, func(t *testing.T) {
			env, path := home(t, c.text)
			set, _ := Load(env)
			was := set
			c.change(&set)
			if err := Save(env, was, set); err != nil {
				t.Fatal(err)
			}
			got, err := os.ReadFile(path)
			if err != nil {
				got = []byte("-")
			}
			if string(got) != c.want {
				t.Errorf("got\n%s\nwant\n%s", got, c.want)
			}
			if again, _ := Load(env); again != set {
				t.Errorf("%+v came back as %+v", set, again)
			}
			if err := Save(env, set, was); err != nil {
				t.Fatal(err)
			}
			if again, _ := Load(env); again != was {
				t.Errorf("%+v went back to %+v", was, again)
			}
		})
	}
}

func TestSaveRefuses(t *testing.T) {
	env, path := home(t, "theme = dark\n")
	if err := Save(env, Defaults(), with(func(s *Settings) { s.Theme = "light" })); err == nil || !strings.Contains(err.Error(), "this value is not in quotes") {
		t.Error(err)
	}
	if got, _ := os.ReadFile(path); string(got) != "theme = dark\n" {
		t.Errorf("a file that does not read was replaced: %q", got)
	}
	if err := Save(nil, Defaults(), Defaults()); err == nil || err.Error() != "neither HOME nor an XDG folder is set. Try: set HOME to your home folder" {
		t.Error(err)
	}
}

func TestSaveKeepsWhatIsMoreThanOneValue(t *testing.T) {
	for _, text := range []string{"figures = [3] # mine\n", "figures = { a = 3 }\n", "[figures]\na = 3\n"} {
		env, path := home(t, text)
		set, _ := Load(env)
		next := set
		next.Figures = 5
		if err := Save(env, set, next); err == nil || err.Error() != "figures has more than one value in the settings file. Try: figures = 3" {
			t.Errorf("%q: %v", text, err)
		}
		if got, _ := os.ReadFile(path); string(got) != text {
			t.Errorf("%q became %q", text, got)
		}
	}
}

func TestSaveLeavesWhatAnotherSessionChanged(t *testing.T) {
	env, path := home(t, "theme = \"light\"\nfigures = 3\n")
	one, _ := Load(env)
	other := one
	one.Theme, other.Figures = "dark", 5
	was, _ := Load(env)
	if err := Save(env, was, one); err != nil {
		t.Fatal(err)
	}
	if err := Save(env, was, other); err != nil {
		t.Fatal(err)
	}
	if got, _ := os.ReadFile(path); string(got) != "theme = \"dark\"\nfigures = 5\n" {
		t.Errorf("%q", got)
	}
}

func TestWithAndBeside(t *testing.T) {
	set := Defaults()
	for _, k := range Keys() {
		was := set.Get(k.Name)
		for n, text := 0, set.Beside(k.Name, 1); text != was; text = set.Beside(k.Name, 1) {
			next, err := set.With(k.Name, text)
			if n++; err != nil || next.Get(k.Name) != text || n > 100 {
				t.Fatalf("%s = %q: %v", k.Name, text, err)
			}
			if next.Beside(k.Name, -1) != set.Get(k.Name) {
				t.Errorf("%s: one on from %q and back is %q", k.Name, set.Get(k.Name), next.Beside(k.Name, -1))
			}
			set = next
		}
		set, _ = set.With(k.Name, was)
	}
	for _, c := range []struct{ name, text, says string }{
		{"theme", "pink", `theme cannot be "pink". Try: auto, light, dark or plain`},
		{"figures", "0", `figures is a whole number from 1 to 12, not "0". Try: 3`},
		{"units.force", "m", `expected a unit of force, but "m" is a unit of length. Try: N`},
		{"units.mass", "stonne", `unknown unit "stonne"`},
		{"colour", "red", "unknown setting colour"},
	} {
		next, err := set.With(c.name, c.text)
		if err == nil || err.Error() != c.says || next != set {
			t.Errorf("%s = %q: %v, want %q", c.name, c.text, err, c.says)
		}
	}
	if next, err := set.With("units.force", " lb "); err != nil || next.Force != "lbf" {
		t.Errorf("%q %v", next.Force, err)
	}
}

func TestKeys(t *testing.T) {
	for _, k := range Keys() {
		table, name, ok := strings.Cut(k.Name, ".")
		if !ok {
			table, name = "", k.Name
		}
		text := name + " = " + k.Example + "\n"
		if table != "" {
			text = "[" + table + "]\n" + text
		}
		s, err := sheet.Parse([]byte(text))
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := read(s); len(problems) > 0 || k.Says == "" {
			t.Errorf("%s: %v", k.Name, problems)
		}
	}
}

func TestNewSheet(t *testing.T) {
	set := with(func(s *Settings) { s.Figures, s.Up, s.Force, s.Mass = 4, "+y", "lbf", "lbm" })
	for _, f := range fixtures.Starts() {
		from, err := sheet.Parse([]byte(f.Text))
		if err != nil {
			t.Fatal(err)
		}
		s, err := set.NewSheet(from)
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		p, errs := problem.Read(s)
		if len(errs) > 0 || p.Figures != 4 || p.Units.Force.Symbol != "lbf" || p.Units.Mass.Symbol != "lbm" || p.Up.Y != 1 && !p.Planar {
			t.Errorf("%s: %v", f.Name, errs)
		}
	}
}

func TestRecent(t *testing.T) {
	env, path := home(t, "-")
	if got := Recent(env); got != nil {
		t.Errorf("%v", got)
	}
	dir := filepath.Dir(filepath.Dir(path))
	var want []string
	for i := range maxRecent + 5 {
		name := filepath.Join(dir, fmt.Sprintf("s%d.toml", i))
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
		if err := Opened(env, name); err != nil {
			t.Fatal(err)
		}
		want = append([]string{name}, want...)
	}
	want = want[:maxRecent]
	if got := Recent(env); !reflect.DeepEqual(got, want) {
		t.Fatalf("%v, want %v", got, want)
	}
	if err := Opened(env, want[3]); err != nil {
		t.Fatal(err)
	}
	want = append([]string{want[3]}, append(append([]string{}, want[:3]...), want[4:]...)...)
	if err := os.Remove(want[2]); err != nil {
		t.Fatal(err)
	}
	want = append(want[:2], want[3:]...)
	if got := Recent(env); !reflect.DeepEqual(got, want) {
		t.Fatalf("%v, want %v", got, want)
	}
	name, _ := recentFile(env)
	for _, text := range []string{"", "{", "[1]", "[\"relative.toml\", \"/no/such\"]"} {
		if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		if got := Recent(env); len(got) > 0 {
			t.Errorf("%q gives %v", text, got)
		}
	}
	if Opened(nil, "x") == nil || Recent(nil) != nil {
		t.Error("without a home there is a list")
	}
}

func FuzzSettings(f *testing.F) {
	f.Add("theme = \"dark\"\n[units]\nforce = \"lb\"\n")
	f.Add("figures = 99\nunits = 3\n")
	f.Fuzz(func(t *testing.T, text string) {
		s, err := sheet.Parse([]byte(text))
		if err != nil {
			return
		}
		set, _ := read(s)
		for _, k := range Keys() {
			to, _ := set.With(k.Name, set.Beside(k.Name, 1))
			next, err := write(s, set, to)
			if err != nil {
				continue // refused in words
			}
			if again, _ := read(next); again != to {
				t.Fatalf("%+v came back as %+v from\n%s", to, again, next.Text())
			}
			if n := len(sheet.Diff(s, next)); n > 1 {
				t.Fatalf("%s changed %d values:\n%s", k.Name, n, next.Text())
			}
		}
	})
}
