package record

import (
	"errors"
	"testing"

	"firstboard/report/record/faults"
)

func TestHeaderFaults(t *testing.T) {
	for _, c := range []struct{ name, head, want string }{
		{
			"no unit", "Climate,Period,Temp,RH (%)",
			`climates.csv row 1 "Temp": carries no unit; write Temp (F) or Temp (C)`,
		},
		{
			"no bracket", "Climate,Period,Temp (F),RH",
			`climates.csv row 1 "RH": carries no unit; write RH (%)`,
		},
		{
			"another unit", "Climate,Period,Temp (K),RH (%)",
			`climates.csv row 1 "Temp (K)": carries a unit that is not known here; write Temp (F) or Temp (C)`,
		},
		{
			"a unit for none", "Climate,Period (y),Temp (F),RH (%)",
			`climates.csv row 1 "Period (y)": carries a unit that is not known here; write Period`,
		},
		{
			"unknown", "Climate,Period,Temp (F),RH (%),Form",
			`climates.csv row 1 "Form": is not known here; the nearest is "From"`,
		},
		{
			"twice", "Climate,Period,Temp (F),RH (%),Temp (C)",
			`climates.csv row 1 "Temp (C)": is given twice, first as "Temp (F)"; keep one of the two`,
		},
		{
			"missing", "Climate,Period,RH (%)",
			`climates.csv row 1 "Temp (F)": is missing; add a column Temp (F) or Temp (C)`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			text := c.head + "\nC1,winter,70,30\n"
			if c.name == "missing" {
				text = c.head + "\nC1,winter,30\n"
			}
			wants(t, faulty(t, folderOf(t, changed(map[string]string{"climates.csv": text}))), c.want)
		})
	}
}

// A job without a name of its own is told where its items stand.
func TestJobIsNamed(t *testing.T) {
	wants(t, faulty(t, folderOf(t, changed(map[string]string{"job.csv": "Item,Entry\nSite,Mill Road\n"}))),
		`job.csv row 2 "Item": the item Job is missing; add a row Job with the name of the job`)
}

func TestJobFaults(t *testing.T) {
	for _, c := range []struct{ name, rows, want string }{
		{"unknown", "Sight,Mill Road\n", `job.csv row 2 "Item": "Sight" is not known here; the nearest is "Site"; else take it out`},
		{"twice", "Site,Mill Road\nsite,Hill Road\n", `job.csv row 3 "Item": "site" is listed twice; keep one row of it`},
		{"blank", ",Mill Road\n", `job.csv row 2 "Item": is blank; fill it in, or clear the whole row`},
		{"a zone", "Time zone,Chicago\n", `job.csv row 2 "Entry": "Chicago" is not a time zone; write its area and city, such as America/Chicago`},
		{
			"the machine's zone", "Time zone,Local\n",
			`job.csv row 2 "Entry": "Local" is not a time zone; write its area and city, such as America/Chicago`,
		},
		{"acceptance", "Acceptance,strict\n", `job.csv row 2 "Entry": "strict" is not a word for this column; write simple or guarded`},
		{"no unit", "Dew margin,5\n", `job.csv row 2 "Item": "Dew margin" carries no unit; write Dew margin (F) or Dew margin (C)`},
		{"negative", "Probe wait (h),-1\n", `job.csv row 2 "Entry": "-1" is below 0; write a number from 0 up, or leave the cell blank`},
		{
			"two units", "Elevation (ft),500\nElevation (m),150\n",
			`job.csv row 3 "Item": "Elevation (m)" is listed twice; keep one row of it`,
		},
		{
			"agreed on", "Acceptance agreed on,soon\n",
			`job.csv row 2 "Entry": "soon" is not a date; write it as year-month-day, such as 2026-03-04`,
		},
	} {
		t.Run(c.name, func(t *testing.T) {
			wants(t, faulty(t, folderOf(t, changed(map[string]string{"job.csv": "Item,Entry\n" + c.rows + "Job,Hall\n"}))), c.want)
		})
	}
}

// Faults come together, by table, row and column, whatever order they are
// found in.
func TestFaultsInOrder(t *testing.T) {
	path := folderOf(t, changed(map[string]string{
		"areas.csv":   "Area,Size (ft2),Substrate,Flooring,Climate,Install on\nA1,-1,slab,P9,C1,soon\n",
		"slab-rh.csv": holeHead + "A1,H1,,1.6,,,x,y,RP1\nA1,H2,,1.6,,,z,70,RP1\n",
		"air.csv":     "Area,Read at,Temp (F),RH (%),Instrument\n,,,x,T1\n",
	}))
	_, err := Read(path)
	var faults faults.List
	if !errors.As(err, &faults) || len(faults) != 6 {
		t.Fatalf("got %v", err)
	}
	const number = " is not a plain number; write digits with a point, such as 84.7"
	wants(t, err.Error(), lines(
		`areas.csv row 2 "Size (ft2)": "-1" is not above 0; write a number above 0, or leave the cell blank`,
		`areas.csv row 2 "Flooring": "P9" is not listed in Products; list it there, or write one that is, such as P1`,
		`areas.csv row 2 "Install on": "soon" is not a date; write it as year-month-day, such as 2026-03-04`,
		`slab-rh.csv rows 2 to 3 "RH (%)": "x"`+number,
		`slab-rh.csv row 2 "Temp (F)": "y"`+number,
		`air.csv row 2 "RH (%)": "x"`+number,
	))
}
