package prompts

import (
	"fmt"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
)

// Says is what goes into a field.
func Says(f grid.Field) string {
	return strings.Join(append([]string{sentence(f.Says)}, allowance(f.Takes)...), " ")
}

// prompt is the same for the header of the field.
func prompt(f grid.Field) string {
	return lists.If(f.Must, "Must be filled in. ", "") + Says(f)
}

// warning is what a refused entry is answered with.
func warning(t grid.Takes) string {
	switch {
	case t.Of != "":
		return fmt.Sprintf("That is not listed in %s. Choose one that is, or go on and list it there too.", t.Of)
	case t.Kind == grid.ClockField:
		return "Write the day and the time, such as 2026-03-04 08:30. A day alone counts as midnight: go on only if it was."
	}
	s := strings.Join(allowance(t), " ")
	if t.Words == nil {
		s = "Write " + strings.ToLower(s[:1]) + s[1:]
	}
	return s + " Or leave the cell blank."
}

// allowance is what a field takes, in sentences.
func allowance(t grid.Takes) []string {
	switch n := len(t.Words); {
	case t.Several:
		return []string{"One or more, with commas, of " + strings.Join(t.Words[:n-1], ", ") + " and " + t.Words[n-1] +
			"."}
	case n > 0:
		return []string{"Choose " + strings.Join(t.Words[:n-1], ", ") + " or " + t.Words[n-1] + "."}
	case t.Kind == grid.NumberField:
		return numberAllowance(t)
	case t.Kind == grid.DayField:
		return []string{"A day, such as 2026-03-04."}
	case t.Kind == grid.ClockField:
		return []string{"Such as 2026-03-04 08:30."}
	case t.Kind == grid.ClockOrDayField:
		return []string{"A day and a time, such as 2026-03-04 08:30, or a day alone for its end."}
	}
	return nil
}

func numberAllowance(t grid.Takes) []string {
	s := "A number"
	switch {
	case t.Span.Whole && !t.Span.Most.Valid:
		s = "A whole number from " + t.Span.Least.Decimal.String() + " up"
	case t.Span.Whole:
		s = "A whole number from " + t.Span.Least.Decimal.String() + " to " + most(t.Span)
	case t.Span.Most.Valid:
		s += " from " + t.Span.Least.Decimal.String() + " to " + most(t.Span)
	case t.Span.Above:
		s += " above 0"
	case t.Span.Least.Valid:
		s += " from 0 up"
	}
	s += lists.If(t.None, ", or none where the data sheet states none; blank where it was not looked up", "")
	if t.Span.Percent {
		return []string{s + ".", "In percent: 84.7, not 0.847."}
	}
	return []string{s + "."}
}

// sentence begins with a capital and ends with a stop.
func sentence(s string) string {
	if s == "" {
		return ""
	}
	return strings.ToUpper(s[:1]) + s[1:] + "."
}
