package verb

import (
	"slices"
	"testing"
)

func TestVerbsNameNoFile(t *testing.T) {
	const verbs = "the verbs here are solve, check, sweep, page, new and schema. Try: `solve - < sheet.toml`"
	for _, c := range []struct {
		text, why string
		args      []string
	}{
		{"solve -", "", []string{"solve", "-"}},
		{"solve - --format json --ask 'angle(T1, T2)'", "", []string{"solve", "-", "--format=json", "--ask=angle(T1, T2)"}},
		{"check -", "", []string{"check", "-"}},
		{"sweep - W --steps 5 --to=3", "", []string{"sweep", "-", "W", "--steps=5", "--to=3"}},
		{"page - --as pdf --by 'A. Rigger' --field", "", []string{"page", "-", "--as=pdf", "--by=A. Rigger", "--field", "--output=-"}},
		{"new - --from blank", "", []string{"new", "-", "--from=blank"}},
		{"schema", "", []string{"schema"}},
		{"solve", "sheets are read from standard input only. Try: `solve - < sheet.toml`", nil},
		{"solve - -", "there is only one standard input. Try: - once", nil},
		{"solve /etc/passwd", "sheets are read from standard input only. Try: `solve - < sheet.toml` instead of /etc/passwd", nil},
		{"solve - ../x.toml", "sheets are read from standard input only. Try: `solve - < sheet.toml` instead of ../x.toml", nil},
		{"solve - --out=x", "unknown option --out=x. Try: --format, --ask or --working", nil},
		{"solve - --working=x", "unknown option --working=x. Try: --format, --ask or --working", nil},
		{"check - --ask T1", "unknown option --ask. Try: none; check has no options", nil},
		{"solve - --ask", "--ask needs a value", nil},
		{"sweep -", "the given that runs through its range is missing. Try: `sweep - W < sheet.toml`", nil},
		{"sweep - ../W", "sheets are read from standard input only. Try: `sweep - W < sheet.toml` instead of ../W", nil},
		{"sweep - W x.toml", "sheets are read from standard input only. Try: `sweep - W < sheet.toml` instead of x.toml", nil},
		{"page - -o /etc/x.pdf", "unknown option -o. Try: --as, --by, --date, --field or --task", nil},
		{"page - --output=x.pdf", "unknown option --output=x.pdf. Try: --as, --by, --date, --field or --task", nil},
		{"new x.toml", "a sheet goes to standard output only. Try: `new - --from blank > sheet.toml` instead of x.toml", nil},
		{"schema x", "schema takes no argument x. Try: `schema > sheet.schema.json`", nil},
		{"schema -", "schema reads no standard input. Try: leave out -", nil},
		{"host x.toml", verbs, nil},
		{"sh -c id", verbs, nil},
		{"solve 'x", "a quote in the command is not closed", nil},
		{"solve \x1b]0;x\x07", "sheets are read from standard input only. Try: `solve - < sheet.toml` instead of ·]0;x·", nil},
	} {
		words, why := Split(c.text)
		var args []string
		if why == "" {
			args, _, why = Parse(words, All)
		}
		if why != c.why || !slices.Equal(args, c.args) {
			t.Errorf("%q: %q %q, want %q %q", c.text, args, why, c.args, c.why)
		}
	}
}
