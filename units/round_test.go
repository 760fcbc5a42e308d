package units

import (
	"errors"
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// rounders are the three functions for each type.
var rounders = []map[way]func(v, step int64) (int64, error){
	kindLength: rounderOf[Length](),
	kindArea:   rounderOf[Area](),
	kindMass:   rounderOf[Mass](),
	kindPower:  rounderOf[Power](),
}

func rounderOf[Q Quantity]() map[way]func(v, step int64) (int64, error) {
	f := func(f func(Q, Q) (Q, error)) func(v, step int64) (int64, error) {
		return func(v, step int64) (int64, error) { n, err := f(Q(v), Q(step)); return int64(n), err }
	}
	return map[way]func(v, step int64) (int64, error){"Round": f(Round[Q]), "Ceil": f(Ceil[Q]), "Floor": f(Floor[Q])}
}

func TestRound(t *testing.T) {
	const maxi, mini = math.MaxInt64, math.MinInt64
	for _, tt := range []struct {
		v, step            int64
		round, ceil, floor int64
		reason             string
	}{
		{0, 10, 0, 0, 0, ""},
		{20, 10, 20, 20, 20, "a multiple"},
		{-20, 10, -20, -20, -20, "a multiple"},
		{24, 10, 20, 30, 20, ""},
		{25, 10, 30, 30, 20, "half goes away from zero"},
		{26, 10, 30, 30, 20, ""},
		{-24, 10, -20, -20, -30, ""},
		{-25, 10, -30, -20, -30, "half goes away from zero"},
		{-26, 10, -30, -20, -30, ""},
		{1, 3, 0, 3, 0, "odd step"},
		{2, 3, 3, 3, 0, "odd step"},
		{-1, 3, 0, 0, -3, "odd step"},
		{-2, 3, -3, 0, -3, "odd step"},
		{7, 1, 7, 7, 7, ""},
		{maxi, 1, maxi, maxi, maxi, ""},
		{mini, 1, mini, mini, mini, ""},
		{mini, 2, mini, mini, mini, ""},
		{mini, 1 << 62, mini, mini, mini, ""},
		{mini + 1, 2, mini, mini + 2, mini, "half goes to the most negative"},
		{maxi, maxi, maxi, maxi, maxi, ""},
		{maxi - 1, maxi, maxi, maxi, 0, ""},
	} {
		for k := range rounders {
			for w, want := range map[way]int64{"Round": tt.round, "Ceil": tt.ceil, "Floor": tt.floor} {
				if got, err := rounders[k][w](tt.v, tt.step); err != nil || got != want {
					t.Errorf("%d: %s(%d, %d) = %d, %v; want %d (%s)", k, w, tt.v, tt.step, got, err, want, tt.reason)
				}
			}
		}
	}
}

func TestRoundRefuses(t *testing.T) {
	const maxi, mini = math.MaxInt64, math.MinInt64
	for _, tt := range []struct {
		w       way
		v, step int64
		want    string
	}{
		{"Round", 1, 0, `step "0 ft": out of range: want a step above 0 ft`},
		{"Ceil", 1, 0, `step "0 ft": out of range: want a step above 0 ft`},
		{"Floor", 1, -int64(Inch), `step "-1 in": out of range: want a step above 0 ft`},
		{"Round", 1, mini, `step "-9223372036.854775808 m": out of range: want a step above 0 ft`},
		{"Round", maxi, 2, `value "9223372036.854775807 m": out of range: want a result from -9223372036.854775808 m to 9223372036.854775807 m`},
		{"Ceil", maxi, 2, `value "9223372036.854775807 m": out of range: want a result from -9223372036.854775808 m to 9223372036.854775807 m`},
		{"Floor", mini, 3, `value "-9223372036.854775808 m": out of range: want a result from -9223372036.854775808 m to 9223372036.854775807 m`},
		{"Round", mini, 3, `value "-9223372036.854775808 m": out of range: want a result from -9223372036.854775808 m to 9223372036.854775807 m`},
		{"Round", mini, 7, ``}, // the nearest is above
		{"Floor", mini, maxi, `value "-9223372036.854775808 m": out of range: want a result from -9223372036.854775808 m to 9223372036.854775807 m`},
		{"Round", mini, maxi, ``},
		{"Floor", maxi, 2, ``},
		{"Ceil", mini, 3, ``},
	} {
		got, err := rounders[kindLength][tt.w](tt.v, tt.step)
		if tt.want == "" {
			if err != nil || got == 0 {
				t.Errorf("%s(%d, %d) = %d, %v", tt.w, tt.v, tt.step, got, err)
			}
			continue
		}
		want := "units." + string(tt.w) + ": " + tt.want
		if !errors.Is(err, ErrRange) || err.Error() != want || got != 0 {
			t.Errorf("%s(%d, %d) = %d, %v;\nwant 0, %s", tt.w, tt.v, tt.step, got, err, want)
		}
	}
	for k, want := range []string{
		kindLength: `units.Round: step "0 ft": out of range: want a step above 0 ft`,
		kindArea:   `units.Round: step "0 sq ft": out of range: want a step above 0 sq ft`,
		kindMass:   `units.Round: step "0 lb": out of range: want a step above 0 lb`,
		kindPower:  `units.Round: step "0 W": out of range: want a step above 0 W`,
	} {
		if _, err := rounders[k]["Round"](1, 0); err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// TestRoundMatchesRat compares with whole-number arithmetic of any size, and checks what the methods promise of each other.
func TestRoundMatchesRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.OneOf(rapid.Int64(), rapid.SampledFrom(edges)).Draw(t, "value")
		step := rapid.OneOf(rapid.Int64Min(1), rapid.Int64Range(1, 100)).Draw(t, "step")
		bv, bs := big.NewInt(v), big.NewInt(step)
		floor := new(big.Int).Div(bv, bs) // Euclidean: down, since step is positive
		ceil := new(big.Int).Neg(new(big.Int).Div(new(big.Int).Neg(bv), bs))
		round := refRound(big.NewRat(v, step))
		for w, n := range map[way]*big.Int{"Round": round, "Ceil": ceil, "Floor": floor} {
			want := n.Mul(n, bs)
			got, err := rounders[kindLength][w](v, step)
			if want.IsInt64() != (err == nil) || err == nil && got != want.Int64() {
				t.Fatalf("%s(%d, %d) = %d, %v; want %v", w, v, step, got, err, want)
			}
			if err != nil {
				continue
			}
			if again, err := rounders[kindLength][w](got, step); err != nil || again != got {
				t.Fatalf("%s(%d, %d) = %d, but again it is %d, %v", w, v, step, got, again, err)
			}
		}
	})
}
