package main

import "slices"

// letter is what a design is called in tables: A, B, C …
func letter(k int) string { return string(rune('A' + k)) }

// labelsOf gives each design a name of its own: the shortest of those by which
// all differ.
func labelsOf(list []*loaded) []string {
	names := []func(*loaded) string{nameAndVariant, argument}
	if !slices.ContainsFunc(list, func(l *loaded) bool { return l.file != list[0].file }) {
		names = slices.Insert(names, 0, ownVariant)
	}
	for _, name := range names {
		labels := make([]string, len(list))
		for k, l := range list {
			labels[k] = name(l)
		}
		if sorted := slices.Sorted(slices.Values(labels)); len(slices.Compact(sorted)) == len(list) {
			return labels
		}
	}
	labels := make([]string, len(list))
	for k, l := range list {
		labels[k] = letter(k) + " " + nameAndVariant(l)
	}
	return labels
}

// ownVariant is the variant alone, or the design's name.
func ownVariant(l *loaded) string {
	if l.input.variant != "" {
		return l.input.variant
	}
	return designName(l)
}

func nameAndVariant(l *loaded) string {
	if l.input.variant != "" {
		return designName(l) + variantMark + l.input.variant
	}
	return designName(l)
}

// designName is the design's name, or its file's.
func designName(l *loaded) string {
	if name := l.name(); name != "" {
		return name
	}
	return stemOf(l.called())
}

// argument is the design as it stands in the call.
func argument(l *loaded) string {
	if l.input.variant != "" {
		return l.called() + variantMark + l.input.variant
	}
	return l.called()
}
