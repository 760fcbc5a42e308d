package labor_test

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/fircone/sizing/labor"
	"example.com/fircone/sizing/shopping"
)

// The station's figures in the package documentation are those that the package gives.
func TestDocFigures(t *testing.T) {
	source, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	doc := strings.Join(strings.Fields(strings.ReplaceAll(string(source), "//", "")), " ")
	r := house()
	up, down := tasksOf(t, r, station()...)
	_, time := schedule(t, r, up)
	o := must[[]labor.Option](t)(r.Quote(basket(), up, down, 2))[1]
	sums := map[string]string{}
	work := o.Total.Sub(o.Total)
	for _, l := range o.Lines {
		kind := kindOf(l)
		if kind == "work" {
			work = work.Add(l.Price)
		}
		sums[kind] += " " + l.Price.StringFixed(2)
	}
	stand := must[labor.Date](t)(labor.ParseDate("2026-11-28"))
	var needs []shopping.Need
	for _, w := range station() {
		needs = append(needs, w.Needs...)
	}
	days := must[[]labor.Day](t)(r.Dates(stand, stand+39, time.Max, station(), needs))
	for _, want := range []string{
		fmt.Sprintf("mantel in %d h %d min", time.Max/60, time.Max%60), fmt.Sprintf("come to %d; half", personMinutes(up)),
		"picks" + sums["goods"] + ", work " + work.StringFixed(2) + " with taking down, two visits" + sums["travel"], "tax" + sums["tax"], "in all " + o.Total.StringFixed(2),
		"discounts" + strings.Replace(strings.Replace(strings.ReplaceAll(sums["discount"], "-", ""), " 29", ", 29", 1), " 2.50", " and 2.50", 1),
	} {
		if !strings.Contains(doc, want) {
			t.Errorf("the documentation does not say %q", want)
		}
	}
	if time.Min != time.Max || days[0].Date.String() != "2026-10-29" || days[0].Text != "order base garland" || days[1].Date.String() != "2026-11-12" || days[3].Date.String() != "2026-11-26" || days[4].Date.String() != "2026-11-27" {
		t.Errorf("%v, %v", time, days)
	}
	if !strings.Contains(doc, `"3 of 10, ticket hall, 4 crimson balls, 4 in; 8 gold balls, 3 1/8 in; fragile"`) {
		t.Error("no label of Example_cartons in the documentation")
	}
}
