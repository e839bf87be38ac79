package seal

import (
	"fmt"
	"strings"

	"firstboard/report/lists"
)

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
