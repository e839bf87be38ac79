package wood

import "firstboard/report/evidence"

// past is how many rows of one lot came before water, at an earlier visit, or
// were read again later in the last visit, and how many of that one stand.
type past struct{ wet, earlier, again, judged int }

// Unused are the rows of wood that no check judges, by reason.
func (f Floor) Unused() []evidence.Unused {
	var all evidence.LeftOut
	f.unusedBoards(&all)
	f.unusedPieces(&all, OfSubfloor, f.NoSubfloor)
	f.unusedPieces(&all, OfJoist, f.NoBelow)
	return all.All()
}

const table = "Wood"

func (f Floor) unusedBoards(all *evidence.LeftOut) {
	if f.NoFlooring != "" {
		all.Add(table, notAsked(OfFlooring, f.NoFlooring), len(f.Of(OfFlooring)))
		return
	}
	var boards past
	for _, lot := range f.lots {
		boards = boards.and(lot.past)
	}
	for _, lot := range f.sentBack {
		boards = boards.and(lot.past)
		all.Add(table, lot.Title()+", which was set aside whole", lot.past.judged)
	}
	all.Add(table, "before water", boards.wet)
	all.Add(table, "an earlier visit to a lot", boards.earlier)
	all.Add(table, "a board read again later in the same visit", boards.again)
}

// unusedPieces counts the rows of pieces that water or a later row took out.
func (f Floor) unusedPieces(all *evidence.LeftOut, what, unneeded string) {
	rows := f.Of(what)
	if unneeded != "" {
		all.Add(table, notAsked(what, unneeded), len(rows))
		return
	}
	judged := f.joists.latest
	if what == OfSubfloor {
		judged = f.subfloor.recent
	}
	wet := 0
	for _, r := range rows {
		if r.ReadAt.Shown() && r.ReadAt.First.Before(f.Wet) {
			wet++
		}
	}
	earlier := len(rows) - wet
	for _, piece := range judged {
		earlier -= len(piece.Rows)
	}
	all.Add(table, "before water", wet)
	all.Add(table, "history of a "+what+" piece", earlier)
}

func notAsked(what, unneeded string) string { return "no check asks for " + what + ": " + unneeded }

// and is how many rows of two lots were not judged.
func (p past) and(q past) past {
	return past{wet: p.wet + q.wet, earlier: p.earlier + q.earlier, again: p.again + q.again}
}
