package seal

import (
	"strconv"
	"strings"

	"firstboard/report/lists"
)

type stylesPart struct {
	Formats []numberFormat `xml:"numFmts>numFmt"`
	Fonts   []fontPart     `xml:"fonts>font"`
	Fills   []fillPart     `xml:"fills>fill"`
	Cells   []struct {
		Format int `xml:"numFmtId,attr"`
		Font   int `xml:"fontId,attr"`
		Fill   int `xml:"fillId,attr"`
	} `xml:"cellXfs>xf"`
	Marks []markPart `xml:"dxfs>dxf"`
}

// markPart is how a conditional format changes a cell.
type markPart struct {
	Format numberFormat `xml:"numFmt"`
	Font   fontPart     `xml:"font"`
	Fill   fillPart     `xml:"fill"`
}

type numberFormat struct {
	ID   int    `xml:"numFmtId,attr"`
	Code string `xml:"formatCode,attr"`
}

type fontPart struct {
	Size struct {
		Points string `xml:"val,attr"`
	} `xml:"sz"`
	Color colorPart `xml:"color"`
}

type fillPart struct {
	Pattern struct {
		Kind string    `xml:"patternType,attr"`
		Fore colorPart `xml:"fgColor"`
		Back colorPart `xml:"bgColor"`
	} `xml:"patternFill"`
}

type colorPart struct {
	RGB   string `xml:"rgb,attr"`
	Theme string `xml:"theme,attr"`
}

// color is red, green and blue in hex, empty where none is told. The first two
// of a theme are white and black.
func (c colorPart) color() string {
	switch {
	case c.Theme == "0":
		return "FFFFFF"
	case c.Theme == "1":
		return "000000"
	case len(c.RGB) == len("AARRGGBB"):
		return strings.ToUpper(c.RGB[2:])
	}
	return strings.ToUpper(c.RGB)
}

// readStyles reads how cells show what they hold.
func (b *book) readStyles(part string) error {
	if part == "" {
		return nil
	}
	var styles stylesPart
	if err := b.decode(part, &styles); err != nil {
		return err
	}
	codes := builtIn()
	for _, f := range styles.Formats {
		codes[f.ID] = f.Code
	}
	for _, c := range styles.Cells {
		shows := formatSays(codes[c.Format])
		if c.Font >= 0 && c.Font < len(styles.Fonts) && c.Fill >= 0 && c.Fill < len(styles.Fills) &&
			styles.Fonts[c.Font].unseen(styles.Fills[c.Fill]) {
			shows += " that cannot be seen"
		}
		b.formats = append(b.formats, shows)
	}
	b.looks = lists.Each(styles.Marks, func(m markPart) string {
		return strings.TrimSpace(wordsOf(m.Format.Code) + " " + m.Font.Color.color() + " on " + m.Fill.Pattern.Back.color())
	})
	return nil
}

// unseen says whether letters have the color of their ground, or no size.
func (f fontPart) unseen(ground fillPart) bool {
	const least = 4
	if points, err := strconv.ParseFloat(f.Size.Points, 64); err == nil && points < least {
		return true
	}
	under := lists.If(ground.Pattern.Kind == "solid", ground.Pattern.Fore.color(), "FFFFFF")
	return f.Color.color() != "" && f.Color.color() == under
}
