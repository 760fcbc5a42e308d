package units

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Errors compare with go-cmp without options, the ones with a reason of their own too.
func TestErrorsCompare(t *testing.T) {
	_, unit := ParseLength("7 furlongs")
	_, again := ParseLength("7 furlongs")
	_, comma := ParseLength("7,5 ft")
	_, step := Round(Foot, 0)
	if !cmp.Equal(unit, again) || cmp.Equal(unit, comma) || cmp.Equal(unit, step) || !cmp.Equal(step, step) {
		t.Error("equal errors differ, or others do not")
	}
	if cmp.Equal(ErrRange, ErrName) || !cmp.Equal(ErrFit, ErrFit) || !errors.Is(unit, ErrName) || errors.Unwrap(ErrFit) != nil {
		t.Error("the reasons are not told apart")
	}
}

// A zero Error prints, and so does every zero value of a struct here.
func TestZeroPrints(t *testing.T) {
	for want, v := range map[string]any{
		`: "": : want `: &Error{}, "": Caution{}, "0": Range[int]{}, "0 ft": Range[Length]{}, "feet and inches": Style(0),
	} {
		if got := fmt.Sprint(v); got != want || strings.Contains(got, "%!") {
			t.Errorf("%T prints as %q, want %q", v, got, want)
		}
	}
}
