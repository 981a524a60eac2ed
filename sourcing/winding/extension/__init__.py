"""An extension spring: wound tight with its tension in it, its hooks, its steps and what is accepted of it."""
