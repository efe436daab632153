package say

import "testing"

func TestWords(t *testing.T) {
	for _, c := range []struct{ is, want string }{
		{And(), ""}, {And("a"), "a"}, {And("a", "b"), "a and b"}, {And("a", "b", "c"), "a, b and c"},
		{Or("a", "b", "c"), "a, b or c"},
		{AndMore([]string{"a", "b", "c", "d"}, 2), "a, b and 2 more"}, {AndMore([]string{"a", "b"}, 2), "a and b"},
		{Count(1, "joint"), "1 joint"}, {Count(0, "joint"), "0 joints"}, {Count(2, "body"), "2 bodies"}, {Plural(2, "is"), "are"},
		{Number(3), "three"}, {Number(13), "13"}, {Ordinal(1), "first"}, {Ordinal(12), "twelfth"}, {Ordinal(13), "13th"}, {Ordinal(21), "21st"}, {Ordinal(112), "112th"},
		{The("beam"), "the beam"}, {The("AB"), "AB"}, {The("T1"), "T1"}, {The("b"), "b"},
		{Article("axis"), "an"}, {Article("beam"), "a"}, {Capital("ändern"), "Ändern"}, {Capital(""), ""},
		{Sense(2, "tension", "compression"), "tension"}, {Sense(-2, "tension", "compression"), "compression"}, {Sense(0, "tension", "compression"), "no force"},
	} {
		if c.is != c.want {
			t.Errorf("%q, not %q", c.is, c.want)
		}
	}
}
