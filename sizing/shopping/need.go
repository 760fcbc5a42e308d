package shopping

import (
	"strconv"

	"example.com/fircone/units"
)

// A Need is one line of what a tree or a mantel takes, with the reason for it.
// It says nothing of packs or prices.
type Need struct {
	Item     string   // what it is, "picks"
	Room     string   // where it goes, "ticket hall"; may be empty
	Quantity Quantity // how much
	Basis    string   // the formula with this job's figures, "3 for each foot of 9 ft"
	Source   string   // where the formula comes from, "common practice"
}

// A Quantity is a number of pieces, a running length that may be joined from
// several strands, or a number of pieces that must each be one whole length:
//
//	Quantity{Pieces: 27}                          27 pieces
//	Quantity{Length: 81 * units.Foot}             81 ft, strands joined end to end
//	Quantity{Pieces: 4, Length: 54 * units.Inch}  4 whole pieces of 4 ft 6 in each
//
// The zero value is nothing at all. Quantities are equal if == says so.
type Quantity struct {
	Pieces int
	Length units.Length
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
