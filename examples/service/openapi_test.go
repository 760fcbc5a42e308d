package main

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"math/big"
	"net/http"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/fircone/examples/service/api"
	"example.com/fircone/sizing/job"
)

// A description is what openapi.json says, as far as it is checked here: OpenAPI
// 3.1 with the part of JSON Schema (draft 2020-12) that it uses.
type description struct {
	doc map[string]any
}

func readDescription(t *testing.T) description {
	t.Helper()
	var d description
	dec := json.NewDecoder(bytes.NewReader(openAPI))
	dec.UseNumber()
	if err := dec.Decode(&d.doc); err != nil {
		t.Fatal(err)
	}
	if d.doc["openapi"] != "3.1.0" {
		t.Fatalf("openapi %v", d.doc["openapi"])
	}
	return d
}

// at follows a path of names into the description, and references on the way.
func (d description) at(from any, names ...string) map[string]any {
	for _, name := range append(names, "") {
		m, _ := from.(map[string]any)
		if ref, ok := m["$ref"].(string); ok {
			if names := strings.Split(ref, "/"); len(names) > 1 && names[0] == "#" {
				m = d.at(d.doc, names[1:]...)
			}
		}
		if name == "" {
			return m
		}
		from = m[name]
	}
	return nil
}

// check appends what v breaks of a schema. A keyword that is not known here is
// an error too, so that none is passed over.
func (d description) check(schema map[string]any, v any, where string, bad []string) []string {
	fail := func(format string, args ...any) {
		bad = append(bad, where+": "+fmt.Sprintf(format, args...))
	}
	for key, rule := range schema {
		switch key {
		case "description", "examples", "format":
		case "$ref":
			bad = d.check(d.at(schema), v, where, bad)
		case "type":
			kinds, ok := rule.([]any)
			if !ok {
				kinds = []any{rule}
			}
			if !slices.ContainsFunc(kinds, func(k any) bool { return isKind(k.(string), v) }) {
				fail("%v is no %v", v, rule)
			}
		case "enum":
			if !slices.Contains(rule.([]any), v) {
				fail("%v is none of %v", v, rule)
			}
		case "minimum", "maximum":
			n, isNumber := v.(json.Number)
			if !isNumber {
				continue
			}
			order := rational(n).Cmp(rational(rule.(json.Number)))
			if key == "minimum" && order < 0 || key == "maximum" && order > 0 {
				fail("%v past the %s of %v", v, key, rule)
			}
		case "maxLength":
			most := rational(rule.(json.Number)).Num().Int64()
			if s, ok := v.(string); ok && int64(utf8.RuneCountInString(s)) > most {
				fail("longer than %v", rule)
			}
		case "maxItems":
			most := rational(rule.(json.Number)).Num().Int64()
			if list, ok := v.([]any); ok && int64(len(list)) > most {
				fail("more than %v items", rule)
			}
		case "items":
			list, _ := v.([]any)
			for i, item := range list {
				bad = d.check(rule.(map[string]any), item, fmt.Sprintf("%s/%d", where, i), bad)
			}
		case "required":
			if m, ok := v.(map[string]any); ok {
				for _, name := range rule.([]any) {
					if _, ok := m[name.(string)]; !ok {
						fail("has no %v", name)
					}
				}
			}
		case "properties", "additionalProperties":
			m, _ := v.(map[string]any)
			known := d.at(schema, "properties")
			for name, value := range m {
				if sub, ok := known[name]; ok {
					if key == "properties" {
						bad = d.check(sub.(map[string]any), value, where+"/"+name, bad)
					}
				} else if more, ok := rule.(map[string]any); ok && key == "additionalProperties" {
					bad = d.check(more, value, where+"/"+name, bad)
				} else if rule == false {
					fail("%q is not described", name)
				}
			}
		default:
			fail("the schema has a %q, which this test does not know", key)
		}
	}
	return bad
}

func isKind(kind string, v any) bool {
	switch v := v.(type) {
	case nil:
		return kind == "null"
	case bool:
		return kind == "boolean"
	case string:
		return kind == "string"
	case json.Number:
		return kind == "number" || kind == "integer" && rational(v).IsInt()
	case []any:
		return kind == "array"
	case map[string]any:
		return kind == "object"
	}
	return false
}

func rational(n json.Number) *big.Rat {
	r, ok := new(big.Rat).SetString(n.String())
	if !ok {
		panic(n)
	}
	return r
}

func (d description) checkText(schema map[string]any, text []byte) []string {
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.UseNumber()
	var v any
	if err := dec.Decode(&v); err != nil {
		return []string{err.Error()}
	}
	return d.check(schema, v, "", nil)
}

