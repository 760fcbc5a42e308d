package mantel_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/units"
)

func TestParseLook(t *testing.T) {
	for _, test := range []struct {
		text string
		want mantel.Look
		err  *units.Error
	}{
		{"traditional", mantel.Traditional, nil},
		{"symmetric", mantel.Traditional, nil},
		{"symmetrical", mantel.Traditional, nil},
		{"asymmetrical", mantel.Asymmetrical, nil},
		{"asymmetric", mantel.Asymmetrical, nil},
		{" \tAsymmetrical\n", mantel.Asymmetrical, nil},
		{strings.Repeat(" ", 64-11) + "TRADITIONAL", mantel.Traditional, nil},
		{strings.Repeat(" ", 65-11) + "traditional", 0, errLook},
		{"", 0, errLook},
		{"trad", 0, errLook},
		{"left", 0, errLook},
	} {
		got, err := mantel.ParseLook(test.text)
		if got != test.want {
			t.Errorf("ParseLook(%q) = %v, want %v", test.text, got, test.want)
		}
		if test.text != "" {
			checkError(t, test.text, err, test.err)
		}
	}
}

var (
	errLook = &units.Error{Func: "mantel.ParseLook", Field: "text", Want: "traditional or asymmetrical", Err: units.ErrName}
	errSide = &units.Error{Func: "mantel.ParseSide", Field: "text", Want: "left or right", Err: units.ErrName}
)

func TestParseSide(t *testing.T) {
	for _, test := range []struct {
		text string
		want mantel.Side
		err  *units.Error
	}{
		{"left", mantel.Left, nil},
		{" RIGHT ", mantel.Right, nil},
		{"both", 0, errSide},
		{"traditional", 0, errSide},
	} {
		got, err := mantel.ParseSide(test.text)
		if got != test.want {
			t.Errorf("ParseSide(%q) = %v, want %v", test.text, got, test.want)
		}
		checkError(t, test.text, err, test.err)
	}
}

func TestRefusedTextIsClipped(t *testing.T) {
	_, err := mantel.ParseLook(strings.Repeat("é", 1000))
	want := "mantel.ParseLook: text \"" + strings.Repeat("é", 32) + "...\": unknown name: want traditional or asymmetrical"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	_, err = mantel.ParseSide("x" + strings.Repeat("é", 1000)) // the 64th byte is in the middle of a letter
	want = "mantel.ParseSide: text \"x" + strings.Repeat("é", 31) + "...\": unknown name: want left or right"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	text := strings.Repeat("x", 64)
	_, err = mantel.ParseLook(text)
	want = "mantel.ParseLook: text \"" + text + "\": unknown name: want traditional or asymmetrical"
	if err == nil || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

func TestNamesAsText(t *testing.T) {
	type plan struct {
		Look  mantel.Look
		Heavy mantel.Side
	}
	for _, p := range []plan{{mantel.Traditional, mantel.Left}, {mantel.Asymmetrical, mantel.Right}} {
		text, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		want := `{"Look":"` + p.Look.String() + `","Heavy":"` + p.Heavy.String() + `"}`
		if string(text) != want {
			t.Errorf("got %s, want %s", text, want)
		}
		var back plan
		if err := json.Unmarshal(text, &back); err != nil || back != p {
			t.Errorf("%s read back as %v, %v", text, back, err)
		}
	}
	p := plan{mantel.Asymmetrical, mantel.Right}
	if err := p.Look.UnmarshalText([]byte("x")); err == nil || p.Look != mantel.Asymmetrical {
		t.Errorf("refused text set %v, %v", p.Look, err)
	}
	if err := p.Heavy.UnmarshalText([]byte("x")); err == nil || p.Heavy != mantel.Right {
		t.Errorf("refused text set %v, %v", p.Heavy, err)
	}
	if got := mantel.Look(9).String(); got != "Look(9)" {
		t.Error(got)
	}
	if got := mantel.Side(9).String(); got != "Side(9)" {
		t.Error(got)
	}
	text, err := mantel.Look(2).MarshalText()
	checkError(t, "look", err, &units.Error{Func: "mantel.Look.MarshalText", Field: "look", Want: "traditional or asymmetrical", Err: units.ErrName})
	if text != nil {
		t.Errorf("text %q with an error", text)
	}
	text, err = mantel.Side(2).MarshalText()
	checkError(t, "side", err, &units.Error{Func: "mantel.Side.MarshalText", Field: "side", Want: "left or right", Err: units.ErrName})
	if text != nil {
		t.Errorf("text %q with an error", text)
	}
}

func FuzzParseLook(f *testing.F) {
	for _, s := range []string{"traditional", "symmetric", "symmetrical", "asymmetrical", "ASYMMETRIC", " x ", "", strings.Repeat("é", 64)} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		look, err := mantel.ParseLook(s)
		lower := strings.ToLower(strings.TrimSpace(s))
		known := map[string]mantel.Look{
			"traditional": 0, "symmetric": 0, "symmetrical": 0, "asymmetric": 1, "asymmetrical": 1,
		}
		want, ok := known[lower]
		ok = ok && len(s) <= 64
		if ok != (err == nil) || ok && look != want {
			t.Errorf("ParseLook(%q) = %v, %v", s, look, err)
		}
		if err == nil {
			if back, err := mantel.ParseLook(look.String()); err != nil || back != look {
				t.Errorf("%v read back as %v, %v", look, back, err)
			}
		}
	})
}

func FuzzParseSide(f *testing.F) {
	for _, s := range []string{"left", "right", " Left\n", "middle", ""} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		side, err := mantel.ParseSide(s)
		lower := strings.ToLower(strings.TrimSpace(s))
		ok := len(s) <= 64 && (lower == "left" || lower == "right")
		if ok != (err == nil) || ok && side.String() != lower {
			t.Errorf("ParseSide(%q) = %v, %v", s, side, err)
		}
	})
}
