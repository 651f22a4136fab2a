package dossier

import "gudgeon/plots"

// data is what the script reads. Columns hold the values at the stations;
// everything else refers to them by index.
type data struct {
	Travel   numbers       `json:"travel"`
	Columns  []numbers     `json:"columns"`
	Figures  []figureData  `json:"figures"`
	Linkages []linkageData `json:"linkages"`

	known map[columnKey]int
}

// columnKey tells columns apart by where their values are kept.
type columnKey struct {
	first *float64
	n     int
}

type figureData struct {
	Panels []panelData `json:"panels"`
}

type panelData struct {
	Frame    frameData  `json:"frame"`
	Along    bool       `json:"along"`
	Decimals int        `json:"decimals"`
	Lines    []lineData `json:"lines"`
}

// frameData are the edges of a panel, px, and the data there.
type frameData struct {
	Left   float64 `json:"left"`
	Top    float64 `json:"top"`
	Right  float64 `json:"right"`
	Bottom float64 `json:"bottom"`
	XMin   float64 `json:"xMin"`
	XMax   float64 `json:"xMax"`
	YMin   float64 `json:"yMin"`
	YMax   float64 `json:"yMax"`
}

type lineData struct {
	X   int    `json:"x"`
	Y   int    `json:"y"`
	Ink string `json:"ink"`
}

type linkageData struct {
	Frame  frameData    `json:"frame"`
	Pieces []transforms `json:"pieces"`
}

func newData(d *Dossier) *data {
	return &data{Travel: d.Way.Travel, Columns: []numbers{}, Figures: []figureData{}, Linkages: []linkageData{},
		known: map[columnKey]int{}}
}

// column is the number of the column of these values, each kept once.
func (d *data) column(values []float64) int {
	key := columnKey{&values[0], len(values)}
	i, ok := d.known[key]
	if !ok {
		i = len(d.Columns)
		d.Columns = append(d.Columns, values)
		d.known[key] = i
	}
	return i
}

func frameOf(f plots.Frame) frameData {
	return frameData{f.Left, f.Top, f.Right, f.Bottom, f.XMin, f.XMax, f.YMin, f.YMax}
}

func (d *data) addCurves(c *Curves) {
	var figure figureData
	for i, frame := range c.Figure.Frames() {
		panel := panelData{Frame: frameOf(frame), Along: c.Panels[i].Along, Decimals: c.Panels[i].Decimals, Lines: []lineData{}}
		for _, l := range c.Panels[i].Lines {
			if l.Ink == 0 {
				continue // grey lines have no cursor
			}
			panel.Lines = append(panel.Lines, lineData{d.column(l.X), d.column(l.Y), plots.Ink(l.Ink)})
		}
		figure.Panels = append(figure.Panels, panel)
	}
	d.Figures = append(d.Figures, figure)
}

func (d *data) addLinkage(l Linkage) {
	drawing := linkageData{Frame: frameOf(l.Figure.Frames()[0]), Pieces: []transforms{}}
	for _, way := range l.Drawn.Pieces {
		drawing.Pieces = append(drawing.Pieces, way)
	}
	d.Linkages = append(d.Linkages, drawing)
}
