package spring_test

import (
	"fmt"

	"gudgeon/kinematics/spring"
)

// A coil with a bumper over the last 9 of 60 mm.
func Example() {
	s := spring.Spring{
		Coil:   &spring.Coil{Rate: 80, Preload: 2},
		Bumper: &spring.Bumper{Length: 9, Force: 1800},
	}
	curve, err := s.Prepare(60)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f N, %.0f N/mm, %.1f J\n", curve.Force(60), curve.Rate(60), curve.Energy(60)/1000)
	// Output: 6760 N, 480 N/mm, 159.0 J
}
