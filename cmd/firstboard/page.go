package main

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	_ "image/png" // photos may be either
	"io/fs"
	"os"
	"path/filepath"

	"golang.org/x/image/draw"

	"firstboard/report/page"
	"firstboard/report/untrusted"
)

// page is all that the web page shows, with photos where their folder is given.
func (j judged) page(photos string) (page.Page, error) {
	p := page.Page{Statement: j.statement()}
	if at, err := os.Stat(photos); photos != "" && (err != nil || !at.IsDir()) {
		return p, fmt.Errorf("--photos %s: there is no such folder; check the name", photos)
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
	path := filepath.Join(folder, name)
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		path = filepath.Join(folder, filepath.Base(name))
	}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	data, err := untrusted.Read(path, untrusted.Wanted{
		Give: "a JPEG or PNG picture", Most: 64 << 20,
		Smaller: "scale it down",
	})
	if err != nil {
		return err
	}
	photo.SHA256 = hexSum(data)
	size, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err == nil && int64(size.Width)*int64(size.Height) > mostDots {
		return fmt.Errorf("%s: is a picture of over %d million dots; scale it down", photo.File, mostDots/1_000_000)
	}
	if photo.Data, err = scaled(data); err != nil {
		return fmt.Errorf("%s: is no JPEG or PNG picture; give one, or take it out of Photos", photo.File)
	}
	return nil
}

// mostDots is the most dots of a photo: a few bytes can say that a picture is as
// large as no memory.
const mostDots = 64_000_000

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
