package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// asCommand in the environment makes the test binary be gudgeon.
const asCommand = "GUDGEON_TEST_AS_COMMAND"

func TestMain(m *testing.M) {
	if os.Getenv(asCommand) != "" {
		main()
	}
	os.Exit(m.Run())
}

// process is gudgeon as a process of its own.
func process(t *testing.T, args ...string) *exec.Cmd {
	t.Helper()
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	cmd := exec.Command(self, args...)
	cmd.Env = append(os.Environ(), asCommand+"=1")
	cmd.Dir = t.TempDir()
	return cmd
}

func exitOf(t *testing.T, err error) exitCode {
	t.Helper()
	var exit *exec.ExitError
	switch {
	case err == nil:
		return exitDone
	case errors.As(err, &exit):
		return exitCode(exit.ExitCode())
	}
	t.Fatal(err)
	return 0
}

// The exit code of run becomes that of the process.
func TestExitCodeOfProcess(t *testing.T) {
	for args, want := range map[string]exitCode{
		"version":               exitDone,
		"sweep example:nowhere": exitInput,
		"sweep example:freshet -o no/folder/sweep.csv": exitOutput,
	} {
		if got := exitOf(t, process(t, strings.Fields(args)...).Run()); got != want {
			t.Errorf("%s: exit code %d, want %d", args, got, want)
		}
	}
}

// A full disk under standard output is an output that could not be written.
func TestStandardOutputFull(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skip(err)
	}
	defer full.Close()
	for _, args := range []string{"sweep example:freshet", "sweep example:freshet --format json", "plot example:freshet -o -", "version"} {
		var stderr bytes.Buffer
		cmd := process(t, strings.Fields(args)...)
		cmd.Stdout, cmd.Stderr = full, &stderr
		if got := exitOf(t, cmd.Run()); got != exitOutput || !strings.Contains(stderr.String(), "the output cannot be written") {
			t.Errorf("%s: exit code %d, %q", args, got, stderr.String())
		}
	}
}

// Ctrl-C ends a run that waits for its input with 130, a silent standard error
// and no file.
func TestInterrupt(t *testing.T) {
	var stderr bytes.Buffer
	cmd := process(t, "sweep", "-", "-o", "sweep.csv")
	stdin, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	cmd.Stderr = &stderr
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	// more than a pipe holds: once it is written, the reading has begun
	if _, err := stdin.Write(bytes.Repeat([]byte("# a comment\n"), 1<<16)); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	if code := exitOf(t, cmd.Wait()); code != exitInterrupted {
		t.Errorf("exit code %d", code)
	}
	if stderr.Len() > 0 {
		t.Errorf("standard error: %q", stderr.String())
	}
	if _, err := os.Stat(filepath.Join(cmd.Dir, "sweep.csv")); err == nil {
		t.Error("a file was written")
	}
}
