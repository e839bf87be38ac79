package workbook

// The heights of rows of one line, in points.
const (
	tightLine = 11.5 // in print
	oneLine   = 15   // of a row whose height is left alone
)

// height is that of a row on its page, in points; 0 for the usual height.
func (p page) height(r row) float64 {
	if p.tight {
		r.least = max(r.least, tightLine)
	}
	return r.height(p.widths)
}

// tall is how high a row stands, at its usual height or higher.
func (r row) tall(widths []float64) float64 { return max(r.height(widths), oneLine) }

// height is what a row needs in columns of these widths, in points; 0 where
// the usual height does.
func (r row) height(widths []float64) float64 {
	tall, column := r.least, 0
	for _, c := range r.cells {
		next := column + max(c.across, 1)
		tall = max(tall, c.height(widths[min(column, len(widths)):min(next, len(widths))]))
		column = next
	}
	return tall
}

func (c cell) height(widths []float64) float64 {
	text, _ := c.value.(string)
	return c.look.Height(text, total(widths))
}
