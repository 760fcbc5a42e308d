package mantel

import (
	"database/sql/driver"
	"fmt"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Look is the way a mantel is dressed.
type Look uint8

// The looks, for someone who faces the mantel.
const (
	Traditional       Look = iota // the same on both sides of the middle
	AsymmetricalLeft              // heavy at the left end
	AsymmetricalRight             // heavy at the right end
)

const wantLook = "traditional, asymmetrical left or asymmetrical right"

// maxText is the longest text that a parser of this package looks at, in bytes.
const maxText = 64

var looks = [...]string{"traditional", "asymmetrical left", "asymmetrical right"}

func parseLook(fn, field, text string) (Look, error) {
	name := ""
	if len(text) <= maxText {
		name = strings.Join(strings.Fields(strings.ToLower(text)), " ")
	}
	switch name {
	case "traditional", "symmetric", "symmetrical":
		return Traditional, nil
	case "asymmetrical", "asymmetric", "asymmetrical left", "asymmetric left":
		return AsymmetricalLeft, nil
	case "asymmetrical right", "asymmetric right":
		return AsymmetricalRight, nil
	}
	return 0, nameError(fn, field, clip(text))
}

// String returns the name that [Look.UnmarshalText] reads, or a text such as "Look(9)".
func (l Look) String() string {
	if l > AsymmetricalRight {
		return "Look(" + strconv.Itoa(int(l)) + ")"
	}
	return looks[l]
}

// MarshalText returns the text of [Look.String].
func (l Look) MarshalText() ([]byte, error) {
	if err := l.check("Look.MarshalText", "look"); err != nil {
		return nil, err
	}
	return []byte(l.String()), nil
}

// UnmarshalText reads a name, such as traditional, symmetric, asymmetrical left or asymmetric
// right. Asymmetrical alone is asymmetrical left. Case and spacing are ignored.
func (l *Look) UnmarshalText(text []byte) error {
	return l.read("Look.UnmarshalText", "text", string(text))
}

func (l *Look) read(fn, field, text string) error {
	v, err := parseLook(fn, field, text)
	if err == nil {
		*l = v
	}
	return err
}

// Value returns the text of [Look.String].
func (l Look) Value() (driver.Value, error) {
	if err := l.check("Look.Value", "look"); err != nil {
		return nil, err
	}
	return l.String(), nil
}

// Scan reads a string or bytes as [Look.UnmarshalText] does. Anything else is
// [units.ErrSyntax].
func (l *Look) Scan(src any) error {
	const fn = "Look.Scan"
	switch text := src.(type) {
	case string:
		return l.read(fn, "src", text)
	case []byte:
		return l.read(fn, "src", string(text))
	}
	return &units.Error{Func: "mantel." + fn, Field: "src", Value: fmt.Sprintf("%T", src), Want: "a string or bytes", Err: units.ErrSyntax}
}

func (l Look) check(fn, field string) error {
	if l > AsymmetricalRight {
		return nameError(fn, field, l.String())
	}
	return nil
}

// side returns the heavy end of an asymmetrical look.
func (l Look) side() string {
	if l == AsymmetricalRight {
		return "right"
	}
	return "left"
}

func nameError(fn, field, value string) error {
	return &units.Error{Func: "mantel." + fn, Field: field, Value: value, Want: wantLook, Err: units.ErrName}
}

// clip shortens a refused text to what an error may show.
func clip(s string) string {
	if len(s) > maxText {
		return strings.ToValidUTF8(s[:maxText], "") + "..."
	}
	return s
}
