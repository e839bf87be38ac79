package report

// Layout is a table of an empty record.
type Layout struct {
	Table   string
	Columns []LayoutColumn
}

// LayoutColumn is a column of a layout: its header, what its cells hold (a
// choice: the words that may stand there, or the table whose first column lists
// them), the least and the most that its numbers may be (empty where there is no
// end), whether the rules need it, and a note on what goes there.
type LayoutColumn struct {
	Header      string
	Kind        ColumnKind
	Among       []string
	Table       string
	Least, Most string
	Required    bool
	Note        string
}

// ColumnKind is what the cells of a column hold.
type ColumnKind int

// The kinds of column. A limit is a number, the word none, or nothing.
const (
	WordsColumn ColumnKind = iota
	IdentifierColumn
	ChoiceColumn
	NumberColumn
	LimitColumn
	DayColumn
	MinuteColumn
)

// Empty is the layout as a table without rows.
func (l Layout) Empty() Table {
	t := Table{Name: l.Table}
	for _, c := range l.Columns {
		t.Header = append(t.Header, c.Header)
	}
	return t
}

// StartHere tells in ten lines which tables a small job needs, and in which
// order.
func StartHere() []string {
	return []string{
		"Job: the row Job with the job's name; Time zone, Prepared by and General contractor are worth their rows.",
		"Areas: a row for each part of the floor that is accepted or refused as a whole, with size, base, covering, climate and the day of laying.",
		"Products: covering, adhesive and membrane, with every limit of their data sheets: a number, none where the sheet states none, blank where nobody looked.",
		"Climates: the seasonal means that the floor will live in, a row each.",
		"Instruments: every meter, with the day of its calibration; Instrument checks: what each humidity probe read in a standard, and when.",
		"Slab RH, over a slab: a row each reading of each hole. Where a product states another limit: Slab emission, Slab pH, Slab CM.",
		"Air: the log of the room, from 48 h before the first reading of slab or flooring. Surface: temperatures, where anything is glued.",
		"Wood, for wood coverings and wood bases: boards of each lot and pieces of the subfloor.",
		"Events for water and failed plant, Photos, Sign-off. Tables that a job does not need stay empty.",
		"Then run firstboard plan for what is still to be measured, and firstboard check to judge.",
	}
}
