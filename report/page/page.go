package page

import (
	"html/template"
	"io"
	"maps"
	"slices"

	"firstboard/report"
	"firstboard/report/evidence"
	"firstboard/report/lists"
)

// Page is all that the page shows.
type Page struct {
	report.Statement // with advice on every area
	Photos           []Photo
}

// Photo is a picture of the record by name and hash. Data is it scaled down as
// a JPEG, empty where the file was not given.
type Photo struct {
	Area, File, Of, TakenAt string
	SHA256                  string // in hex, empty where the file was not given
	Data                    []byte
}

// Write writes the page. An error is that of w.
func Write(w io.Writer, p Page) error {
	t, err := template.New("page").Funcs(template.FuncMap{"embedded": embedded, "places": places}).Parse(layout)
	if err != nil {
		return err
	}
	return t.Execute(w, p.view())
}

// view is the page in the words and pieces that the layout puts in place.
type view struct {
	Page
	Style  template.CSS
	Tally  string
	Head   []pair
	Areas  []areaView
	Meters []evidence.Instrument // in the order of their names
	Code   template.HTML         // the seal as a square code
}

// pair is a label and what it names.
type pair struct{ Label, Text string }

func (p Page) view() view {
	byName := func(a, b evidence.Instrument) int { return evidence.Order(a.ID, b.ID) }
	v := view{
		Page: p, Style: style, Tally: report.Tally(p.Decisions), Head: p.head(), Code: squareCode(p.Seal),
		Meters: slices.SortedFunc(maps.Values(p.Job.Instruments), byName),
	}
	for i, d := range p.Decisions {
		v.Areas = append(v.Areas, p.area(i, d))
	}
	return v
}

func (p Page) head() []pair {
	j := p.Job
	return recorded([]pair{
		{"Site", j.Site},
		{"Prepared by", j.PreparedBy},
		{"Company", j.Company},
		{"General contractor", j.GeneralContractor},
		{"Acceptance", j.AcceptanceRule()},
		{"Record", p.Record},
		{"SHA-256 of the record", p.SHA256},
		{"Judged with", p.Tool},
	})
}

// recorded are the pairs of which something is recorded.
func recorded(all []pair) []pair {
	return lists.Where(all, func(p pair) bool { return p.Text != "" })
}
