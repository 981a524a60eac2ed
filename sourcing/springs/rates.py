"""The rate of a spring of any kind, by its dimensions: N/mm."""

from __future__ import annotations

from sourcing.springs import pressed
from sourcing.springs.model import Spring


def rate_of(spring: Spring) -> float:
    """The rate that the dimensions give; a cone's initial one."""
    return pressed.rate_n_per_mm(spring)
