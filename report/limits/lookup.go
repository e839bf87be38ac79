package limits

import (
	"cmp"
	"strings"
)

// LookUp are the limits of the area's products that were not looked up: cells
// that hold neither a number nor none.
func (f Floor) LookUp() []string {
	var all []string
	for _, p := range f.Products() {
		var columns []string
		for _, k := range Kinds() {
			for _, c := range k.Columns() {
				if k.expected(f, p) && c.Of(p).Blank() {
					columns = append(columns, c.Name)
				}
			}
		}
		if len(columns) > 0 {
			all = append(all, p.ID+" ("+cmp.Or(p.DataSheet, "no data sheet named")+"): "+strings.Join(columns, ", "))
		}
	}
	return all
}
