package spelling

import (
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The distance of Levenshtein, by hand, and its properties.
func TestDistance(t *testing.T) {
	for _, test := range []struct {
		a, b string
		want int
	}{{"", "", 0}, {"", "abc", 3}, {"plum", "plum", 0}, {"plumb", "plum", 1}, {"burgandy", "burgundy", 1}, {"kitten", "sitting", 3}, {"ab", "ba", 2}} {
		if got := Distance(test.a, test.b); got != test.want {
			t.Errorf("%q to %q: %d, want %d", test.a, test.b, got, test.want)
		}
	}
	words := rapid.StringMatching("[abc]{0,6}")
	rapid.Check(t, func(t *rapid.T) {
		a, b, c := words.Draw(t, "a"), words.Draw(t, "b"), words.Draw(t, "c")
		ab, bc, ac := Distance(a, b), Distance(b, c), Distance(a, c)
		if ab != Distance(b, a) || (ab == 0) != (a == b) || ac > ab+bc || ab < max(len(a), len(b))-min(len(a), len(b)) {
			t.Fatalf("%q, %q, %q: %d, %d, %d", a, b, c, ab, bc, ac)
		}
	})
}

// A third of the letters may be wrong, and the first of two that are equally like is meant.
func TestDidYouMean(t *testing.T) {
	for _, test := range []struct {
		word, want, reason string
	}{
		{"pick", "; did you mean picks?", "one letter is missing"},
		{"PICKS", "; did you mean picks?", "upper case"},
		{"garlnad", "; did you mean garland?", "two letters of seven are in the wrong place"},
		{"gxxxand", "", "three of seven are wrong"},
		{"bolls", "; did you mean bells?", "as far from balls, which comes later"},
		{"piks", "; did you mean picks?", "one letter of five"},
		{"bow", "; did you mean row?", "one letter of three"},
		{"raw", "; did you mean row?", "one letter of three"},
		{"ran", "", "two letters of three"},
		{"", "", "nothing"},
		{strings.Repeat("p", 65), "", "too long to look at"},
	} {
		if got := DidYouMean(test.word, "garland", "picks", "bells", "balls", "row"); got != test.want {
			t.Errorf("%q, %s: %q, want %q", test.word, test.reason, got, test.want)
		}
	}
	// The longest word that is looked at.
	long := strings.Repeat("p", 63)
	if got := DidYouMean(long+"q", long+"p"); got != "; did you mean "+long+"p?" {
		t.Errorf("64 letters: %q", got)
	}
	if got := DidYouMean("picks"); got != "" {
		t.Errorf("among no names: %q", got)
	}
}
