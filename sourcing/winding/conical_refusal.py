"""Why no cone of a wire serves: the nearest one, what it breaks and at which length, and what would change it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from sourcing.fit.model import Deviation
from sourcing.quantities import show_diameter, show_length
from sourcing.winding.conical_search import ConicalDesign
from sourcing.winding.model import Refusal
from sourcing.winding.search import REFUSED_FROM, missed

THINNER, THICKER = "thinner wire", "thicker wire"

EASED_BY: Mapping[str, str] = {
    "bore clearance": f"{THINNER} or a wider bore",
    "rod clearance": f"{THINNER} or a thinner rod",
    "depth": THINNER,
    "solid length": f"{THINNER} or a longer shortest length",
    "stress at the shortest length": f"{THICKER} or less force there",
    "stress at solid": f"{THICKER} or a wider small end",
    "temperature": "another material",
    "too stiff": f"{THINNER} or room for wider coils",
    "too soft": THICKER,
}
"""What eases what refuses a cone; its limits of room go on with the end that they are about."""


def why_no_cone(designs: Sequence[ConicalDesign], units: str) -> Refusal:
    """The refusal in the words of the cone that comes nearest, with what would ease each thing that refuses it."""
    nearest = min(designs, key=lambda each: (_badness(each), each.order))
    spring = nearest.spring
    small, large = (
        show_diameter(each, units) for each in (spring.mean_diameter_small_mm, spring.mean_diameter_large_mm)
    )
    said = list(_said(nearest, units))
    eased = [_easing(name) for name, _ in said]
    told = zip((words for _, words in said), eased, strict=True)
    why = "; ".join(words + (f", which {ease} would ease" if ease else "") for words, ease in told)
    torn = all(any(each.startswith(wire) for each in eased) for wire in (THINNER, THICKER))
    return Refusal(
        "no-diameter-serves",
        f"no cone of this wire serves. The nearest, of mean diameters {small} and {large}, "
        f"{spring.active_coils:.1f} active coils and {show_length(spring.free_length_mm, units)} free length: {why}"
        + ("; since these pull apart, only more room or other forces would do" if torn else ""),
    )


def _said(design: ConicalDesign, units: str) -> Iterable[tuple[str, str]]:
    """Each thing that refuses a cone by name, with its words; that it is never pressed is told by its forces."""
    off = _off(design)
    for limit in design.fit.broken:
        if limit.hard and not (limit.limit == "reach" and off):
            yield limit.limit, limit.why
    forces = [row for row in off if row.figure == "force"]
    if forces:
        name = "too soft" if _steepness(design) < 1.0 else "too stiff"
        yield name, f"it would be {name}: " + ", ".join(missed(row, units) for row in forces)
    yield from ((row.figure, missed(row, units)) for row in off if row.figure != "force")


def _off(design: ConicalDesign) -> tuple[Deviation, ...]:
    """The figures that are too far off."""
    return tuple(row for row in design.fit.deviations if row.deviation_over_tolerance > REFUSED_FROM)


def _steepness(design: ConicalDesign) -> float:
    """How much more the force rises between the outer wanted lengths, or from nothing to the only one, than wanted."""
    rows = [row for row in design.fit.deviations if row.figure == "force"]
    if not rows:
        return 1.0
    light, heavy = (_middle(rows[at]) for at in (0, -1))
    if len(rows) == 1:
        return rows[0].got / heavy
    return (rows[-1].got - rows[0].got) / (heavy - light) if heavy > light else 1.0


def _middle(row: Deviation) -> float:
    wanted = row.wanted
    known = [each for each in (wanted.nominal, wanted.low, wanted.high) if each is not None]
    return sum(known) / len(known)


def _easing(limit: str) -> str:
    return next((words for name, words in EASED_BY.items() if limit.startswith(name)), "")


def _badness(design: ConicalDesign) -> tuple[int, float]:
    """How many things refuse it, and how far it is past them in shares of what is allowed or wanted."""
    hard, off = [limit for limit in design.fit.broken if limit.hard], _off(design)
    past = sum(limit.past for limit in hard)
    beyond = sum((row.deviation_over_tolerance - REFUSED_FROM) * row.tolerance / (_middle(row) or 1.0) for row in off)
    return len(hard) + len(off), past + beyond
