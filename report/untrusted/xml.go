package untrusted

import (
	"bytes"
	"errors"
	"fmt"
	"io"
)

// What XML may be at most. The longest text of a workbook is that of a cell,
// 32,767 letters, each of which takes a dozen bytes at the most.
const (
	LongestText = 1 << 20
	deepest     = 1000
)

// TooLong says that a text or a tag is longer than LongestText.
const TooLong = "it holds a text or a tag longer than 1 MB, and a cell holds 32,767 letters"

// XML is a text on its way to a decoder, which it stops before a text, a tag or
// a comment that is too long or an element that is nested too deep.
type XML struct {
	from  io.Reader
	err   error
	mode  mode
	prior byte
	quote byte   // that ends what is in quotes
	ends  string // of a comment, letters as they are, or an instruction
	began []byte // what follows <! so far
	run   int    // bytes since the last <
	depth int
}

// mode is what the next byte is part of.
type mode int

const (
	inText mode = iota
	begun       // after <
	inTag
	inQuotes
	declared   // after <!, before it is known what this is
	inVerbatim // up to ends, whatever comes
)

// Bounded is XML that is read from r.
func Bounded(r io.Reader) *XML { return &XML{from: r} }

// Read gives bytes that are within bounds, or the error that they are not.
func (x *XML) Read(into []byte) (int, error) {
	if x.err != nil {
		return 0, x.err
	}
	n, err := x.from.Read(into)
	for _, b := range into[:n] {
		if x.run++; x.run > LongestText {
			x.err = errors.New(TooLong)
		}
		if x.next(b); x.depth > deepest {
			x.err = fmt.Errorf("its elements are nested over %d deep", deepest)
		}
		if x.err != nil {
			return 0, x.err
		}
		x.prior = b
	}
	return n, err
}

func (x *XML) next(b byte) {
	switch x.mode {
	case inText:
		if b == '<' {
			x.mode, x.run = begun, 0
		}
	case begun:
		x.begin(b)
	case inTag:
		x.tag(b)
	case inQuotes:
		if b == x.quote {
			x.mode = inTag
		}
	case declared:
		x.declare(b)
	case inVerbatim:
		x.began = append(x.began, b)
		if over := len(x.began) - len(x.ends); over > 0 {
			x.began = append(x.began[:0], x.began[over:]...)
		}
		if string(x.began) == x.ends {
			x.mode = inText
		}
	}
}

func (x *XML) begin(b byte) {
	switch b {
	case '/':
		x.depth--
		x.mode = inText
	case '!':
		x.mode, x.began = declared, x.began[:0]
	case '?':
		x.verbatim("?>")
	default:
		x.depth++
		x.mode = inTag
		x.tag(b)
	}
}

func (x *XML) verbatim(ends string) { x.mode, x.ends, x.began = inVerbatim, ends, x.began[:0] }

func (x *XML) tag(b byte) {
	switch b {
	case '\'', '"':
		x.mode, x.quote = inQuotes, b
	case '>':
		x.mode = inText
		if x.prior == '/' {
			x.depth--
		}
	}
}

// declare tells a comment from letters as they are, and takes nothing else.
func (x *XML) declare(b byte) {
	x.began = append(x.began, b)
	switch {
	case bytes.Equal(x.began, []byte("--")):
		x.verbatim("-->")
	case bytes.Equal(x.began, []byte("[CDATA[")):
		x.verbatim("]]>")
	case !bytes.HasPrefix([]byte("--"), x.began) && !bytes.HasPrefix([]byte("[CDATA["), x.began):
		x.err = errors.New("it declares a document type, which no part of a workbook may")
	}
}
