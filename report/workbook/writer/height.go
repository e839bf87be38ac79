package writer

// The heights of rows of one line, in points.
const (
	tightLine = 11.5 // in print
	oneLine   = 15   // of a row whose height is left alone
)

// height is that of a row on its page, in points; 0 for the usual height.
func (p Page) height(r Row) float64 {
	if p.Tight {
		r.Least = max(r.Least, tightLine)
	}
	return r.height(p.Widths)
}

// Tall is how high a row stands, at its usual height or higher.
func (r Row) Tall(widths []float64) float64 { return max(r.height(widths), oneLine) }

// height is what a row needs in columns of these widths, in points; 0 where
// the usual height does.
func (r Row) height(widths []float64) float64 {
	tall, column := r.Least, 0
	for _, c := range r.Cells {
		next := column + max(c.Across, 1)
		text, _ := c.Value.(string)
		under := widths[min(column, len(widths)):min(next, len(widths))]
		tall, column = max(tall, c.Look.Height(text, Total(under))), next
	}
	return tall
}
