package catenary

// Steps returns how many steps Sloped takes.
func Steps(span, rise, sag float64) int {
	_, steps := sloped(span, rise, sag)
	return steps
}
