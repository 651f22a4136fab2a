package report

import (
	"encoding/xml"
	"io"
)

// Suite is the checks of one design in the XML that build servers read as test
// results.
type Suite struct {
	Name  string
	Tests []Test
}

// Test is one check; Failure is "" where it holds.
type Test struct {
	Group, Name string
	Failure     string // in one line
	Detail      string // below it
	Output      string // what is to be known of a check that holds too
}

// The form: JUnit's XML as build servers have come to read it (common
// practice; there is no standard). Times are left out: the same input gives
// the same bytes.
type (
	junitDocument struct {
		XMLName  xml.Name     `xml:"testsuites"`
		Name     string       `xml:"name,attr"`
		Tests    int          `xml:"tests,attr"`
		Failures int          `xml:"failures,attr"`
		Suites   []junitSuite `xml:"testsuite"`
	}
	junitSuite struct {
		Name     string      `xml:"name,attr"`
		Tests    int         `xml:"tests,attr"`
		Failures int         `xml:"failures,attr"`
		Errors   int         `xml:"errors,attr"`
		Skipped  int         `xml:"skipped,attr"`
		Cases    []junitCase `xml:"testcase"`
	}
	junitCase struct {
		Class   string        `xml:"classname,attr"`
		Name    string        `xml:"name,attr"`
		Failure *junitFailure `xml:"failure,omitempty"`
		Output  string        `xml:"system-out,omitempty"`
	}
	junitFailure struct {
		Message string `xml:"message,attr"`
		Type    string `xml:"type,attr"`
		Detail  string `xml:",chardata"`
	}
)

// WriteJUnit writes the suites as one XML document, indented. What XML cannot
// hold, such as an escape character in a name, becomes U+FFFD.
func WriteJUnit(w io.Writer, name string, suites []Suite) error {
	doc := junitDocument{Name: name}
	for _, s := range suites {
		suite := junitSuite{Name: s.Name, Tests: len(s.Tests)}
		for _, t := range s.Tests {
			c := junitCase{Class: t.Group, Name: t.Name, Output: t.Output}
			if t.Failure != "" {
				suite.Failures++
				c.Failure = &junitFailure{t.Failure, "not met", t.Detail}
			}
			suite.Cases = append(suite.Cases, c)
		}
		doc.Tests += suite.Tests
		doc.Failures += suite.Failures
		doc.Suites = append(doc.Suites, suite)
	}
	if _, err := io.WriteString(w, xml.Header); err != nil {
		return err
	}
	enc := xml.NewEncoder(w)
	enc.Indent("", "  ")
	if err := enc.Encode(doc); err != nil {
		return err
	}
	_, err := io.WriteString(w, "\n")
	return err
}
