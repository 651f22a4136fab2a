// Package design reads design files.
package design
