package intake

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report/grid"
	"firstboard/report/record/sheet"
)

// The rows go behind those of the record, in its columns and units; rows that
// stand there already are skipped, and a second reading of one time is kept.
func TestAddedRows(t *testing.T) {
	rec := sound(t, map[string]string{
		"air.csv": "RH (%),Read at,Temp (F),Instrument,Area,By\n45.0,2026-03-14 08:00,69.8,T1,,Ada\n50,2026-03-14 08:10,70,T1,,\n50,2026-03-14 08:20,70,T1,A1,\n",
	})
	const text = `Time,Temp (C),RH,Note
2026-03-14 08:00:00,21,45,
2026-03-14 08:10:00,21,50,
2026-03-14 08:20:00,21.5,50,door open
2026-03-14 08:20:00,21.50,50,Door  open
`
	l := logged(t, rec, text, airLog())
	wants(t, texts(l.Table), lines(
		"RH (%)|Read at|Temp (F)|Instrument|Area|By|Note",
		"45.0|2026-03-14 08:00|69.8|T1||Ada|",
		"50|2026-03-14 08:10|70|T1|||",
		"50|2026-03-14 08:20|70|T1|A1||",
		"50|2026-03-14 08:10|69.8|T1|||",
		"50|2026-03-14 08:20|70.7|T1|||door open",
	))
	if l.Added != 2 || l.Repeated != 2 || l.Doubled != 1 {
		t.Errorf("%d added, %d repeated, %d doubled", l.Added, l.Repeated, l.Doubled)
	}
	if all := strings.Join(l.Guesses, "\n"); !strings.Contains(all, "converted: Temp from C to F, the unit of the record's table") {
		t.Errorf("not told: %s", all)
	}
	if got := len(rec.Tables[5].Header); got != 6 {
		t.Errorf("the record's own header has %d columns now", got)
	}
	if got := len(rec.Tables[5].Rows[0].Cells); got != 6 {
		t.Errorf("the record's own rows have %d cells now", got)
	}
}

// From F to C numbers may not end; they are told.
func TestRoundedRows(t *testing.T) {
	rec := sound(t, map[string]string{"surface.csv": "Area,Spot,Read at,Temp (C)\nA1,S1,2026-03-14 08:00,20\n"})
	const text = "Time,Temp (F),Spot\n2026-03-14 08:10,50,S1\n2026-03-14 08:20,51,S1\n2026-03-14 08:30,32,S1\n"
	l := logged(t, rec, text, Intake{Table: "surface", Area: "A1", Instrument: "S1"})
	wants(t, texts(l.Table), lines(
		"Area|Spot|Read at|Temp (C)|Instrument",
		"A1|S1|2026-03-14 08:00|20|",
		"A1|S1|2026-03-14 08:10|10|S1",
		"A1|S1|2026-03-14 08:20|10.555556|S1",
		"A1|S1|2026-03-14 08:30|0|S1",
	))
	if all := strings.Join(l.Guesses, "\n"); !strings.Contains(all,
		"rounded: 1 number, to 6 places, where the converted number does not end") {
		t.Errorf("not told: %s", all)
	}
}

// A table without rows takes over the file's unit; starred columns that the
// file lacks are there to be filled in.
func TestEmptyTable(t *testing.T) {
	rec := sound(t, map[string]string{"slab-rh.csv": "Area,Hole,Depth (mm),Read at,RH (%),Temp (F)\n"})
	const text = "Time;Probe hole;RH;Temp (C);Sealed at\n14.03.2026 08:00;x;84,7;21;\n14.03.2026 08:10;x;84,7;21;13.03.2026 08:00\n"
	l := logged(t, rec, text, Intake{Table: "slab-rh", Area: "A1", Instrument: "RP1", Fill: "hole=H1"})
	wants(t, texts(l.Table), lines(
		"Area|Hole|Depth (mm)|Read at|RH (%)|Temp (C)|Sealed at|Instrument",
		"A1|H1||2026-03-14 08:00|84.7|21||RP1",
		"A1|H1||2026-03-14 08:10|84.7|21|2026-03-13 08:00|RP1",
	))
	if diff := cmp.Diff([]string{"Depth (mm)", "Sealed at in 1 row"}, l.ToFill); diff != "" {
		t.Error(diff)
	}
}

// A meter's file may offer every column of the table by name.
func TestWoodRows(t *testing.T) {
	rec := sound(t, nil)
	const text = "Read at,of,PIECE,Method,Moisture content (%),Wood Temp (°C),Area\n2026-03-14 08:00,Flooring,B1,pin,8.1,21.0,a1\n2026-03-14 08:00,ceiling,B2,pin,8.1,21.0,a1\n"
	l := logged(t, rec, text, Intake{Table: "wood", Instrument: "W1"})
	wants(t, texts(l.Table), "Area|Of|Piece|Read at|Method|Reading (%)|Wood temp (C)|Instrument\na1|Flooring|B1|2026-03-14 08:00|pin|8.1|21.0|W1")
	if diff := cmp.Diff([]string{`x.csv line 3 column "of": "ceiling" is not a word for this column; write flooring, subfloor or joist`},
		l.Faults); diff != "" {
		t.Error(diff)
	}
}

// A record has room for so many rows; no more are added than it can hold.
func TestFullRecord(t *testing.T) {
	rec := sound(t, nil)
	left := sheet.MostRows
	for _, table := range rec.Tables {
		left -= len(table.Rows)
	}
	rec.Tables = append(rec.Tables, grid.Table{Name: "Scan", Header: []string{"Area"}, Rows: make([]grid.Row, left-2)})
	const text = "Time,Temp (F),RH\n2026-03-14 08:00,70,45\n2026-03-14 08:10,70,45\n"
	if l := logged(t, rec, text, airLog()); l.Added != 2 {
		t.Errorf("%d rows were added", l.Added)
	}
	wants(t, err1(Log(rec, "x.csv", strings.NewReader(text+"2026-03-14 08:20,70,45\n"), airLog())),
		"x.csv: with these rows the record has more rows than fit into one record; split the record or thin its logger rows")
}

func FuzzExport(f *testing.F) {
	for _, text := range []string{
		"Device,Alpha\n\nDate Time,\"Temp, °F\",RH\n3/14/2026 8:00 AM,70.1,45\n", "Zeit;Temp [°C];RH\n14.03.2026 08:00;21,5;45\n",
		"\xff\xfeT\x00", "unix time\tTemp F\n1773493200\t70\n", "Date,Time,Temp\n,,degF\n2026/03/14,08:00Z,70\n",
	} {
		f.Add(text, "temp=#2 (F)", "month-first")
	}
	rec := sound(f, nil)
	f.Fuzz(func(t *testing.T, text, columns, order string) {
		l, err := Log(rec, "x.csv", strings.NewReader(text), Intake{Table: "air", Instrument: "T1", Columns: columns, Order: order})
		switch {
		case err != nil && (l.Table.Rows != nil || err.Error() == ""):
			t.Error("an error and a table")
		case err == nil && (l.Added+l.Repeated == 0 || l.Added != len(l.Table.Rows)):
			t.Errorf("%d rows and %d added", len(l.Table.Rows), l.Added)
		}
		for _, r := range l.Table.Rows {
			if len(r.Cells) != len(l.Table.Header) {
				t.Errorf("%d cells under %d headers", len(r.Cells), len(l.Table.Header))
			}
		}
	})
}
