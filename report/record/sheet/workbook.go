package sheet

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/xml"
	"errors"
	"fmt"
	"path"
	"strings"

	"firstboard/report/evidence"
	"firstboard/report/lists"
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

// listed is a sheet as the workbook lists it.
type listed struct {
	Name string `xml:"name,attr"`
	ID   string `xml:"id,attr"` // of its relationship
}

// openWorkbook reads the known tables of a workbook, hidden or not.
func (o *Source) openWorkbook(path string) error {
	data, err := load(path)
	if err != nil {
		return err
	}
	p, err := openPack(o.Name, data)
	if err != nil {
		return err
	}
	sum := sha256.Sum256(data)
	o.Sum = hex.EncodeToString(sum[:])
	return o.addSheets(&workbook{pack: p})
}

func (o *Source) addSheets(w *workbook) error {
	sheets, err := w.open()
	if err != nil {
		return err
	}
	o.Says = w.description()
	for _, s := range sheets {
		table := o.ofSheet(s.Name)
		part := w.partOf(s)
		if table == "" || part == "" {
			if o.copy != "" {
				continue
			}
			o.NotRead = append(o.NotRead, s.Name)
			o.Others = append(o.Others, Other{Name: s.Name, Sheet: true, First: w.firstRow(part)})
			continue
		}
		if was := o.Tables[table]; was != nil {
			return fmt.Errorf("%s: the sheets %q and %q are both the table %s; keep one of them", o.Name, was.Sheet,
				s.Name, table)
		}
		src := o.place(table, s.Name)
		if err := w.read(src, part); err != nil {
			return err
		}
		o.Tables[table] = src
	}
	return nil
}

// open reads all that the sheets share, and lists the sheets.
func (w *workbook) open() ([]listed, error) {
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
	list, err := w.list()
	if err == nil {
		err = w.shared()
	}
	if err != nil {
		return nil, w.damaged("%w", err)
	}
	return list, nil
}

// list lists the sheets, and finds from which year days count.
func (w *workbook) list() (list []listed, err error) {
	err = w.walk(w.part, func(d *xml.Decoder, root xml.StartElement) error {
		return children(d, func(e xml.StartElement) error {
			switch e.Name.Local {
			case "workbookPr":
				return errors.Join(w.since(e), d.Skip())
			case "sheets":
				return only(d, "sheet", func(e xml.StartElement) error {
					var s listed
					err := d.DecodeElement(&s, &e)
					list = append(list, s)
					return err
				})
			}
			return passed(d, root.Name.Space, "workbook", "workbookPr", "sheets")
		})
	})
	return list, err
}

// since finds from which year days count.
func (w *workbook) since(properties xml.StartElement) error {
	switch s, _ := attr(properties, "date1904"); s {
	case "1", "true":
		w.since04 = true
	case "", "0", "false":
	default:
		return fmt.Errorf("its date1904 is %s, neither true nor false", evidence.Quote(s))
	}
	return nil
}

// description is what a workbook says of itself, empty where it says nothing.
func (w *workbook) description() string {
	var properties struct {
		Description string `xml:"description"`
	}
	root, err := w.pack.links("")
	if err == nil {
		err = w.walk(root.kind("core-properties"), func(d *xml.Decoder, root xml.StartElement) error {
			return d.DecodeElement(&properties, &root)
		})
	}
	if err != nil {
		return "" // nothing of a record depends on it
	}
	return properties.Description
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
func (w *workbook) partOf(s listed) string {
	link, found := lists.First(w.links.Links, func(l link) bool { return l.ID == s.ID })
	switch {
	case !found:
		return "the part of the sheet " + s.Name
	case path.Base(link.Type) != "worksheet":
		return ""
	}
	return link.Target
}

// links are the relationships of a part: targets by their ids and kinds.
type links struct {
	Links []link `xml:"Relationship"`
}

type link struct {
	ID     string `xml:"Id,attr"`
	Type   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
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
	first, _ := lists.First(l.Links, func(l link) bool { return path.Base(l.Type) == kind })
	return first.Target
}
