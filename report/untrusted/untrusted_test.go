package untrusted

import (
	"archive/zip"
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/iotest"
	"time"
)

func bounded(text string) error {
	_, err := io.ReadAll(Bounded(iotest.OneByteReader(strings.NewReader(text))))
	return err
}

// XML at its bounds passes whole, and a step beyond them is refused, whatever
// dress the text or the nesting wears.
func TestBounds(t *testing.T) {
	long := strings.Repeat("x", LongestText)
	nested := func(n int) string { return strings.Repeat("<a>", n) + strings.Repeat("</a>", n) }
	const deep, declares = "its elements are nested over 1000 deep", "it declares a document type"
	for _, c := range []struct{ name, text, want string }{
		{"nested to the bound", nested(deepest), ""},
		{"nested beyond it", nested(deepest + 1), deep},
		{"side by side", strings.Repeat("<a/><b c='/>' d=\"<\"></b>", 2000), ""},
		{"a > in quotes", "<a>" + strings.Repeat(`<b c="/>">`, deepest) + "", deep},
		{"a text at the bound", "<a>" + long[:LongestText-3] + "</a>", ""},
		{"a letter more", "<a>" + long[:LongestText-2] + "</a>", TooLong},
		{"a text beyond it", "<a>" + long + "</a>", TooLong},
		{"a text before all", long + "x", TooLong},
		{"a tag", "<a " + long, TooLong},
		{"a comment of tags", "<!--" + strings.Repeat("<a>", LongestText/3+9) + "-->", TooLong},
		{"a comment with the end of another thing", "<!--" + strings.Repeat("]]><a>?>", LongestText/8+9) + "-->", TooLong},
		{"letters as they are", "<a><![CDATA[" + strings.Repeat("<a>-->", LongestText/6+9) + "]]></a>", TooLong},
		{"an instruction", "<?a " + strings.Repeat("<a>", LongestText/3+9) + "?>", TooLong},
		{"a comment is no nesting", "<!-- " + strings.Repeat("<a>", 2000) + " -- ---><a/>", ""},
		{"letters are no nesting", "<![CDATA[" + strings.Repeat("<a>", 2000) + "]]]]><a/>", ""},
		{"a document type", "<!DOCTYPE a>", declares},
		{"a document type that begins like letters", "<![CDAT", ""},
		{"an entity", "<a><!ENTITY b 'c'></a>", declares},
	} {
		err := bounded(c.text)
		if c.want == "" && err != nil || c.want != "" && (err == nil || !strings.HasPrefix(err.Error(), c.want)) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// What is within bounds comes through as it is.
func FuzzBounded(f *testing.F) {
	f.Add("<a b='c>'>d</a><!-- e --><![CDATA[<f>]]><?g?>")
	f.Add("<a><b/></a>]]>")
	f.Add("<!DOCTYPE a [<!ENTITY b 'c'>]>")
	f.Fuzz(func(t *testing.T, text string) {
		got, err := io.ReadAll(Bounded(strings.NewReader(text)))
		if err == nil && string(got) != text || err != nil && !strings.HasPrefix(text, string(got)) {
			t.Errorf("%q became %q (%v)", text, got, err)
		}
	})
}

func archive(t testing.TB, part string, times int) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	w, err := z.Create("part")
	if err == nil {
		_, err = w.Write(bytes.Repeat([]byte(part), times))
	}
	if err = errors.Join(err, z.Close()); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestArchives(t *testing.T) {
	if _, err := Archive(archive(t, "x", 1000), 1000); err != nil {
		t.Errorf("an archive of as many bytes as it may have: %v", err)
	}
	if _, err := Archive(archive(t, "x", 1001), 1000); !errors.Is(err, ErrLarge) {
		t.Errorf("one more: %v", err)
	}
	if _, err := Archive(archive(t, "x", smallPart), 1<<30); err != nil {
		t.Errorf("a small part, however it is packed: %v", err)
	}
	if _, err := Archive(archive(t, "x", smallPart+1), 1<<30); err == nil || !strings.Contains(err.Error(), "over 200 times its size") {
		t.Errorf("a larger one: %v", err)
	}
	if _, err := Archive(bytes.Repeat([]byte("PK\x01\x02"), mostParts+1), 1<<30); err == nil ||
		!strings.Contains(err.Error(), "20001 parts") {
		t.Errorf("many parts: %v", err)
	}
}

// FuzzArchive: an archive is opened within its bounds, or refused in one line.
func FuzzArchive(f *testing.F) {
	f.Add(archive(f, "x", 9))
	f.Add([]byte("PK\x05\x06" + strings.Repeat("\x00", 18)))
	f.Fuzz(func(t *testing.T, data []byte) {
		const most = 1 << 20
		z, err := Archive(data, most)
		if err != nil {
			if says := err.Error(); says == "" || strings.Contains(says, "\n") {
				t.Errorf("refused with %q", says)
			}
			return
		}
		var total uint64
		for _, part := range z.File {
			total += part.UncompressedSize64
		}
		if total > most {
			t.Errorf("%d bytes", total)
		}
	})
}

// A file that is written to, shortened or replaced after its mark does not hold.
func TestAFileThatChanges(t *testing.T) {
	path := filepath.Join(t.TempDir(), "air.csv")
	write := func(text string) {
		if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for name, change := range map[string]func() error{
		"longer":  func() error { return os.Truncate(path, 9) },
		"shorter": func() error { return os.Truncate(path, 1) },
		"touched": func() error { return os.Chtimes(path, time.Time{}, time.Unix(1e9, 0)) },
		"gone":    func() error { return os.Remove(path) },
		"replaced": func() error {
			return errors.Join(os.WriteFile(path+"2", []byte("text"), 0o644), os.Rename(path+"2", path))
		},
	} {
		write("text")
		mark, err := MarkOf(path)
		if err != nil || mark.Held() != nil {
			t.Fatalf("%s: %v", name, errors.Join(err, mark.Held()))
		}
		if err := change(); err != nil {
			t.Fatal(err)
		}
		if err := mark.Held(); err == nil || err.Error() != "air.csv: changed while it was read; run this again once nothing writes to it" {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestSizes(t *testing.T) {
	path := filepath.Join(t.TempDir(), "air.csv")
	if err := os.WriteFile(path, []byte("12345"), 0o644); err != nil {
		t.Fatal(err)
	}
	if data, err := Read(path, Wanted{Most: 5}); err != nil || string(data) != "12345" {
		t.Errorf("%q, %v", data, err)
	}
	if _, err := Read(path, Wanted{Most: 4, Smaller: "thin it"}); err == nil || err.Error() != "air.csv: is over 0 MB; thin it" {
		t.Errorf("%v", err)
	}
	if _, err := Read(filepath.Dir(path), Wanted{Give: "a file"}); err == nil ||
		!strings.HasSuffix(err.Error(), ": is not a regular file; give a file") {
		t.Errorf("%v", err)
	}
	if _, err := Read(path+"x", Wanted{}); err == nil || err.Error() != "air.csvx: there is no such file; check the name" {
		t.Errorf("%v", err)
	}
}
