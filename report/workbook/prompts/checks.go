package prompts

import (
	"fmt"
	"strings"
	"time"

	"github.com/xuri/excelize/v2"

	"firstboard/report/grid"
	"firstboard/report/lists"
	"firstboard/report/workbook/names"
)

// Checks are what a spreadsheet asks of every entry, and the prompts of
// the headers. A spreadsheet shows a prompt on a phone too, where a comment is
// out of reach.
func Checks(f grid.Form) []*excelize.DataValidation {
	var all []*excelize.DataValidation
	for i, field := range f.Fields {
		if field.Header == "" {
			continue
		}
		column := grid.Letters(i + 1)
		head := excelize.NewDataValidation(true)
		head.SetInput(promptTitle(field.Header), prompt(field))
		head.SetSqref(column + "1")
		all = append(all, head)
		if check := inputCheck(field, column+"2"); check != nil && f.Rows == nil {
			check.SetSqref(fmt.Sprintf("%s2:%s%d", column, column, excelize.TotalRows))
			all = append(all, check)
		}
	}
	for i, item := range f.Rows {
		if item.Header == "" {
			continue
		}
		at := fmt.Sprintf("B%d", i+2)
		check := inputCheck(item, at)
		if check == nil {
			check = excelize.NewDataValidation(true)
		}
		check.SetInput(promptTitle(item.Header), prompt(item))
		check.SetSqref(at)
		all = append(all, check)
	}
	return all
}

// promptTitle keeps to the 32 letters that a spreadsheet shows.
func promptTitle(header string) string { return names.Cut(header, 32) }

// inputCheck is the check of one column's entries, nil where any will do. Its
// formula is about the first of them.
func inputCheck(f grid.Field, first string) *excelize.DataValidation {
	t := f.Takes
	check := excelize.NewDataValidation(true)
	check.Type = "custom"
	style := excelize.DataValidationErrorStyleStop
	switch {
	case t.Words != nil:
		check.Type, check.Formula1 = "list", `"`+strings.Join(t.Words, ",")+`"`
		if t.Several {
			style = excelize.DataValidationErrorStyleWarning
		}
	case t.Of != "":
		// Tables may be filled in any order, so a name that is not listed yet passes.
		check.Type, check.Formula1 = "list", fmt.Sprintf("%s!$A$2:$A$500", t.Of)
		style = excelize.DataValidationErrorStyleWarning
	case t.Kind == grid.NumberField:
		check.Formula1 = xmlText(numberFormula(t, first))
	case t.Kind != grid.TextField:
		check.Formula1 = xmlText(clockFormula(t, first))
		if t.Kind == grid.ClockField {
			style = excelize.DataValidationErrorStyleWarning
		}
	default:
		return nil
	}
	check.SetError(style, promptTitle(f.Header), warning(t))
	return check
}

// xmlText is a formula as XML holds it.
func xmlText(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(s)
}

// numberFormula is true of a number that lies within its span.
func numberFormula(t grid.Takes, at string) string {
	all := []string{"ISNUMBER(" + at + ")"}
	least := lists.If(t.Span.Above, ">", ">=")
	if t.Span.Least.Valid {
		all = append(all, at+least+t.Span.Least.Decimal.String())
	}
	if t.Span.Most.Valid {
		all = append(all, at+"<="+most(t.Span))
	}
	if t.Span.Whole {
		all = append(all, at+"=INT("+at+")")
	}
	if t.Span.Percent {
		all = append(all, fmt.Sprintf("OR(%s<=0,%s>1)", at, at))
	}
	s := "AND(" + strings.Join(all, ",") + ")"
	if t.None {
		s = fmt.Sprintf(`OR(%s="none",%s)`, at, s)
	}
	return s
}

// most is the upper bound of a span, to a decimal that lies within it.
func most(s grid.Span) string { return s.Most.Decimal.RoundFloor(1).String() }

// clockFormula is true of a day, or of a day with a time, in years that a
// record covers. A day alone would pass for midnight.
func clockFormula(t grid.Takes, at string) string {
	all := []string{
		"ISNUMBER(" + at + ")",
		fmt.Sprintf("%s>=%d", at, newYear(max(t.Since, firstYear))),
		fmt.Sprintf("%s<%d", at, newYear(t.Until+1)),
	}
	switch t.Kind {
	case grid.DayField:
		all = append(all, at+"=INT("+at+")")
	case grid.ClockField:
		all = append(all, at+"<>INT("+at+")")
	}
	return "AND(" + strings.Join(all, ",") + ")"
}

// firstYear is the first whole year that all spreadsheets count alike.
const firstYear = 1901

// newYear is the first day of a year as spreadsheets count days.
func newYear(year int) int64 {
	const seconds = 24 * 60 * 60
	epoch := time.Date(1899, time.December, 30, 0, 0, 0, 0, time.UTC)
	return (time.Date(year, time.January, 1, 0, 0, 0, 0, time.UTC).Unix() - epoch.Unix()) / seconds
}
