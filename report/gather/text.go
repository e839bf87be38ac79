package gather

import (
	"encoding/json"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Text is what a row says in one place. A program reads a blank as null.
type Text string

// MarshalJSON writes the text, or null for a blank.
func (t Text) MarshalJSON() ([]byte, error) {
	if t == "" {
		return []byte("null"), nil
	}
	return plainJSON(string(t))
}

// Figure is a plain decimal, every digit of it. A program reads it as a number,
// a blank as null.
type Figure string

// MarshalJSON writes the number, or null for a blank.
func (f Figure) MarshalJSON() ([]byte, error) {
	if f == "" {
		return []byte("null"), nil
	}
	return []byte(f), nil
}

// Moment is a clock time as a record writes it: 2026-03-04 17:10. A program
// reads it as 2026-03-04T17:10:00, a blank as null.
type Moment string

// MarshalJSON writes the time with its seconds, or null for a blank.
func (m Moment) MarshalJSON() ([]byte, error) {
	t, ok := evidence.ParseClock(string(m))
	if !ok {
		return []byte("null"), nil
	}
	return plainJSON(t.Format("2006-01-02T15:04:05"))
}

// plainJSON is a text as JSON, its <, > and & as they are.
func plainJSON(s string) ([]byte, error) {
	var b strings.Builder
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(s)
	return []byte(strings.TrimSuffix(b.String(), "\n")), err
}

// kept is a text of its own: cells of a record share the memory of the whole
// file.
func kept(s string) Text { return Text(strings.Clone(evidence.Tidy(s))) }

// figure is a reading's number as JSON takes it, or blank.
func figure(s string) Figure {
	if !evidence.Plain(s) {
		return ""
	}
	digits, below := strings.CutPrefix(s, "-")
	if digits = strings.TrimLeft(digits, "0"); digits == "" || digits[0] == '.' {
		digits = "0" + digits
	}
	return Figure(strings.Clone(lists.If(below, "-", "") + digits))
}
