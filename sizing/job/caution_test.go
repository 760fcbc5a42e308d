package job

import (
	"regexp"
	"testing"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing"
	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/lights"
	"example.com/fircone/sizing/placement"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
)

// Every caution of every package has one shape: a code in lower case, a text that begins in
// lower case and has no period, a source; and one sentence to a code, but for its figures, so
// that a program can sort them and say them in another language. So have the steps of a mantel.
func TestCautionsHaveOneShape(t *testing.T) {
	var all []units.Caution
	add := func(err error, list ...units.Caution) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, list...)
	}
	const ft, in = units.Foot, units.Inch
	for _, height := range []units.Length{4 * ft, 9 * ft, 14 * ft, 30 * ft} {
		for kind := sizing.Cut; kind <= sizing.Metal; kind++ {
			for _, public := range []bool{false, true} {
				list, err := sizing.Tree{Height: height, Kind: kind, Public: public}.Cautions(units.InFeetInches)
				add(err, list...)
			}
		}
		tree := sizing.Tree{Height: height}
		ladder, err := sizing.Room{}.Ladder(tree)
		add(err, ladder.Cautions...)
		fit, err := sizing.Room{Ceiling: height + 2*ft}.Fit(tree)
		add(err, fit.Caution)
		for _, most := range []units.Length{0, 4 * ft} {
			ball := shopping.Lot{Item: shopping.Item{Kind: shopping.Ornament, Size: 3 * in}, Quantity: shopping.Quantity{Pieces: 20}}
			places, err := placement.Layout{Tree: tree}.Places([]shopping.Lot{ball})
			add(err)
			stations, err := placement.Order{Ladder: most, Side: 2 * ft}.Stations(places)
			add(err)
			for _, s := range stations {
				add(nil, s.Ladder.Cautions...)
			}
		}
	}
	strings := lights.Strings{Each: lights.Label{Lamps: 100, Length: 25 * ft, Power: 40 * units.Watt}, Count: 36}
	for _, other := range []units.Power{0, units.Watt} {
		load, err := strings.Load(lights.Circuit{Volts: 120, Amperes: 15, Other: other})
		add(err, load.Caution)
	}
	for _, days := range []int{90, 91} {
		use, err := strings.Use(decimal.NewFromInt(12), days)
		add(err, use.Caution)
	}
	shelf := mantel.Mantel{
		Length: 64 * in, Height: 54 * in, Depth: 8 * in, LeftWall: true,
		Opening: mantel.Rectangle{Width: 36 * in, Height: 30 * in, Gap: 12 * in}, Above: mantel.Rectangle{Width: 30 * in, Height: 20 * in, Gap: in},
	}
	low, corner := mantel.Mantel{Length: 64 * in, Height: 14 * in}, mantel.Mantel{Length: 5 * ft, RightWall: true}
	for _, m := range []mantel.Mantel{shelf, low, corner} {
		hanging, list, err := mantel.CommonPractice().Hang(m, mantel.Hanging{Swags: 2, Sag: 3 * in, Thickness: 3 * in * units.Length(len(all)%2)}, units.InFeetInches)
		add(err, list...)
		clearances, err := m.Clearances(hanging, units.InFeetInches)
		add(err, clearances.Cautions...)
		run, err := m.Hang(hanging)
		add(err)
		loads, err := run.Loads(8*units.Ounce, mantel.Hook{Rating: 5 * units.Pound}, units.InFeetInches)
		add(err, loads.Cautions...)
		_, _, list, err = run.Lights(100, 25*ft, mantel.Point{}, units.InFeetInches)
		add(err, list...)
	}
	clearances, err := shelf.Clearances(mantel.Hanging{Thickness: 8 * in}, units.InFeetInches)
	add(err, clearances.Cautions...)
	stockings, clearances, err := shelf.Stockings(mantel.Stockings{Length: 18 * in, Weight: units.Pound}, mantel.Hook{Rating: 5 * units.Pound}, mantel.Clearances{}, units.InFeetInches)
	add(err, append(stockings.Cautions, clearances.Cautions...)...)
	_, list, err := mantel.Door(mantel.Point{Along: 3 * ft, Below: 7 * ft}, 2)
	add(err, list...)
	_, list, err = mantel.Stairs(mantel.Point{}, mantel.Point{Along: 9 * ft, Below: -6 * ft}, 15, 4)
	add(err, list...)
	add(nil, labor.StartingRates().Cautions(
		[]labor.Task{{Height: 30 * ft, People: 2, Kind: shopping.Light}},
		[]labor.Carton{{Things: []labor.Thing{{Fragile: true}}}})...)
	var needs []shopping.Need
	for _, item := range []string{"base garland", "picks, mantel", "ornaments, mantel", "ribbon, mantel", "bells", "wire ties", "hooks", "lights", "stockings"} {
		parsed, err := shopping.ParseItem(item)
		add(err)
		needs = append(needs, shopping.Need{Item: parsed})
	}
	done := map[string]string{}
	for _, look := range []mantel.Look{mantel.Traditional, mantel.AsymmetricalLeft} {
		steps, err := mantel.Steps(mantel.Hanging{Look: look}, needs)
		add(err)
		for _, s := range steps {
			if s.Code == "" || s.Do == "" {
				t.Errorf("a step %q that does %q", s.Code, s.Do)
			}
			if s.Caution != (units.Caution{}) {
				add(nil, s.Caution)
			}
			done[s.Code] += s.Do
		}
		if len(done) != len(steps) || len(steps) < 9 {
			t.Errorf("%d steps with %d codes", len(steps), len(done))
		}
	}
	words := regexp.MustCompile(`^[a-z]+(-[a-z]+)?( [a-z]+)*$`)
	figures := regexp.MustCompile(`[0-9][0-9/.,]*( (ft|in|oz|lb))?( [0-9][0-9/.]*( in)?)*`)
	said := map[string]string{}
	for _, c := range all {
		if !words.MatchString(c.Code) || c.Text == "" || c.Source == "" || c.Text[0] < 'a' || c.Text[0] > 'z' || c.Text[len(c.Text)-1] == '.' {
			t.Errorf("the caution %q says %q (%s)", c.Code, c.Text, c.Source)
		}
		text := figures.ReplaceAllString(c.Text, "#")
		if old, ok := said[c.Code]; ok && old != text {
			t.Errorf("the code %q says %q, and %q", c.Code, old, text)
		}
		said[c.Code] = text
	}
	if len(said) < 50 {
		t.Errorf("only %d codes", len(said))
	}
}
