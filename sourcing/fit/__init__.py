"""How well a spring meets a need: hard limits, score, chance, and the order of candidates."""
