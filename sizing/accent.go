package sizing

// An Accent is what is drawn through the branches besides the ornaments. It is
// one thing by default, since two at once look overfull. With [Both] the garland is
// as long and the picks are as many as each would be alone: neither makes up for the
// other.
type Accent uint8

// The accents.
const (
	Garland Accent = iota // garland wound round
	Picks                 // picks pushed in
	Ribbon                // ribbon wound round
	Both                  // all of the garland and all of the picks, for those who ask for both
)

var accentNames = [...]string{Garland: "garland", Picks: "picks", Ribbon: "ribbon", Both: "both"}

// ParseAccent returns the accent of a name: garland, picks, ribbon or both.
// Upper case is read as lower case. Any other text is an [units.Error] wrapping [units.ErrName].
func ParseAccent(s string) (Accent, error) {
	i, err := parseName("ParseAccent", "accent", s, accentNames[:])
	return Accent(i), err
}

// String returns the name that [ParseAccent] reads.
func (a Accent) String() string { return nameOf("Accent", int(a), accentNames[:]) }

// MarshalText returns the name that [ParseAccent] reads. A value that is none of
// the accents is an [units.Error] wrapping [units.ErrName].
func (a Accent) MarshalText() ([]byte, error) {
	return marshalName("Accent.MarshalText", "accent", int(a), a.String(), accentNames[:])
}

// UnmarshalText sets a to what [ParseAccent] reads.
func (a *Accent) UnmarshalText(text []byte) error {
	v, err := ParseAccent(string(text))
	if err == nil {
		*a = v
	}
	return err
}
