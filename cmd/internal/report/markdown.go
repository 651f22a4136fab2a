package report

import (
	"bufio"
	"io"
	"strings"

	"gudgeon/cmd/internal/diag"
)

// WriteMarkdown writes pages for a review: headings of the second and third
// level and pipe tables.
func WriteMarkdown(w io.Writer, pages ...*Page) error {
	b := bufio.NewWriter(w)
	for i, p := range pages {
		if i > 0 {
			b.WriteByte('\n')
		}
		p.writeMarkdown(b)
	}
	return b.Flush()
}

func (p *Page) writeMarkdown(b *bufio.Writer) {
	b.WriteString("## " + escapeMarkdown(p.Title) + "\n")
	paragraph(b, p.Subtitle)
	for _, block := range p.Blocks {
		if block.Heading != "" {
			b.WriteString("\n### " + escapeMarkdown(block.Heading) + "\n")
		}
		paragraphs(b, block.Lead)
		if block.Table != nil {
			b.WriteString("\n" + block.Table.markdown() + "\n")
		}
		paragraphs(b, block.Notes)
	}
	paragraphs(b, p.Notes)
}

func paragraphs(b *bufio.Writer, lines []string) {
	for _, l := range lines {
		paragraph(b, l)
	}
}

func paragraph(b *bufio.Writer, s string) {
	if s != "" {
		b.WriteString("\n" + escapeMarkdown(s) + "\n")
	}
}

// markdown lays the table out with the unit after the heading.
func (t *Table) markdown() string {
	t.check()
	headings, rules := make([]string, len(t.Columns)), make([]string, len(t.Columns))
	for k := range t.Columns {
		c := &t.Columns[k]
		headings[k], rules[k] = c.Heading, ":---"
		if c.Unit != "" {
			headings[k] += ", " + c.Unit
		}
		if c.right() {
			rules[k] = "---:"
		}
	}
	lines := []string{pipes(headings), pipes(rules)}
	for i := range t.Len() {
		cells := make([]string, len(t.Columns))
		for k := range t.Columns {
			cells[k] = escapeMarkdown(t.Columns[k].cell(i))
		}
		lines = append(lines, pipes(cells))
	}
	return strings.Join(lines, "\n")
}

func pipes(cells []string) string { return "| " + strings.Join(cells, " | ") + " |" }

// escapeMarkdown keeps a name from being read as markup.
func escapeMarkdown(s string) string { return markup.Replace(diag.Visible(s)) }

var markup = strings.NewReplacer(`\`, `\\`, "`", "\\`", "*", `\*`, "_", `\_`, "<", "&lt;", "[", `\[`, "|", `\|`)
