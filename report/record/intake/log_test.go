package intake

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"firstboard/report/grid"
	"firstboard/report/record"
)

// airLog is an intake of the small record's air meter.
func airLog() Intake { return Intake{Table: "air", Instrument: "T1"} }

// logged brings a text into the small record.
func logged(t testing.TB, rec record.Record, text string, in Intake) Logged {
	t.Helper()
	l, err := Log(rec, "x.csv", strings.NewReader(text), in)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// texts are a table's header and rows, a line each.
func texts(table grid.Table) string {
	all := []string{strings.Join(table.Header, "|")}
	for _, r := range table.Rows {
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, c.Text)
		}
		all = append(all, strings.Join(cells, "|"))
	}
	return strings.Join(all, "\n")
}

// Each layout says the same two readings of 14 March 2026.
func TestLayouts(t *testing.T) {
	const inF = "Read at|Temp (F)|RH (%)|Instrument\n2026-03-14 08:00|70.10|45|T1\n2026-03-14 08:10|70.2|45.5|T1"
	rec := sound(t, nil)
	for name, c := range map[string]struct{ text, want, guess string }{
		"comma": {
			"Device,Alpha\nStarted,2026-03-13 07:00\n\n\"\",Date Time,\"Temp, °F\",\"RH, %\",Battery\n1,3/14/2026 8:00 AM,70.10,45,3.1\n2,3/14/2026 8:10 AM,70.2,45.5,3.1\n",
			inF,
			`header: line 4|Read at: column "Date Time", dates month first, with AM and PM, such as "3/14/2026 8:00 AM" in line 5|` +
				`Temp: column "Temp, °F", in F (from the header)|not used: "Battery"`,
		},
		"semicolon": {
			"\ufeffZeit;Temperature [°C];Rel. humidity\r\n14.03.2026 08:00:00;21,50;45\r\n14.03.2026 08:10:30;-1,25;45,5 %\r\n",
			"Read at|Temp (C)|RH (%)|Instrument\n2026-03-14 08:00|21.50|45|T1\n2026-03-14 08:10:30|-1.25|45.5|T1",
			`text: UTF-8 with a byte order mark|separator: semicolons|numbers: decimal comma, as in "21,50" in line 2|` +
				`Read at: column "Zeit", dates day first, such as "14.03.2026 08:00:00" in line 2|RH: column "Rel. humidity", in % (from "45,5 %" in line 3)`,
		},
		"tab, two columns of time, a line of units": {
			"Date\tTime\tTemp\tHumidity\n\t\tdegF\t%RH\n2026/03/14\t08:00\t70.10\t45\n2026/03/14\t08:10\t70.2\t45.5\n",
			inF,
			`separator: tabs|Read at: columns "Date" and "Time", dates year first, such as "2026/03/14 08:00" in line 3|Temp: column "Temp", in F (from the line below the header)`,
		},
		"quoted, units in the cells": {
			"\"Time\",\"Temp\",\"RH\"\n\"2026-03-14T08:00:00.000\",\"70,10 °F\",\"45\"\n\"2026-03-14T08:10:00.000\",\"70,2 °F\",\"45,5\"\n",
			inF,
			`Temp: column "Temp", in F (from "70,10 °F" in line 2)`,
		},
		"seconds since 1970": { // date -u -d '2026-03-14 13:00' +%s
			"unix time,Serial,Temp_F,RH\n1773493200,1773493200,70.10,45\n1773493800,1773493200,+70.2,45.5\n",
			inF,
			`Read at: column "unix time", counted from 1970 in UTC, brought to America/Chicago, such as "1773493200" in line 2`,
		},
		"milliseconds since 1970": {
			"timestamp;Temp F;RH\n1773493200000;70.10;45\n1773493800000;70.2;45.5\n", inF, "separator: semicolons",
		},
		"a zone in the header": {
			"\"Date Time, GMT-06:00\",Temp (F),RH\n2026-03-14 07:00,70.10,45\n2026-03-14 07:10,70.2,45.5\n", inF, "",
		},
		"a zone in the cells": {
			"Time,Temp (F),RH\n2026-03-14T14:00+01:00,70.10,45\n2026-03-14T13:10Z,70.2,45.5\n", inF, "",
		},
		"bytes of western Europe": {
			"Time,Temp (\xb0F),RH\n2026-03-14 08:00,70.10,45\n2026-03-14 08:10,70.2,45.5\n", inF,
			"text: Windows-1252, as it is not UTF-8",
		},
	} {
		t.Run(name, func(t *testing.T) {
			l := logged(t, rec, c.text, airLog())
			if diff := cmp.Diff(c.want, texts(l.Table)); diff != "" {
				t.Error(diff)
			}
			if c.guess == "" {
				return
			}
			for _, want := range strings.Split(c.guess, "|") {
				if all := strings.Join(l.Guesses, "\n"); !strings.Contains(all+"\n", want+"\n") {
					t.Errorf("no guess %q in\n%s", want, all)
				}
			}
		})
	}
}

// The date that settles the order is named, wherever it stands.
func TestTellingDate(t *testing.T) {
	l := logged(t, sound(t, nil), "Time,Temp (F),RH\n3/4/2026 08:00,70,45\n3/13/2026 08:00,70,45\n3/14/2026 08:00,70,45\n", airLog())
	if want := `Read at: column "Time", dates month first, such as "3/13/2026 08:00" in line 3`; !slices.Contains(l.Guesses, want) {
		t.Errorf("no %q in %q", want, l.Guesses)
	}
}

// UTF-16 is told by its mark or by its zeros.
func TestUTF16(t *testing.T) {
	const text = "Time\tTemp (°F)\tRH\n2026-03-14 08:00\t70.1\t45\n"
	rec := sound(t, nil)
	for name, c := range map[string]struct {
		mark string
		high int // the place of the high byte
	}{"marked, low": {"\xff\xfe", 1}, "marked, high": {"\xfe\xff", 0}, "low": {"", 1}, "high": {"", 0}} {
		t.Run(name, func(t *testing.T) {
			b := []byte(c.mark)
			for _, r := range text {
				pair := []byte{byte(r), byte(r)}
				pair[c.high] = 0
				b = append(b, pair...)
			}
			l := logged(t, rec, string(b), airLog())
			wants(t, texts(l.Table), "Read at|Temp (F)|RH (%)|Instrument\n2026-03-14 08:00|70.1|45|T1")
		})
	}
}

// What a person tells goes before what is guessed, and columns may be told by
// their numbers.
func TestTold(t *testing.T) {
	rec := sound(t, nil)
	l := logged(t, rec, "When,Other,A (sensor),A (sensor),Wet\n3/4/2026 08:00,2026-03-05 09:00,70,71,45\n", Intake{
		Table: "air", Area: "a1", Instrument: "t1", Order: "day-first",
		Columns: "time=When, temp=#3 (F),rh=Wet, note=#4", Fill: "by=Ada, night shift",
	})
	wants(t, texts(l.Table), "Area|Read at|Temp (F)|RH (%)|Instrument|By|Note\nA1|2026-04-03 08:00|70|45|T1|Ada, night shift|71")
}

func err1(_ Logged, err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}
