package record

import (
	"encoding/xml"
	"errors"
	"fmt"
	"strconv"
	"strings"
)

// mostMerged is how many merged blocks of a sheet are kept.
const mostMerged = 100_000

// merged reads the blocks of cells that a sheet merges. Only the first cell of
// each is seen, and what another holds would be judged unseen.
func (r *reader) merged() error {
	return children(r.d, func(e xml.StartElement) error {
		if e.Name.Local != "mergeCell" {
			return r.d.Skip()
		}
		ref, _ := attr(e, "ref")
		b, err := blockAt(ref)
		if err != nil {
			return err
		}
		if len(r.src.merged) == mostMerged {
			return errors.New("it has more merged cells than a table has rows")
		}
		r.src.merged = append(r.src.merged, b)
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

// String is the block as a spreadsheet names it: B7:C9.
func (b block) String() string {
	return columnLetters(b.left) + strconv.Itoa(b.top) + ":" + columnLetters(b.right) + strconv.Itoa(b.bottom)
}

// holds says whether a block of several cells reaches into the table: the
// columns of its header, from there to its last row.
func (s *source) holds(b block) bool {
	last := 1
	if n := len(s.Rows); n > 0 {
		last = s.Rows[n-1].Number
	}
	return b != block{b.left, b.top, b.left, b.top} && b.left <= len(s.Header) && b.top <= last
}
