package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"image"
	"image/jpeg"
	_ "image/png" // photos may be either
	"os"
	"path/filepath"

	"golang.org/x/image/draw"

	"firstboard/report"
	"firstboard/report/page"
)

// page is all that the web page shows, with photos where their folder is given.
func (j judged) page(photos string) (page.Page, error) {
	p := page.Page{
		Job: j.Job, Record: j.Name, SHA256: j.SHA256, Tool: madeWith(), Seal: j.seal,
		Decisions: j.decisions, Advice: j.advice, Rules: report.Rules(), Limits: report.LimitLines(j.decisions), Cautions: report.Cautions(),
	}
	for _, of := range j.Job.Photos {
		photo := page.Photo{Area: of.Area, File: of.File, Of: of.Of, TakenAt: of.TakenAt.Written}
		if photos != "" {
			if err := embed(&photo, photos); err != nil {
				return p, exit{exitUnusable, err}
			}
		}
		p.Photos = append(p.Photos, photo)
	}
	return p, nil
}

// embed reads a photo from a folder, or from a folder below it, and scales it
// down. A photo that is not there is told on the page.
func embed(photo *page.Photo, folder string) error {
	name := filepath.FromSlash(photo.File)
	if !filepath.IsLocal(name) {
		return fmt.Errorf("%s: a photo lies in the folder given, not outside it", photo.File)
	}
	data, err := os.ReadFile(filepath.Join(folder, name))
	if os.IsNotExist(err) {
		data, err = os.ReadFile(filepath.Join(folder, filepath.Base(name)))
	}
	switch {
	case os.IsNotExist(err):
		return nil
	case err != nil:
		return fmt.Errorf("%s: cannot be read", photo.File)
	}
	sum := sha256.Sum256(data)
	photo.SHA256 = hex.EncodeToString(sum[:])
	photo.Data, err = scaled(data)
	if err != nil {
		return fmt.Errorf("%s: is no JPEG or PNG picture", photo.File)
	}
	return nil
}

// scaled is a picture as a JPEG of at most so many dots either way.
func scaled(data []byte) ([]byte, error) {
	const most, quality = 900, 72
	from, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	size := from.Bounds().Size()
	if longest := max(size.X, size.Y); longest > most {
		size = image.Pt(max(1, size.X*most/longest), max(1, size.Y*most/longest))
	}
	to := image.NewRGBA(image.Rectangle{Max: size})
	draw.CatmullRom.Scale(to, to.Bounds(), from, from.Bounds(), draw.Src, nil)
	var out bytes.Buffer
	err = jpeg.Encode(&out, to, &jpeg.Options{Quality: quality})
	return out.Bytes(), err
}
