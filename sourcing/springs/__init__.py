"""Springs as values, and the mechanics of each kind: pure functions of numbers, no files, no printing."""
