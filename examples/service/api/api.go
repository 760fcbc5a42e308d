// Package api answers the requests of the service, without HTTP: the server and
// the program that runs in the browser both call it, so that they cannot differ.
package api

import (
	"bytes"
	"encoding/json"
	"errors"
	"net/url"
	"strconv"

	"example.com/fircone/examples/plan/demo"
	"example.com/fircone/palette"
	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// A Reply is the answer to one request.
type Reply struct {
	Status int    // the HTTP status
	Type   string // the media type of the body
	Body   []byte
}

// Call answers a POST of body to target, which is a path with or without a query:
//
//	/plan                               the plan for the job in body
//	/places?number=1                    where each piece of a tree goes
//	/crew?of=mantel&number=1&paper=A4   the sheets to hang a tree or to dress a mantel from
//	/sheet?of=quote                     a sheet of text: plan, quote, quote-house, work or pack
//	/picture?of=tree&number=1           a tree from the front
//	/picture?of=client&number=1         the same as a client sees it
//	/picture?of=surface&number=1        its surface, unrolled
//	/picture?of=mantel&number=1         a mantel from the front
//
// Every answer that is not a success is a [Problem].
func Call(target string, body []byte) Reply {
	u, err := url.Parse(target)
	if err != nil {
		return NewProblem("not-found", "").Reply()
	}
	if len(body) > MaxBody {
		return NewProblem("too-large", "").Reply()
	}
	switch u.Path {
	case "/plan":
		return plan(body)
	case "/places":
		return places(u.RawQuery, body)
	case "/crew":
		return crew(u.RawQuery, body)
	case "/sheet":
		return page(u.RawQuery, body)
	case "/picture":
		return picture(u.RawQuery, body)
	}
	return NewProblem("not-found", "").Reply()
}

// Example returns the job that the page begins with, as the body of a request.
func Example() Reply { return Reply{Status: 200, Type: "application/json", Body: demo.JSON} }

func plan(body []byte) Reply {
	p, _, err := makePlan(body)
	if err != nil {
		return problemOf(err).Reply()
	}
	return reply(p)
}

// Limits on what one request may hold.
const (
	// MaxBody is the largest body that is read, in bytes.
	MaxBody = 256 << 10

	maxRooms  = 50               // trees and mantels in a job
	maxTotal  = 500 * units.Foot // height of its trees together
	maxOffers = 200
	maxPlaces = 1000 // pieces on a tree that is drawn
)

// makePlan reads a job and plans it, and returns its colors with the plan.
func makePlan(body []byte) (job.Plan, palette.Palette, error) {
	request, err := job.ParseRequest(body)
	if err == nil {
		err = checkSize(request)
	}
	if err != nil {
		return job.Plan{}, palette.Palette{}, err
	}
	p, err := job.Make(request)
	return p, request.Colors, err
}

// checkSize holds a job to what the service plans in about a second: the time
// that a shopping list takes grows with the pieces and with the offers.
func checkSize(r job.Request) error {
	refuse := func(pointer, value, want string) error {
		return errors.Join(&units.Error{Func: "api.Call", Field: pointer, Value: value, Want: want, Err: units.ErrRange})
	}
	if n := len(r.Trees) + len(r.Mantels); n > maxRooms {
		return refuse("", strconv.Itoa(n)+" trees and mantels", "at most "+strconv.Itoa(maxRooms)+" trees and mantels together")
	}
	total := units.Length(0)
	for _, t := range r.Trees {
		total += min(max(t.Height, 0), 100*units.Foot) // what is outside is refused by name later
	}
	if total > maxTotal {
		return refuse("/trees", total.String()+" of height", "at most "+maxTotal.String()+" of height together")
	}
	if n := len(r.Shop.Offers); n > maxOffers {
		return refuse("/shop/offers", strconv.Itoa(n)+" offers", "at most "+strconv.Itoa(maxOffers)+" offers")
	}
	return nil
}

// reply returns v as an answer in JSON.
func reply(v any) Reply {
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return NewProblem("internal", "").Reply()
	}
	return Reply{Status: 200, Type: "application/json", Body: buf.Bytes()}
}
