package wood

import "firstboard/report/evidence"

// past is how many rows of one lot came before water, at an earlier visit, or
// were read again later in the last visit, and how many of that one stand.
type past struct{ wet, earlier, again, judged int }

// Unused is how many rows were read and not judged, and why.
type Unused struct {
	Rows int
	Why  string
}

// Unused are the rows of wood that no check judges, by reason.
func (f Floor) Unused() []Unused {
	var boards past
	sent := 0
	for _, lot := range f.lots {
		boards = boards.and(lot.past)
	}
	for _, lot := range f.sentBack {
		boards = boards.and(lot.past)
		sent += lot.past.judged
	}
	all := []Unused{}
	add := func(rows int, why string) {
		if rows > 0 {
			all = append(all, Unused{rows, why})
		}
	}
	if f.NoFlooring != "" {
		add(len(f.Of(OfFlooring)), "of flooring, which no check asks for: "+f.NoFlooring)
	} else {
		add(boards.wet, "of flooring, before water")
		add(boards.earlier, "of flooring, an earlier visit")
		add(boards.again, "of flooring, read again later in the visit")
		add(sent, "of a lot that was set aside whole")
	}
	for _, p := range []struct{ what, unneeded string }{{OfSubfloor, f.NoSubfloor}, {OfJoist, f.NoBelow}} {
		rows := f.Of(p.what)
		if p.unneeded != "" {
			add(len(rows), "of "+p.what+", which no check asks for: "+p.unneeded)
			continue
		}
		wet, earlier := f.pastOf(p.what, rows)
		add(wet, "of "+p.what+", before water")
		add(earlier, "of "+p.what+", history of a piece")
	}
	return all
}

// pastOf counts the rows of pieces that water or a later row took out.
func (f Floor) pastOf(what string, rows []Row) (wet, earlier int) {
	judged := f.joists.latest
	if what == OfSubfloor {
		judged = f.subfloor.recent
	}
	for _, r := range rows {
		if r.ReadAt.Shown() && r.ReadAt.First.Before(f.Wet) {
			wet++
		}
	}
	earlier = len(rows) - wet
	for _, piece := range judged {
		earlier -= len(piece.Rows)
	}
	return wet, earlier
}

func (p past) and(q past) past {
	return past{p.wet + q.wet, p.earlier + q.earlier, p.again + q.again, p.judged + q.judged}
}

// NotReadAgain are the boards read in the week before their lot's last visit,
// outside one of the limits and not read again: what is installed of them was
// not shown.
func (f Floor) NotReadAgain(limits ...evidence.Limit) []evidence.Item {
	var all []evidence.Item
	for _, lot := range f.lots {
		for _, board := range lot.missed {
			if it, out := outside(f.boardValues(lot, board, limits)); out {
				all = append(all, it)
			}
		}
	}
	return all
}

// boardValues are the values of one board against each of several limits.
func (f Floor) boardValues(lot Lot, board evidence.Judged[Row], limits []evidence.Limit) []evidence.Item {
	var all []evidence.Item
	for _, limit := range limits {
		all = append(all, f.items([]evidence.Judged[Row]{board}, lot.boardName(), limit)[0]...)
	}
	return all
}

func outside(items []evidence.Item) (evidence.Item, bool) {
	for _, it := range items {
		if it.Lack == "" && it.Breaks(evidence.Acceptance{}) {
			return it, true
		}
	}
	return evidence.Item{}, false
}
