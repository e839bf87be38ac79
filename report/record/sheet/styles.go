package sheet

import (
	"encoding/xml"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/evidence"
)

// format is what a cell's number format makes of its number. From decimals on
// it is a number with so many decimals: decimals+2 is 0.00.
type format int

const (
	general format = iota
	percentage
	dayFormat
	clockFormat
	decimals
)

// mostDecimals is the most decimals that a spreadsheet shows.
const mostDecimals = 30

// readStyles reads the number format of every cell style.
func (w *workbook) readStyles(d *xml.Decoder, root xml.StartElement) error {
	own := map[int]format{}
	var cells []int
	err := children(d, func(e xml.StartElement) error {
		switch e.Name.Local {
		case "numFmts":
			return only(d, "numFmt", func(e xml.StartElement) error {
				code, _ := attr(e, "formatCode")
				id, err := numFmt(e)
				own[id] = formatOf(code)
				return errors.Join(err, d.Skip())
			})
		case "cellXfs":
			return only(d, "xf", func(e xml.StartElement) error {
				id, err := numFmt(e)
				cells = append(cells, id)
				return errors.Join(err, d.Skip())
			})
		}
		return passed(d, root.Name.Space, "styleSheet", "numFmts", "cellXfs")
	})
	for _, id := range cells {
		f, ok := own[id]
		if !ok {
			f = builtIn(id)
		}
		w.formats = append(w.formats, f)
	}
	return err
}

// numFmt is the number of a number format, 0 where none is named.
func numFmt(e xml.StartElement) (int, error) {
	id, ok := attr(e, "numFmtId")
	if !ok {
		return 0, nil
	}
	n, err := strconv.Atoi(id)
	if err != nil {
		return 0, fmt.Errorf("it names a number format %s", evidence.Quote(id))
	}
	return n, nil
}

// builtIn is the format that every workbook has under a number.
func builtIn(id int) format {
	switch {
	case id == 9 || id == 10:
		return percentage
	case id == 2 || id == 4: // 0.00 and #,##0.00
		return decimals + 2
	case id >= 14 && id <= 17, id >= 27 && id <= 31, id == 36, id >= 50 && id <= 54, id == 57, id == 58:
		return dayFormat
	case id >= 18 && id <= 22, id >= 32 && id <= 35, id >= 45 && id <= 47, id == 55, id == 56:
		return clockFormat
	}
	return general
}

// formatOf is what a format code such as 0.0% or yyyy-mm-dd makes of a number.
func formatOf(code string) format {
	letters := bare(strings.ToLower(code))
	switch {
	case strings.ContainsAny(letters, "hs"):
		return clockFormat
	case strings.ContainsAny(letters, "ymd"):
		return dayFormat
	case strings.Contains(letters, "%"):
		return percentage
	}
	if whole, fraction, _ := strings.Cut(letters, "."); strings.Trim(whole, "#,0") == "" &&
		strings.Trim(fraction, "0") == "" {
		return decimals + format(min(len(fraction), mostDecimals))
	}
	return general
}

// bare is a format code without its literal text, its colors and its
// conditions; hours in brackets, which count on beyond a day, stay.
func bare(code string) string {
	var b strings.Builder
	for i := 0; i < len(code); i++ {
		switch code[i] {
		case '"':
			i += skip(code[i+1:], '"')
		case '\\', '_', '*':
			i++
		case '[':
			n := skip(code[i+1:], ']')
			if hours := strings.TrimSuffix(code[i+1:i+1+n], "]"); strings.Trim(hours, "hms") == "" {
				b.WriteString(hours)
			}
			i += n
		default:
			b.WriteByte(code[i])
		}
	}
	return b.String()
}

// skip is the number of bytes up to and with the end mark.
func skip(s string, end byte) int {
	if at := strings.IndexByte(s, end); at >= 0 {
		return at + 1
	}
	return len(s)
}
