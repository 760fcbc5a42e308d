package api

import (
	"encoding/json"
	"errors"
	"strings"

	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// A Kind is one kind of problem that a request can meet, in the terms of RFC
// 9457. Its URI, /problems/ and the name, leads to the explanation.
type Kind struct {
	Name    string // the last part of the type's URI
	Status  int    // the HTTP status that goes with it
	Title   string // the same for every problem of the kind
	Explain string // what it means and what to do about it
}

// The kinds of problem, by name.
var kinds = [...]Kind{
	{
		"syntax", 400, "The body cannot be read as JSON",
		"The body must be one JSON object in UTF-8, at most 16 levels deep and with at most 5000 values in a list. The detail says where it stops being that.",
	},
	{
		"value", 422, "A value cannot be used",
		"The pointer (RFC 6901) says which value of the body, want says what is accepted. Errors lists all such values. Lengths are text with a unit, such as \"7 ft 6 in\" or \"2.3 m\".",
	},
	{
		"plan", 422, "The plan does not come out",
		"Every value can be used by itself, but together they cannot be met: not enough on the shelf, say, or a budget that does not reach. The detail says what is missing.",
	},
	{
		"picture", 422, "There is no such picture",
		"The query asks for a tree or a mantel that the job does not have, or cannot be read. The detail says which.",
	},
	{
		"not-found", 404, "There is nothing here",
		"See /openapi.json for what there is.",
	},
	{
		"method", 405, "The method does not fit",
		"The Allow header says which methods this address takes.",
	},
	{
		"too-large", 413, "The body is too large",
		"A body may have at most 256 KiB.",
	},
	{
		"media-type", 415, "The body is not announced as JSON",
		"Send Content-Type: application/json.",
	},
	{
		"slow", 408, "The body did not arrive in time",
		"Send the whole body within ten seconds.",
	},
	{
		"busy", 503, "Too much to do at the moment",
		"The service works on a few requests at a time and lets a few wait. Try again after the seconds that Retry-After gives.",
	},
	{
		"internal", 500, "Something went wrong here",
		"It is the fault of the service, not of the request.",
	},
}

// Kinds returns the kinds of problem, each time a new slice.
func Kinds() []Kind { return append([]Kind(nil), kinds[:]...) }

// A Problem is the body of every answer that is not a success: RFC 9457 problem
// details, with four members of our own where a value is to blame.
type Problem struct {
	Type   string `json:"type"`
	Title  string `json:"title"`
	Status int    `json:"status"`
	Detail string `json:"detail,omitempty"`

	Pointer string  `json:"pointer,omitempty"` // which value of the body, as RFC 6901 writes it
	Value   string  `json:"value,omitempty"`   // the value given
	Want    string  `json:"want,omitempty"`    // what is accepted
	Errors  []Fault `json:"errors,omitempty"`  // all values that are to blame, the one above first
}

// A Fault is one value of a body that cannot be used.
type Fault struct {
	Pointer string `json:"pointer"` // which value of the body, as RFC 6901 writes it
	Value   string `json:"value"`   // the value given
	Want    string `json:"want"`    // what is accepted
}

// NewProblem returns a problem of the kind with that name, and panics if there
// is none.
func NewProblem(name, detail string) Problem {
	for _, k := range kinds {
		if k.Name == name {
			return Problem{Type: "/problems/" + k.Name, Title: k.Title, Status: k.Status, Detail: detail}
		}
	}
	panic("api: no kind of problem is named " + name)
}

// Reply returns p as an answer.
func (p Problem) Reply() Reply {
	body, err := json.Marshal(p)
	if err != nil {
		panic(err) // strings and a number
	}
	return Reply{Status: p.Status, Type: "application/problem+json", Body: append(body, '\n')}
}

// problemOf returns the problem that an error of a job or of a picture is.
func problemOf(err error) Problem {
	var picture *pictureError
	if errors.As(err, &picture) {
		return NewProblem("picture", picture.detail)
	}
	faults := job.Faults(err)
	if len(faults) == 0 {
		return NewProblem("plan", sentence(err))
	}
	if faults[0].Field == "data" {
		return NewProblem("syntax", faults[0].Want)
	}
	p := NewProblem("value", "")
	p.Pointer, p.Value, p.Want = faults[0].Field, faults[0].Value, faults[0].Want
	for _, f := range faults {
		p.Errors = append(p.Errors, fault(f))
	}
	return p
}

// fault returns an error of the library as a part of a problem.
func fault(e *units.Error) Fault { return Fault{Pointer: e.Field, Value: e.Value, Want: e.Want} }

// sentence returns the message of an error of the library for someone who does
// not know its functions: without the name that stands in front.
func sentence(err error) string {
	text := err.Error()
	if name, rest, ok := strings.Cut(text, ": "); ok && strings.Contains(name, ".") && !strings.Contains(name, " ") {
		text = rest
	}
	return text
}
