package report

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The document is well formed whatever the names hold, counts what it has, and
// is the same every time.
func TestWriteJUnit(t *testing.T) {
	suites := []Suite{
		{Name: `Tarn "153" <&>`, Tests: []Test{
			{Group: "Tarn", Name: "sag_percent", Output: "31.3 %"},
			{Group: "Tarn", Name: "esc \x1b[31m ]]> \u202e\n", Failure: `it is "12" & <more>`, Detail: "a\nb"},
		}},
		{Name: "no tests"},
	}
	var first, second bytes.Buffer
	if err := errors.Join(WriteJUnit(&first, "check", suites), WriteJUnit(&second, "check", suites)); err != nil {
		t.Fatal(err)
	}
	if first.String() != second.String() {
		t.Error("two writings differ")
	}
	dec := xml.NewDecoder(bytes.NewReader(first.Bytes()))
	count := map[string]int{}
	for {
		token, err := dec.Token()
		if err == io.EOF {
			break
		}
		if err != nil {
			t.Fatalf("%v in\n%s", err, first.String())
		}
		if start, ok := token.(xml.StartElement); ok {
			count[start.Name.Local]++
		}
	}
	want := map[string]int{"testsuites": 1, "testsuite": 2, "testcase": 2, "failure": 1, "system-out": 1}
	if d := cmp.Diff(want, count); d != "" {
		t.Error(d)
	}
	var doc junitDocument
	if err := xml.Unmarshal(first.Bytes(), &doc); err != nil {
		t.Fatal(err)
	}
	if doc.Tests != 2 || doc.Failures != 1 || doc.Suites[0].Name != suites[0].Name || doc.Suites[0].Cases[1].Failure.Message != suites[0].Tests[1].Failure {
		t.Errorf("read back: %+v", doc)
	}
	if err := WriteJUnit(&failing{}, "check", suites); !errors.Is(err, errFull) {
		t.Errorf("a full disk gives %v", err)
	}
}
