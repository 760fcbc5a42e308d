package shopping_test

import (
	"database/sql"
	"database/sql/driver"
	"errors"
	"fmt"
	"testing"

	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// A column gives back what was put into it, as text or as bytes; what is no text, or no text of the type,
// is refused and changes nothing.
func TestColumns(t *testing.T) {
	star := shopping.Item{Kind: shopping.Ornament, Type: "star", Color: "crimson", Size: 3 * units.Inch}
	for _, tt := range []struct {
		in   driver.Valuer
		text string
		out  sql.Scanner
	}{
		{shopping.Pick, "picks", new(shopping.Kind)},
		{star, "crimson ornaments, star, 3 in", new(shopping.Item)},
		{shopping.Quantity{Pieces: 27}, "27", new(shopping.Quantity)},
		{ofLength(4, 54*units.Inch), "4 of 4 ft 6 in", new(shopping.Quantity)},
	} {
		v, err := tt.in.Value()
		if v != tt.text || err != nil {
			t.Errorf("%v: %v, %v", tt.in, v, err)
		}
		for _, src := range []any{tt.text, []byte(tt.text)} {
			if err := tt.out.Scan(src); err != nil || fmt.Sprint(deref(tt.out)) != fmt.Sprint(tt.in) {
				t.Errorf("%v: %v, %v", src, tt.out, err)
			}
		}
		for _, src := range []any{nil, 2.5, true, "\x00"} {
			if err := tt.out.Scan(src); err == nil || fmt.Sprint(deref(tt.out)) != fmt.Sprint(tt.in) {
				t.Errorf("%v: %v, %v", src, tt.out, err)
			}
		}
		if err := tt.out.Scan(nil); !errors.Is(err, units.ErrSyntax) {
			t.Error(err)
		}
	}
	if v, err := shopping.Kind(99).Value(); v != nil || !errors.Is(err, units.ErrName) {
		t.Error(v, err)
	}
	var q shopping.Quantity
	if err := q.Scan(int64(12)); err != nil || q.Pieces != 12 {
		t.Error(q, err)
	}
	if err := q.Scan(int64(-1)); err == nil || q.Pieces != 12 {
		t.Error(q, err)
	}
}

func deref(s sql.Scanner) any {
	switch v := s.(type) {
	case *shopping.Kind:
		return *v
	case *shopping.Item:
		return *v
	case *shopping.Quantity:
		return *v
	}
	return s
}

func ExampleKind_Value() {
	v, err := shopping.Pick.Value()
	fmt.Println(v, err)
	// Output:
	// picks <nil>
}

func ExampleKind_Scan() {
	var k shopping.Kind
	fmt.Println(k.Scan("picks"), k == shopping.Pick)
	// Output:
	// <nil> true
}

func ExampleItem_Value() {
	v, err := shopping.Item{Kind: shopping.Ornament, Color: "crimson"}.Value()
	fmt.Println(v, err)
	// Output:
	// crimson ornaments <nil>
}

func ExampleItem_Scan() {
	var i shopping.Item
	fmt.Println(i.Scan("crimson ornaments, star"), i.Type)
	// Output:
	// <nil> star
}

func ExampleQuantity_Value() {
	v, err := shopping.Quantity{Pieces: 4, Length: 54 * units.Inch}.Value()
	fmt.Println(v, err)
	// Output:
	// 4 of 4 ft 6 in <nil>
}

func ExampleQuantity_Scan() {
	var q shopping.Quantity
	fmt.Println(q.Scan("81 ft"), q.Length.In(units.Foot))
	// Output:
	// <nil> 81
}

// 0 on the shelf of a database is sold out, and only NULL is not known.
func TestShelfColumn(t *testing.T) {
	for _, tt := range []struct {
		column any
		want   shopping.Shelf
	}{{nil, 0}, {int64(0), shopping.SoldOut}, {int64(12), 12}, {"12", 12}, {[]byte("0"), shopping.SoldOut}, {int64(999_999_999), 999_999_999}} {
		got := shopping.Shelf(99)
		if err := got.Scan(tt.column); err != nil || got != tt.want {
			t.Errorf("%v: %v, %v", tt.column, got, err)
		}
		v, err := tt.want.Value()
		if err != nil || got.Scan(v) != nil || got != tt.want {
			t.Errorf("%v goes into a column as %v, %v", tt.want, v, err)
		}
	}
	for _, column := range []any{int64(-1), int64(1_000_000_000), 2.5, true, "", "some"} {
		s := shopping.Shelf(99)
		err := s.Scan(column)
		checkError(t, fmt.Sprint(column), err, units.ErrSyntax, &units.Error{Func: "shopping.Shelf.Scan", Field: "shelf", Value: fmt.Sprint(column), Want: "a whole number of at most 9 digits, or null"})
		if s != 99 {
			t.Errorf("%v: changed to %v", column, s)
		}
	}
}

func ExampleShelf_Value() {
	for _, s := range []shopping.Shelf{shopping.SoldOut, 0, 12} {
		v, err := s.Value()
		fmt.Println(v, err)
	}
	// Output:
	// 0 <nil>
	// <nil> <nil>
	// 12 <nil>
}

func ExampleShelf_Scan() {
	var s shopping.Shelf
	fmt.Println(s.Scan(int64(0)), s == shopping.SoldOut)
	// Output:
	// <nil> true
}
