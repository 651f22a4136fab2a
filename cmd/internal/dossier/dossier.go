package dossier

import (
	"gudgeon/cmd/internal/report"
	"gudgeon/plots"
)

// Dossier is all that a report says. It is written by Write.
type Dossier struct {
	Title    string
	Subtitle string
	Facts    []Fact   // the title block
	Designs  []Design // in order; more than one are told apart by their inks
	Way      Way
	Readings []Reading // what is shown of the position, beside the first drawing
	Chapters []Chapter
}

// Fact is one field of the title block.
type Fact struct {
	Name, Value, Unit string
	Verdict           report.Verdict
}

// Design is one of those that the report is of.
type Design struct {
	Name string
	Ink  int // 1 to plots.MaxSeries; 0: grey
}

// Way is what the rule at the foot runs over. Travel are its stations, mm,
// ascending; fewer than two: there is no rule. A design whose travel ends
// before the last station has fewer values in its columns, and stays where the
// last of them puts it.
type Way struct {
	Travel []float64
	Stops  []Stop
}

// Stop is a place worth going to.
type Stop struct {
	Name   string
	Travel float64 // mm
}

// Reading is one quantity at the position, in every design.
type Reading struct {
	Name, Unit string
	Decimals   int
	Of         [][]float64 // [design][station]; nil where the design has none
}

// Chapter is a part of the story.
type Chapter struct {
	Heading string
	Parts   []Part
}

// Part is a piece of a chapter; what it does not have is empty.
type Part struct {
	Heading  string
	Verdict  report.Verdict // of the heading
	Beside   bool           // stands beside the part before it where there is room
	Row      bool           // shares a line with the next ones of its kind where there is room
	Lead     []string       // lines before all else
	Curves   *Curves
	Linkages []Linkage
	Readings bool // the table of the position stands here
	Table    *report.Table
	Caption  string // of the table
	Notes    []string
	Listing  *Listing
}

// Curves is a drawing with a cursor.
type Curves struct {
	Figure *plots.Figure
	Panels []Panel // as many as the figure has frames
}

// Panel is what the cursor shows in one panel.
type Panel struct {
	Along    bool // x is the travel: the cursor is a line across the panel
	Decimals int  // of the values shown
	Lines    []Line
}

// Line is a curve at the stations of its design: len(X) == len(Y).
type Line struct {
	X, Y []float64
	Ink  int // as in Design
}

// Linkage is a drawing whose pieces move. Way has a transform for each station.
type Linkage struct {
	Name   string
	Drawn  *plots.Moving
	Figure *plots.Figure // for its frame
}

// Listing is a text shown as it is.
type Listing struct {
	Name, Text string
}
