package evidence

import "slices"

// Unused counts rows of a table that were read and not judged, and says why.
type Unused struct {
	Table string
	Rows  int
	Why   string
}

// LeftOut counts rows that were left out, by table and reason.
type LeftOut struct{ counted []Unused }

// Add counts so many rows more.
func (l *LeftOut) Add(table, why string, rows int) {
	if rows == 0 {
		return
	}
	i := slices.IndexFunc(l.counted, func(u Unused) bool { return u.Table == table && u.Why == why })
	if i < 0 {
		l.counted = append(l.counted, Unused{Table: table, Why: why})
		i = len(l.counted) - 1
	}
	l.counted[i].Rows += rows
}

// All are the counts in the order in which their tables and reasons came.
func (l LeftOut) All() []Unused { return l.counted }
