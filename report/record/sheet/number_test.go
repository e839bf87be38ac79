package sheet

import (
	"strings"
	"testing"

	"firstboard/report/grid"
)

// A spreadsheet keeps 15 digits and may store 17.
func TestMeant(t *testing.T) {
	for stored, want := range map[string]string{
		"84.7":                  "84.7",
		"84.70":                 "84.70",
		"84.700000000000003":    "84.7",
		"0.30000000000000004":   "0.3",
		"2.9999999999999996":    "3",
		"4.0999999999999996":    "4.1",
		"1.7000000000000001E-2": "0.017",
		"7E1":                   "70",
		"-0.001":                "-0.001",
		"007":                   "7",
		"123456789012345678":    "123456789012346000",
		"0":                     "0",
	} {
		if got, ok := meant(stored); !ok || got != want {
			t.Errorf("%s means %s, not %s", stored, got, want)
		}
	}
	for _, stored := range []string{"", "NaN", "inf", "0x1p-2", "1_0", "1e999", "e", ".", "1.2.3", "--1"} {
		if got, ok := meant(stored); ok {
			t.Errorf("%q means %s", stored, got)
		}
	}
}

func TestFormats(t *testing.T) {
	for code, want := range map[string]format{
		"General": general, "@": general, "0.00E+00": general, `0.0;-0.0`: general, "0 x": general,
		"0": decimals, "": decimals, `"`: decimals, "[": decimals, `\`: decimals, `0"%"`: decimals, `0\d`: decimals, "[$-409]0": decimals,
		"0.00": decimals + 2, `0.0" hours"`: decimals + 1, "#,##0.0_y": decimals + 1, "[Red]0.0": decimals + 1,
		"0." + strings.Repeat("0", 99): decimals + mostDecimals,
		"0%":                           percentage, "0.0 %": percentage,
		"yyyy-mm-dd": dayFormat, "d/m/yy": dayFormat, "[$-409]mmmm d": dayFormat,
		"yyyy-mm-dd hh:mm": clockFormat, "[h]:mm": clockFormat, "[ss]": clockFormat, "m/d/yy h:mm AM/PM": clockFormat,
	} {
		if got := formatOf(code); got != want {
			t.Errorf("%q is %d, not %d", code, got, want)
		}
	}
	for id, want := range map[int]format{
		0: general, 2: decimals + 2, 4: decimals + 2, 9: percentage, 10: percentage, 11: general,
		14: dayFormat, 22: clockFormat, 46: clockFormat, 49: general,
	} {
		if got := builtIn(id); got != want {
			t.Errorf("%d is %d, not %d", id, got, want)
		}
	}
}

// A record shares one room, so that a small archive cannot fill a machine.
func TestRoom(t *testing.T) {
	o := &Source{Name: "mill.xlsx", left: &Room{rows: 4, cells: 5, bytes: 1000}}
	put := func(s *Table, row, column int) error {
		return s.put(row, column, grid.Cell{Kind: grid.TextCell, Text: "x"})
	}
	air, wood := o.table("Air", o.Name, "Air"), o.table("Wood", o.Name, "Wood")
	air.Header, wood.Header = []string{"Read at", "Note"}, []string{"Area", "Note"}
	for _, err := range []error{put(air, 2, 0), put(air, 2, 1), put(wood, 2, 0), put(wood, 2, 9), put(wood, 2, 10)} {
		if err != nil {
			t.Fatal(err)
		}
	}
	const want = "has more rows than fit into one record; split the record or thin its logger rows"
	if err := put(air, 3, 0); err == nil || err.Error() != want {
		t.Errorf("a row beyond the cells: %v", err)
	}
	*o.left = Room{cells: 5, bytes: 1000}
	if err := put(wood, 3, 9); err == nil || err.Error() != want {
		t.Errorf("a row beyond the rows: %v", err)
	}
}

func TestTooManyBytes(t *testing.T) {
	var text strings.Builder
	b := bounded{&text, 5}
	if _, err := b.Write([]byte("12345")); err != nil {
		t.Error(err)
	}
	if _, err := b.Write([]byte("6")); err == nil || text.String() != "12345" {
		t.Errorf("%v, %q", err, text.String())
	}
}
