// Package plots draws the pictures of a design: curves over travel, the path
// of the axle, the linkage itself, a map of one quantity over two others. It is
// handed numbers, labels and names and gives back the bytes of an SVG or a PNG;
// it knows nothing of files, of mechanisms or of the command line.
//
// Each kind of drawing is a plain struct with a Figure method, which checks
// what it was given:
//
//	f, err := plots.Curves{
//		Caption: plots.Caption{Title: "Leverage ratio over wheel travel"},
//		X:       "vertical wheel travel, mm",
//		Panels: []plots.Panel{{
//			Heading: "leverage ratio, mm/mm",
//			Lines:   []plots.Line{{Name: "Tarn 153", X: travel, Y: leverage}},
//		}},
//	}.Figure()
//	svg, err := f.SVG()
//
// # The page
//
//	+--------------------------------------------------+
//	| Title, bold                                      |
//	| subtitle, quiet                                  |
//	| heading of the panel, with its unit              |
//	|   3.0 |-------------------------------.          |
//	|       |   __________________________--'- name    |
//	|   2.5 |--/----------------------------.          |
//	|       0     50     100     150                   |
//	|            what runs along, with its unit        |
//	+--------------------------------------------------+
//
// Every page is 642 px (17 cm) wide, but for a ToothSheet with its tables; its
// height follows from what it holds. Lengths on the page are points (pt, 1/72 inch; 1 px is 0.75 pt), measured
// from the page's lower left corner, x to the right and y up. Data keep the
// axes of the caller, x to the right and y up.
//
// # The same bytes
//
// A Figure holds no clock, no random number and no map order: the same input
// gives the same bytes. A Figure may be used by several goroutines.
//
// # Text
//
// Names may hold anything: control characters and marks that turn the reading
// direction are written out as escapes (\x1b), line breaks become blanks, what
// is too long is wrapped or ends in an ellipsis. Letters that the drawing
// typeface lacks stay text in an SVG, where the reader's system supplies them,
// but vanish from a PNG: Figure.MissingLetters lists them.
package plots
