package labor

import "testing"

// By hand, the letters at the ends of their ranges too: what ends in no letter is a name and stays.
func TestPlural(t *testing.T) {
	for noun, want := range map[string]string{
		"ball": "balls", "angel": "angels", "tuba": "tubas", "klotz": "klotzes", "jazz": "jazzes", "sea": "seas",
		"berry": "berries", "bay": "bays", "box": "boxes", "bus": "buses", "brush": "brushes", "bench": "benches", "wreath": "wreaths",
		"café": "cafés", "\u0080": "\u0080s", "ball 1": "ball 1", "ball {": "ball {", "ball `": "ball `", "BALL": "BALL", "ball \x7f": "ball \x7f",
		"pi\x80": "pi\x80s",
	} {
		if got := plural(noun, 2); got != want {
			t.Errorf("two of %q are %q, want %q", noun, got, want)
		}
		if got := plural(noun, 1); got != noun {
			t.Errorf("one of %q is %q", noun, got)
		}
	}
}
