package fill

import (
	"time"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/style"
)

// formWidths are columns wide enough for a finger, their header and what is
// likely to be typed.
func formWidths(f grid.Form) []float64 {
	if f.Rows != nil {
		return []float64{30, 48}
	}
	return lists.Each(f.Fields, func(field grid.Field) float64 {
		return max(style.HeadWidth(field.Header), fieldWidth(field))
	})
}

func fieldWidth(f grid.Field) float64 {
	const narrow, wide, spare = 11, 26, 4 // spare for the arrow of a list
	switch {
	case f.Takes.Kind == grid.DayField:
		return style.IndentedWidth(time.DateOnly) + spare
	case f.Takes.Kind == grid.ClockField || f.Takes.Kind == grid.ClockOrDayField:
		return style.IndentedWidth("2006-01-02 15:04") + spare
	case f.Takes.Kind == grid.NumberField:
		return narrow
	}
	w := style.IndentedWidth(f.Example)
	for _, word := range f.Takes.Words {
		w = max(w, style.IndentedWidth(word))
	}
	return min(max(w+spare, narrow), wide)
}
