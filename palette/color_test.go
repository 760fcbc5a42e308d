package palette

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"example.com/fircone/units"

	"pgregory.net/rapid"
)

func TestParseColor(t *testing.T) {
	for _, test := range []struct {
		text   string
		want   Color
		reason string
	}{
		{"#dc143c", Color{220, 20, 60}, "six digits"},
		{"#DC143C", Color{220, 20, 60}, "upper case"},
		{"#09afAF", Color{0x09, 0xaf, 0xaf}, "both ends of each kind of digit"},
		{"#d2f", Color{0xdd, 0x22, 0xff}, "three digits, each doubled"},
		{"#000", Color{}, "black"},
		{"crimson", Color{220, 20, 60}, "a name"},
		{"ForestGreen", Color{34, 139, 34}, "case does not count"},
		{"aliceblue", Color{240, 248, 255}, "the first name"},
		{"yellowgreen", Color{154, 205, 50}, "the last name"},
		{"grey", Color{128, 128, 128}, "one of two spellings"},
		{" Crimson\t", Color{220, 20, 60}, "space around it"},
		{strings.Repeat(" ", 60) + "#dc1", Color{0xdd, 0xcc, 0x11}, "64 bytes"},
	} {
		got, err := ParseColor(test.text)
		if err != nil || got != test.want {
			t.Errorf("%s: ParseColor(%q) = %v, %v, want %v", test.reason, test.text, got, err, test.want)
		}
	}
	const hint = `want #rrggbb, #rgb or a CSS color name`
	for _, test := range []struct {
		text string
		err  error
		want string
	}{
		{"", units.ErrSyntax, `palette.ParseColor: text "": not understood: ` + hint + ` of 1 to 64 bytes`},
		{strings.Repeat("x", 65), units.ErrSyntax, `palette.ParseColor: text "` + strings.Repeat("x", 64) + `…": not understood: ` + hint + ` of 1 to 64 bytes`},
		{strings.Repeat("x", 64), units.ErrName, `palette.ParseColor: text "` + strings.Repeat("x", 64) + `": unknown name: ` + hint},
		{"crimsom", units.ErrName, `palette.ParseColor: text "crimsom": unknown name: ` + hint},
		{"zzz", units.ErrName, `palette.ParseColor: text "zzz": unknown name: ` + hint},
		{" \t", units.ErrSyntax, `palette.ParseColor: text " \t": not understood: ` + hint + ` of 1 to 64 bytes`},
		{strings.Repeat(" ", 61) + "#dc1", units.ErrSyntax, `palette.ParseColor: text "` + strings.Repeat(" ", 61) + `#dc…": not understood: ` + hint + ` of 1 to 64 bytes`},
		{"forest green", units.ErrName, `palette.ParseColor: text "forest green": unknown name: ` + hint},
		{" crimsom", units.ErrName, `palette.ParseColor: text " crimsom": unknown name: ` + hint},
		{"# dc143c", units.ErrSyntax, `palette.ParseColor: text "# dc143c": not understood: ` + hint},
		{"#", units.ErrSyntax, `palette.ParseColor: text "#": not understood: ` + hint},
		{"#12", units.ErrSyntax, `palette.ParseColor: text "#12": not understood: ` + hint},
		{"#1234", units.ErrSyntax, `palette.ParseColor: text "#1234": not understood: ` + hint},
		{"#12345", units.ErrSyntax, `palette.ParseColor: text "#12345": not understood: ` + hint},
		{"#1234567", units.ErrSyntax, `palette.ParseColor: text "#1234567": not understood: ` + hint},
		{"#12345g", units.ErrSyntax, `palette.ParseColor: text "#12345g": not understood: ` + hint},
		{"#g12", units.ErrSyntax, `palette.ParseColor: text "#g12": not understood: ` + hint},
		{"#12G", units.ErrSyntax, `palette.ParseColor: text "#12G": not understood: ` + hint},
		{"#12/", units.ErrSyntax, `palette.ParseColor: text "#12/": not understood: ` + hint},
		{"#12:", units.ErrSyntax, `palette.ParseColor: text "#12:": not understood: ` + hint},
		{"#12@", units.ErrSyntax, `palette.ParseColor: text "#12@": not understood: ` + hint},
		{"#12`", units.ErrSyntax, "palette.ParseColor: text \"#12`\": not understood: " + hint},
	} {
		got, err := ParseColor(test.text)
		checkError(t, err, test.err, test.want)
		if got != (Color{}) {
			t.Errorf("ParseColor(%q) = %v beside an error", test.text, got)
		}
	}
}

