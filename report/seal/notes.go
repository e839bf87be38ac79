package seal

import "firstboard/report/lists"

// beside reads what a sheet refers to and does not hold itself: notes on its
// cells, and controls.
func (s *sheetReader) beside() error {
	for _, l := range s.links {
		switch kind := lists.If(l.outside(), "", l.Kind); kind {
		case "comments", "threadedComment":
			if err := s.comments(l.Target); err != nil {
				return err
			}
		case "vmlDrawing":
			s.controls(l.Target)
		}
	}
	return nil
}

// comments reads notes on cells.
func (s *sheetReader) comments(part string) error {
	var p struct {
		Notes []struct {
			At   string   `xml:"ref,attr"`
			Text richText `xml:"text"`
		} `xml:"commentList>comment"`
		Threads []struct {
			At   string `xml:"ref,attr"`
			Text string `xml:"text"`
		} `xml:"threadedComment"`
	}
	if err := s.decode(part, &p); err != nil {
		return err
	}
	for _, n := range p.Notes {
		s.mark("comment on", n.At+":", seen(string(n.Text)))
	}
	for _, n := range p.Threads {
		s.mark("comment on", n.At+":", seen(n.Text))
	}
	return nil
}

// controls reads what lies on a sheet in an older form than drawings: buttons
// and the like. Notes on cells are drawn in it too and are read elsewhere.
func (s *sheetReader) controls(part string) {
	err := s.book.walk(part, func(e element) error {
		if kind := e.attribute("ObjectType"); e.Name.Local == "ClientData" && kind != "Note" {
			s.mark("a control:", kind)
		}
		return nil
	})
	if err != nil { // this form need not be whole
		s.mark("a drawing that cannot be read")
	}
}
