package seal

import (
	"fmt"
	"strings"
)

type stylesPart struct {
	Formats []numberFormat `xml:"numFmts>numFmt"`
	Cells   []struct {
		Format int `xml:"numFmtId,attr"`
	} `xml:"cellXfs>xf"`
	Marks []struct {
		Format numberFormat `xml:"numFmt"`
	} `xml:"dxfs>dxf"`
}

type numberFormat struct {
	ID   int    `xml:"numFmtId,attr"`
	Code string `xml:"formatCode,attr"`
}

// readStyles reads what the number formats of cells say in words.
func (b *book) readStyles() error {
	const part = "xl/styles.xml"
	if b.parts[part] == nil {
		return nil
	}
	var styles stylesPart
	if err := b.decode(part, &styles); err != nil {
		return err
	}
	codes := map[int]string{}
	for _, f := range styles.Formats {
		codes[f.ID] = f.Code
	}
	for _, c := range styles.Cells {
		b.formats = append(b.formats, formatWords(codes[c.Format]))
	}
	for _, m := range styles.Marks {
		b.looks = append(b.looks, formatWords(m.Format.Code))
	}
	return nil
}

// formatWords are the words that a number format puts beside, or in place of,
// what its cell holds. A part of it that shows nothing of the cell is told too.
func formatWords(code string) string {
	if code == "" {
		return ""
	}
	var words []string
	for i, section := range sections(code) {
		text, shows := literals(section)
		if text == "" && !shows {
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

// literals are the words in a part of a number format, and whether it shows
// anything of the cell. Marks between figures are no words.
func literals(section string) (text string, shows bool) {
	var b strings.Builder
	for i := 0; i < len(section); i++ {
		switch c := section[i]; c {
		case '"':
			end := strings.IndexByte(section[i+1:], '"')
			if end < 0 {
				end = len(section) - i - 1
			}
			b.WriteString(section[i+1 : i+1+end])
			i += end + 1
		case '\\', '_', '*':
			if i++; c == '\\' && i < len(section) {
				b.WriteByte(section[i])
			}
		case '[':
			if end := strings.IndexByte(section[i:], ']'); end > 0 {
				i += end
			}
		default:
			shows = shows || strings.IndexByte("0#?@GgyYmMdDhHsS", c) >= 0
		}
	}
	return strings.Trim(strings.TrimSpace(b.String()), "-/:., ()"), shows
}
