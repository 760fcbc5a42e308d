package sizing

import (
	"database/sql/driver"
	"strconv"
	"strings"

	"example.com/fircone/internal/sqltext"
	"example.com/fircone/units"
)

// An Exposure is how much of the way around a tree is seen and dressed: a named place, or an arc
// such as 200*Degree. Its text is "all round", "wall", "corner", "half", or an arc with up to
// three decimal places: "200 degrees", "202.5°".
type Exposure int32

// The named places; their degrees are common practice, from memory.
const (
	AllRound    Exposure = iota // free-standing: 360 degrees
	AgainstWall                 // against a wall: 240 degrees, two thirds
	InCorner                    // in a corner: 180 degrees, half
	HalfTree                    // a half tree, flat at the back: 180 degrees

	Degree Exposure = 1000 // one degree of an arc, 1 to 360 degrees
)

var exposureNames = [...]string{AllRound: "all round", AgainstWall: "wall", InCorner: "corner", HalfTree: "half"}

const (
	minArc = 1 * Degree
	maxArc = 360 * Degree

	wantArc = "1 to 360 degrees"
)

// Degrees returns how many degrees of the way around are dressed, to three decimal
// places.
func (e Exposure) Degrees() (float64, error) {
	arc, err := e.arc("Exposure.Degrees", "")
	return float64(arc) / float64(Degree), err
}

// arc returns e in thousandths of a degree.
func (e Exposure) arc(fn, at string) (Exposure, error) {
	switch {
	case e == AllRound:
		return 360 * Degree, nil
	case e == AgainstWall:
		return 240 * Degree, nil
	case e == InCorner, e == HalfTree:
		return 180 * Degree, nil
	case minArc <= e && e <= maxArc:
		return e, nil
	}
	return 0, rangeError(fn, at+"exposure", e.String(), listOf(exposureNames[:])+", or "+wantArc)
}

// parseArc reads digits with up to three decimal places and the word or sign
// for degrees. An arc beyond any range comes back as maxArc+1.
func parseArc(s string) (Exposure, bool) {
	if len(s) > maxText {
		return 0, false
	}
	t := strings.ToLower(strings.TrimSpace(s))
	number, found := "", false
	for _, unit := range [...]string{"degrees", "degree", "deg", "°"} {
		if number, found = strings.CutSuffix(t, unit); found {
			break
		}
	}
	whole, frac, dotted := strings.Cut(strings.TrimSpace(number), ".")
	if !found || whole == "" || dotted && frac == "" || len(frac) > 3 {
		return 0, false
	}
	arc := Exposure(0)
	for _, c := range whole + frac + "000"[len(frac):] {
		if c < '0' || c > '9' {
			return 0, false
		}
		arc = min(arc*10+Exposure(c-'0'), maxArc+1)
	}
	return arc, true
}

// String returns the text of e.
func (e Exposure) String() string {
	if minArc <= e && e <= maxArc {
		text := strconv.Itoa(int(e / Degree))
		if part := int(e % Degree); part != 0 {
			text += "." + strings.TrimRight(strconv.Itoa(1000 + part)[1:], "0")
		}
		if text == "1" {
			return "1 degree"
		}
		return text + " degrees"
	}
	return nameOf("Exposure", int(e), exposureNames[:])
}

// MarshalText returns the text of e.
func (e Exposure) MarshalText() ([]byte, error) {
	if _, err := e.arc("Exposure.MarshalText", ""); err != nil {
		return nil, err
	}
	return []byte(e.String()), nil
}

// UnmarshalText sets *e from its text, in upper or lower case.
func (e *Exposure) UnmarshalText(text []byte) error {
	const fn = "Exposure.UnmarshalText"
	s := string(text)
	if readName(e, fn, s, exposureNames[:]) == nil {
		return nil
	}
	arc, isArc := parseArc(s)
	switch {
	case !isArc:
		return &units.Error{
			Func: "sizing." + fn, Field: "text", Value: clip(s),
			Want: listOf(exposureNames[:]) + ", or an arc such as 200 degrees", Err: units.ErrName,
		}
	case arc < minArc || arc > maxArc:
		return rangeError(fn, "text", s, wantArc)
	}
	*e = arc
	return nil
}

// Value returns the text of e for a database column.
func (e Exposure) Value() (driver.Value, error) { return sqltext.Value(e) }

// Scan sets *e from a database column of text.
func (e *Exposure) Scan(src any) error { return sqltext.Scan("sizing.Exposure.Scan", src, e) }
