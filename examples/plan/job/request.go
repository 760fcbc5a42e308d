// Package job plans a whole job: the trees and mantels of one client, from what
// the tape measure says to what goes into the basket. It is the example that
// puts the library's packages together, and the program, the service and the
// notebooks of this folder all call it; copy it and change what does not suit.
package job

import (
	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/units"
)

// A Request is what a client wants dressed. As JSON its lengths are text with a
// unit, such as "7 ft 6 in".
type Request struct {
	Trees   []Tree   `json:"trees,omitempty"`
	Mantels []Mantel `json:"mantels,omitempty"`
}

// A Tree is one tree and how it is to be dressed. Only Height is required.
type Tree struct {
	Room   string          `json:"room,omitempty"`
	Height units.Length    `json:"height"`
	Width  units.Length    `json:"width,omitzero"` // base diameter; zero: by Taper
	Taper  sizing.Taper    `json:"taper"`
	Where  sizing.Exposure `json:"where"`
	Accent sizing.Accent   `json:"accent"`
}

// A Mantel is one mantel and how it is to be dressed. Only Length is required.
type Mantel struct {
	Room   string       `json:"room,omitempty"`
	Length units.Length `json:"length"`
	Look   mantel.Look  `json:"look"`
}

// Station returns the scenario that the examples play in: a small-town railway
// station with a 9 ft tree in the ticket hall, a 4 ft 6 in tree in the waiting
// room and a 64 in mantel in the tea room.
func Station() Request {
	return Request{
		Trees: []Tree{
			{Room: "ticket hall", Height: 9 * units.Foot},
			{Room: "waiting room", Height: 4*units.Foot + 6*units.Inch, Accent: sizing.Picks},
		},
		Mantels: []Mantel{
			{Room: "tea room", Length: 64 * units.Inch},
		},
	}
}
