package design

import "strings"

// remedies are what to do about mistakes that the library tells without: by code, or
// by field and code.
var remedies = map[string]string{
	"shock.mounts zero-length":    "name two points that lie apart, or move one of them",
	"shock.mounts[1] zero-length": "name the point at the shock's other eye",
	"spring.volume empty-chamber": "write a larger volume, a smaller piston_area or a shorter stroke",
	"shock.stroke out-of-range":   "stroke is how far the shock shortens from its full length; write stroke = 60, in mm",
}

// remedy says what to write for a fault of the linkage that does not say it: for a
// number that cannot be one that can.
func (f fault) remedy() string {
	if says, ok := remedies[f.field+" "+f.code]; ok {
		return says
	}
	if f.code != "out-of-range" || f.also != "" {
		return ""
	}
	table, name := "", f.field
	if cut := strings.LastIndexByte(f.field, '.'); cut >= 0 {
		table, name = f.field[:cut], f.field[cut+1:]
	}
	k := find(schema[table], name)
	if k == nil || k.example == "" {
		return ""
	}
	return "write, for example, " + k.written(k.example) + unitNote(k)
}
