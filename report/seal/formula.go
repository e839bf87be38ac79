package seal

import (
	"regexp"
	"strconv"
	"strings"

	"firstboard/report/grid"
	"firstboard/report/lists"
)

// normal is a formula or a reference in a form that does not depend on the
// program that saved it: without spaces, in capitals, numbers at their
// shortest, names of sheets without quotes. Texts in it are kept.
func normal(formula string) string {
	return outsideTexts(strings.TrimPrefix(strings.TrimSpace(formula), "="), normalCode)
}

// outsideTexts is a formula with what stands outside its quoted texts changed.
func outsideTexts(formula string, changed func(code string) string) string {
	parts := splitTexts(formula)
	for i := 0; i < len(parts); i += 2 {
		parts[i] = changed(parts[i])
	}
	return strings.Join(parts, `"`)
}

// splitTexts parts a formula at its quoted texts: those stand at odd places. A
// doubled quote within a text leaves an empty part, alike in every program.
func splitTexts(formula string) []string {
	var parts []string
	quoted, from := false, 0
	name := false
	for i := 0; i < len(formula); i++ {
		switch c := formula[i]; {
		case c == '\'' && !quoted:
			name = !name
		case c == '"' && !name:
			parts, from, quoted = append(parts, formula[from:i]), i+1, !quoted
		}
	}
	return append(parts, formula[from:])
}

func normalCode(code string) string {
	if code == "" {
		return ""
	}
	code = strings.Map(func(r rune) rune {
		if strings.ContainsRune(" \n\r\t'$", r) {
			return -1
		}
		return r
	}, code)
	code = strings.ToUpper(code)
	for _, prefix := range []string{"_XLFN.", "_XLWS.", "_XLUDF."} {
		code = strings.ReplaceAll(code, prefix, "")
	}
	code = strings.ReplaceAll(strings.ReplaceAll(code, "TRUE()", "TRUE"), "FALSE()", "FALSE")
	if !strings.Contains(code, ".") {
		return code
	}
	decimals := regexp.MustCompile(`\d*\.\d+(E[+-]?\d+)?`)
	return decimals.ReplaceAllStringFunc(code, func(s string) string {
		x, err := strconv.ParseFloat(s, 64)
		return lists.If(err == nil, strconv.FormatFloat(x, 'g', -1, 64), s)
	})
}

// shifted is a shared formula as it stands so many rows and columns away from
// the cell that carries it.
func shifted(formula string, rows, columns int) string {
	cells := regexp.MustCompile(`\$?\b[A-Z]{1,3}\$?[0-9]{1,7}\b`)
	return outsideTexts(formula, func(code string) string {
		return cells.ReplaceAllStringFunc(code, func(s string) string { return moved(s, rows, columns) })
	})
}

// moved is a reference so many rows and columns away, where it is relative.
func moved(ref string, rows, columns int) string {
	letters := strings.TrimLeft(ref, "$")
	n := strings.IndexAny(letters, "$0123456789")
	column, row := letters[:n], letters[n:]
	column = lists.If(strings.HasPrefix(ref, "$"), "$"+column, grid.Letters(columnNumber(column)+columns))
	number, err := strconv.Atoi(row)
	return column + lists.If(err == nil, strconv.Itoa(number+rows), row)
}

// columnNumber is the number of a column from its letters, A being 1.
func columnNumber(letters string) int {
	n := 0
	for _, c := range letters {
		n = n*26 + int(c-'A') + 1
	}
	return n
}
