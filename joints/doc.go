// Package joints sizes the joints of a frame: each over all its loads.
package joints
