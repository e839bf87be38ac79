package seal

import (
	"iter"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
	"firstboard/report/lists"
)

// lines are a table in its canonical form, a line a row: first the names of
// its columns, then each row behind its number. Columns without a name hold
// nothing and are left out. Kinds are not told: a column has but one. A line holds
// until the next.
func lines(t grid.Table) iter.Seq[[]byte] {
	return func(yield func([]byte) bool) {
		names, at := columns(t)
		all := append([]string{"row"}, names...)
		text := line(nil, all)
		if !yield(text) {
			return
		}
		for _, r := range t.Rows {
			all = fields(r, append(all[:0], strconv.Itoa(r.Number)), at)
			if text = line(text[:0], all); !yield(text) {
				return
			}
		}
	}
}

// columns are the names of the columns that have one, and where they stand.
func columns(t grid.Table) (names []string, at []int) {
	for i, h := range t.Header {
		if name := tidied(h); name != "" {
			names, at = append(names, name), append(at, i)
		}
	}
	return names, at
}

// fields adds what a row holds in some columns.
func fields(r grid.Row, to []string, at []int) []string {
	for _, i := range at {
		to = append(to, "")
		if i < len(r.Cells) {
			to[len(to)-1] = canonical(r.Cells[i])
		}
	}
	return to
}

// canonical is what a cell holds whatever file it stands in: a number without
// idle zeros, a time as records write it, anything else tidied.
func canonical(c grid.Cell) string {
	if c.Kind != grid.NumberCell {
		return tidied(c.Text)
	}
	s := loose(c.Text)
	return lists.If(s == "-0", "0", s)
}

// tidied is a text without idle spaces and letters that no workbook can hold.
func tidied(s string) string {
	if isTidy(s) {
		return s
	}
	return evidence.Tidy(strings.Map(func(r rune) rune {
		if r < ' ' && !strings.ContainsRune("\t\n\r", r) || r >= 0xfffd && r <= 0xffff {
			return -1
		}
		return r
	}, s))
}

// isTidy says of most texts that there is nothing to tidy.
func isTidy(s string) bool {
	space := true
	for i := range len(s) {
		if s[i] > '~' || s[i] < ' ' || s[i] == ' ' && space {
			return false
		}
		space = s[i] == ' '
	}
	return !space || s == ""
}

// loose is a text whose numbers lose their idle zeros: not every spreadsheet
// keeps them.
func loose(s string) string {
	s = tidied(s)
	if !strings.Contains(s, "0") {
		return s
	}
	var b strings.Builder
	for s != "" {
		n := len(s) - len(strings.TrimLeft(s, "0123456789"))
		if n == 0 {
			n = strings.IndexAny(s+"0", "0123456789")
			b.WriteString(s[:n])
			s = s[n:]
			continue
		}
		b.WriteString(strings.TrimLeft(s[:n-1], "0") + s[n-1:n])
		if s = s[n:]; strings.HasPrefix(s, ".") {
			m := len(s) - len(strings.TrimLeft(s[1:], "0123456789"))
			if short := strings.TrimRight(s[:m], "0"); short != "." || m == 1 {
				b.WriteString(short)
			}
			s = s[m:]
		}
	}
	return b.String()
}

// line adds fields as a line. Blank ones at its end are left out.
func line(to []byte, fields []string) []byte {
	for len(fields) > 0 && fields[len(fields)-1] == "" {
		fields = fields[:len(fields)-1]
	}
	for i, f := range fields {
		if i > 0 {
			to = append(to, '|')
		}
		to = append(to, strings.ReplaceAll(strings.ReplaceAll(f, `\`, `\\`), "|", `\|`)...)
	}
	return to
}
