package intake

import (
	"bufio"
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"strings"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"golang.org/x/text/transform"

	"firstboard/report/record/sheet"
	"firstboard/report/untrusted"
)

// export is a logger's or meter's file as text. It is read several times,
// so that no more of it than a line is held.
type export struct {
	name string // base name of the file
	from io.ReadSeeker
	code encoding.Encoding
	says string // how its bytes are read
}

// openExport finds how the bytes of a file are to be read as text.
func openExport(name string, from io.ReadSeeker) (export, error) {
	head := make([]byte, 4096)
	n, err := io.ReadFull(from, head)
	if err != nil && !errors.Is(err, io.ErrUnexpectedEOF) && err != io.EOF {
		return export{}, unread(name, err)
	}
	t := export{name: name, from: from}
	if t.code, t.says = marked(head[:n]); t.code != nil {
		return t, nil
	}
	switch {
	case n == 0:
		return t, fmt.Errorf("%s: is empty; export the readings again", name)
	case bytes.HasPrefix(head, []byte("PK\x03\x04")), bytes.HasPrefix(head, []byte("\xd0\xcf\x11\xe0")):
		return t, fmt.Errorf("%s: is a workbook or an archive; save its sheet of readings as CSV", name)
	case bytes.IndexByte(head[:n], 0) >= 0:
		return t, fmt.Errorf("%s: is not text; export the readings as CSV", name)
	}
	return t, t.unmarked()
}

// marked is the encoding that a byte order mark tells, or that the zeros
// beside plain letters do.
func marked(head []byte) (encoding.Encoding, string) {
	little, big := unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), unicode.UTF16(unicode.BigEndian, unicode.UseBOM)
	odd, even := zeros(head)
	switch {
	case bytes.HasPrefix(head, []byte(sheet.ByteOrderMark)):
		return unicode.UTF8BOM, "UTF-8 with a byte order mark"
	case bytes.HasPrefix(head, []byte("\xff\xfe")):
		return little, "UTF-16, low byte first, with a byte order mark"
	case bytes.HasPrefix(head, []byte("\xfe\xff")):
		return big, "UTF-16, high byte first, with a byte order mark"
	case odd > len(head)/4 && even == 0:
		return little, "UTF-16, low byte first"
	case even > len(head)/4 && odd == 0:
		return big, "UTF-16, high byte first"
	}
	return nil, ""
}

// zeros counts the bytes of zero at odd and at even places.
func zeros(head []byte) (odd, even int) {
	for i, b := range head {
		switch {
		case b == 0 && i%2 == 1:
			odd++
		case b == 0:
			even++
		}
	}
	return odd, even
}

// unmarked settles the encoding of a file that tells none: UTF-8 where all of
// it is that, else the one of western Europe.
func (t *export) unmarked() error {
	t.code, t.says = unicode.UTF8, "UTF-8"
	if _, err := t.from.Seek(0, io.SeekStart); err != nil {
		return unread(t.name, err)
	}
	_, err := io.Copy(io.Discard, transform.NewReader(t.from, encoding.UTF8Validator))
	switch {
	case errors.Is(err, encoding.ErrInvalidUTF8):
		t.code, t.says = charmap.Windows1252, "Windows-1252, as it is not UTF-8"
	case err != nil:
		return unread(t.name, err)
	}
	return nil
}

func unread(name string, err error) error {
	return fmt.Errorf("%s: cannot be read (%w); check that it is a file and that you may read it", name,
		untrusted.Cause(err))
}

// scanner are the lines of an export, counted from 1.
type scanner struct {
	*bufio.Scanner
	name   string
	number int
	lost   error // the beginning could not be found
}

// lines are the lines of the text from its beginning.
func (t export) lines() *scanner {
	_, lost := t.from.Seek(0, io.SeekStart)
	l := &scanner{Scanner: bufio.NewScanner(transform.NewReader(t.from, t.code.NewDecoder())), name: t.name, lost: lost}
	l.Buffer(nil, longestLine)
	return l
}

// longestLine is the most bytes of a line: no row of readings comes near.
const longestLine = 1 << 20

func (l *scanner) next() bool {
	l.number++
	return l.lost == nil && l.Scan()
}

// err says why the lines ended before the file did.
func (l *scanner) err() error {
	switch err := cmp.Or(l.lost, l.Err()); {
	case errors.Is(err, bufio.ErrTooLong):
		return fmt.Errorf("%s line %d: is longer than any row of readings; export them again as CSV, a row a line",
			l.name, l.number)
	case err != nil:
		return unread(l.name, err)
	}
	return nil
}

// parted parts a line at a separator. A cell in quotes may hold the separator
// and doubled quotes; where quotes do not close, ok is false.
func parted(line string, sep byte, into []string) (cells []string, ok bool) {
	cells = into[:0]
	for {
		cell, rest, more, ok := firstCell(line, sep)
		if !ok {
			return cells, false
		}
		cells = append(cells, strings.TrimSpace(cell))
		if !more {
			return cells, true
		}
		line = rest
	}
}

func firstCell(line string, sep byte) (cell, rest string, more, ok bool) {
	quoted, opens := strings.CutPrefix(strings.TrimLeft(line, " "), `"`)
	if !opens {
		cell, rest, more = strings.Cut(line, string(sep))
		return cell, rest, more, true
	}
	end := 0
	for {
		at := strings.IndexByte(quoted[end:], '"')
		if at < 0 {
			return "", "", false, false
		}
		end += at + 1
		if !strings.HasPrefix(quoted[end:], `"`) {
			break
		}
		end++
	}
	after, rest, more := strings.Cut(quoted[end:], string(sep))
	return strings.ReplaceAll(quoted[:end-1], `""`, `"`), rest, more, strings.TrimSpace(after) == ""
}