// What is described is what is there, and the other way round: every path and
// method answers, with a status, a media type and a body that stand in the
// description, whatever is sent.
func TestOpenAPIAnswers(t *testing.T) {
	d := readDescription(t)
	h := newHandler(nil)
	example := string(api.Example().Body)
	bodies := []string{
		example, "", "{}", "[", `{"trees":[{"height":"6 in"}]}`, strings.Repeat(" ", api.MaxBody+1),
		`{"trees":[{"height":"9 ft"}],"shop":{"offers":[{"item":"ornaments","name":"box","pack":12,"price":"14.00"}],"budget":1}}`,
		`{"trees":[{"height":"7 ft","base":"2 ft","taper":"slim","exposure":"200 degrees","space":{"ceiling":"7 ft"},"accents":["garland","picks"],"sizeBy":"shape",` +
			`"lights":{"lamps":50,"length":"16 ft","power":"20.4 W","endToEnd":3}}],` +
			`"mantels":[{"length":"6 ft","height":"5 ft","hanging":{"look":"asymmetrical right","swags":2,"sag":"5 in"},"perFoot":"3 lb","hook":{"rating":"1 lb"}}],` +
			`"colors":"red,green","shop":{"owned":[{"item":"picks","quantity":4},{"item":"garland","quantity":"8 ft"}]}}`,
	}
	for _, operation := range d.operations() {
		seen := map[string]bool{}
		for _, target := range operation.targets() {
			for _, body := range bodies {
				for _, media := range []string{"application/json", "text/plain"} {
					if media == "text/plain" && body != "" {
						continue // it is not looked at
					}
					r := ask(h, strings.ToUpper(operation.method), target, media, body)
					got := bodyOf(t, r)
					status := fmt.Sprint(r.StatusCode)
					seen[status] = true
					kind, _, _ := strings.Cut(r.Header.Get("Content-Type"), ";")
					schema := d.at(operation.what, "responses", status, "content", kind, "schema")
					if d.at(operation.what, "responses", status, "content", kind) == nil {
						t.Errorf("%s %s: %s, %s is not described", operation.method, target, status, kind)
						continue
					}
					switch kind {
					case "application/json", "application/problem+json":
						if bad := d.checkText(schema, got); len(bad) > 0 {
							t.Errorf("%s %s: %s: not as described: %s", operation.method, target, status, bad)
						}
					}
				}
			}
		}
		if !seen["200"] {
			t.Errorf("%s %s never answered 200", operation.method, operation.path)
		}
		if operation.method == "post" {
			for _, status := range []string{"400", "413", "415", "422"} {
				if !seen[status] {
					t.Errorf("%s was never %s", operation.path, status)
				}
			}
			r := ask(h, "PUT", operation.path, "", "")
			if r.StatusCode != 405 || d.at(operation.what, "responses", "405") == nil {
				t.Errorf("PUT %s: status %d", operation.path, r.StatusCode)
			}
		}
	}
}

type operation struct {
	path, method string
	what         map[string]any
}

func (d description) operations() []operation {
	var list []operation
	for path := range d.at(d.doc, "paths") {
		for method := range d.at(d.doc, "paths", path) {
			list = append(list, operation{path, method, d.at(d.doc, "paths", path, method)})
		}
	}
	return list
}

// targets returns addresses to try: the path with its parameters filled in.
func (o operation) targets() []string {
	if o.path == "/problems/{name}" {
		return []string{"/problems/value", "/problems/none"}
	}
	parameters, _ := o.what["parameters"].([]any)
	targets := []string{o.path}
	for _, p := range parameters {
		p := p.(map[string]any)
		var more []string
		for _, value := range p["schema"].(map[string]any)["examples"].([]any) {
			for _, target := range targets {
				glue := "?"
				if strings.Contains(target, "?") {
					glue = "&"
				}
				more = append(more, target+glue+p["name"].(string)+"="+fmt.Sprint(value))
			}
		}
		targets = append(targets, more...)
	}
	return targets
}

// The examples of the description are what it says and are accepted.
func TestOpenAPIExamples(t *testing.T) {
	d := readDescription(t)
	h := newHandler(nil)
	job := d.at(d.doc, "components", "schemas", "Job")
	if bad := d.checkText(job, api.Example().Body); len(bad) > 0 {
		t.Errorf("the page's example: %s", bad)
	}
	examples := d.at(d.doc, "paths", "/plan", "post", "requestBody", "content", "application/json", "examples")
	if len(examples) < 2 {
		t.Fatalf("%d examples", len(examples))
	}
	for name := range examples {
		value := d.at(examples, name)["value"]
		if bad := d.check(job, value, "", nil); len(bad) > 0 {
			t.Errorf("%s: %s", name, bad)
		}
		text, err := json.Marshal(value)
		if err != nil {
			t.Fatal(err)
		}
		if r := ask(h, "POST", "/plan", "application/json", string(text)); r.StatusCode != http.StatusOK {
			t.Errorf("%s: status %d: %s", name, r.StatusCode, bodyOf(t, r))
		}
	}
}

