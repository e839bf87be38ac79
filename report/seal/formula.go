package seal

import (
	"fmt"
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

// builtIn are the number formats that a file need not tell, by their numbers.
func builtIn() map[int]string {
	return map[int]string{
		1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00", 9: "0%", 10: "0.00%", 11: "0.00E+00", 12: "# ?/?", 13: "# ??/??",
		14: "m/d/yy", 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy", 18: "h:mm AM/PM", 19: "h:mm:ss AM/PM", 20: "h:mm",
		21: "h:mm:ss",
		22: "m/d/yy h:mm", 37: "#,##0;(#,##0)", 38: "#,##0;(#,##0)", 39: "#,##0.00;(#,##0.00)",
		40: "#,##0.00;(#,##0.00)",
		45: "mm:ss", 46: "[h]:mm:ss", 47: "mm:ss.0", 48: "##0.0E+0", 49: "@",
	}
}

// formatSays is what a number format makes of its cell: its words, and the
// figures it shows, without the marks between them, which programs write each
// in their own way.
func formatSays(code string) string {
	if code == "" || strings.EqualFold(code, "General") {
		return ""
	}
	shown := lists.Each(sections(code), figures)
	return strings.TrimSpace(wordsOf(code) + " " + strings.ToLower(strings.Join(shown, ";")))
}

// wordsOf are the words that a number format puts beside, or in place of, what
// its cell holds. A part of it that shows nothing of the cell is told too.
func wordsOf(code string) string {
	if code == "" {
		return ""
	}
	var words []string
	for i, section := range sections(code) {
		text, shown := parted(section)
		text = strings.Trim(strings.TrimSpace(text), "-/:., ()") // marks between figures are no words
		if text == "" && !strings.ContainsAny(shown, "0#?@GgEeYyMmDdHhSs") {
			text = "(nothing)"
		}
		if text != "" {
			words = append(words, fmt.Sprintf("%d:%s", i, text))
		}
	}
	return strings.Join(words, "; ")
}

// sections are the parts of a number format between semicolons.
func sections(code string) []string {
	var parts []string
	from, quoted := 0, false
	for i := 0; i < len(code); i++ {
		switch {
		case code[i] == '\\':
			i++
		case code[i] == '"':
			quoted = !quoted
		case code[i] == ';' && !quoted:
			parts, from = append(parts, code[from:i]), i+1
		}
	}
	return append(parts, code[from:])
}

// figures are what a part of a number format shows of its cell.
func figures(section string) string {
	_, shown := parted(section)
	return strings.Map(func(r rune) rune {
		if strings.ContainsRune("-/: ()$", r) {
			return -1
		}
		return r
	}, shown)
}

// parted takes a part of a number format apart: the words in it, and the rest,
// without what stands in brackets, such as a color, and without gaps.
func parted(section string) (words, rest string) {
	var w, r strings.Builder
	for i := 0; i < len(section); i++ {
		switch c := section[i]; c {
		case '"':
			end := strings.IndexByte(section[i+1:], '"')
			if end < 0 {
				end = len(section) - i - 1
			}
			w.WriteString(section[i+1 : i+1+end])
			i += end + 1
		case '\\', '_', '*':
			if i++; c == '\\' && i < len(section) {
				w.WriteByte(section[i])
			}
		case '[':
			if end := strings.IndexByte(section[i:], ']'); end > 0 {
				i += end
			}
		default:
			r.WriteByte(c)
		}
	}
	return w.String(), r.String()
}
