package api

import (
	"errors"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"example.com/fircone/examples/plan/sheet"
	"example.com/fircone/sizing/job"
	"example.com/fircone/units"
)

// sheets are the pages of text that there are of a job.
var sheets = []struct {
	name  string
	dated bool // it takes a day to stand
	text  func(job.Request, job.Plan, bool) string
	why   bool
}{
	{name: "plan", text: sheet.Text},
	{name: "quote", dated: true, text: sheet.Quote},
	{name: "quote-house", dated: true, text: sheet.Quote, why: true},
	{name: "work", dated: true, text: sheet.Work},
	{name: "pack", dated: true, text: sheet.Pack},
}

// page answers with a sheet for the job in body.
func page(query string, body []byte) Reply {
	values, err := url.ParseQuery(query)
	of := 0
	if list, ok := values["of"]; ok && err == nil {
		var names []string
		for _, s := range sheets {
			names = append(names, s.name)
		}
		if of = slices.Index(names, list[0]); of < 0 || len(list) > 1 {
			return problemOf(&pictureError{"of is " + strconv.Quote(clip(strings.Join(list, " "))) + ": want " + strings.Join(names, ", ") + ", once"}).Reply()
		}
		delete(values, "of")
	}
	if err != nil || len(values) > 0 {
		return problemOf(&pictureError{"the query has something other than of"}).Reply()
	}
	p, _, err := makePlan(body)
	if err != nil {
		return problemOf(err).Reply()
	}
	request, err := job.ParseRequest(body)
	if err == nil && sheets[of].dated && request.Stand == 0 {
		err = errors.Join(&units.Error{Func: "api.Call", Field: "/stand", Value: request.Stand.String(), Want: "the day on which it must stand, such as 2026-11-28", Err: units.ErrRange})
	}
	if err != nil {
		return problemOf(err).Reply()
	}
	return Reply{Status: 200, Type: "text/plain; charset=utf-8", Body: []byte(sheets[of].text(request, p, sheets[of].why))}
}
