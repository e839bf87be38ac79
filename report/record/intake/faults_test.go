package intake

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Whatever cannot be told is refused, with what to do about it.
func TestRefusedExports(t *testing.T) {
	rec := sound(t, nil)
	const head = "Time,Temp (F),RH\n"
	for name, c := range map[string]struct {
		text string
		in   Intake
		want string
	}{
		"nothing": {"", airLog(), "x.csv: is empty; export the readings again"},
		"no header": {
			"2026-03-14 08:00,70,45\n2026-03-14 08:10,70,45\n", airLog(),
			"x.csv: no header was found in its first 200 lines: a line of column names with rows below it that hold a time; write the names of the columns into a line above the first row",
		},
		"a workbook": {"PK\x03\x04abc", airLog(), "x.csv: is a workbook or an archive; save its sheet of readings as CSV"},
		"not text":   {"Time,Temp\x00\x01\x02\n", airLog(), "x.csv: is not text; export the readings as CSV"},
		"an endless line": {
			head + strings.Repeat("x", 2<<20), airLog(),
			"x.csv line 2: is longer than any row of readings; export them again as CSV, a row a line",
		},
		"two separators": {
			"a,b;Time;c,d\n1,2;2026-03-14;3,2026-03-14,4\n", airLog(),
			"x.csv line 1: its columns may be parted by commas or by semicolons; export it with one of them alone, or with tabs",
		},
		"decimal commas between commas": {
			head + "2026-03-14 08:00,70,1,45,2\n", airLog(),
			"x.csv line 1: the rows have more cells than the header has names, so a decimal comma may not be told from a comma between cells; export with semicolons or tabs, with a decimal point, or tell every column by its number, such as --column \"time=#2\" --column \"temp=#3 (F)\"",
		},
		"commas and points": {
			"Time;Temp (F);RH\n2026-03-14 08:00;70,1;45\n2026-03-14 08:10;70.1;45\n", airLog(),
			`x.csv: numbers have a comma ("70,1" in line 2) and a point ("70.1" in line 3); export it with one of them`,
		},
		"two temperatures": {
			"Time,Temp 1 (F),Temp 2 (F),RH\n2026-03-14 08:00,70,71,45\n", airLog(),
			`x.csv line 1: the columns "Temp 1 (F)" and "Temp 2 (F)" could each be Temp; add --column "temp=Temp 1 (F)" or "temp=Temp 2 (F)"`,
		},
		"two times": {
			"Local time,UTC time,Temp (F),RH\n2026-03-14 08:00,2026-03-14 13:00,70,45\n", airLog(),
			`x.csv line 1: the columns "Local time" and "UTC time" could each be time; add --column "time=Local time" or "time=UTC time"`,
		},
		"no time of day": {
			"Day,Temp (F),RH\n2026-03-14,70,45\n", airLog(),
			`x.csv line 1 column "Day": holds days, and no column holds a time of day; export the time of each reading as well`,
		},
		"no reading": {
			"Time,Volts\n2026-03-14 08:00,70\n", airLog(),
			`x.csv line 1: no column offers Temp, which every row needs; it has "Time" and "Volts"; add --column "temp=..."`,
		},
		"no unit": {
			"Time,Temp,RH\n2026-03-14 08:00,70,45\n", airLog(),
			`x.csv line 1 column "Temp": its unit is not told; add --column "temp=Temp (F)" or "temp=Temp (C)"`,
		},
		"either unit": {
			"Time,Temp (F/C),RH\n2026-03-14 08:00,70,45\n", airLog(),
			`x.csv line 1 column "Temp (F/C)": its unit is not told; add --column "temp=Temp (F)" or "temp=Temp (C)"`,
		},
		"another unit told": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "temp=Temp (C)"},
			`x.csv line 1 column "Temp (F)": it is in C (as told) and in F (from the header); correct the file, or export it with one unit`,
		},
		"another unit in a cell": {
			head + "2026-03-14 08:00,70,45\n2026-03-14 08:10,21 °C,45\n", airLog(),
			`x.csv line 1 column "Temp (F)": it is in F (from the header) and in C (from "21 °C" in line 3); correct the file, or export it with one unit`,
		},
		"an order of dates that cannot be told": {
			head + "4/4/2026 08:00,70,45\n3/4/2026 08:00,70,45\n", airLog(),
			`x.csv: the order of its dates cannot be told, as every one could be read so: "3/4/2026 08:00" in line 3 is 2026-04-03 (day first) or 2026-03-04 (month first); add --time-format day-first or --time-format month-first`,
		},
		"years of two digits": {
			head + "14/03/26 08:00,70,45\n", airLog(),
			`x.csv: the order of its dates cannot be told, as every one could be read so: "14/03/26 08:00" in line 2 is 2014-03-26 (year first) or 2026-03-14 (day first); add --time-format year-first or --time-format day-first`,
		},
		"two orders of dates": {
			head + "13/4/2026 08:00,70,45\n4/5/2026 08:00,70,45\n4/13/2026 08:00,70,45\n", airLog(),
			`x.csv: its dates do not stand in one order: "13/4/2026 08:00" in line 2 and "4/13/2026 08:00" in line 4; export it with one order, or add --time-format to leave out the rows in another`,
		},
		"an unknown format": {
			head + "13/4/2026 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Order: "dmy"},
			`--time-format "dmy": there is no such format; write year-first, day-first or month-first`,
		},
		"an unknown column": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "temp=Tmp"},
			`--column "temp=Tmp": x.csv line 1: there is no such column; the nearest is "Time"`,
		},
		"an unknown key": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "tmp=Temp"},
			`--column "tmp": the table has no such column; write time, date, Area, Read at, Temp, RH, Instrument, By or Note`,
		},
		"no key": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "Temp"},
			`--column "Temp": write the record's column, an equals sign and the rest, such as "temp=Temp (F)"`,
		},
		"told twice": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "temp=Temp,temp=RH (F)"},
			`--column "temp=RH (F)": Temp is told twice; keep one of the two`,
		},
		"days told alone": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "air", Instrument: "T1", Columns: "date=Time"},
			`--column "date=Time": the times of day are not told; add time= and their column`,
		},
		"filled without a unit": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "slab-rh", Area: "A1", Instrument: "RP1", Fill: "hole=H1,depth=1.6"},
			`--fill "depth=1.6": the unit is not told; write Depth (in), Depth (ft), Depth (mm), Depth (cm) or Depth (m)`,
		},
		"no hole": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "slab-rh", Area: "A1", Instrument: "RP1"},
			`x.csv line 1: no column offers Hole, which every row needs; add --column "hole=..." with the file's column, or --fill "hole=..." where all rows have the same`,
		},
		"no area": {
			head + "2026-03-14 08:00,70,45\n",
			Intake{Table: "surface", Instrument: "S1"},
			"x.csv line 1: no column offers Area, which every row needs; add --area",
		},
		"an unknown table": {
			head,
			Intake{Table: "scan", Instrument: "T1"},
			`--table "scan": a logger's or meter's file goes into air, surface, slab-rh or wood`,
		},
		"an unknown area": {
			head,
			Intake{Table: "air", Area: "A9", Instrument: "T1"},
			`--area "A9": is not listed in Areas; write A1, or list it there first`,
		},
		"an unknown instrument": {
			head,
			Intake{Table: "air", Instrument: "T2"},
			`--instrument "T2": is not listed in Instruments; write 007, RP1, S1, T1 or W1, or list it there first`,
		},
		"a header and no row": {
			"Time,Temp (F),RH\n,,\n2026-03-14,,\n", airLog(),
			"x.csv: no header was found in its first 200 lines: a line of column names with rows below it that hold a time; write the names of the columns into a line above the first row",
		},
		"none that can be read": {
			head + "2026-03-14 08:00,170,45\n2026-03-14 08:10,70,145\n", airLog(),
			"x.csv: none of its 2 rows can be read, so nothing is written:\n" +
				`x.csv line 2 column "Temp (F)": "170" is outside -40 to 160; write the number in the unit of its column, or leave the cell blank` + "\n" +
				`x.csv line 3 column "RH": "145" is outside 0 to 100; write the number in the unit of its column, or leave the cell blank`,
		},
	} {
		t.Run(name, func(t *testing.T) {
			wants(t, err1(Log(rec, "x.csv", strings.NewReader(c.text), c.in)), c.want)
		})
	}
}

