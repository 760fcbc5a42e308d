package placement

import (
	"database/sql/driver"
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// An Angle is a turn about the trunk, in thousandths of a degree. As an azimuth, above
// -180° up to 180°, 0 is toward the viewer, 90° to the viewer's right, 180° the back.
// JSON and databases store its String.
type Angle int32

// Degree is 1°: 90*placement.Degree.
const Degree Angle = 1000

const (
	halfTurn = 180 * Degree
	fullTurn = 360 * Degree
)

// Degrees returns a in degrees.
func (a Angle) Degrees() float64 { return float64(a) / float64(Degree) }

// parseAngle reads an angle for fn.
func parseAngle(fn, text string) (Angle, error) {
	n, ok := parseDegrees(text)
	switch {
	case !ok:
		return 0, &units.Error{Func: "placement." + fn, Field: "text", Value: clip(text), Want: "degrees, such as 37.5°", Err: units.ErrSyntax}
	case n < math.MinInt32 || n > math.MaxInt32:
		return 0, rangeError(fn, "text", text, Angle(math.MinInt32).String()+" to "+Angle(math.MaxInt32).String())
	}
	return Angle(n), nil
}

// parseDegrees reads a sign, digits with up to three decimal places, and the word or
// sign for degrees, in thousandths. What is past any Angle comes back as past it.
func parseDegrees(s string) (int64, bool) {
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
	number = strings.TrimSpace(number)
	minus := false
	if rest, signed := strings.CutPrefix(number, "+"); signed {
		number = rest
	} else if number, minus = strings.CutPrefix(number, "-"); !minus {
		number, minus = strings.CutPrefix(number, "\u2212")
	}
	whole, frac, dotted := strings.Cut(number, ".")
	if !found || whole == "" || dotted && frac == "" || len(frac) > 3 {
		return 0, false
	}
	n := int64(0)
	for _, c := range whole + frac + "000"[len(frac):] {
		if c < '0' || c > '9' {
			return 0, false
		}
		n = min(10*n+int64(c-'0'), 1<<32)
	}
	if minus {
		n = -n
	}
	return n, true
}

// String returns a in degrees, "37.5°".
func (a Angle) String() string { return strconv.FormatFloat(a.Degrees(), 'f', -1, 64) + "°" }

// MarshalText returns a.String(). The error is always nil.
func (a Angle) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads "37.5°", "37.5 degrees" or "37.5 deg", in either case, with an optional
// sign and up to three decimal places, to about ±2,147,483°. A unit is required.
func (a *Angle) UnmarshalText(text []byte) error {
	v, err := parseAngle("Angle.UnmarshalText", string(text))
	if err == nil {
		*a = v
	}
	return err
}

// Value returns a.String() for a database. The error is always nil.
func (a Angle) Value() (driver.Value, error) { return a.String(), nil }

// Scan sets *a from a column of text, as [Angle.UnmarshalText] does, or of whole thousandths of
// a degree. On an error *a is unchanged.
func (a *Angle) Scan(src any) error {
	const fn = "Angle.Scan"
	switch src := src.(type) {
	case string:
		return a.UnmarshalText([]byte(src))
	case []byte:
		return a.UnmarshalText(src)
	case int64:
		if src < math.MinInt32 || src > math.MaxInt32 {
			return rangeError(fn, "src", strconv.FormatInt(src, 10), strconv.Itoa(math.MinInt32)+" to "+strconv.Itoa(math.MaxInt32))
		}
		*a = Angle(src)
		return nil
	}
	return &units.Error{Func: "placement." + fn, Field: "src", Value: fmt.Sprintf("%T", src), Want: "text such as 37.5°, or thousandths of a degree", Err: units.ErrSyntax}
}

// Clock returns the hour that azimuth a points to, 1 to 12, on a clock face lying on the
// floor with 6 toward the viewer and 3 to the right. Half hours round up.
func (a Angle) Clock() int {
	const hour = 30 * Degree
	back := 6*hour - a.normal() + hour/2 // clockwise from 12, 0 to under 360°, and half an hour
	return int((back/hour+11)%12) + 1
}

// normal returns a as an azimuth.
func (a Angle) normal() Angle {
	a %= fullTurn
	switch {
	case a > halfTurn:
		return a - fullTurn
	case a <= -halfTurn:
		return a + fullTurn
	}
	return a
}
