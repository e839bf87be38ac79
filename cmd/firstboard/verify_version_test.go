package main

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"
)

// A workbook of another version, which makes another seal, is compared by its
// verdicts and outcomes, not by its pages.
func TestAnotherVersionIsHeldByItsOutcomes(t *testing.T) {
	t.Parallel()
	book := signedBook(t, "slab-rh:3:RH (%)=81.5")
	for _, c := range []struct{ name, sheet, from, to, says string }{
		{"as written", "", "", "", ""},
		{"a page in other words", "Cautions", "Caution", "To heed", ""},
		{"an outcome", "Area A1", "not met", "met", `Area A1: slab-rh is shown as "met", and it is not met`},
		{"a check that was not needed", "Area A1", "grade: the slab does not lie below grade", "nothing", "Area A1: does not show grade"},
		{"a verdict", "Area A1", "NO-GO, over a limit", "GO", "Area A1: does not show the verdict NO-GO, over a limit"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			now, err := opened(func(f *excelize.File) error {
				if c.sheet != "" {
					if err := showing(f, c.sheet, c.from, c.to); err != nil {
						return err
					}
				}
				return showing(f, "Decision", "Seal ", "Seal "+strings.Repeat("0", 64)+". firstboard 0.0.9, catalog of 37 checks.")
			})(book)
			if err != nil {
				t.Fatal(err)
			}
			broken, err := brokenBy(t, now)
			if err != nil || (c.says == "") != (len(broken) == 0) || c.says != "" && !slices.Contains(broken, c.says) {
				t.Errorf("verify says %q (%v), want %q", broken, err, c.says)
			}
		})
	}
}

// showing types over the first cell of a sheet that begins with a text.
func showing(f *excelize.File, sheet, begins, now string) error {
	rows, err := f.GetRows(sheet)
	if err != nil {
		return err
	}
	for y, row := range rows {
		if x := slices.IndexFunc(row, func(s string) bool { return strings.HasPrefix(s, begins) }); x >= 0 {
			at, err := excelize.CoordinatesToCellName(x+1, y+1)
			if err != nil {
				return err
			}
			return f.SetCellValue(sheet, at, now)
		}
	}
	return fmt.Errorf("nothing on %s begins with %q", sheet, begins)
}
