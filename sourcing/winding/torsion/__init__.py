"""A torsion spring: the angle to stop at, its legs, its steps and what is accepted of it."""
