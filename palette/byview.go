package palette

import (
	"bytes"
	"encoding/json"
	"strconv"

	"example.com/fircone/units"
)

// A ByView is a value for every [View], its index. In JSON it is an object with the
// name of each view, {"daylight":71.3,"protan":15.1,...}, in the order of the views.
type ByView[T any] [views]T

// MarshalJSON returns the object described above. It fails where a T cannot be written.
func (b ByView[T]) MarshalJSON() ([]byte, error) {
	out := []byte{'{'}
	for v, value := range b {
		text, err := json.Marshal(value)
		if err != nil {
			return nil, err
		}
		if v > 0 {
			out = append(out, ',')
		}
		out = append(strconv.AppendQuote(out, viewNames[v]), ':')
		out = append(out, text...)
	}
	return append(out, '}'), nil
}

// UnmarshalJSON reads such an object with every view in it. It returns
// [units.ErrName] for a view that is unknown or missing, and the error of encoding/json for
// other faults, and leaves b as it was.
func (b *ByView[T]) UnmarshalJSON(text []byte) error {
	const fn = "ByView.UnmarshalJSON"
	if bytes.Equal(text, []byte("null")) {
		return nil
	}
	var members map[View]json.RawMessage
	if err := json.Unmarshal(text, &members); err != nil {
		return err
	}
	var read ByView[T]
	for v := range views {
		member, ok := members[v]
		if !ok {
			return refuse(fn, "text", string(text), "a member "+v.String(), units.ErrName)
		}
		if err := json.Unmarshal(member, &read[v]); err != nil {
			return err
		}
	}
	*b = read
	return nil
}
