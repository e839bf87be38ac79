package main

import (
	"bytes"
	"image"
	"image/png"
	"regexp"

	"github.com/xuri/excelize/v2"
)

// dot is a small picture.
func dot() ([]byte, error) {
	var out bytes.Buffer
	err := png.Encode(&out, image.NewGray(image.Rect(0, 0, 8, 8)))
	return out.Bytes(), err
}

// drawnTamperings lay something on a page, change its pictures, or write in its
// margins.
func drawnTamperings() []tampering {
	const chart, drawing = "xl/charts/chart1.xml", "xl/drawings/drawing1.xml"
	shape := func(sheet, kind, text string) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error {
			s := excelize.Shape{Cell: "B2", Type: kind, Width: 160, Height: 90, Fill: excelize.Fill{Color: []string{"FFFFFF"}, Pattern: 1}}
			if text != "" {
				s.Paragraph = []excelize.RichTextRun{{Text: text}}
			}
			return f.AddShape(sheet, &s)
		})
	}
	margin := func(o excelize.HeaderFooterOptions) func([]byte) ([]byte, error) {
		return opened(func(f *excelize.File) error { return f.SetHeaderFooter("Decision", &o) })
	}
	return []tampering{
		{name: "a text box on Decision", change: shape("Decision", "rect", "Approved for laying")},
		{name: "a shape over the verdict", change: shape("Decision", "rect", "")},
		{name: "a text box among pictures", change: shape(areaSheet, "ellipse", "Approved for laying")},
		{name: "a text box on the sheet of signatures", change: shape("Sign-off", "rect", "Waived by the owner")},
		{name: "a picture on Decision", change: opened(func(f *excelize.File) error {
			data, err := dot()
			if err != nil {
				return err
			}
			return f.AddPictureFromBytes("Decision", "B6",
				&excelize.Picture{Extension: ".png", File: data, Format: &excelize.GraphicOptions{}})
		})},
		{name: "a picture behind Decision", change: opened(func(f *excelize.File) error {
			data, err := dot()
			if err != nil {
				return err
			}
			return f.SetSheetBackgroundFromBytes("Decision", ".png", data)
		})},
		{name: "a button on Decision", lost: true, change: opened(func(f *excelize.File) error {
			return f.AddFormControl("Decision",
				excelize.FormControl{Cell: "B2", Type: excelize.FormControlButton, Text: "Approved for laying"})
		})},
		{name: "a small chart within a cell", change: opened(func(f *excelize.File) error {
			return f.AddSparkline("Decision", &excelize.SparklineOptions{Location: []string{"J6"}, Range: []string{"Plotted!B5:B7"}})
		})},
		{name: "a chart of somebody", change: opened(func(f *excelize.File) error {
			return f.AddChart("Decision", "B20", &excelize.Chart{
				Type:   excelize.Col,
				Series: []excelize.ChartSeries{{Name: "Plotted!$B$4", Categories: "Plotted!$A$5:$A$7", Values: "Plotted!$B$5:$B$7"}},
			})
		})},
		{name: "a chart taken out", change: repacked(func(parts map[string]string) error {
			parts[drawing] = regexp.MustCompile(`(?s)<xdr:twoCellAnchor>.*?</xdr:twoCellAnchor>`).ReplaceAllStringFunc(parts[drawing],
				once(""))
			return nil
		})},
		{name: "a chart laid over the verdict", change: inPart(drawing, "<xdr:row>13</xdr:row>", "<xdr:row>0</xdr:row>")},
		{name: "a chart of no size", change: repacked(func(parts map[string]string) error {
			const none = "<xdr:to><xdr:col>0</xdr:col><xdr:colOff>9</xdr:colOff><xdr:row>13</xdr:row><xdr:rowOff>161990</xdr:rowOff></xdr:to>"
			parts[drawing] = regexp.MustCompile(`(?s)<xdr:to>.*?</xdr:to>`).ReplaceAllStringFunc(parts[drawing], once(none))
			return nil
		})},
		{name: "another title of a chart", change: inPart(chart, "against its limit (% RH)", "well within its limit (% RH)")},
		{name: "a chart of other cells", change: inPart(chart, "$B$5:$B$7", "$C$5:$C$7")},
		{name: "another stored value of a chart", lost: true, change: inPart(chart, "<c:v>81.5</c:v>", "<c:v>74</c:v>")},
		{name: "another stored name in a chart", lost: true, change: inPart(chart, "limit of GLUE: 80 % RH", "limit of GLUE: 95 % RH")},
		{name: "an axis that ends below what is over", change: inPart(chart, "<c:min val=", "<c:max val=\"78\"/><c:min val=")},
		{name: "labels of a chart in words", change: inPart(chart, `<c:numFmt formatCode="General" sourceLinked="0"/>`,
			`<c:numFmt formatCode="&quot;74&quot;" sourceLinked="0"/>`)},
		{name: "a text laid into a chart", change: repacked(func(parts map[string]string) error {
			parts["xl/drawings/note.xml"] = noteInChart
			parts["xl/charts/_rels/chart1.xml.rels"] = `<?xml version="1.0" encoding="UTF-8"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
				`<Relationship Id="rId9" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/chartUserShapes" Target="../drawings/note.xml"/></Relationships>`
			parts["[Content_Types].xml"] = regexp.MustCompile(`</Types>`).ReplaceAllString(parts["[Content_Types].xml"],
				`<Override PartName="/xl/drawings/note.xml" ContentType="application/vnd.openxmlformats-officedocument.drawingml.chartshapes+xml"/></Types>`)
			parts[chart] = regexp.MustCompile(`</c:chartSpace>`).ReplaceAllString(parts[chart],
				`<c:userShapes xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships" r:id="rId9"/></c:chartSpace>`)
			return nil
		})},
		{name: "a header", change: margin(excelize.HeaderFooterOptions{OddHeader: "&CApproved for laying"})},
		{name: "another footer", change: margin(excelize.HeaderFooterOptions{OddFooter: "&CApproved for laying"})},
		{
			name:   "a header of the first page",
			change: margin(excelize.HeaderFooterOptions{DifferentFirst: true, FirstHeader: "&CApproved for laying", OddFooter: "&L&8&A"}),
		},
	}
}

// once puts something in place of the first of what it is given and keeps the rest.
func once(with string) func(string) string {
	taken := false
	return func(s string) string {
		if taken {
			return s
		}
		taken = true
		return with
	}
}

// noteInChart is a text box within a chart.
const noteInChart = `<?xml version="1.0" encoding="UTF-8"?>
<c:userShapes xmlns:c="http://schemas.openxmlformats.org/drawingml/2006/chart" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:cdr="http://schemas.openxmlformats.org/drawingml/2006/chartDrawing"><cdr:relSizeAnchor><cdr:from><cdr:x>0.1</cdr:x><cdr:y>0.1</cdr:y></cdr:from><cdr:to><cdr:x>0.6</cdr:x><cdr:y>0.4</cdr:y></cdr:to><cdr:sp macro="" textlink=""><cdr:nvSpPr><cdr:cNvPr id="2" name="Note"/><cdr:cNvSpPr txBox="1"/></cdr:nvSpPr><cdr:spPr><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></cdr:spPr><cdr:txBody><a:bodyPr/><a:p><a:r><a:rPr lang="en-US"/><a:t>Approved for laying</a:t></a:r></a:p></cdr:txBody></cdr:sp></cdr:relSizeAnchor></c:userShapes>`
