package record

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/xml"
	"fmt"
	"path"
	"strings"

	"firstboard/report/evidence"
)

// workbook is a workbook on its way to tables.
type workbook struct {
	pack
	part    string // the workbook's own
	links   links
	since04 bool // days count from 1904
	texts   []string
	formats []format // of the cells' styles
}

// sheet is a sheet as the workbook lists it.
type sheet struct {
	Name string `xml:"name,attr"`
	ID   string `xml:"id,attr"` // of its relationship
}

// openWorkbook reads the known tables of a workbook, hidden or not.
func openWorkbook(name, path string) (origin, error) {
	data, err := load(name, path)
	if err != nil {
		return origin{}, err
	}
	p, err := openPack(name, data)
	if err != nil {
		return origin{}, err
	}
	sum := sha256.Sum256(data)
	o := newOrigin(name)
	o.sum = hex.EncodeToString(sum[:])
	return o, o.addSheets(&workbook{pack: p})
}

func (o *origin) addSheets(w *workbook) error {
	sheets, err := w.open()
	if err != nil {
		return err
	}
	for _, s := range sheets {
		table := tableOfSheet(s.Name)
		part := w.partOf(s)
		if table == "" || part == "" {
			o.notRead = append(o.notRead, s.Name)
			o.others = append(o.others, other{name: s.Name, sheet: true, first: w.firstRow(part)})
			continue
		}
		if was := o.tables[table]; was != nil {
			return fmt.Errorf("%s: the sheets %q and %q are both the table %s; keep one of them", o.name, was.sheet, s.Name, table)
		}
		src := o.source(table, o.name, s.Name)
		if err := w.read(src, part); err != nil {
			return err
		}
		o.tables[table] = src
	}
	if len(o.tables) == 0 && !o.resembles() {
		return fmt.Errorf("%s: no sheet is a table of a record; name its sheets as the tables are, such as Areas and Slab RH", o.name)
	}
	return nil
}

// tableOfSheet is the table a sheet name stands for, or empty.
func tableOfSheet(sheet string) string {
	for _, s := range schemas() {
		if evidence.Same(sheet, s.title()) {
			return s.title()
		}
	}
	return ""
}

// open reads all that the sheets share, and lists the sheets.
func (w *workbook) open() ([]sheet, error) {
	root, err := w.pack.links("")
	if err != nil {
		return nil, w.damaged("%w", err)
	}
	if w.part = root.kind("officeDocument"); w.part == "" {
		w.part = "xl/workbook.xml"
	}
	if !w.has(w.part) || path.Ext(w.part) != ".xml" {
		return nil, fmt.Errorf("%s: is not an .xlsx workbook; save it as one", w.name)
	}
	var list struct {
		Properties struct {
			Since04 string `xml:"date1904,attr"`
		} `xml:"workbookPr"`
		Sheets []sheet `xml:"sheets>sheet"`
	}
	err = w.walk(w.part, func(d *xml.Decoder, root xml.StartElement) error { return d.DecodeElement(&list, &root) })
	if err != nil {
		return nil, w.damaged("%w", err)
	}
	w.since04 = list.Properties.Since04 == "1" || list.Properties.Since04 == "true"
	if err := w.shared(); err != nil {
		return nil, w.damaged("%w", err)
	}
	return list.Sheets, nil
}

// shared reads the texts and styles that all sheets share, where there are
// any.
func (w *workbook) shared() (err error) {
	if w.links, err = w.pack.links(w.part); err != nil {
		return err
	}
	if part := w.links.kind("sharedStrings"); part != "" {
		if err := w.walk(part, w.readTexts); err != nil {
			return err
		}
	}
	if part := w.links.kind("styles"); part != "" {
		return w.walk(part, w.readStyles)
	}
	return nil
}

// partOf is the part that holds a sheet's cells; charts have none.
func (w *workbook) partOf(s sheet) string {
	for _, link := range w.links.Links {
		if link.ID == s.ID {
			if path.Base(link.Type) != "worksheet" {
				return ""
			}
			return link.Target
		}
	}
	return "the part of the sheet " + s.Name
}

// links are the relationships of a part: targets by their ids and kinds.
type links struct {
	Links []struct {
		ID     string `xml:"Id,attr"`
		Type   string `xml:"Type,attr"`
		Target string `xml:"Target,attr"`
	} `xml:"Relationship"`
}

// links are the relationships of a part, with targets as part names. A part
// without any has none.
func (p pack) links(part string) (links, error) {
	var l links
	folder, base := path.Split(part)
	rels := folder + "_rels/" + base + ".rels"
	if !p.has(rels) {
		return l, nil
	}
	err := p.walk(rels, func(d *xml.Decoder, root xml.StartElement) error { return d.DecodeElement(&l, &root) })
	for i, link := range l.Links {
		target := strings.ReplaceAll(link.Target, `\`, "/")
		if !strings.HasPrefix(target, "/") {
			target = path.Join("/", folder, target)
		}
		l.Links[i].Target = strings.TrimPrefix(path.Clean(target), "/")
	}
	return l, err
}

// kind is the target of the first relationship of a kind, or empty.
func (l links) kind(kind string) string {
	for _, link := range l.Links {
		if path.Base(link.Type) == kind {
			return link.Target
		}
	}
	return ""
}
