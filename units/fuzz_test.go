package units

import "testing"

// fuzzParse compares the parser of k with the slow reference, and what it prints with what it read.
func fuzzParse(f *testing.F, k kind) {
	for _, tt := range readings {
		f.Add(tt.text)
	}
	for _, tt := range refusals {
		f.Add(tt.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		sameAsReference(t, k, s)
		v, err := texts[k].parse(s)
		if err != nil {
			return
		}
		printed, _ := texts[k].text(v)
		if again, err := texts[k].parse(printed); err != nil || again != v {
			t.Fatalf("%q is %d, printed as %q, which is %d, %v", s, v, printed, again, err)
		}
	})
}

func FuzzParseLength(f *testing.F) { fuzzParse(f, kindLength) }
func FuzzParseArea(f *testing.F)   { fuzzParse(f, kindArea) }
func FuzzParseMass(f *testing.F)   { fuzzParse(f, kindMass) }
func FuzzParsePower(f *testing.F)  { fuzzParse(f, kindPower) }
