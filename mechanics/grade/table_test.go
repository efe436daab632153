package grade_test

import (
	"reflect"
	"strings"
	"testing"

	"trivet/mechanics/grade"
)

func TestReadTable(t *testing.T) {
	rows := func(cells ...[]string) (out [][]string) { return cells }
	for _, c := range []struct {
		name, text string
		head       []string
		rows       [][]string
		fault      string
	}{
		{"plain", "name,T1\nAda,1\n", []string{"name", "T1"}, rows([]string{"Ada", "1"}), ""},
		{"a mark, CRLF, quotes", "\ufeffname,T1\r\n\"Ada, B.\",\"5'-6\"\"\"\r\n", []string{"name", "T1"}, rows([]string{"Ada, B.", `5'-6"`}), ""},
		{"semicolons", "name;T1\nAda;2,5\n", []string{"name", "T1"}, rows([]string{"Ada", "2,5"}), ""},
		{"tabs", "name\tT1\nAda\t2.5\n", []string{"name", "T1"}, rows([]string{"Ada", "2.5"}), ""},
		{"a line that says so", "sep=;\nname;T1\nAda;1\n", []string{"name", "T1"}, rows([]string{"Ada", "1"}), ""},
		{"a comma in a name of the head", "\"angle(T1, T2)\";name\n1;Ada\n", []string{"angle(T1, T2)", "name"}, rows([]string{"1", "Ada"}), ""},
		{"CR alone", "name,T1\rAda,1\r", []string{"name", "T1"}, rows([]string{"Ada", "1"}), ""},
		{"blank rows and cells", "\n,,\nname,T1,,\n,,\nAda\n", []string{"name", "T1"}, rows([]string{"Ada"}), ""},
		{"Latin-1", "name,T1\nJ\xf6rn,1\n", []string{"name", "T1"}, rows([]string{"Jörn", "1"}), ""},
		{"no end", "name,T1\nAda,1", []string{"name", "T1"}, rows([]string{"Ada", "1"}), ""},
		{"nothing", "\n\n", nil, nil, "the table is empty. Try: a head row, such as name,T1,T2, and a row for each student"},
		{"UTF-16", "\xff\xfeT\x001\x00\n\x00\xe9\x00", []string{"T1"}, rows([]string{"é"}), ""},
		{"a workbook", "PK\x03\x04...", nil, nil, "this is a spreadsheet file, not a table as text. Try: save it as CSV"},
		{"bytes", "a\x00b", nil, nil, "this is not text. Try: save it as CSV"},
		{"a quote inside", "name,T1\nAda,5'-6\"\n", nil, nil, `2:9: there is a quote in the middle of a cell. Try: the cell in quotes, with "" for each quote inside`},
		{"a quote open", "name,T1\nAda,1\n\"Ben,2\nCy,3\n", nil, nil, `3: the closing quote of a cell is missing. Try: "" for a quote inside, and one at the end`},
		{"too long", strings.Repeat("a", grade.MaxBytes+1), nil, nil, "the table is larger than 8 MiB. Try: check that this is the intended file"},
	} {
		got, fault := grade.ReadTable([]byte(c.text))
		if fault != nil {
			if got != nil || fault.Error() != c.fault {
				t.Errorf("%s: %v, want %v", c.name, fault, c.fault)
			}
			continue
		}
		var cells [][]string
		for _, r := range got.Rows {
			cells = append(cells, r.Cells)
		}
		if c.fault != "" || !reflect.DeepEqual(got.Head, c.head) || !reflect.DeepEqual(cells, c.rows) {
			t.Errorf("%s: %q %q", c.name, got.Head, cells)
		}
	}
}

func TestColumns(t *testing.T) {
	key, _ := keyOf(t, start(t, "mast-top"), grade.Rule{})
	for _, c := range []struct{ head, says string }{
		{"Name,T1 (N),T2 [kN],T3", ""},
		{"name,\"angle(T1, T2)\",T1.x,T1", ""},
		{"name,group,T1", "left out: 1:2: the column \"group\" is not a result of the sheet, and is left out"},
		{"name,t1", `1:2: there is no result "t1". Try: T1`},
		{"name,T1,T1", `1:3: the column "T1" occurs twice, first as column 2. Try: remove one of them`},
		{"name,T1,T1 (N)", "1:3: there are two columns for T1. Try: remove one of them"},
		{"name,T1 (m)", "1:2: T1 is a force, but m is a unit of length. Try: T1 (kN)"},
		{"name,T1 (kn)", `1:2: unknown unit "kn" in the column "T1 (kn)". Try: kN`},
		{"name,remark", "1: no column is a result of the sheet. Try: the names T1, T2 and T3"},
	} {
		table, fault := grade.ReadTable([]byte(c.head + "\n"))
		if fault != nil {
			t.Fatal(fault)
		}
		cols, fault := key.Columns(table)
		says := ""
		if fault != nil {
			says = fault.Error()
		} else {
			for _, f := range cols.LeftOut {
				says += "left out: " + f.Error()
			}
		}
		if says != c.says {
			t.Errorf("%s: %s, want %s", c.head, says, c.says)
		}
	}
}

// A table of any bytes is read or refused in words, and what is read has a mark.
func FuzzTable(f *testing.F) {
	for _, seed := range []string{"name,T1\nAda,1\n", "name;T1 (N);T2\n\"a\nb\";2,5;\n", "sep=;\nT1;T2\n1;2\n", "\ufeffT1\r\n=1\r\n", "T1\tT2\n1", "\"", ",,,\n", "T1\n\n\n1,2,3\n", "\xe9,T1\n1,1\n"} {
		f.Add([]byte(seed))
	}
	key, _ := keyOf(f, start(f, "mast-top"), grade.Rule{})
	f.Fuzz(func(t *testing.T, text []byte) {
		table, fault := grade.ReadTable(text)
		if (table == nil) == (fault == nil) {
			t.Fatalf("%v, %v", table, fault)
		}
		if fault != nil {
			if fault.Msg == "" {
				t.Error("a fault without words")
			}
			return
		}
		cols, fault := key.Columns(table)
		if fault != nil {
			return
		}
		for _, row := range table.Rows {
			typed, fault := cols.Typed(table, row)
			if fault != nil {
				continue
			}
			marks, _ := key.Mark(typed)
			s := grade.Student{Name: row.Name, Marks: marks}
			if len(marks) != len(cols.Asked) || s.Right() > s.Asked() || s.Name == "" {
				t.Errorf("%+v", s)
			}
		}
	})
}
