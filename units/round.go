package units

// A way is a way to round. Its text is the method's name.
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
	return &Error{Func: "units." + kinds[k].name + "." + string(w), Field: field, Value: k.string(v), Want: want, Err: ErrRange}
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
