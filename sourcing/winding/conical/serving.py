"""Which diameters of a cone's ends one wire can serve: each end by itself, with the other as it then has to be."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from sourcing.winding.conical.room import ENDS_TRIED, End, EndDiameters, tapers
from sourcing.winding.conical.search import ConicalDesign, designs_at
from sourcing.winding.model import Serves
from sourcing.winding.pressed_task import PressedTask
from sourcing.winding.search import is_of_the_pocket, stops

EDGE_MM = 0.05
"""How closely the edges of what serves are sought."""

OTHERS_TRIED = 5
"""How many diameters of the other end are tried while an edge is sought."""


def serving_ends(
    task: PressedTask, ends: EndDiameters, designs: Sequence[ConicalDesign]
) -> tuple[tuple[Serves, ...], bool]:
    """The mean diameters of the large end that serve with some small one, then those of the small end with some large.

    With them, whether anything but the pocket and the index bounds them.
    """
    found = [each for end in ("large", "small") for each in _intervals(task, ends, designs, end)]
    inner = any(not is_of_the_pocket(name) for _, names in found for name in names)
    return tuple(serves for serves, _ in found), inner


def _intervals(
    task: PressedTask, ends: EndDiameters, designs: Sequence[ConicalDesign], end: End
) -> Iterable[tuple[Serves, tuple[str, ...]]]:
    """Each run of serving diameters of one end, and the names of what stops it."""
    tried = sorted({_of(each, end) for each in designs} | set(ends.of(end).tried(ENDS_TRIED)))
    at = [[each for each in designs if _of(each, end) == mean_mm] for mean_mm in tried]
    good = [any(each.fit.fits == "yes" for each in here) for here in at]
    for first in (place for place, serves in enumerate(good) if serves and not (place and good[place - 1])):
        last = next((place for place in range(first, len(good)) if not good[place]), len(good)) - 1
        low_mm, below = _edge(task, ends, end, tried, at, first, -1)
        high_mm, above = _edge(task, ends, end, tried, at, last, +1)
        said = (why[0][1] if why else "" for why in (below, above))
        yield Serves(low_mm, high_mm, *said, end=end), tuple(name for name, _ in (*below, *above))


def _edge(
    task: PressedTask,
    ends: EndDiameters,
    end: End,
    tried: Sequence[float],
    at: Sequence[Sequence[ConicalDesign]],
    place: int,
    way: int,
) -> tuple[float, tuple[tuple[str, str], ...]]:
    """Where what serves ends, by bisection with the other end as it was, and what stops it there."""
    good_mm = tried[place]
    if not 0 <= place + way < len(tried):
        return good_mm, ()
    bad_mm, beyond = tried[place + way], at[place + way]
    others = _others(ends, _other(end), [each for each in at[place] if each.fit.fits == "yes"])
    while abs(good_mm - bad_mm) > EDGE_MM:
        middle_mm = (good_mm + bad_mm) / 2
        found = tuple(_designs(task, ends, end, middle_mm, others))
        if any(each.fit.fits == "yes" for each in found):
            good_mm = middle_mm
        else:
            bad_mm, beyond = middle_mm, found
    nearest = min(beyond, key=lambda each: each.order, default=None)
    return good_mm, () if nearest is None else tuple(stops(nearest.fit, task.bench.units))


def _designs(
    task: PressedTask, ends: EndDiameters, end: End, mean_mm: float, others: Sequence[float]
) -> Iterable[ConicalDesign]:
    """The cones of one end's diameter with each of the other's."""
    pairs = ((other, mean_mm) if end == "large" else (mean_mm, other) for other in others)
    return (each for pair in pairs if tapers(*pair) for each in designs_at(task, ends, *pair))


def _others(ends: EndDiameters, end: End, serving: Sequence[ConicalDesign]) -> Sequence[float]:
    """Diameters of the other end from just below those that serve to just above them."""
    means_mm, tried = [_of(each, end) for each in serving], ends.of(end).tried(ENDS_TRIED)
    low_mm = max((each for each in tried if each < min(means_mm)), default=min(means_mm))
    high_mm = min((each for each in tried if each > max(means_mm)), default=max(means_mm))
    return [low_mm + (high_mm - low_mm) * step / (OTHERS_TRIED - 1) for step in range(OTHERS_TRIED)]


def _other(end: End) -> End:
    return "small" if end == "large" else "large"


def _of(design: ConicalDesign, end: End) -> float:
    """The mean diameter of one end."""
    spring = design.spring
    return spring.mean_diameter_small_mm if end == "small" else spring.mean_diameter_large_mm
