package demo

import (
	"encoding/json"
	"fmt"
	"testing"

	"example.com/fircone/sizing/job"
)

func TestX(t *testing.T) {
	p, err := job.Make(Station())
	if err != nil {
		t.Fatal(err)
	}
	b, _ := json.MarshalIndent(p, "", " ")
	fmt.Println(string(b))
	fmt.Println(p.Basket.Page())
}
