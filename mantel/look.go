package mantel

import (
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Look is the way a mantel is dressed. The zero value is [Traditional].
type Look uint8

// The looks.
const (
	Traditional  Look = iota // the same on both sides of the middle
	Asymmetrical             // all the weight on one side, which is the caller's to choose
)

// A Side is one end of a shelf, for someone who faces it. The zero value is
// [Left].
type Side uint8

// The sides.
const (
	Left  Side = iota // the viewer's left
	Right             // the viewer's right
)

const (
	wantLook = "traditional or asymmetrical"
	wantSide = "left or right"
)

// maxText is the longest text that a parser of this package looks at, in bytes.
const maxText = 64

// ParseLook returns the look of a name: traditional, which symmetric and
// symmetrical name too, or asymmetrical, which asymmetric names too. Upper case
// is read as lower case, and space around the name is passed over. Any other
// text is an error wrapping [units.ErrName].
func ParseLook(text string) (Look, error) {
	switch fold(text) {
	case "traditional", "symmetric", "symmetrical":
		return Traditional, nil
	case "asymmetrical", "asymmetric":
		return Asymmetrical, nil
	}
	return 0, nameError("ParseLook", "text", clip(text), wantLook)
}

// String returns "traditional" or "asymmetrical", or a text like Look(9) for a
// value that is neither.
func (l Look) String() string {
	switch l {
	case Traditional:
		return "traditional"
	case Asymmetrical:
		return "asymmetrical"
	}
	return "Look(" + strconv.Itoa(int(l)) + ")"
}

// MarshalText returns the text of [Look.String]. A value that is no look is an error
// wrapping [units.ErrName].
func (l Look) MarshalText() ([]byte, error) {
	if err := l.check("Look.MarshalText", "look"); err != nil {
		return nil, err
	}
	return []byte(l.String()), nil
}

// UnmarshalText sets l to what [ParseLook] reads, or leaves it on an error.
func (l *Look) UnmarshalText(text []byte) error {
	v, err := ParseLook(string(text))
	if err == nil {
		*l = v
	}
	return err
}

func (l Look) check(fn, field string) error {
	if l > Asymmetrical {
		return nameError(fn, field, l.String(), wantLook)
	}
	return nil
}

// ParseSide returns the side of a name, left or right. Upper case is read as
// lower case, and space around the name is passed over. Any other text is an error
// wrapping [units.ErrName].
func ParseSide(text string) (Side, error) {
	switch fold(text) {
	case "left":
		return Left, nil
	case "right":
		return Right, nil
	}
	return 0, nameError("ParseSide", "text", clip(text), wantSide)
}

// String returns "left" or "right", or a text like Side(9) for a value that is
// neither.
func (s Side) String() string {
	switch s {
	case Left:
		return "left"
	case Right:
		return "right"
	}
	return "Side(" + strconv.Itoa(int(s)) + ")"
}

// MarshalText returns the text of [Side.String]. A value that is no side is an error
// wrapping [units.ErrName].
func (s Side) MarshalText() ([]byte, error) {
	if err := s.check("Side.MarshalText", "side"); err != nil {
		return nil, err
	}
	return []byte(s.String()), nil
}

// UnmarshalText sets s to what [ParseSide] reads, or leaves it on an error.
func (s *Side) UnmarshalText(text []byte) error {
	v, err := ParseSide(string(text))
	if err == nil {
		*s = v
	}
	return err
}

func (s Side) check(fn, field string) error {
	if s > Right {
		return nameError(fn, field, s.String(), wantSide)
	}
	return nil
}

func nameError(fn, field, value, want string) error {
	return &units.Error{Func: "mantel." + fn, Field: field, Value: value, Want: want, Err: units.ErrName}
}

// fold returns s in lower case without space around it, or nothing if s is too
// long to be a name.
func fold(s string) string {
	if len(s) > maxText {
		return ""
	}
	return strings.ToLower(strings.TrimSpace(s))
}

// clip shortens a refused text to what an error may show.
func clip(s string) string {
	if len(s) > maxText {
		return strings.ToValidUTF8(s[:maxText], "") + "..."
	}
	return s
}
