package intake

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record"
	"firstboard/report/record/alike"
)

// tie is a column of the record's table and where an export holds it.
type tie struct {
	record.Column
	head  int    // of the table's columns
	at    int    // of the file's columns, from 0; -1 where same holds
	clock int    // the column of a time of day that stands apart, or -1
	same  string // what every row holds
	unit  evidence.Unit
	how   string         // the unit is known
	zone  *time.Duration // ahead of UTC, where the header of a time states one
}

// isTime says whether a column of the logged tables holds times.
func isTime(c record.Column) bool { return strings.HasSuffix(c.Name, " at") }

// isReading says whether a column holds what an instrument reads.
func isReading(c record.Column) bool {
	return slices.Contains([]string{"Temp", "RH", "Reading"}, c.Name)
}

// nameWords are the words of a column's name. A capital behind a small letter
// begins another: HumidityRatio is two.
func nameWords(name string) []string {
	var apart strings.Builder
	small := false
	for _, r := range name {
		if small && unicode.IsUpper(r) {
			apart.WriteByte(' ')
		}
		apart.WriteRune(r)
		small = unicode.IsLower(r)
	}
	return strings.FieldsFunc(strings.ToLower(apart.String()), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("°º%²", r)
	})
}

// resembles says whether an export's column may be the record's though its name
// does not say so: a unit of its own and of no other reading stands behind it.
func resembles(c record.Column, name string) bool {
	base, in := unbracketed(name)
	if in == "" {
		in = base
	}
	_, ok := evidence.UnitMeant(in, c.Units)
	return ok
}

// unbracketed parts a name from what stands in the bracket at its end.
func unbracketed(name string) (base, in string) {
	open := strings.LastIndexAny(name, "([")
	if open < 0 || !strings.HasSuffix(name, ")") && !strings.HasSuffix(name, "]") {
		return name, ""
	}
	return strings.TrimSpace(name[:open]), name[open+1 : len(name)-1]
}

// fits says whether an export's column of this name may be the record's.
func fits(c record.Column, name string) bool {
	base, _ := unbracketed(name)
	if alike.Joined(base) == alike.Joined(c.Name) || alike.Joined(name) == alike.Joined(c.Name) {
		return true
	}
	has := func(heads ...string) bool {
		return slices.ContainsFunc(nameWords(name), func(w string) bool {
			return slices.ContainsFunc(heads, func(head string) bool {
				return strings.HasPrefix(strings.Trim(w, "%"), head)
			})
		})
	}
	switch c.Name {
	case "Temp":
		return has("temp") && !has("dew", "wet", "frost")
	case "RH":
		return has("rh", "humid") && !has("abs", "specific", "ratio", "temp", "dew") && !strings.Contains(name, "g/")
	case "Reading":
		return has("mc", "moist") && !has("temp")
	}
	return false
}

// unitsIn are the units of a record's column that an export's name states:
// those that end the name, a bracket or what stands before a comma.
func unitsIn(c record.Column, name string) []evidence.Unit {
	var all []evidence.Unit
	for _, part := range strings.FieldsFunc(name, func(r rune) bool { return strings.ContainsRune("()[],;:", r) }) {
		words := nameWords(part)
		for i := len(words) - 1; i >= 0; i-- {
			u, ok := evidence.UnitMeant(words[i], c.Units)
			if !ok {
				break
			}
			if !slices.Contains(all, u) {
				all = append(all, u)
			}
		}
	}
	return all
}

// column finds the column that a person named: by its number, such as #3, or
// by its name, with or without a unit in a bracket behind it.
func (l layout) column(told string) (at int, unit, complaint string) {
	base, in := unbracketed(told)
	if n, err := strconv.Atoi(strings.TrimPrefix(base, "#")); err == nil && strings.HasPrefix(base, "#") {
		if n < 1 || n > len(l.names) {
			return 0, "", fmt.Sprintf("there are columns #1 to #%d", len(l.names))
		}
		return n - 1, in, ""
	}
	ways := []func(name string) bool{
		func(name string) bool { return evidence.Same(name, told) },
		func(name string) bool { return evidence.Same(name, base) },
		func(name string) bool { b, _ := unbracketed(name); return alike.Joined(b) == alike.Joined(base) },
	}
	for i, same := range ways {
		found := l.where(func(_ int, name string) bool { return same(name) })
		switch {
		case len(found) > 1:
			return 0, "", fmt.Sprintf("columns #%d and #%d both have that name; write the number", found[0]+1,
				found[1]+1)
		case len(found) == 1 && i == 0:
			return found[0], "", ""
		case len(found) == 1:
			return found[0], in, ""
		}
	}
	return 0, "", "there is no such column; the nearest is " + evidence.Quote(evidence.Nearest(told, l.named()))
}

// tellable is how --column may name a column: by its name where that is the
// only one and can be told apart, else by its number.
func (l layout) tellable(at int) string {
	base, _ := unbracketed(l.names[at])
	same := lists.Where(l.names, func(name string) bool {
		b, _ := unbracketed(name)
		return alike.Joined(b) == alike.Joined(base)
	})
	if len(same) > 1 || strings.ContainsAny(l.names[at], "=,") {
		return fmt.Sprintf("#%d", at+1)
	}
	return l.names[at]
}

// where are the columns that have a name and that a test holds of.
func (l layout) where(holds func(at int, name string) bool) []int {
	var found []int
	for at, name := range l.names {
		if name != "" && holds(at, name) {
			found = append(found, at)
		}
	}
	return found
}

// named are the names of the columns that have one.
func (l layout) named() []string {
	return lists.Where(l.names, func(n string) bool { return n != "" })
}

// pair is a record's column and what was told of it.
type pair struct{ key, told string }

// pairs parts what follows --column or --fill: name=told, after commas. A
// comma before anything else is a part of what was told.
func pairs(flag, text string) ([]pair, error) {
	var all []pair
	for _, piece := range strings.Split(text, ",") {
		key, told, ok := strings.Cut(piece, "=")
		switch {
		case ok:
			all = append(all, pair{strings.TrimSpace(key), strings.TrimSpace(told)})
		case len(all) > 0:
			all[len(all)-1].told += "," + strings.TrimRight(piece, " ")
		case strings.TrimSpace(text) != "":
			return nil, fmt.Errorf(`%s %s: write the record's column, an equals sign and the rest, such as "temp=Temp (F)"`, flag,
				evidence.Quote(text))
		}
	}
	return all, nil
}
