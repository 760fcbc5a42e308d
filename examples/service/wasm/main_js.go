// Wasm gives a page in a browser the functions of the service.
//
// It defines one global function, fircone(target, body), which answers as a POST
// of body to target would, with an object {status, type, body}.
package main

import (
	"syscall/js"

	"example.com/fircone/examples/service/api"
)

func main() {
	js.Global().Set("fircone", js.FuncOf(func(_ js.Value, args []js.Value) any {
		reply := api.NewProblem("internal", "").Reply()
		if len(args) == 2 && args[0].Type() == js.TypeString && args[1].Type() == js.TypeString {
			reply = api.Call(args[0].String(), []byte(args[1].String()))
		}
		return map[string]any{
			"status": reply.Status,
			"type":   reply.Type,
			"body":   string(reply.Body),
		}
	}))
	select {} // the function is called for as long as the page is open
}
