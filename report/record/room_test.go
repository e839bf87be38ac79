package record

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"strings"
	"testing"
)

// bomb is a small file with a sheet of 300 MB.
func bomb(t *testing.T) []byte {
	return handWritten(t, nil).with(t, func(z *zip.Writer) error {
		_, err := z.CreateRaw(&zip.FileHeader{Name: airSheet, Method: zip.Deflate, UncompressedSize64: 300 << 20})
		return err
	})
}

// A part that unpacks to more than its archive says is refused as it goes.
func TestLyingArchive(t *testing.T) {
	var packed bytes.Buffer
	w, err := flate.NewWriter(&packed, flate.BestSpeed)
	if err != nil {
		t.Fatal(err)
	}
	sheet := worksheet(plainRows(t, airHead+strings.Repeat("2026-03-04 08:30,70,40,T1,\n", 1000)))
	if _, err := w.Write([]byte(sheet)); err != nil {
		t.Fatal(err)
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	p := airBook(t, "")
	delete(p, airSheet)
	data := p.with(t, func(z *zip.Writer) error {
		raw, err := z.CreateRaw(&zip.FileHeader{
			Name: airSheet, Method: zip.Deflate, CompressedSize64: uint64(packed.Len()),
			UncompressedSize64: 1000,
		})
		if err == nil {
			_, err = raw.Write(packed.Bytes())
		}
		return err
	})
	wants(t, faulty(t, saved(t, data)),
		`mill.xlsx: the workbook is damaged: the sheet "Air" does not read to its end: `+airSheet+": zip: not a valid zip file"+again)
}

// The sheet that has no room is named, in a sentence.
func TestSheetTooBig(t *testing.T) {
	p := airBook(t, "").swap(t, airSheet, inline("Note"), inline("Note")+`<c r="XFD1" t="inlineStr"><is><t>x</t></is></c>`)
	wants(t, faulty(t, p.save(t)), `mill.xlsx "Air": has a header beyond column 256; keep the table's own columns`)
}
