package labor

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
)

// A number is taken for what it is worth, however it is written, with at most four places.
func TestDecimalByValue(t *testing.T) {
	text := decimal.RequireFromString
	for _, row := range []struct {
		reason string
		d      decimal.Decimal
		taken  bool
	}{
		{"four places", text("1.2345"), true},
		{"five places", text("1.23456"), false},
		{"one place and zeros", text("1.500000000"), true},
		{"one place and 63 zeros", text("1.5" + strings.Repeat("0", 63)), true},
		{"one place and 64 zeros", text("1.5" + strings.Repeat("0", 64)), false},
		{"ten as a power", decimal.New(1, 1), true},
		{"none of a large unit", decimal.New(0, 18), true},
		{"a large power", decimal.New(1, 18), false},
		{"a power that fills the memory", decimal.New(1, math.MaxInt32), false},
		{"the most", text("1000.0000"), true},
		{"more than the most", text("1000.0001"), false},
		{"below zero", text("-0.0001"), false},
		{"2⁶⁴ + 1, whose last 64 bits say 1", decimal.NewFromBigInt(new(big.Int).Add(new(big.Int).Lsh(big.NewInt(1), 64), big.NewInt(1)), 0), false},
	} {
		c := &checker{}
		if c.decimal("rate", row.d, 1000); (c.err == nil) != row.taken {
			t.Errorf("%s: %v", row.reason, c.err)
		}
	}
}

// What a house writes is seen to be in range without allocating: whole amounts, four places, and up to a billion with them.
func TestInRangeAllocatesNothing(t *testing.T) {
	for _, s := range []string{"0", "0.0000", "45", "1.2345", "1000000000", "1000000000.0000"} {
		d := decimal.RequireFromString(s)
		fine := false
		if n := testing.AllocsPerRun(10, func() { fine = inRange(d, 1_000_000_000) }); n != 0 || !fine {
			t.Errorf("%s: %t, %v allocations", s, fine, n)
		}
	}
}

// An error shows a number written out, or its digits and a power of ten where that takes more than 64 zeros.
func TestDecimalText(t *testing.T) {
	for _, row := range []struct {
		d    decimal.Decimal
		want string
	}{
		{decimal.New(-25, -1), "-2.5"},
		{decimal.New(1, 64), "1" + strings.Repeat("0", 64)},
		{decimal.New(1, 65), "1e65"},
		{decimal.New(1, -64), "0." + strings.Repeat("0", 63) + "1"},
		{decimal.New(1, -65), "1e-65"},
	} {
		if got := decimalText(row.d); got != row.want {
			t.Errorf("%s, want %s", got, row.want)
		}
	}
}
