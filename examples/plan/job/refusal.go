package job

import (
	"errors"
	"slices"
	"strings"

	"example.com/fircone/units"
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

// fields are the places in a request of what the library calls otherwise.
var fields = map[string]string{
	"base": "width", "side": "heavySide", "heavy": "heavySide", "exposure": "where", "span": "swags", "thickness": "garlandThickness", "rating": "hookRating", "perFoot": "garlandWeight",
}

// refuse turns an error of the library into a Refusal at a place in the request.
func refuse(err error, path ...string) error {
	r := &Refusal{Err: err}
	var e *units.Error
	if !errors.As(err, &e) {
		return err
	}
	field := e.Field
	r.Value, r.Want = e.Value, e.Want
	r.Path = path
	shop, colors := strings.HasPrefix(e.Func, "shopping."), strings.HasPrefix(e.Func, "palette.")
	if colors || shop && !strings.HasPrefix(field, "/") {
		r.Value = field + " " + r.Value // of the library's argument, not of the request
		return r
	}
	if strings.HasPrefix(e.Func, "lights.Label.") {
		r.Path = append(r.Path[:len(r.Path):len(r.Path)], "string")
	}
	for name := range strings.FieldsFuncSeq(field, func(c rune) bool { return c == '/' || c == '.' && !shop }) {
		name = strings.NewReplacer("~1", "/", "~0", "~").Replace(name)
		if slices.Contains([]string{"tree", "mantel", "hanging", "hook"}, strings.ToLower(name)) {
			continue // the argument that the request's value becomes
		}
		if !shop {
			name = strings.ToLower(name[:1]) + name[1:]
			if own, ok := fields[name]; ok {
				name = own
			}
		}
		r.Path = append(r.Path[:len(r.Path):len(r.Path)], name)
	}
	return r
}
