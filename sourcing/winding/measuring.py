"""How well a bench measures and lays what it winds: one standard deviation each, in mm or as a share."""

CALIPER_SD_MM = 0.03
"""A caliper on a coil, ±0.05 mm (assumed), read as a rectangle."""

MANDREL_SD_MM = 0.03
"""A rod measured with a caliper of ±0.05 mm, read as a rectangle."""

PRINTED_SD_MM = 0.07
"""A printed mandrel, measured so: out of round, and the wire presses itself in as it is wound (assumed)."""

PITCH_SD_MM = 0.02
"""A pitch measured over several turns (assumed)."""

LENGTH_DOUBT = 0.02
"""What a hand lays, pulls or presses to a length, over its gaps or its travel to solid (assumed)."""

LEAST_GAP_MM = 0.02
"""Turns nearer to each other than this lie close (assumed)."""


def sd_of_mandrel_mm(on: str | None) -> float:
    """How well the diameter is known that wire was wound on; `on`: what it was, a steel rod where it is not said.

    >>> sd_of_mandrel_mm(None), sd_of_mandrel_mm("steel-rod"), sd_of_mandrel_mm("printed")
    (0.03, 0.03, 0.07)
    """
    return PRINTED_SD_MM if on == "printed" else MANDREL_SD_MM
