package chain_test

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r2"

	"gudgeon/kinematics/chain"
)

// A swingarm of 440 mm turns about the crank by 20 degrees: the chainring is
// larger than the cog, so the upper run gets shorter as the wheel rises.
func Example() {
	cog, _ := chain.NewSprocket(21, chain.HalfInch)
	ring, _ := chain.NewSprocket(32, chain.HalfInch)
	run, err := chain.Drive{Cogs: []chain.Sprocket{cog}, Chainring: ring}.Prepare(chain.Centres{Cog: r2.Vec{X: -440}})
	if err != nil {
		fmt.Println(err)
		return
	}
	sin, cos := math.Sincos(math.Pi / 9)
	p, err := run.At(0, chain.Centres{Cog: r2.Vec{X: -440 * cos, Y: 440 * sin}}, chain.Centres{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("growth %.3f mm, along (%.3f, %.3f)\n", p.Growth, p.First.Along.X, p.First.Along.Y)
	fmt.Printf("(R − r)·β %.3f mm\n", (ring.Radius-cog.Radius)*-math.Pi/9)
	// Output:
	// growth -7.742 mm, along (0.956, -0.294)
	// (R − r)·β -7.742 mm
}
