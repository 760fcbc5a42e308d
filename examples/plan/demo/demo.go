// Package demo has the scenario that the examples play in: a small-town railway
// station with a 9 ft tree in the ticket hall, a 4 ft 6 in tree in the corner of the
// waiting room and a 64 in mantel in the tea room, with what it owns, what its shops
// offer, and its budget. All prices are invented.
package demo

import (
	_ "embed" // for the request

	"example.com/fircone/sizing/job"
)

// JSON is the station's request.
//
//go:embed station.json
var JSON []byte

// Station returns it as a value.
func Station() job.Request {
	r, err := job.ParseRequest(JSON)
	if err != nil {
		panic(err) // the file is part of the program, and a test reads it
	}
	return r
}
