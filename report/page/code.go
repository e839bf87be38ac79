package page

import (
	"encoding/base64"
	"fmt"
	"html/template"
	"strings"

	"github.com/skip2/go-qrcode"
)

// squareCode is a text as a QR code (ISO/IEC 18004), so that a phone can read
// the seal off paper. A text too long for one gives none.
func squareCode(text string) template.HTML {
	if text == "" {
		return ""
	}
	code, err := qrcode.New(text, qrcode.Medium)
	if err != nil {
		return ""
	}
	dots := code.Bitmap()
	var path strings.Builder
	for y, row := range dots {
		for x, dark := range row {
			if dark {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x, y)
			}
		}
	}
	return template.HTML(fmt.Sprintf(
		`<svg viewBox="0 0 %d %d" class="code" role="img" aria-label="the seal as a QR code" xmlns="http://www.w3.org/2000/svg"><rect width="%d" height="%d" fill="#fff"/><path d="%s" fill="#000"/></svg>`,
		len(dots), len(dots), len(dots), len(dots), path.String()))
}

// embedded is a picture within the page.
func embedded(data []byte) template.URL {
	return template.URL("data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(data))
}
