"""The chance that a spring truly works: every clearance kept and every wanted figure within its tolerance."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from sourcing.fit.case import AnyCase
from sourcing.fit.chance import pressed, pulled, turned

OF_KIND: Mapping[str, Callable[[Any], float]] = {
    "compression": pressed.chance,
    "conical": pressed.chance,
    "extension": pulled.chance,
    "torsion": turned.chance,
}


def chance(case: AnyCase) -> float:
    """The chance 0..1 that the spring keeps every clearance and meets every wanted figure within one tolerance.

    What no spread of the spring can mend (solid, stress, temperature, surroundings) is not in it: the judge gives 0
    where a hard limit of that kind is broken.
    """
    return OF_KIND[case.spring.kind](case)
