package seal

import (
	"regexp"
	"strconv"
	"strings"
)

// normal is a formula or a reference in a form that does not depend on the
// program that saved it: without spaces, in capitals, numbers at their
// shortest, names of sheets without quotes. Texts in it are kept.
func normal(formula string) string {
	if formula == "" {
		return ""
	}
	var b strings.Builder
	for i, part := range splitTexts(strings.TrimPrefix(strings.TrimSpace(formula), "=")) {
		if i%2 == 1 {
			b.WriteString(`"` + part + `"`)
			continue
		}
		b.WriteString(normalCode(part))
	}
	return b.String()
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
	return numberPattern().ReplaceAllStringFunc(code, func(s string) string {
		x, err := strconv.ParseFloat(s, 64)
		if err != nil {
			return s
		}
		return strconv.FormatFloat(x, 'g', -1, 64)
	})
}

// numberPattern finds numbers with a decimal point.
func numberPattern() *regexp.Regexp { return regexp.MustCompile(`\d*\.\d+(E[+-]?\d+)?`) }

// shifted is a shared formula as it stands so many rows and columns away from
// the cell that carries it.
func shifted(formula string, rows, columns int) string {
	var b strings.Builder
	for i, part := range splitTexts(formula) {
		if i%2 == 1 {
			b.WriteString(`"` + part + `"`)
			continue
		}
		b.WriteString(cellPattern().ReplaceAllStringFunc(part,
			func(s string) string { return moved(s, rows, columns) }))
	}
	return b.String()
}

func cellPattern() *regexp.Regexp { return regexp.MustCompile(`\$?\b[A-Z]{1,3}\$?[0-9]{1,7}\b`) }

// moved is a reference so many rows and columns away, where it is relative.
func moved(ref string, rows, columns int) string {
	letters := strings.TrimLeft(ref, "$")
	n := strings.IndexAny(letters, "$0123456789")
	column, row := letters[:n], letters[n:]
	if !strings.HasPrefix(ref, "$") {
		column = columnName(columnNumber(column) + columns)
	} else {
		column = "$" + column
	}
	if strings.HasPrefix(row, "$") {
		return column + row
	}
	number, err := strconv.Atoi(row)
	if err != nil {
		return ref
	}
	return column + strconv.Itoa(number+rows)
}

// columnNumber is the number of a column from its letters, A being 1.
func columnNumber(letters string) int {
	n := 0
	for _, c := range letters {
		n = n*26 + int(c-'A') + 1
	}
	return n
}

// columnName is the letters of a column.
func columnName(n int) string {
	var s string
	for ; n > 0; n = (n - 1) / 26 {
		s = string(rune('A'+(n-1)%26)) + s
	}
	return s
}
