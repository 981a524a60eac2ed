"""The rate of a spring of any kind, by its dimensions: N/mm, of a torsion spring N·mm/deg."""

from __future__ import annotations

from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import ExtensionSpring, Spring, TorsionSpring


def rate_of(spring: Spring) -> float:
    """The rate that the dimensions give; a cone's initial one, a torsion spring's with its legs."""
    if isinstance(spring, TorsionSpring):
        return turned.rate_n_mm_per_deg(spring)
    if isinstance(spring, ExtensionSpring):
        return pulled.rate_n_per_mm(spring)
    return pressed.rate_n_per_mm(spring)
