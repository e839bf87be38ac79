package seal

import (
	"path"
	"strings"

	"firstboard/report/lists"
)

// links are what a part refers to, in the order in which it tells them.
type links []link

type link struct {
	ID     string `xml:"Id,attr"`
	Kind   string `xml:"Type,attr"`
	Target string `xml:"Target,attr"`
	Mode   string `xml:"TargetMode,attr"`
}

// target is what a name within the part stands for.
func (l links) target(id string) string {
	one, _ := lists.First(l, func(one link) bool { return one.ID == id })
	return one.Target
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
	inside := lists.Where(l, func(one link) bool { return one.Kind == kind && !one.outside() })
	return lists.Each(inside, func(one link) string { return one.Target })
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
		Links links `xml:"Relationship"`
	}
	if err := b.decode(file, &all); err != nil {
		return nil, err
	}
	for i := range all.Links {
		one := &all.Links[i]
		one.Kind = path.Base(one.Kind)
		if inside, absolute := strings.CutPrefix(one.Target, "/"); !one.outside() {
			one.Target = lists.If(absolute, inside, path.Join(path.Dir(part), one.Target))
		}
	}
	return all.Links, nil
}
