package report

import "strings"

// LookUp are the limits of the area's products that were not looked up: cells
// that hold neither a number nor none.
func (s Site) LookUp() []string {
	var all []string
	for _, p := range s.system.products() {
		var columns []string
		for _, k := range LimitKinds() {
			for _, c := range k.Columns() {
				if k.expected(s, p) && c.Of(p).Blank() {
					columns = append(columns, c.Name)
				}
			}
		}
		if len(columns) == 0 {
			continue
		}
		sheet := "no data sheet named"
		if p.DataSheet != "" {
			sheet = p.DataSheet
		}
		all = append(all, p.ID+" ("+sheet+"): "+strings.Join(columns, ", "))
	}
	return all
}
