package main

// exitCode is what the process ends with.
type exitCode int

// The exit codes; exitCodes tells what they mean.
const (
	exitDone        exitCode = 0
	exitNotMet      exitCode = 1
	exitInput       exitCode = 2
	exitOutput      exitCode = 3
	exitInterrupted exitCode = 130
)

// exitCodes is the one table of exit codes, as gudgeon --help lists it.
var exitCodes = []struct {
	code  exitCode
	means string
}{
	{exitDone, "done"},
	{exitNotMet, "done, and a [[require]] or a joint check is not met"},
	{exitInput, "the input or the call is wrong"},
	{exitOutput, "an output could not be written"},
	{exitInterrupted, "stopped by Ctrl-C; nothing was written"},
}
