package units

// Round returns the multiple of step nearest to value. It returns [ErrRange] if step is not positive or
// the result does not fit.
func Round[Q Quantity](value, step Q) (Q, error) {
	v, err := kindOf(value).round(wayRound, int64(value), int64(step))
	return Q(v), err
}

// Ceil returns the least multiple of step that is not less than value. Its errors are those of [Round].
func Ceil[Q Quantity](value, step Q) (Q, error) {
	v, err := kindOf(value).round(wayCeil, int64(value), int64(step))
	return Q(v), err
}

// Floor returns the greatest multiple of step that is not more than value. Its errors are those of [Round].
func Floor[Q Quantity](value, step Q) (Q, error) {
	v, err := kindOf(value).round(wayFloor, int64(value), int64(step))
	return Q(v), err
}

// A way is a way to round. Its text is the function's name.
type way string

const (
	wayRound way = "Round"
	wayCeil  way = "Ceil"
	wayFloor way = "Floor"
)

// round returns the multiple of step next to v in the given way.
func (k kind) round(w way, v, step int64) (int64, error) {
	if step <= 0 {
		return 0, k.roundError(w, "step", step, "a step above "+k.string(0))
	}
	mag, s := magnitude(v), uint64(step)
	switch r := mag % s; {
	case w == wayRound:
		mag = nearest(mag, s)
	case r != 0 && (w == wayCeil) == (v > 0):
		mag += s - r
	default:
		mag -= r
	}
	n, fits := signed(mag, v < 0)
	if !fits {
		return 0, k.roundError(w, "value", v, "a result from "+k.limits())
	}
	return n, nil
}

func (k kind) roundError(w way, field string, v int64, want string) error {
	return &Error{Func: "units." + string(w), Field: field, Value: k.string(v), Want: want, Err: ErrRange}
}

// nearest returns the multiple of step nearest to mag, of two as near the larger.
// It does not overflow if mag is at most 1<<63 and step is below it.
func nearest(mag, step uint64) uint64 {
	r := mag % step
	if r >= step-r {
		return mag - r + step
	}
	return mag - r
}
