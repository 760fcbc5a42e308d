package shopping

import (
	"encoding/json"
	"strconv"
	"strings"

	"example.com/fircone/units"
)

// A Need is one line of what a tree or a mantel takes, with the reason for it.
//
// A substitute has an Item, a MaxSize and a Quantity only. Its Quantity replaces the
// whole planned Quantity, and pro rata any part. For 27 picks, "9 ft of garland for 3
// picks" is 81 ft. Zero, as whole pieces require, is one for one.
type Need struct {
	Item     Item             `json:"item"`              // what it is
	MaxSize  units.Length     `json:"maxSize,omitzero"`  // sizes from Item.Size to this will do; 0: Item.Size alone, or any if that is 0
	Room     string           `json:"room,omitempty"`    // where it goes, "ticket hall"; may be empty
	Quantity Quantity         `json:"quantity"`          // how much is planned
	Open     units.Range[int] `json:"open,omitzero"`     // the fewest and the most pieces that will do; zero: as planned
	Types    int              `json:"types,omitempty"`   // how many different types, 1 to 100; 0: any
	Each     units.Range[int] `json:"each,omitzero"`     // with Types, the fewest and the most of each, at least 1
	Slack    units.Length     `json:"slack,omitzero"`    // how much shorter a length may be to save money; less than the length
	Instead  []Need           `json:"instead,omitempty"` // substitutes where the shelves are short, best first
	Basis    string           `json:"basis,omitempty"`   // the formula with this job's figures, "3 for each foot of 9 ft"
	Source   string           `json:"source,omitempty"`  // where the formula comes from, "common practice"
}

// An assortment is so many different types, and how many of each.
type assortment struct {
	types       int
	least, most int64
}

// assortment returns what n asks for, the zero value if any will do.
func (n Need) assortment() assortment {
	return assortment{n.Types, int64(n.Each.Min), int64(n.Each.Max)}
}

// String returns "3 types, 7 to 11 of each".
func (a assortment) String() string {
	s := strconv.Itoa(a.types) + " type"
	if a.types != 1 {
		s += "s"
	}
	return s + ", " + units.Range[int]{Min: int(a.least), Max: int(a.most)}.String() + " of each"
}

// A Quantity is pieces, a running length, or pieces that must each be one whole length:
//
//	Quantity{Pieces: 27}                          27 pieces
//	Quantity{Length: 81 * units.Foot}             81 ft, strands joined end to end
//	Quantity{Pieces: 4, Length: 54 * units.Inch}  4 whole pieces of 4 ft 6 in each
//
// The zero value is nothing at all.
type Quantity struct {
	Pieces int
	Length units.Length
}

// maxQuantityText is the longest text in bytes that [ParseQuantity] reads.
const maxQuantityText = 80

// ParseQuantity reads the forms of [Quantity.String]: digits for pieces ("27"), a length as
// [units.ParseLength] reads it ("81 ft"), or both with " of " between them ("4 of 54 in"). A text
// of more than 80 bytes, or of another form, is an error wrapping [units.ErrSyntax].
func ParseQuantity(text string) (Quantity, error) {
	bad := func(want string) (Quantity, error) {
		return Quantity{}, &units.Error{Func: "shopping.ParseQuantity", Field: "text", Value: clip(text), Want: want, Err: units.ErrSyntax}
	}
	if len(text) > maxQuantityText {
		return bad("at most " + strconv.Itoa(maxQuantityText) + " bytes")
	}
	const forms = `a number of pieces, a length, or both as in "4 of 54 in"`
	pieces, length, both := strings.Cut(text, " of ")
	if n, ok := parseDigits(pieces); ok && !both {
		return Quantity{Pieces: n}, nil
	} else if both {
		l, err := units.ParseLength(length)
		if !ok || n == 0 || err != nil || l == 0 {
			return bad(forms)
		}
		return Quantity{Pieces: n, Length: l}, nil
	}
	l, err := units.ParseLength(text)
	if err != nil {
		return bad(forms)
	}
	return Quantity{Length: l}, nil
}

// parseDigits reads a number of one to nine decimal digits.
func parseDigits(s string) (n int, ok bool) {
	if len(s) == 0 || len(s) > 9 {
		return 0, false
	}
	for _, c := range []byte(s) {
		if c < '0' || '9' < c {
			return 0, false
		}
		n = 10*n + int(c-'0')
	}
	return n, true
}

// clip returns s, or its beginning if it is too long to put in an error.
func clip(s string) string {
	if len(s) <= maxQuantityText {
		return s
	}
	return strings.ToValidUTF8(s[:maxQuantityText], "") + "..."
}

// String returns q with its unit: "27", "81 ft", "4 of 4 ft 6 in".
func (q Quantity) String() string {
	switch {
	case q.Length == 0:
		return strconv.Itoa(q.Pieces)
	case q.Pieces == 0:
		return q.Length.String()
	}
	return strconv.Itoa(q.Pieces) + " of " + q.Length.String()
}

// MarshalJSON returns a number for pieces, and otherwise the text.
func (q Quantity) MarshalJSON() ([]byte, error) {
	if q.Length == 0 {
		return strconv.AppendInt(nil, int64(q.Pieces), 10), nil
	}
	return json.Marshal(q.String())
}

// UnmarshalJSON reads a number of pieces, or a text as [ParseQuantity] does.
func (q *Quantity) UnmarshalJSON(data []byte) error {
	text := string(data)
	if text == "null" {
		return nil
	}
	if strings.HasPrefix(text, `"`) {
		if json.Unmarshal(data, &text) != nil {
			return &units.Error{Func: "shopping.Quantity.UnmarshalJSON", Field: "quantity", Value: clip(text), Want: "a text in JSON", Err: units.ErrSyntax}
		}
	} else if _, ok := parseDigits(text); !ok {
		return &units.Error{Func: "shopping.Quantity.UnmarshalJSON", Field: "quantity", Value: clip(text), Want: "a whole number of at most 9 digits, or a text", Err: units.ErrSyntax}
	}
	parsed, err := ParseQuantity(text)
	if err != nil {
		return err
	}
	*q = parsed
	return nil
}
