package seal

import (
	"path"
	"strings"

	"firstboard/report/lists"
)

// links are what a part refers to, in the order in which it tells them.
type links []link

type link struct {
	id, kind, target string
	outside          bool // the target is no part of the file
}

// target is what a name within the part stands for.
func (l links) target(id string) string {
	one, _ := lists.First(l, func(one link) bool { return one.id == id })
	return one.target
}

// kind is the first part of a kind, empty where there is none.
func (l links) kind(kind string) string {
	if all := l.kinds(kind); len(all) > 0 {
		return all[0]
	}
	return ""
}

// kinds are all parts of a kind: the last word of what the file calls it.
func (l links) kinds(kind string) []string {
	inside := lists.Where(l, func(one link) bool { return one.kind == kind && !one.outside })
	return lists.Each(inside, func(one link) string { return one.target })
}

// links reads what a part refers to; the empty name is the file itself.
func (b *book) links(part string) (links, error) {
	file := path.Join(path.Dir(part), "_rels", path.Base(part)+".rels")
	if part == "" {
		file = "_rels/.rels"
	}
	if b.parts[file] == nil {
		return nil, nil
	}
	var all struct {
		Links []struct {
			ID     string `xml:"Id,attr"`
			Kind   string `xml:"Type,attr"`
			Target string `xml:"Target,attr"`
			Mode   string `xml:"TargetMode,attr"`
		} `xml:"Relationship"`
	}
	if err := b.decode(file, &all); err != nil {
		return nil, err
	}
	var found links
	for _, l := range all.Links {
		one := link{id: l.ID, kind: path.Base(l.Kind), target: l.Target, outside: l.Mode == "External"}
		switch {
		case one.outside:
		case strings.HasPrefix(l.Target, "/"):
			one.target = strings.TrimPrefix(l.Target, "/")
		default:
			one.target = path.Join(path.Dir(part), l.Target)
		}
		found = append(found, one)
	}
	return found, nil
}
