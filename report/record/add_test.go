package record

import (
	"testing"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// withPeriod adds one row to Climates.
func withPeriod(row ...string) func(grid.Table) grid.Table {
	return func(t grid.Table) grid.Table {
		temp, _ := Heading(t, "Temp", evidence.Fahrenheit, evidence.Celsius)
		return t.With([]string{"Climate", "Period", temp, "RH (%)", "From"}, row)
	}
}

func TestRowsAddedStandInTheRecordsOwnColumns(t *testing.T) {
	path := folderOf(t, changed(map[string]string{"climates.csv": "RH (%),Temp (°C),Period,Climate\n30,21,winter,C1\n"}))
	rec, err := ReadWith(path, "Climates", withPeriod("C2", "June", "22.5", "45", "a file"))
	if err != nil {
		t.Fatal(err)
	}
	if n := len(rec.Job.Climates); n != 2 || rec.Job.Climates[0].From != "" {
		t.Fatalf("%d climates: %+v", n, rec.Job.Climates)
	}
	got := rec.Job.Climates[1]
	if got.Climate != "C2" || got.Temp.String() != "22.5 C" || got.RH.Written != "45" || got.From != "a file" {
		t.Errorf("the added row reads %+v", got)
	}
	if was, _ := Read(path); len(was.Job.Climates) != 1 {
		t.Error("the record given was changed")
	}
}

// A record may name the climate that is to be added, and have no table yet.
func TestATableThatIsNotThereIsAdded(t *testing.T) {
	tables := files()
	delete(tables, "climates.csv")
	path := folderOf(t, tables)
	rec, err := ReadWith(path, "Climates", withPeriod("C1", "June", "72.5", "45", "a file"))
	if err != nil {
		t.Fatal(err)
	}
	if got := rec.Job.Climates[0]; got.Temp.String() != "72.5 F" || got.Place.String() != "climates.csv row 2" {
		t.Errorf("the added row reads %+v", got)
	}
	if rec.Tables[3].Name != "Climates" {
		t.Errorf("the tables stand as %q", rec.Tables[3].Name)
	}
}

func TestAddedRowsAreHeldToTheRules(t *testing.T) {
	path := folderOf(t, files())
	_, err := ReadWith(path, "Climates", withPeriod("C2", "June", "22.5", "450", ""))
	if err == nil {
		t.Fatal("read without an error")
	}
	wants(t, err.Error(), `climates.csv row 3 "RH (%)": "450" is outside 0 to 100; write the number in the unit of its column, or leave the cell blank`)
}
