package job

import (
	"cmp"
	"math"
	"slices"

	"example.com/fircone/mantel"
	"example.com/fircone/sizing/shopping"
	"example.com/fircone/units"
)

// rehang hangs the garland that a mantel gets where it is not as long as planned, since strands stay
// whole or there were too few: its ends fall, or its swags sag, by what there is, and loads and
// distances from the fire follow.
func (d *draft) rehang(i int) {
	m, room := &d.Mantels[i], &d.rooms[len(d.Trees)+i]
	var planned, garland units.Length
	for _, s := range m.Shares {
		if s.Item.Kind == shopping.BaseGarland {
			garland += s.Gets.Length
			planned = max(planned, s.Quantity.Length) // a substitute is planned for what it stands in for
		}
	}
	if d.Basket == nil || garland == 0 || garland == planned {
		return
	}
	style := d.house.Units
	tape := func(l units.Length) string {
		if style == units.InMetric {
			return l.Format(style, units.Centimeter)
		}
		return l.Format(style, units.Inch)
	}
	drop := func(cautions []units.Caution) {
		room.cautions = slices.DeleteFunc(room.cautions, func(c units.Caution) bool { return slices.Contains(cautions, c) })
	}
	var run mantel.Run
	var err error
	if m.Run.given() {
		run, err = rehung(m.Run.Run, garland)
	} else {
		var hanging mantel.Hanging
		if hanging, err = m.Mantel.Mantel.FindDrops(garland, m.Hanging); err == nil {
			m.Hanging = hanging
			run, err = m.Hang(hanging)
		} else if m.LeftWall && m.RightWall && m.Hanging.Swags > 0 { // no end can fall
			run, _ = m.Hang(m.Hanging) // as planned
			run, err = run.FindSag(garland)
			m.Hanging.Sag = cmp.Or(run.Sag, m.Hanging.Sag)
		}
	}
	var text string
	short := garland < planned
	switch {
	case err != nil && short:
		text = "it does not reach from end to end: do not hang it without more"
	case err != nil:
		text = "it is too long to hang here: fasten up what is too much, clear of the fire, evenly over the hooks"
	case run.Left == run.Right && run.Left > 0:
		text = tape(run.Left) + " falls at each end"
	case run.Left+run.Right > 0:
		text = tape(run.Left) + " falls at the left end and " + tape(run.Right) + " at the right"
	default:
		text = "each swag hangs " + tape(run.Sag) + " deep"
	}
	room.cautions = append(room.cautions, units.Caution{
		Code: "other garland", Source: "geometry",
		Text: "there is " + tape(garland) + " of base garland where " + tape(planned) + " was planned: " + text,
	})
	hook, perFoot := m.Hook, m.PerFoot
	if err != nil {
		for k := range m.Steps {
			if step := &m.Steps[k]; step.Code == "hang" && short {
				step.Do = "Do not hang the garland: it does not reach from end to end."
				m.Hanging.Left, m.Hanging.Right = 0, 0
			} else if step.Code == "hang" {
				step.Do += " Fasten up what is too much, clear of the fire, evenly over the hooks."
			}
		}
		if short {
			room.unhung = true
			return
		}
		if run = m.Run.Run; !m.Run.given() {
			run, _ = m.Hang(m.Hanging)
		}
		perFoot = units.Mass(math.Ceil(float64(perFoot) * float64(garland) / float64(planned))) // all of it is on the hooks
	}
	if old, ok := m.Loads[shopping.Garland]; ok {
		drop(old.Cautions)
		loads, heavy := run.Loads(perFoot, hook, style)
		if heavy != nil { // more than 20 lb a foot
			loads.Cautions = []units.Caution{{Code: "hook overload", Source: "statics", Text: "the garland with all that is fastened up is too heavy for any hooks: do not hang it"}}
		}
		m.Loads[shopping.Garland] = loads
		room.cautions = append(room.cautions, loads.Cautions...)
	}
	if err != nil {
		return
	}
	if m.Run.given() {
		m.Run.Run = run
		return
	}
	drop(m.Clearances.Cautions)
	m.Clearances, _ = m.Mantel.Mantel.Clearances(m.Hanging, style)
	if m.Stockings != (mantel.Stockings{}) {
		if hook == (mantel.Hook{}) {
			hook.Rating = units.Pound // as when they were planned
		}
		_, m.Clearances, _ = m.Mantel.Mantel.Stockings(m.Stockings, hook, m.Clearances, style)
	}
	room.cautions = append(room.cautions, m.Clearances.Cautions...)
}

// rehung returns a run with a garland of another length: its swags take it up, or else the ends that fall.
func rehung(r mantel.Run, garland units.Length) (mantel.Run, error) {
	if r.Sag > 0 {
		return r.FindSag(garland)
	}
	planned, err := r.Garland()
	more := garland - planned
	fall := r.Left + r.Right + more // what is left for both ends
	switch {
	case err != nil || fall < 0 || r.Left == 0 && r.Right == 0:
		return r, units.ErrFit
	case r.Left == 0 || r.Right == 0:
		r.Left, r.Right = min(r.Left, 1)*fall, min(r.Right, 1)*fall
	default:
		r.Left = min(max(0, r.Left+more/2), fall)
		r.Right = fall - r.Left
	}
	_, err = r.Garland() // whether an end is too long
	return r, err
}
