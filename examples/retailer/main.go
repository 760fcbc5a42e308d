// Retailer is a shop's endpoint over its own database: POST a job to /basket, and get
// the basket from the catalog, what is short of it, and the cautions.
//
//	cd examples/retailer && go run .
//	curl -d '{"trees": [{"height": "7 ft"}], "colors": "crimson,ivory", "shop": {"budget": "90.00"}}' localhost:8081/basket
//
// The catalog is 60 units in an SQLite database in memory, invented for the demo: yours is a
// connection string away.
package main

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"io"
	"log"
	"net/http"

	"example.com/fircone/palette"
	"example.com/fircone/sizing/job"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"

	"github.com/shopspring/decimal"
	_ "modernc.org/sqlite"
)

// schema is the catalog: a row is a unit of the shelf. Lengths, colors and prices are text.
const schema = `CREATE TABLE unit (
	kind TEXT NOT NULL, type TEXT NOT NULL DEFAULT '', color TEXT, size TEXT NOT NULL DEFAULT '0 in',
	name TEXT NOT NULL, pieces INTEGER NOT NULL DEFAULT 0, length TEXT NOT NULL DEFAULT '0 in',
	price TEXT NOT NULL, shelf INTEGER)`

// open returns a database with the demo's catalog.
func open() (*sql.DB, error) {
	db, err := sql.Open("sqlite", ":memory:")
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(1) // each connection to :memory: is a database of its own
	if _, err := db.Exec(schema); err != nil {
		return nil, err
	}
	add := func(kind, color, size, name string, pieces int, length, price string) {
		if err == nil {
			_, err = db.Exec(`INSERT INTO unit (kind, color, size, name, pieces, length, price, shelf) VALUES (?, NULLIF(?, ''), ?, ?, ?, ?, ?, 40)`,
				kind, color, size, name, pieces, length, price)
		}
	}
	for _, color := range []string{"#dc143c", "#228b22", "#d4af37", "#fffff0", "#000080", "#c0c0c0"} {
		for i, size := range []string{"2 in", "3 1/8 in", "4 in"} {
			for _, pack := range []int{6, 12, 24} {
				add("ornaments", color, size, fmt.Sprintf("%s box of %d", size, pack), pack, "0 in", fmt.Sprintf("%d.%02d", pack*(4+i)/5+2, pack))
			}
		}
	}
	add("garland", "", "0 in", "9 ft strand", 0, "9 ft", "6.90")
	add("garland", "", "0 in", "6 ft strand", 0, "6 ft", "4.75")
	add("picks", "", "0 in", "bunch of 6", 6, "0 in", "5.40")
	add("lights", "", "0 in", "string of 100", 100, "0 in", "8.90")
	add("base garland", "", "0 in", "9 ft cedar", 0, "9 ft", "21.00")
	add("wire ties", "", "0 in", "bag of 50", 50, "0 in", "4.00")
	return db, err
}

// offers reads the catalog, with the colors of a palette by their names there. What has a
// color that fits none is left on the shelf.
func offers(ctx context.Context, db *sql.DB, colors palette.Palette) ([]shopping.Offer, error) {
	rows, err := db.QueryContext(ctx, `SELECT kind, type, COALESCE(color, ''), size, name, pieces, length, price, shelf FROM unit`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	var list []shopping.Offer
	for rows.Next() {
		var o shopping.Offer
		var color string
		var size, length units.Length
		var price decimal.Decimal
		if err := rows.Scan(&o.Item.Kind, &o.Item.Type, &color, &size, &o.Name, &o.Pack.Pieces, &length, &price, &o.Shelf); err != nil {
			return nil, err
		}
		o.Item.Size, o.Pack.Length, o.Price = size, length, price
		if color != "" && len(colors) > 0 {
			looks, err := palette.ParseColor(color)
			if err != nil {
				return nil, err
			}
			sorting, err := palette.CommonPractice().Sort(colors, []palette.Piece{{Color: looks}})
			if err != nil {
				return nil, err
			}
			if !sorting.Matches[0].Fits {
				continue
			}
			o.Item.Color = sorting.Matches[0].Swatch.Name
		} else if color != "" {
			o.Name = color + " " + o.Name // any color will do, and no two names are the same
		}
		list = append(list, o)
	}
	return list, rows.Err()
}

// basket answers with the basket for a job.
func basket(db *sql.DB) http.HandlerFunc {
	return func(w http.ResponseWriter, r *http.Request) {
		reply := func(status int, body any) {
			w.Header().Set("Content-Type", "application/json")
			w.WriteHeader(status)
			_ = json.NewEncoder(w).Encode(body)
		}
		body, err := io.ReadAll(http.MaxBytesReader(w, r.Body, 64<<10))
		var request job.Request
		if err == nil {
			request, err = job.ParseRequest(body)
		}
		var plan job.Plan
		if err == nil {
			request.Shop.Offers, err = offers(r.Context(), db, request.Colors)
		}
		if err == nil {
			plan, err = job.Make(request)
		}
		if err != nil { // every value that is to blame, for a form
			reply(http.StatusUnprocessableEntity, map[string]any{"error": err.Error(), "faults": job.Faults(err)})
			return
		}
		reply(http.StatusOK, map[string]any{"basket": plan.Basket, "short": plan.Basket.Short(), "cautions": plan.Cautions})
	}
}

func main() {
	db, err := open()
	if err != nil {
		log.Fatal(err)
	}
	http.Handle("POST /basket", basket(db))
	log.Fatal(http.ListenAndServe("127.0.0.1:8081", nil))
}
