"""Springs that are here made into others: an extension spring with a new loop bent out of its last coils."""