// kinds returns the types of JSON that a schema allows.
func (d description) kinds(schema map[string]any) []string {
	var kinds []string
	switch of := schema["type"].(type) {
	case string:
		kinds = append(kinds, of)
	case []any:
		for _, k := range of {
			kinds = append(kinds, k.(string))
		}
	}
	return kinds
}

// kindOf returns the type of JSON that a value of a type becomes: for one with a text or JSON of its own that of its zero value.
func kindOf(typ reflect.Type) string {
	zero := reflect.New(typ).Elem()
	_, text := zero.Interface().(encoding.TextMarshaler)
	_, own := zero.Interface().(json.Marshaler)
	switch {
	case typ.Kind() == reflect.Pointer:
		return kindOf(typ.Elem())
	case text && !own:
		return "string"
	case own && typ.Kind() != reflect.Map && typ.Kind() != reflect.Array:
		data, err := json.Marshal(zero.Interface())
		switch {
		case err != nil || len(data) == 0:
			return "string"
		case data[0] == '"':
			return "string"
		case data[0] == '{':
			return "object"
		case data[0] == '[':
			return "array"
		}
		return "integer"
	}
	switch typ.Kind() {
	case reflect.Bool:
		return "boolean"
	case reflect.String:
		return "string"
	case reflect.Slice:
		return "array"
	case reflect.Struct, reflect.Map, reflect.Array:
		return "object"
	case reflect.Float32, reflect.Float64:
		return "number"
	}
	return "integer"
}

// A job and a plan have the names that are described, no more and no fewer, at every depth, and each is of a type that is described.
func TestOpenAPINames(t *testing.T) {
	d := readDescription(t)
	var compare func(schema map[string]any, typ reflect.Type, where string)
	compare = func(schema map[string]any, typ reflect.Type, where string) {
		for typ.Kind() == reflect.Slice || typ.Kind() == reflect.Pointer {
			if typ.Kind() == reflect.Slice {
				schema = d.at(schema, "items")
			}
			typ = typ.Elem()
		}
		properties := d.at(schema, "properties")
		if typ.Kind() != reflect.Struct || properties == nil {
			return
		}
		var want, got []string
		var walk func(reflect.Type)
		walk = func(typ reflect.Type) {
			for i := range typ.NumField() {
				f := typ.Field(i)
				name, _, _ := strings.Cut(f.Tag.Get("json"), ",")
				switch {
				case f.Anonymous:
					walk(f.Type)
				case name != "" && name != "-":
					want = append(want, name)
					if kinds := d.kinds(d.at(properties, name)); !slices.Contains(kinds, kindOf(f.Type)) {
						t.Errorf("%s/%s: a %v is described as %q", where, name, f.Type, kinds)
					}
					compare(d.at(properties, name), f.Type, where+"/"+name)
				}
			}
		}
		walk(typ)
		for name := range properties {
			got = append(got, name)
		}
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Errorf("%s/: described are %q, taken are %q", where, got, want)
		}
	}
	compare(d.at(d.doc, "components", "schemas", "Job"), reflect.TypeFor[job.Request](), "job")
	compare(d.at(d.doc, "components", "schemas", "Plan"), reflect.TypeFor[job.Plan](), "plan")
}

// The check itself can fail.
func TestOpenAPICheck(t *testing.T) {
	d := readDescription(t)
	schema := d.at(d.doc, "components", "schemas", "Job")
	for _, body := range []string{
		`[]`, `{"shrubs":1}`, `{"trees":[{}]}`, `{"trees":[{"height":7}]}`, `{"trees":[{"height":"7 ft","taper":"wide"}]}`,
		`{"mantels":[{"length":"5 ft","hanging":{"swags":-1}}]}`, `{"mantels":[{"length":"5 ft","hanging":{"swags":1.5}}]}`,
		`{"trees":[{"height":"` + strings.Repeat("7", 65) + `"}]}`, `{"shop":{"joins":{"garland":{"overlap":2}}}}`,
		`{"shop":{"offers":[` + strings.Repeat(`{"item":"a","name":"b","pack":1,"price":1},`, 200) + `{"item":"a","name":"b","pack":1,"price":1}]}}`,
	} {
		if bad := d.checkText(schema, []byte(body)); len(bad) == 0 {
			t.Errorf("nothing wrong found in %.80s", body)
		}
	}
}
