package workbook

import "testing"

// Pictures never share a place, none stands beyond the edge of the sheet, and no
// line stays empty.
func TestPicturesArePackedWithoutOverlap(t *testing.T) {
	for n := 1; n <= 9; n++ {
		for mask := range 1 << n {
			wide := make([]bool, n)
			for i := range wide {
				wide[i] = mask>>i&1 == 1
			}
			slots, lines, abeam := packed(wide)
			taken := map[slot]bool{}
			filled := map[int]bool{}
			for i, s := range slots {
				for place := s.place; place <= s.place+ones(wide[i]); place++ {
					at := slot{s.line, place}
					if taken[at] || place >= abeam || s.line >= lines {
						t.Fatalf("%v: picture %d stands in line %d, place %d of %d", wide, i, s.line, place, abeam)
					}
					taken[at], filled[s.line] = true, true
				}
			}
			if len(filled) != lines || abeam > pictureAbeam {
				t.Fatalf("%v: %d of %d lines are filled, %d abeam", wide, len(filled), lines, abeam)
			}
		}
	}
}
