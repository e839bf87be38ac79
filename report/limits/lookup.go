package limits

import "strings"

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

// Unlooked is what limits-known asks of a product: the limits that were not looked
// up, and whether its data sheet is named. The adhesive that nobody named has
// no name.
type Unlooked struct {
	Product string
	Columns []string
	NoSheet bool
}

// Unlooked are the products of which limits-known asks for anything.
func (f Floor) Unlooked() []Unlooked {
	var all []Unlooked
	if f.adhesiveUnnamed() {
		all = append(all, Unlooked{})
	}
	for _, q := range f.askedLimits() {
		u := Unlooked{Product: q.product.ID, NoSheet: q.product.DataSheet == ""}
		for _, c := range q.columns {
			if c.Of(q.product).Blank() {
				u.Columns = append(u.Columns, c.Name)
			}
		}
		if len(u.Columns) > 0 || u.NoSheet {
			all = append(all, u)
		}
	}
	return all
}
