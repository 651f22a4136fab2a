package report

import (
	"strconv"
	"strings"
)

// AppendLine appends l as a line of JSON Lines, with its line end.
func AppendLine(dst []byte, l Line) []byte {
	e := jsonWriter{buf: dst}
	e.line(l)
	return append(e.buf, '\n')
}

// AppendRow appends the values of l as a row of CSV, with its line end, as
// WriteCSV writes them; nil and numbers that do not exist are empty. Values are
// string, bool, int, float64 or nil.
func AppendRow(dst []byte, l Line) []byte {
	for k, m := range l {
		if k > 0 {
			dst = append(dst, ',')
		}
		switch v := m.Value.(type) {
		case nil:
		case string:
			dst = appendField(dst, v)
		case bool:
			dst = append(dst, truth(v)...)
		case int:
			dst = strconv.AppendInt(dst, int64(v), 10)
		case float64:
			dst = AppendNumber(dst, v)
		default:
			panic("report: no CSV form for such a value")
		}
	}
	return append(dst, '\n')
}

// AppendHeader appends names as the header row of CSV.
func AppendHeader(dst []byte, names []string) []byte {
	for k, name := range names {
		if k > 0 {
			dst = append(dst, ',')
		}
		dst = appendField(dst, name)
	}
	return append(dst, '\n')
}

// appendField quotes s where it holds a comma, a quote, a line end or an outer
// blank.
func appendField(dst []byte, s string) []byte {
	if !strings.ContainsAny(s, ",\"\r\n") && s == strings.TrimSpace(s) {
		return append(dst, s...)
	}
	dst = append(dst, '"')
	dst = append(dst, strings.ReplaceAll(s, `"`, `""`)...)
	return append(dst, '"')
}
