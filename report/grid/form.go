package grid

import "github.com/shopspring/decimal"

// Form is an empty table of a record, for a person to fill in.
type Form struct {
	Name   string  // as the design names it: "Slab RH"
	File   string  // its name in a folder: "slab-rh.csv"
	Fields []Field // of one that stands: in its own columns, without a name where one is unknown
	Rows   []Field // of Job: its items, each with what its entry takes
}

// Field is one thing to fill in: a column of a form, or an item of Job.
type Field struct {
	Header  string // with its unit: "Temp (F)"
	Must    bool   // a verdict cannot do without it
	Says    string // what goes there, in one sentence
	Example string // an entry, as it is typed
	Takes   Takes
}

// Takes is what may be entered in a field.
type Takes struct {
	Kind    FieldKind
	Words   []string // the only ones it takes; nil for any
	Several bool     // of the words, with commas between them
	Of      string   // the table whose first column lists what it may name
	Span    Span     // of a number
	None    bool     // the word none as well as a number
	Since   int      // the first year of a day or a clock time, 0 for any
	Until   int      // and the last
}

// FieldKind is the kind of entry that a field takes.
type FieldKind int

// The kinds of field.
const (
	TextField FieldKind = iota
	NumberField
	DayField
	ClockField      // a day and a time
	ClockOrDayField // a day alone means its end
)

// Span is the numbers that a field takes.
type Span struct {
	Least, Most decimal.NullDecimal // not valid where there is no bound
	Above       bool                // the least is not taken itself
	Whole       bool
	Percent     bool // above 0 to 1 is taken for a fraction of one, and refused
}

// StartStep is one of the things to do first with an empty record.
type StartStep struct {
	Table string // empty where it is about none
	Says  string
}

// FieldSheet is what one person does on one day, to be printed and written on
// by hand.
type FieldSheet struct {
	When, Who string
	Parts     []FieldPart
}

// FieldPart is the work of a day in one area: what to do, and what is to be
// written down of it.
type FieldPart struct {
	Area   string // with its name
	Orders []string
	Lists  []FieldList
}

// FieldList are things to measure, a row each: what is known of them, and
// blanks to write in.
type FieldList struct {
	Title   string // the table into which it is copied, with what all rows have
	Columns []string
	Rows    [][]string
}