// Every name of CSS Color Module Level 4, section 6.1, and no other.
func TestCSSColors(t *testing.T) {
	rows := readCSV(t, "css_colors.csv")
	if len(rows) != 148 || len(cssColors) != 148 {
		t.Fatalf("%d names, %d published, want 148", len(cssColors), len(rows))
	}
	for _, row := range rows {
		c, err := ParseColor(row["name"])
		if err != nil || c.String() != row["hex"] {
			t.Errorf("ParseColor(%q) = %v, %v, want %s", row["name"], c, err, row["hex"])
		}
		if d := MustParseColor(c.Name()); d != c {
			t.Errorf("%s.Name() = %s, which is %s", c, c.Name(), d)
		}
	}
	for c, want := range map[Color]string{
		{0, 255, 255}: "aqua", {255, 0, 255}: "fuchsia", {128, 128, 128}: "gray", {1, 2, 3}: "",
	} {
		if got := c.Name(); got != want {
			t.Errorf("%s.Name() = %q, want %q", c, got, want)
		}
	}
}

func TestMustParseColor(t *testing.T) {
	defer func() {
		if recover() == nil {
			t.Error("MustParseColor took a color that is none")
		}
	}()
	MustParseColor("#")
}

func TestColorRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := colors().Draw(t, "c")
		for _, text := range []string{c.String(), strings.ToUpper(c.String())} {
			if got, err := ParseColor(text); err != nil || got != c {
				t.Fatalf("ParseColor(%q) = %v, %v, want %v", text, got, err, c)
			}
		}
		text, err := json.Marshal(map[string]Color{"color": c})
		if err != nil {
			t.Fatal(err)
		}
		var back map[string]Color
		if err := json.Unmarshal(text, &back); err != nil || back["color"] != c {
			t.Fatalf("%s reads as %v, %v, want %v", text, back, err, c)
		}
	})
	c := Color{1, 2, 3}
	checkError(t, c.UnmarshalText([]byte("nil")), units.ErrName, `palette.Color.UnmarshalText: text "nil": unknown name: want #rrggbb, #rgb or a CSS color name`)
	if c != (Color{1, 2, 3}) {
		t.Errorf("a failed UnmarshalText left %v", c)
	}
}

func TestTintAndShade(t *testing.T) {
	c := Color{0, 100, 255}
	for _, test := range []struct {
		t           int
		tint, shade Color
		reason      string
	}{
		{0, c, c, "nothing mixed in"},
		{255, Color{255, 255, 255}, Color{}, "nothing but white, or black"},
		// 155·51/255 = 31; 255·51/255 = 51; 100·51/255 = 20.
		{51, Color{51, 131, 255}, Color{0, 80, 204}, "a fifth"},
		// 155/255 = 0.61 rounds up; 100/255 = 0.39 rounds down.
		{1, Color{1, 101, 255}, Color{0, 100, 254}, "one part of 255"},
		{2, Color{2, 101, 255}, Color{0, 99, 253}, "1.22 and 0.78"},
	} {
		if got := c.tint(test.t); got != test.tint {
			t.Errorf("%s: tint(%d) = %v, want %v", test.reason, test.t, got, test.tint)
		}
		if got := c.shade(test.t); got != test.shade {
			t.Errorf("%s: shade(%d) = %v, want %v", test.reason, test.t, got, test.shade)
		}
	}
}

func FuzzParseColor(f *testing.F) {
	for _, s := range []string{"", "#", "#fff", "#dc143c", "crimson", "REBECCAPURPLE", "#12345g", "é", " ivory "} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := ParseColor(text)
		if err != nil {
			if c != (Color{}) {
				t.Errorf("%v beside %v", c, err)
			}
			return
		}
		if len(text) > 64 {
			t.Errorf("read a text of %d bytes", len(text))
		}
		// A slow second reading of the same grammar.
		want := strings.ToLower(strings.TrimSpace(text))
		if !strings.HasPrefix(want, "#") {
			for _, css := range cssColors {
				if css.name == want {
					want = css.color.String()
				}
			}
		} else if len(want) == 4 {
			want = "#" + strings.Repeat(want[1:2], 2) + strings.Repeat(want[2:3], 2) + strings.Repeat(want[3:4], 2)
		}
		if c.String() != want {
			t.Errorf("ParseColor(%q) = %s, want %s", text, c, want)
		}
	})
}

// A word of 64 bytes is read, space and all, and a longer one is not.
func TestLongWords(t *testing.T) {
	for n, want := range map[int]error{64: nil, 65: units.ErrName} {
		text := strings.Repeat(" ", n-len("metal")) + "metal"
		if f, err := ParseFinish(text); !errors.Is(err, want) || want == nil && f != Metal {
			t.Errorf("%d bytes: %v, %v, want %v", n, f, err, want)
		}
	}
}
