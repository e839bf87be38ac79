package record

import (
	"encoding/xml"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"firstboard/report"
)

// merged finds what lies under the merged cells of a sheet. Only the first
// cell of each is seen; what another still holds would be judged unseen. As
// no two of them may overlap, they cover no more cells than the table has.
func (r *reader) merged() error {
	left := len(r.src.Rows) * len(r.src.Header)
	return children(r.d, func(e xml.StartElement) error {
		if e.Name.Local != "mergeCell" {
			return r.d.Skip()
		}
		ref, _ := attr(e, "ref")
		b, err := blockAt(ref)
		if err != nil {
			return err
		}
		if left -= r.src.cover(b); left < 0 {
			return errors.New("its merged cells overlap")
		}
		return r.d.Skip()
	})
}

// cellAt is the column and row of a reference such as B7, or zero.
func cellAt(ref string) (column, row int) {
	i := 0
	for ; i < len(ref) && i < 4 && ref[i] >= 'A' && ref[i] <= 'Z'; i++ {
		column = column*26 + int(ref[i]-'A') + 1
	}
	if !digits(ref[i:]) {
		return 0, 0
	}
	row, err := strconv.Atoi(ref[i:])
	if err != nil {
		return 0, 0
	}
	return column, row
}

// block is a block of cells, its first and last ones with it.
type block struct{ left, top, right, bottom int }

// blockAt is the block of a reference such as B7:C9.
func blockAt(ref string) (block, error) {
	from, to, _ := strings.Cut(ref, ":")
	var b block
	b.left, b.top = cellAt(from)
	b.right, b.bottom = b.left, b.top
	if to != "" {
		b.right, b.bottom = cellAt(to)
	}
	if b.left == 0 || b.right < b.left || b.bottom < b.top {
		return b, fmt.Errorf("the merged cells %q are no block of cells", ref)
	}
	return b, nil
}

// cover marks what a block covers but for its first cell, and gives the
// number of cells it went over.
func (s *source) cover(b block) int {
	first, _ := slices.BinarySearchFunc(s.Rows, b.top, func(r report.TableRow, top int) int { return r.Number - top })
	seen := 0
	for _, row := range s.Rows[first:] {
		if row.Number > b.bottom {
			break
		}
		for at := b.left; at <= min(b.right, len(row.Cells)); at++ {
			seen++
			if c := &row.Cells[at-1]; c.Kind != report.BlankCell && (row.Number != b.top || at != b.left) {
				c.Kind = coveredCell
			}
		}
	}
	return seen
}
