package job

import (
	"errors"
	"strconv"
	"strings"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
)

// A Refusal says which value of a request cannot be planned.
type Refusal struct {
	Path  []string // where it stands in the request: "trees", "0", "height"
	Value string   // the value given
	Want  string   // what is accepted
	Err   error    // what the library said
}

// Error returns one line with the place, the value and what is accepted.
func (r *Refusal) Error() string {
	return strings.Join(r.Path, "/") + " \"" + r.Value + "\": want " + r.Want
}

// Unwrap returns what the library said.
func (r *Refusal) Unwrap() error { return r.Err }

// refuse turns an error of the library into a Refusal at list[i].
func refuse(list string, i int, err error) error {
	r := &Refusal{Path: []string{list, strconv.Itoa(i)}, Err: err}
	var (
		tree  *sizing.Error
		shelf *mantel.Error
	)
	field := ""
	switch {
	case errors.As(err, &tree):
		field, r.Value, r.Want = tree.Field, tree.Value, tree.Want
	case errors.As(err, &shelf):
		field, r.Value, r.Want = shelf.Field, shelf.Value, shelf.Want
	default:
		return err
	}
	field = field[strings.LastIndexByte(field, '.')+1:]
	switch field = strings.ToLower(field[:1]) + field[1:]; field {
	case "base":
		field = "width"
	case "exposure":
		field = "where"
	}
	r.Path = append(r.Path, field)
	return r
}
