"""An extension spring in hand: its hooks are bent to its length, as near as they reach, and what of it is kept.

The list of what to accept and the answers about a spring in hand both ask here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import ceil, floor

from sourcing.fit.model import Fit
from sourcing.need.model import Need
from sourcing.quantities.kinds import FORCE
from sourcing.springs import extension, pulled
from sourcing.springs.model import ExtensionSpring
from sourcing.stock.model import Bench
from sourcing.winding.extension.ends import hook_heights_mm
from sourcing.winding.extension.hand_tension import TENSION_DOUBTED
from sourcing.winding.in_hand import RULE_STEPS_MM, finished, keeps, kept_between_mm, most_kept
from sourcing.winding.model import Band

SCALE_STEPS_N = {"mm": 0.1, "inch": 0.01 * FORCE.factors["lbf"]}
"""To what an initial tension is shown, by the bench's units; ten times finer below ten of these."""

_Kept = Callable[[float], bool]


@dataclass(frozen=True, slots=True)
class KeptTension:
    """Between what an initial tension is kept as it is, and whether a hand may wind less than that, or more."""

    low_n: float
    high_n: float
    less: bool
    more: bool


def kept_tension(spring: ExtensionSpring, planned: Fit, need: Need, bench: Bench, by_hand: Band) -> KeptTension:
    """What is kept at the length planned, up to what is doubted of a hand that winds `by_hand`."""
    planned_n = spring.initial_tension_n or 0.0
    most_n = max(planned_n, TENSION_DOUBTED * by_hand.high)

    def kept(tension_n: float) -> bool:
        return keeps(finished(replace(spring, initial_tension_n=tension_n), need, bench), planned)

    down = most_kept(lambda share: kept(planned_n * (1.0 - share)))
    up = most_kept(lambda share: kept(planned_n + share * (most_n - planned_n)))
    bounds_n = planned_n * (1.0 - down), planned_n + up * (most_n - planned_n)
    step_n = SCALE_STEPS_N[bench.units]
    low_n, high_n = _as_read(*bounds_n, lambda n: step_n if n >= 10.0 * step_n else 0.1 * step_n, kept)
    return KeptTension(low_n, high_n, less=down < 1.0, more=up < 1.0)


def kept_lengths_mm(spring: ExtensionSpring, planned: Fit, need: Need, bench: Bench) -> tuple[float, float]:
    """Between what lengths inside its hooks, as they are shown to three figures, it is kept while its coils touch."""

    step_mm, body_mm = RULE_STEPS_MM[bench.units], pulled.body_length_mm(spring)

    def kept(free_mm: float) -> bool:
        as_bent = replace(spring, free_length_mm=free_mm)
        return free_mm >= body_mm - step_mm and keeps(finished(as_bent, need, bench), planned)

    bounds_mm = kept_between_mm(spring.free_length_mm, kept)
    return _as_read(*bounds_mm, lambda mm: step_mm if mm < 1000.0 * step_mm else 10.0 * step_mm, kept)


def _as_read(low: float, high: float, step_at: Callable[[float], float], kept: _Kept) -> tuple[float, float]:
    """Bounds on the steps next to them that are kept still; as they are where neither is."""

    def on_step(bound: float, roundings: tuple[Callable[[float], int], ...]) -> float:
        step = step_at(bound)
        steps = (round(rounded(bound / step) * step, 9) for rounded in roundings)
        return next((each for each in steps if kept(each)), bound)

    return on_step(low, (floor, ceil)), on_step(high, (ceil, floor))


def as_it_came(wanted: ExtensionSpring, mean_mm: float) -> ExtensionSpring:
    """The spring with another diameter and the coils that were meant."""
    return hooked(replace(wanted, mean_diameter_mm=mean_mm), wanted.free_length_mm)


def hooked(spring: ExtensionSpring, free_length_mm: float, body_mm: float | None = None) -> ExtensionSpring:
    """The spring with its hooks bent as near to a free length as hooks of their kind reach.

    `body_mm`: how long its body is where its coils do not touch.
    """
    low_mm, high_mm = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    body_mm = pulled.body_length_mm(spring) if body_mm is None else body_mm
    least_mm, most_mm = (extension.free_length_mm(body_mm, height_mm) for height_mm in (low_mm, high_mm))
    return replace(spring, free_length_mm=min(max(free_length_mm, least_mm), most_mm))
