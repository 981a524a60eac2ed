"""How well a bench measures and lays what it winds: one standard deviation each, in mm or as a share."""

CALIPER_SD_MM = 0.03
"""A caliper on a coil, ±0.05 mm (assumed), read as a rectangle."""

MANDREL_SD_MM = 0.03
"""A rod measured with a caliper of ±0.05 mm, read as a rectangle."""

PITCH_SD_MM = 0.02
"""A pitch measured over several turns (assumed)."""

LENGTH_DOUBT = 0.02
"""What a hand lays, pulls or presses to a length, over its gaps or its travel to solid (assumed)."""

LEAST_GAP_MM = 0.02
"""Turns nearer to each other than this lie close (assumed)."""
