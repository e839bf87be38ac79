package evidence

import "strconv"

// rowed is a place that tells the row it lies in, whichever of its cells is
// meant.
type rowed interface {
	Row() (table string, number int)
}

// RowKey names the row of a place, alike in every kind of file; empty without one.
func RowKey(p Place) string {
	if p == nil {
		return ""
	}
	if r, ok := p.(rowed); ok {
		table, number := r.Row()
		return table + " row " + strconv.Itoa(number)
	}
	return p.String()
}
