package record

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	_ "time/tzdata"

	"firstboard/report/evidence"
	"firstboard/report/lists"
	"firstboard/report/record/alike"
	"firstboard/report/record/faults"
	"firstboard/report/record/sheet"
)

// lookAlikes faults what is no table of a record and looks like one: whoever
// named it meant it to be read.
func (d *decoder) lookAlikes(from *sheet.Source) {
	for _, o := range from.Others {
		table, now := meantFor(o)
		if table == "" || o.Sheet && d.ours(o.Name) {
			continue
		}
		right := lists.If(o.Sheet, table, sheet.FileName(table))
		mend := lists.If(from.Tables[table] == nil, "rename it ", "put its rows into ")
		text := fmt.Sprintf("looks like the table %s and is not read; %s%s, or give it a name and a header unlike any table's", table, mend,
			evidence.Quote(right))
		switch {
		case o.Odd:
			text = fmt.Sprintf("looks like the table %s and is no regular file; put the file itself there, named %s",
				table, right)
		case now:
			text = fmt.Sprintf("is now %s; rename it", evidence.Quote(right))
		}
		at := &sheet.Holder{File: o.Name, Table: table, Sheet: lists.If(o.Sheet, o.Name, "")}
		d.faults = append(d.faults, faults.Fault{Place: sheet.Place{In: at}, Text: text, Order: -1})
	}
}

// hidden notes the tables whose rows may stand where they are not read, so that
// nobody is told of names that they may list.
func (d *decoder) hidden(others []sheet.Other) {
	for _, o := range others {
		if table, _ := meantFor(o); table != "" {
			d.unknown(table)
		}
	}
}

// ours says whether a sheet is one of a decision workbook's own, by its name.
func (d *decoder) ours(name string) bool {
	if slices.Contains([]string{
		"Decision", "Limits", "Checks", "Cautions", "Plotted", "Sealed", "Figures",
		"As judged",
	}, name) {
		return true
	}
	if table, copied := strings.CutPrefix(name, "As judged "); copied {
		return slices.Contains(TableNames(), table)
	}
	for _, of := range []string{"Area ", "Working ", "Field "} {
		if id, about := strings.CutPrefix(name, of); about {
			return slices.ContainsFunc(d.areas.ids, func(listed string) bool { // a long one is cut
				return alike.Joined(id) != "" && strings.HasPrefix(alike.Joined(listed), alike.Joined(id))
			})
		}
	}
	return false
}

// meantFor is the table that a sheet or a file beside others is meant for, or
// empty, and whether it has the table's old name.
func meantFor(o sheet.Other) (table string, now bool) {
	if table, now = resembled(o); table == "" {
		table = inAnotherForm(o)
	}
	return table, now
}

// resembled is the table that a sheet or a file looks like, or empty, and
// whether it has the table's old name.
func resembled(o sheet.Other) (table string, now bool) {
	name := lists.If(o.Sheet, o.Name, strings.ReplaceAll(alike.Base(o.Name), "_", " "))
	if now := alike.TableNow(strings.ReplaceAll(name, "-", " ")); now != "" &&
		(o.Sheet || strings.EqualFold(filepath.Ext(o.Name), ".csv")) {
		return now, true
	}
	for _, s := range schemas() {
		if alike.Resembles(name, s.title()) && (o.Sheet || sheet.IsText(o.Name)) {
			return s.title(), false
		}
	}
	return headedAs(o.First), false
}

// inAnotherForm is the table that a file is named as, but for an end by which it
// is not read: that of a spreadsheet program, of data or of none. A name with
// something added may be a decision workbook's.
func inAnotherForm(o sheet.Other) string {
	ext := filepath.Ext(o.Name)
	if o.Sheet || !slices.Contains([]string{
		"", ".xlsx", ".xlsm", ".xlsb", ".xls", ".ods", ".numbers", ".json", ".dat", ".gz",
	}, strings.ToLower(ext)) {
		return ""
	}
	name := alike.Joined(alike.Base(strings.TrimSuffix(o.Name, ext)))
	table, _ := lists.First(TableNames(), func(table string) bool { return alike.Joined(table) == name })
	return table
}

func isLookAlike(o sheet.Other) bool {
	table, _ := resembled(o)
	return table != ""
}

// headedAs is the table that has two or more of a first row's names among its
// starred columns: the one with the most of them.
func headedAs(first []string) string {
	best, most := "", 1
	names := lists.Each(first, func(header string) string {
		name, _ := evidence.Parted(header)
		return evidence.Key(name)
	})
	for _, s := range schemas() {
		starred := lists.Where(s.heads(), func(c Column) bool {
			return c.Star && slices.Contains(names, evidence.Key(c.Name))
		})
		if len(starred) > most {
			best, most = s.title(), len(starred)
		}
	}
	return best
}
