"""A conical spring: coil by coil on a cone, its room in the thing, its steps and what is accepted of it."""
