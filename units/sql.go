package units

import "fmt"

// scan returns the value in a database column: text, or a number of base units.
func (k kind) scan(src any) (int64, error) {
	switch src := src.(type) {
	case int64:
		return src, nil
	case string:
		return parse(k, src)
	case []byte:
		return parse(k, string(src[:min(len(src), maxText+1)]))
	}
	return 0, &Error{
		Func: "units." + kinds[k].name + ".Scan", Field: "src", Value: fmt.Sprintf("%T", src),
		Want: "text such as " + kinds[k].such + ", or a whole number of base units", Err: ErrSyntax,
	}
}
