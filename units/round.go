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
	fn := kinds[k].name + "." + string(w)
	if step <= 0 {
		return 0, &Error{Func: fn, Field: "step", Value: k.string(step), Want: "a step above " + k.string(0), Err: ErrRange}
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
		return 0, &Error{Func: fn, Field: "value", Value: k.string(v), Want: "a result from " + k.limits(), Err: ErrRange}
	}
	return n, nil
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
