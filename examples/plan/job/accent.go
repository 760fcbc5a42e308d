package job

import (
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// An Accent is what is drawn through the branches: garland, picks or ribbon, or
// both garland and picks for those who ask for both.
type Accent uint8

// The accents.
const (
	Garland Accent = iota
	Picks
	Ribbon
	Both
)

var accents = [...]struct {
	name  string
	kinds []shopping.Kind
}{
	Garland: {"garland", []shopping.Kind{shopping.Garland}},
	Picks:   {"picks", []shopping.Kind{shopping.Pick}},
	Ribbon:  {"ribbon", []shopping.Kind{shopping.Ribbon}},
	Both:    {"both", []shopping.Kind{shopping.Garland, shopping.Pick}},
}

// kinds returns what the accent is made of.
func (a Accent) kinds() ([]shopping.Kind, error) {
	if int(a) >= len(accents) {
		return nil, accentError("?")
	}
	return accents[a].kinds, nil
}

// Has reports whether kind is drawn through the branches.
func (a Accent) Has(kind shopping.Kind) bool {
	kinds, _ := a.kinds()
	for _, k := range kinds {
		if k == kind {
			return true
		}
	}
	return false
}

// MarshalText returns garland, picks, ribbon or both.
func (a Accent) MarshalText() ([]byte, error) {
	if int(a) >= len(accents) {
		return nil, accentError("?")
	}
	return []byte(accents[a].name), nil
}

// UnmarshalText reads garland, picks, ribbon or both.
func (a *Accent) UnmarshalText(text []byte) error {
	for i, known := range accents {
		if known.name == string(text) {
			*a = Accent(i)
			return nil
		}
	}
	return accentError(string(text))
}

func accentError(value string) error {
	return &units.Error{Func: "job.Make", Field: "accent", Value: value, Want: "garland, picks, ribbon or both", Err: units.ErrName}
}
