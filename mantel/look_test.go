package mantel_test

import (
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/units"
)

// readLook reads a look as JSON and forms do.
func readLook(text string) (l mantel.Look, err error) {
	err = l.UnmarshalText([]byte(text))
	return l, err
}

func TestReadLook(t *testing.T) {
	for _, test := range []struct {
		text string
		want mantel.Look
		err  *units.Error
	}{
		{"traditional", mantel.Traditional, nil},
		{"symmetric", mantel.Traditional, nil},
		{"symmetrical", mantel.Traditional, nil},
		{"asymmetrical", mantel.AsymmetricalLeft, nil},
		{"asymmetric", mantel.AsymmetricalLeft, nil},
		{"asymmetrical left", mantel.AsymmetricalLeft, nil},
		{"asymmetric\tLEFT", mantel.AsymmetricalLeft, nil},
		{"Asymmetrical  right", mantel.AsymmetricalRight, nil},
		{"asymmetric right", mantel.AsymmetricalRight, nil},
		{"asymmetricalright", 0, errLook},
		{" \tAsymmetrical\n", mantel.AsymmetricalLeft, nil},
		{strings.Repeat(" ", 64-11) + "TRADITIONAL", mantel.Traditional, nil},
		{strings.Repeat(" ", 65-11) + "traditional", 0, errLook},
		{"", 0, errLook},
		{"trad", 0, errLook},
		{"left", 0, errLook},
	} {
		got, err := readLook(test.text)
		if got != test.want {
			t.Errorf("UnmarshalText(%q) = %v, want %v", test.text, got, test.want)
		}
		if test.text != "" {
			checkError(t, test.text, err, test.err)
		}
	}
}

var errLook = &units.Error{Func: "mantel.Look.UnmarshalText", Field: "text", Want: wantLook, Err: units.ErrName}

const wantLook = "traditional, asymmetrical left or asymmetrical right"

func TestRefusedTextIsClipped(t *testing.T) {
	_, err := readLook(strings.Repeat("é", 1000))
	want := "mantel.Look.UnmarshalText: text \"" + strings.Repeat("é", 32) + "...\": unknown name: want " + wantLook
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	_, err = readLook("x" + strings.Repeat("é", 1000)) // the 64th byte is in the middle of a letter
	want = "mantel.Look.UnmarshalText: text \"x" + strings.Repeat("é", 31) + "...\": unknown name: want " + wantLook
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	text := strings.Repeat("x", 64)
	_, err = readLook(text)
	want = "mantel.Look.UnmarshalText: text \"" + text + "\": unknown name: want " + wantLook
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestLookAsText(t *testing.T) {
	for look, name := range []string{"traditional", "asymmetrical left", "asymmetrical right"} {
		look := mantel.Look(look)
		text, err := json.Marshal(look)
		if err != nil || string(text) != `"`+name+`"` || look.String() != name {
			t.Errorf("%v is %s, %v, want %s", look, text, err, name)
		}
		value, err := look.Value()
		if err != nil || value != name {
			t.Errorf("value %v, %v", value, err)
		}
		for _, read := range []func(*mantel.Look) error{
			func(l *mantel.Look) error { return json.Unmarshal(text, l) },
			func(l *mantel.Look) error { return l.Scan(name) },
			func(l *mantel.Look) error { return l.Scan([]byte(name)) },
		} {
			back := mantel.Look(9)
			if err := read(&back); err != nil || back != look {
				t.Errorf("%s read back as %v, %v", name, back, err)
			}
		}
	}
	look := mantel.AsymmetricalRight
	for src, want := range map[any]*units.Error{
		"x": {Func: "mantel.Look.Scan", Field: "src", Want: wantLook, Err: units.ErrName},
		7:   {Func: "mantel.Look.Scan", Field: "src", Want: "a string or bytes", Err: units.ErrSyntax},
		nil: {Func: "mantel.Look.Scan", Field: "src", Want: "a string or bytes", Err: units.ErrSyntax},
	} {
		checkError(t, src, look.Scan(src), want)
	}
	checkError(t, "bytes", look.Scan([]byte("x")), &units.Error{Func: "mantel.Look.Scan", Field: "src", Want: wantLook, Err: units.ErrName})
	checkError(t, "text", look.UnmarshalText([]byte("x")), &units.Error{Func: "mantel.Look.UnmarshalText", Field: "text", Want: wantLook, Err: units.ErrName})
	if look != mantel.AsymmetricalRight {
		t.Errorf("refused text set %v", look)
	}
	if got := mantel.Look(3).String(); got != "Look(3)" {
		t.Error(got)
	}
	text, err := mantel.Look(3).MarshalText()
	checkError(t, "look", err, &units.Error{Func: "mantel.Look.MarshalText", Field: "look", Want: wantLook, Err: units.ErrName})
	value, err := mantel.Look(3).Value()
	checkError(t, "look", err, &units.Error{Func: "mantel.Look.Value", Field: "look", Want: wantLook, Err: units.ErrName})
	if text != nil || value != nil {
		t.Errorf("text %q and value %v with errors", text, value)
	}
}

func FuzzReadLook(f *testing.F) {
	for _, s := range []string{"traditional", "symmetric", "symmetrical", "asymmetrical", "ASYMMETRIC", "asymmetric  right", " x ", "", strings.Repeat("é", 64)} {
		f.Add(s)
	}
	// The slow reading: every form by itself.
	known := map[string]mantel.Look{"traditional": 0, "symmetric": 0, "symmetrical": 0}
	for _, word := range []string{"asymmetric", "asymmetrical"} {
		known[word], known[word+" left"], known[word+" right"] = 1, 1, 2
	}
	space := regexp.MustCompile(`[\pZ\t\n\v\f\r\x{85}]+`)
	f.Fuzz(func(t *testing.T, s string) {
		look, err := readLook(s)
		want, ok := known[strings.Trim(space.ReplaceAllString(strings.ToLower(s), " "), " ")]
		ok = ok && len(s) <= 64
		if ok != (err == nil) || ok && look != want {
			t.Errorf("UnmarshalText(%q) = %v, %v", s, look, err)
		}
		if err == nil {
			if back, err := readLook(look.String()); err != nil || back != look {
				t.Errorf("%v read back as %v, %v", look, back, err)
			}
		}
	})
}
