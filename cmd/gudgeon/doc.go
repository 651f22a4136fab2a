// Gudgeon works on the rear suspension of bicycles and motorcycles: how the
// linkage moves, what its pins carry, whether the joints there hold.
package main
