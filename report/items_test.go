package report_test

import (
	"testing"

	"firstboard/report"
	"firstboard/report/record"
	"firstboard/testdata/published"
)

// The evidence list holds every item that standards and trade guidance want,
// for an area where holes are needed, and says of each what is lacking.
func TestItemsAreTheEvidenceList(t *testing.T) {
	rec, err := record.Read("../testdata/jobs/millrace")
	if err != nil {
		t.Fatal(err)
	}
	d := report.Judge(rec.Job)[1]
	if want := len(published.Rows(t, "evidence-items.csv")); len(d.Items) != want {
		t.Errorf("%d items, the list has %d", len(d.Items), want)
	}
	held := 0
	for _, i := range d.Items {
		if i.Held {
			held++
		}
		if i.Held != (i.Lacks == "") || i.What == "" || i.Asked == "" || i.Standing == "" {
			t.Errorf("item %+v says too little", i)
		}
	}
	if held < 5 || held == len(d.Items) {
		t.Errorf("%d of %d items are held", held, len(d.Items))
	}
}
