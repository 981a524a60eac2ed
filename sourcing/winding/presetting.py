"""Presetting: what the first pressing takes, how much longer to wind for it, what a spring bears that got no heat.

Pressed solid, the wire yields a little and the spring shortens; what it loses then it does not lose in use.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import TypeVar

from sourcing.materials.model import Material
from sourcing.quantities import show_diameter, show_length, show_stress
from sourcing.springs import pressed
from sourcing.springs.model import CompressionSpring, ConicalSpring, PressedSpring
from sourcing.springs.strength import Place, permissible, permissible_at_mpa
from sourcing.stock.model import Bench
from sourcing.winding.model import Band

SETS_FROM, SETS_UP_TO = 0.45, 0.60
"""Stress at solid over the least tensile strength from which the first pressing shortens a spring, and up to which by
how much can be told (common practice, no source)."""

LEAST_LOST, MOST_LOST = 0.02, 0.15
"""Shares of the free length that are lost at those two (common practice, no source)."""

PRESS_INSTEAD = "Press the spring solid instead, as told below; it goes on shortening a little in use."
"""What a compression spring gets in place of heat (common practice, no source)."""

TENTH_LEFT = " It lasts a tenth of the cycles of a relieved one (assumed)."
"""What `life.Making` takes from a spring that was not relieved, as a sentence after a blank."""

_EITHER_WAY = 0.5
"""By how much of it the loss may be off (assumed)."""

NEVER_LOST = 0.05
"""The share of the free length by which no spring of sound wire sets beyond that (assumed)."""


def lost_share(stress_at_solid_share: float) -> float:
    """The share of the free length that the first pressing takes: p = 0.02 + 0.13 (s − 0.45) / 0.15; none below 0.45.

    The two ends are common practice, without a source; the straight line between them, and on beyond, is assumed.

    >>> [round(lost_share(share), 3) for share in (0.40, 0.45, 0.525, 0.60)]
    [0.0, 0.02, 0.085, 0.15]
    """
    if stress_at_solid_share < SETS_FROM:
        return 0.0
    between = (stress_at_solid_share - SETS_FROM) / (SETS_UP_TO - SETS_FROM)
    return LEAST_LOST + (MOST_LOST - LEAST_LOST) * between


def longer_mm(free_length_mm: float, lost: float) -> float:
    """How much longer a spring is wound that loses the share p of what it then has: L₀ p / (1 − p), in mm.

    >>> round(longer_mm(46.0, 0.08), 3)
    4.0
    """
    return free_length_mm * lost / (1.0 - lost)


def longer_band_mm(free_length_mm: float, lost: float) -> Band:
    """Between what `longer_mm` lies: with half the loss and with one and a half times of it (assumed).

    >>> band = longer_band_mm(46.0, 0.08)
    >>> round(band.low, 2), round(band.high, 2)
    (1.92, 6.27)
    """
    return Band(*(longer_mm(free_length_mm, lost * (1.0 + way)) for way in (-_EITHER_WAY, _EITHER_WAY)))


def allowance_mm(spring: PressedSpring, stress_at_solid_share: float) -> float:
    """How much longer to wind for the first pressing; 0 where it takes nothing, or more than can be told."""
    lost = lost_share(stress_at_solid_share)
    return 0.0 if stress_at_solid_share > SETS_UP_TO else longer_mm(spring.free_length_mm, lost)


def pressed_off_mm(spring: PressedSpring) -> float:
    """How much longer a spring is wound for its first pressing; 0 where its strength is not known."""
    share = _stress_at_solid_share(spring)
    return 0.0 if share is None else allowance_mm(spring, share)


def most_lost_share(spring: PressedSpring) -> float | None:
    """The most of its free length that the first pressing takes; more is softer wire, or too much heat.

    None where its strength is not known, or its stress at solid is too high to tell.
    """
    share = _stress_at_solid_share(spring)
    if share is None or share > SETS_UP_TO:
        return None
    return lost_share(share) * (1.0 + _EITHER_WAY) + NEVER_LOST


def _stress_at_solid_share(spring: PressedSpring) -> float | None:
    if spring.tensile_strength_mpa is None:
        return None
    at_solid_mpa = pressed.stress_mpa(spring, pressed.solid_length_mm(spring), pressed.rate_n_per_mm(spring))
    return at_solid_mpa / spring.tensile_strength_mpa


S = TypeVar("S", CompressionSpring, ConicalSpring)


def as_laid(spring: S, wanted: PressedSpring) -> S:
    """The spring as long as it is laid: longer by what the first pressing takes of the one that is wanted."""
    return replace(spring, free_length_mm=spring.free_length_mm + pressed_off_mm(wanted))


def wind_longer(spring: PressedSpring, stress_at_solid_share: float, bench: Bench) -> Iterator[str]:
    """How much longer to wind, where the first pressing shortens it: told before the wire is laid."""
    lost, free_mm, units = lost_share(stress_at_solid_share), spring.free_length_mm, bench.units
    if not lost:
        return
    bears = f"at solid the wire bears {stress_at_solid_share:.2f} of its least strength"
    if stress_at_solid_share > SETS_UP_TO:
        yield (
            f"The first pressing will take more than {MOST_LOST:.0%} of its length: {bears} (common practice, no "
            "source). Wind one to find out, press it solid and ask `springwright wind --pressed-to`."
        )
        return
    more, band = allowance_mm(spring, stress_at_solid_share), longer_band_mm(free_mm, lost)
    low, middle, high = (show_length(mm, units) for mm in (band.low, more, band.high))
    gap = show_diameter(more / spring.active_coils, units)
    yield (
        f"Wind it longer than {show_length(free_mm, units)} by about {middle} ({low} to {high}); the pitch below has "
        f"that in it, {gap} a gap: so much goes at the first pressing, for {bears} (2 % at 0.45, 15 % at 0.60: common "
        "practice, no source; the line between, and half of it either way, are assumed)."
    )


def press_solid(heated: bool, stress_at_solid_share: float, spring: PressedSpring, bench: Bench) -> str:
    """The presetting of a compression spring; where it got no heat and is wound no longer, why not."""
    ends = ""
    if lost_share(stress_at_solid_share):
        ends = f" It should end {show_length(spring.free_length_mm, bench.units)} long."
    elif not heated:
        ends = (
            f" It was wound no longer for that: at solid the wire bears {stress_at_solid_share:.2f} of its least "
            f"strength, and below {SETS_FROM:g} pressing takes next to nothing (common practice, no source)."
        )
    if heated:
        how = "Press it solid three times (presetting; US military practice, from memory)"
    else:
        how = "Press it solid three to five times, until it gets no shorter (presetting; a history of spring making)"
    return f"{how}, over a rod or in a tube, eye protection on.{ends}"


def limit_left(place: Place, material: Material, tensile_strength_mpa: float | None, units: str) -> str:
    """What steady stress a spring that was not relieved is still given: a sentence after a blank, or nothing."""
    if tensile_strength_mpa is None:
        return ""
    row = permissible(place, material)
    limit = show_stress(permissible_at_mpa(place, material, tensile_strength_mpa), units)
    memory = ", from memory" if row.from_memory else ""
    return f" For a steady load it keeps {row.share:.2f} of its least strength, {limit} ({row.book}{memory})."
