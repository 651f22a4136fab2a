// Package spline sizes splined joints.
package spline
