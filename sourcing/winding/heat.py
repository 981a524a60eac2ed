"""Stress relief: at what temperature with the oven owned, and what it does to the diameter."""

from __future__ import annotations

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.quantities import show_temperature
from sourcing.springs.life import Making
from sourcing.stock.model import Bench
from sourcing.winding.heat_change import heat_change
from sourcing.winding.model import Heat

_PRESSED = (
    "Press the spring solid a few times instead, expect it to shorten and to go on shortening a little in use, and "
    "wind it longer by what the first coil loses."
)


def oven_reaches(material: Material, bench: Bench) -> bool:
    """Whether the bench has an oven that reaches the material's stress relief."""
    least_c = material.stress_relief_low_c
    return bench.oven_c is not None and least_c is not None and bench.oven_c >= least_c


def making(material: Material, bench: Bench) -> Making:
    """How a spring wound here is made: with the stress of winding taken out, or left in it."""
    return Making.WOUND if oven_reaches(material, bench) else Making.WOUND_UNHEATED


def change_of_diameter(material: Material, bench: Bench) -> tuple[float, float]:
    """Relative change of the diameter at this bench and its standard deviation; none where no heat is given."""
    return heat_change(material) if oven_reaches(material, bench) else (0.0, 0.0)


@formula(
    "T = min((T₁ + T₂) / 2, T_o)",
    where={"T₁": "low_c", "T₂": "high_c", "T_o": "oven_c"},
    source="the middle of the material's range, or what the oven reaches of it",
)
def relief_c(low_c: float, high_c: float, oven_c: float) -> float:
    """The temperature of stress relief.

    >>> relief_c(200.0, 250.0, 220.0)
    220.0
    """
    return min((low_c + high_c) / 2, oven_c)


def stress_relief(material: Material, bench: Bench) -> Heat:
    """The middle of the material's range or what the oven reaches of it, in the material's time; or what else to do.

    The range and the change of diameter are in the table of materials, with their sources.
    """
    low_c, high_c = material.stress_relief_low_c, material.stress_relief_high_c
    minutes = material.stress_relief_minutes
    if low_c is None or high_c is None or minutes is None:
        return Heat(None, None, f"At what heat {material.name} loses the stress of winding is not known. {_PRESSED}")
    between = " to ".join(show_temperature(c, bench.units) for c in sorted({low_c, high_c}))
    if bench.oven_c is None or not oven_reaches(material, bench):
        owned = "there is no oven" if bench.oven_c is None else f"the oven ends at {show_temperature(bench.oven_c)}"
        wanted = f"{material.name} wants {between} to relieve the stress of winding, and {owned}."
        return Heat(None, None, f"{wanted} {_PRESSED}")
    temperature_c = relief_c(low_c, high_c, bench.oven_c)
    low, high = material.heat_change_low, material.heat_change_high
    return Heat(
        temperature_c,
        minutes,
        f"{show_temperature(temperature_c, bench.units)} for {minutes:g} minutes (range {between}), then cool in air. "
        f"The diameter changes by {100 * low:+.1f} to {100 * high:+.1f} % (common practice, no source).",
    )
