package shopping_test

import (
	"errors"
	"runtime"
	"strconv"
	"testing"
	"time"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// The worst orders there are end with an answer or an error that says which limit, and hold no more than 64 MB.
func TestWorstOrders(t *testing.T) {
	if testing.Short() {
		t.Skip("some seconds")
	}
	ball := func(i int) shopping.Item { return shopping.Item{Kind: shopping.Ornament, Type: strconv.Itoa(i)} }
	mixed := func(offers, kinds, needs int) (s shopping.Shop, list []shopping.Need) {
		for i := range offers {
			o := shopping.Offer{Name: strconv.Itoa(i), Price: cents(int64(100 + i*7919%997)), Shelf: shopping.Shelf(1 + i%5)}
			for k := range 4 {
				o.Contents = append(o.Contents, shopping.Lot{Item: ball((i*31 + k*17) % kinds), Quantity: shopping.Quantity{Pieces: 1 + (i+k)%9}})
			}
			s.Offers = append(s.Offers, o)
		}
		for i := range needs {
			list = append(list, shopping.Need{Item: ball(i % kinds), Room: strconv.Itoa(i), Quantity: shopping.Quantity{Pieces: 10 + i%40}})
		}
		return s, list
	}
	manyRuns := func() (s shopping.Shop, list []shopping.Need) {
		garland := shopping.Item{Kind: shopping.Garland}
		s.Joins = map[shopping.Item]shopping.Join{garland: {Overlap: 2 * units.Inch, Shortest: units.Foot}}
		for i, feet := range []units.Length{5, 7, 11} {
			s.Offers = append(s.Offers, shopping.Offer{Item: garland, Name: strconv.Itoa(i), Pack: ofLength(0, feet*units.Foot), Price: cents(int64(feet) * 90)})
		}
		for i := range 5000 {
			list = append(list, shopping.Need{Item: garland, Room: strconv.Itoa(i), Quantity: ofLength(0, units.Length(40+7*(i%90))*units.Inch)})
		}
		return s, list
	}
	for name, draw := range map[string]func() (shopping.Shop, []shopping.Need){
		"60 offers, 12 needs":       func() (shopping.Shop, []shopping.Need) { return mixed(60, 12, 12) },
		"5,000 offers, 400 kinds":   func() (shopping.Shop, []shopping.Need) { return mixed(5000, 400, 5000) },
		"4,000 offers, 500 needs":   func() (shopping.Shop, []shopping.Need) { return mixed(4000, 500, 500) },
		"2,000 offers, 1,000 needs": func() (shopping.Shop, []shopping.Need) { return mixed(2000, 1000, 1000) },
		"500 offers, 200 needs":     func() (shopping.Shop, []shopping.Need) { return mixed(500, 200, 200) },
		"5,000 offers, 5,000 needs": func() (shopping.Shop, []shopping.Need) { return mixed(5000, 5000, 5000) },
		"5,000 runs":                manyRuns,
	} {
		s, needs := draw()
		runtime.GC()
		var before, during runtime.MemStats
		runtime.ReadMemStats(&before)
		began := time.Now()
		l, err := s.List(needs)
		took := time.Since(began)
		runtime.ReadMemStats(&during)
		t.Logf("%s: %v, %d MB allocated in all, %d MB held, total %v, bound %v, %d short, %v", name, took, (during.TotalAlloc-before.TotalAlloc)>>20, during.HeapAlloc>>20, l.Total, l.Bound, len(l.Short()), err)
		if err != nil && !errors.Is(err, units.ErrLimit) {
			t.Errorf("%s: %v", name, err)
		}
		// What is not proved is not far off either: a half over a bound that there is.
		if l.Bound.IsPositive() && l.Total.GreaterThan(l.Bound.Add(l.Bound.Div(decimal.NewFromInt(2)))) {
			t.Errorf("%s: %v, where nothing costs less than %v", name, l.Total, l.Bound)
		}
		if held := during.HeapAlloc >> 20; held > 64 {
			t.Errorf("%s: %d MB held", name, held)
		}
		if took > 20*time.Second { // far above what it takes, under other load
			t.Errorf("%s: %v", name, took)
		}
	}
}
