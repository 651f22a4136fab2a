package main

import (
	"fmt"
	"strconv"
	"strings"
)

// shard is one of several parts, written 3/16; the zero value is the whole.
type shard struct{ part, of int }

// mostShards bounds the parts.
const mostShards = 100_000

func (s *shard) String() string {
	if s.of == 0 {
		return ""
	}
	return fmt.Sprintf("%d/%d", s.part, s.of)
}
func (s *shard) Type() string { return "K/N" }
func (s *shard) expects() string {
	return fmt.Sprintf("a part and how many there are, as 3/16, at most %d", mostShards)
}

// Set takes K/N with K from 1 to N.
func (s *shard) Set(text string) error {
	part, of, ok := strings.Cut(text, "/")
	k, err := strconv.Atoi(part)
	n, err2 := strconv.Atoi(of)
	if !ok || err != nil || err2 != nil || k < 1 || k > n || n > mostShards {
		return errNotTaken
	}
	s.part, s.of = k, n
	return nil
}
