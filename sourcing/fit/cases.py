"""The case of each kind of spring."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from sourcing.fit.case import AnyCase
from sourcing.fit.model import Spread
from sourcing.fit.pressed import PressedCase
from sourcing.fit.pulled import PulledCase
from sourcing.fit.turned import TurnedCase
from sourcing.need.model import Need
from sourcing.springs.model import Spring
from sourcing.springs.rates import rate_of
from sourcing.stock.model import Bench

OF_KIND: Mapping[str, Callable[[Any, Need, Bench, Spread, float], AnyCase]] = {
    "compression": PressedCase,
    "conical": PressedCase,
    "extension": PulledCase,
    "torsion": TurnedCase,
}


def case_of(spring: Spring, need: Need, bench: Bench, spread: Spread, rate: float | None = None) -> AnyCase:
    """A spring in its place. `rate` is the one to believe; None takes that of the dimensions."""
    return OF_KIND[spring.kind](spring, need, bench, spread, rate or rate_of(spring))
