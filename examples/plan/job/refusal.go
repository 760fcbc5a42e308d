package job

import (
	"errors"
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
	private := strings.HasPrefix(e.Func, "shopping.") || strings.HasPrefix(e.Func, "palette.") // the field is of the library's argument and not of the request
	if strings.HasPrefix(e.Func, "sizing.LightString.") {
		path = append(path[:len(path):len(path)], "string")
	}
	r.Path = path
	if pointer, ok := strings.CutPrefix(field, "/"); ok && private {
		for token := range strings.SplitSeq(pointer, "/") {
			r.Path = append(r.Path[:len(r.Path):len(r.Path)], strings.NewReplacer("~1", "/", "~0", "~").Replace(token))
		}
		return r
	}
	if private {
		r.Value = field + " " + r.Value
		return r
	}
	for name := range strings.SplitSeq(field, ".") {
		if name == "Tree" || name == "Mantel" || name == "Hanging" || name == "Hook" {
			continue
		}
		name = strings.ToLower(name[:1]) + name[1:]
		if own, ok := fields[name]; ok {
			name = own
		}
		r.Path = append(r.Path[:len(r.Path):len(r.Path)], name)
	}
	return r
}
