// Package pictures turns an area into the pictures that workbook and page draw:
// which points, lines and limits each shows, and the cells they were typed in.
package pictures