// A time told in UTC needs the site's zone.
func TestNoZone(t *testing.T) {
	rec := sound(t, map[string]string{"job.csv": "Item,Entry\nJob,Mill\n"})
	for text, column := range map[string]string{
		"1773493200":           "Time",
		"2026-03-14T13:00Z":    "Time",
		"2026-03-14 13:00 GMT": "Time",
		"2026-03-14 13:00":     "Time (UTC)",
	} {
		err := err1(Log(rec, "x.csv", strings.NewReader(column+",Temp (F),RH\n"+text+",70,45\n"), airLog()))
		wants(t, err, `x.csv line 1 column "`+column+`": its times are told with their distance from UTC ("`+text+`" in line 2), and the record does not say the site's; write Time zone into Job, such as America/Chicago`)
	}
}

// A row that cannot be read is listed and left out; the others stand.
func TestUnreadRows(t *testing.T) {
	rec := sound(t, nil)
	const text = `Time,Temp (F),RH,Note
3/14/2026 08:00:00 AM,70,45,
Button pressed,,,
3/14/2026 08:10:00 AM,OL,45,
3/14/2026 08:20:00,70,45,
13/14/2026 08:30:00 AM,70,45,
14/3/2026 08:30:00 AM,70,45,
3/14/2026,70,45,
3/14/2026 08:30:00 AM,,,
,70,45,
3/14/2026 08:40:00 AM,70,0.45,
3/14/2026 08:50:00 AM,70 V,45,
3/14/1926 09:00:00 AM,70,45,
3/14/2026 09:10:00 AM,70,45,x,y
"3/14/2026 09:20:00 AM,70,45
3/8/2026 02:30:00 AM,70,45,
3/14/2026 13:00:00 AM,70,45,
3/14/2026 09:30:00 AM,,46,"a ""b"""
`
	l := logged(t, rec, text, Intake{Table: "air", Instrument: "T1", Order: "month-first"})
	wants(t, texts(l.Table), "Read at|Temp (F)|RH (%)|Instrument|Note\n2026-03-14 08:00|70|45|T1|\n2026-03-14 09:30||46|T1|a \"b\"")
	want := []string{
		`x.csv line 3 column "Time": "Button pressed" is not a day and a time of day`,
		`x.csv line 4 column "Temp (F)": "OL" is not a plain number; write digits with a point, such as 84.7`,
		`x.csv line 5 column "Time": "3/14/2026 08:20:00" is not written as the first time is, "3/14/2026 08:00:00 AM" in line 2`,
		`x.csv line 6 column "Time": "13/14/2026 08:30:00 AM" is not a day and a time of day`,
		`x.csv line 7 column "Time": "14/3/2026 08:30:00 AM" is no day with the month first`,
		`x.csv line 8 column "Time": "3/14/2026" holds no time of day`,
		`x.csv line 9: holds no reading`,
		`x.csv line 10 column "Time": is blank, and a reading needs its time`,
		`x.csv line 11 column "RH": "0.45" looks like a fraction of one; write 45`,
		`x.csv line 12 column "Temp (F)": "70 V" is not in F, as the others are`,
		`x.csv line 13 column "Time": "1926-03-14 09:00" is outside the years 1990 to 2199; is the year right? write 2026-03-14 09:00`,
		`x.csv line 14: "y" stands beyond the last column that has a name`,
		`x.csv line 15: a quote is out of place; put an entry that holds a quote in quotes and double the quotes inside it`,
		`x.csv line 16 column "Time": "2026-03-08 02:30" never was in America/Chicago, where clocks went forward over it; write the time the clock showed`,
		`x.csv line 17 column "Time": "3/14/2026 13:00:00 AM" is not a day and a time of day`,
	}
	if diff := cmp.Diff(want, l.Faults); diff != "" {
		t.Error(diff)
	}
	if l.Added != 2 || l.Unread != len(want) {
		t.Errorf("%d added, %d unread", l.Added, l.Unread)
	}
	if diff := cmp.Diff([]string{"Temp (F) in 1 row"}, l.ToFill); diff != "" {
		t.Error(diff)
	}
}

// No more than twenty rows are listed; all are counted.
func TestManyUnreadRows(t *testing.T) {
	text := "Time,Temp (F),RH\n2026-03-14 08:00,70,45\n" + strings.Repeat("2026-03-14 08:00,170,45\n", 5000)
	l := logged(t, sound(t, nil), text, airLog())
	if len(l.Faults) != 20 || l.Unread != 5000 || l.Added != 1 {
		t.Errorf("%d listed, %d unread, %d added", len(l.Faults), l.Unread, l.Added)
	}
}
