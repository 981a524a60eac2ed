"""Stress relief: at what temperature with the oven owned, and what it does to the diameter."""

from __future__ import annotations

from sourcing.figures import formula
from sourcing.materials.model import Material
from sourcing.quantities import show_temperature
from sourcing.springs.life import Making
from sourcing.stock.model import Bench
from sourcing.winding.finishing import holds_beryllium
from sourcing.winding.heat_change import heat_change
from sourcing.winding.model import Heat

DIAL_ERRS_C = 20.0
"""How far the dial of an oven may be off (common practice, no source)."""

KITCHEN_OVEN_C = 250.0
"""What a kitchen oven reaches (common practice, no source)."""


def oven_reaches(material: Material, bench: Bench) -> bool:
    """Whether the bench has an oven that reaches the material's stress relief."""
    least_c = material.stress_relief_low_c
    return bench.oven_c is not None and least_c is not None and bench.oven_c >= least_c


def asked_with(options: str, material: Material, bench: Bench) -> str:
    """How to ask what to do with a finished spring that measures otherwise, after heat where it is given here."""
    after = " (and `--heated yes`, after its heat)" if oven_reaches(material, bench) else ""
    return f"`springwright wind` with {options}{after}"


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


def stress_relief(material: Material, bench: Bench, instead: str) -> Heat:
    """The middle of the material's range or what the oven reaches of it, in the material's time; or what else.

    `instead`: the sentences on what a spring of this kind gets without heat.

    The range and the change of diameter are in the table of materials, with their sources.
    """
    low_c, high_c = material.stress_relief_low_c, material.stress_relief_high_c
    minutes = material.stress_relief_minutes
    if low_c is None or high_c is None or minutes is None:
        return Heat(None, None, f"At what heat {material.name} loses the stress of winding is not known. {instead}")
    between = " to ".join(show_temperature(c, bench.units) for c in sorted({low_c, high_c}))
    if bench.oven_c is None or not oven_reaches(material, bench):
        wanted = f"The stress of winding leaves {material.name} at {between}, and {_lacks(low_c, bench)}"
        return Heat(None, None, f"{wanted} {_would_do(low_c, high_c, bench)} {instead}")
    temperature_c = relief_c(low_c, high_c, bench.oven_c)
    low, high = material.heat_change_low, material.heat_change_high
    return Heat(
        temperature_c,
        minutes,
        f"{show_temperature(temperature_c, bench.units)} for {minutes:g} minutes (range {between}), then cool in air. "
        f"{_part(low_c, high_c, bench)}Go by a thermometer beside the spring: oven dials err by "
        f"{_difference(DIAL_ERRS_C, bench)}. The diameter changes by {100 * low:+.1f} to {100 * high:+.1f} % (both "
        "common practice, no source).",
    )


def where_heated(material: Material) -> str:
    """On what the spring lies in the oven, as words between commas."""
    if holds_beryllium(material):
        return "on a steel rod that just fits into it, or it bends out of shape (Machinery's Handbook, p. 346)"
    return "off the mandrel"


def _lacks(low_c: float, bench: Bench) -> str:
    """What there is for an oven where it does not do."""
    if bench.oven_c is None:
        return "there is no oven."
    ends, short = show_temperature(bench.oven_c, bench.units), _difference(low_c - bench.oven_c, bench)
    return f"the oven ends at {ends}, {short} short."


def _would_do(low_c: float, high_c: float, bench: Bench) -> str:
    """Which oven would do."""
    kitchen = show_temperature(KITCHEN_OVEN_C, bench.units)
    if (low_c + high_c) / 2.0 <= KITCHEN_OVEN_C:
        return f"A kitchen oven that reaches {kitchen} would do."
    if low_c <= KITCHEN_OVEN_C:
        return f"A kitchen oven of {kitchen} would take part of it, a workshop's hotter one more."
    return "No kitchen oven gets so hot; a workshop's may."


def _part(low_c: float, high_c: float, bench: Bench) -> str:
    """That an oven below the middle of the range does only part of the work; a sentence and a blank, or nothing."""
    middle_c = (low_c + high_c) / 2.0
    if bench.oven_c is None or bench.oven_c >= middle_c:
        return ""
    ends, middle = (show_temperature(c, bench.units) for c in (bench.oven_c, middle_c))
    return f"The oven ends at {ends}, below the middle of that range ({middle}): part of the stress stays. "


def _difference(kelvin: float, bench: Bench) -> str:
    """A difference of temperatures.

    >>> _difference(20.0, Bench()), _difference(20.0, Bench(units="inch"))
    ('20 °C', '36 °F')
    """
    return f"{1.8 * kelvin:.0f} °F" if bench.units == "inch" else f"{kelvin:.0f} °C"
