package design

// Text is the file as it was read, without a byte-order mark.
func (f *File) Text() string { return f.src.whole }
