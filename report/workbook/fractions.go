package workbook

import "strings"

// isFraction says whether a text is a fraction of the trade: 5/8, 2 1/4, 2-1/4.
func isFraction(s string) bool {
	above, below, ok := strings.Cut(s, "/")
	return ok && digits(below) && digits(strings.ReplaceAll(strings.ReplaceAll(strings.TrimSpace(above), " ", ""), "-",
		""))
}

func digits(s string) bool { return s != "" && strings.Trim(s, "0123456789") == "" }
