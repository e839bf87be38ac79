package sheet

import (
	"encoding/xml"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/grid"
)

// mostMerged is how many merged blocks of a sheet are kept.
const mostMerged = 100_000

// merged reads the blocks of cells that a sheet merges. Only the first cell of
// each is seen, and what another holds would be judged unseen.
func (r *reader) merged() error {
	return only(r.d, "mergeCell", func(e xml.StartElement) error {
		ref, _ := attr(e, "ref")
		b, err := blockAt(ref)
		if err != nil {
			return err
		}
		if len(r.src.Merged) == mostMerged {
			return errors.New("it has more merged cells than a table has rows")
		}
		r.src.Merged = append(r.src.Merged, b)
		return r.d.Skip()
	})
}

// cellAt is the column and row of a reference such as B7, or zero.
func cellAt(ref string) (column, row int) {
	i := 0
	for ; i < len(ref) && i < 4 && ref[i] >= 'A' && ref[i] <= 'Z'; i++ {
		column = column*26 + int(ref[i]-'A') + 1
	}
	if !evidence.Digits(ref[i:]) {
		return 0, 0
	}
	row, err := strconv.Atoi(ref[i:])
	if err != nil {
		return 0, 0
	}
	return column, row
}

// Block is a block of cells, its first and last ones with it.
type Block struct{ Left, Top, Right, Bottom int }

// blockAt is the block of a reference such as B7:C9.
func blockAt(ref string) (Block, error) {
	from, to, _ := strings.Cut(ref, ":")
	var b Block
	b.Left, b.Top = cellAt(from)
	b.Right, b.Bottom = b.Left, b.Top
	if to != "" {
		b.Right, b.Bottom = cellAt(to)
	}
	if b.Left == 0 || b.Right < b.Left || b.Bottom < b.Top {
		return b, fmt.Errorf("the merged cells %q are no block of cells", ref)
	}
	return b, nil
}

// String is the block as a spreadsheet names it: B7:C9.
func (b Block) String() string {
	return grid.Letters(b.Left) + strconv.Itoa(b.Top) + ":" + grid.Letters(b.Right) + strconv.Itoa(b.Bottom)
}

// Holds says whether a block of several cells reaches into the table: the
// columns of its header, from there to its last row.
func (s *Table) Holds(b Block) bool {
	return b != Block{b.Left, b.Top, b.Left, b.Top} && b.Left <= len(s.Header) && b.Top <= s.Last()
}
