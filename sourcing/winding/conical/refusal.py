"""Why no cone of a wire serves: the nearest one, what it breaks and at which length, and what would change it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from math import log

from sourcing.fit.model import Deviation
from sourcing.quantities import show_diameter, show_force, show_length
from sourcing.winding.conical.search import ConicalDesign
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
    "off": "another free length",
}
"""What eases what refuses a cone; its limits of room go on with the end that they are about."""

AS_STEEP = 1.15
"""A force that rises by so much more or less than wanted, as a ratio, rises as wanted (assumed)."""

_LEAST = 1e-6


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
    if any(row.figure == "force" for row in off):
        yield _pushes_wrong(design, units)
    yield from ((row.figure, missed(row, units)) for row in off if row.figure != "force")


def _pushes_wrong(design: ConicalDesign, units: str) -> tuple[str, str]:
    """Too stiff or too soft where its force rises otherwise than wanted, else the forces that are off."""
    rows, steepness = _forces(design), _steepness(design)
    name = "too soft" if steepness < 1.0 else "too stiff"
    if abs(log(max(steepness, _LEAST))) < log(AS_STEEP):
        return "off", "; ".join(missed(row, units) for row in rows if row.deviation_over_tolerance > REFUSED_FROM)
    if len(rows) == 1:
        return name, f"it would be {name}: {missed(rows[0], units)}"
    lengths = " to ".join(show_length(rows[at].at or 0.0, units) for at in (0, -1))
    rise, wanted = (show_force(each, units) for each in _rises_n(rows))
    return name, f"it would be {name}: from {lengths} its force would rise by {rise}, where {wanted} is wanted"


def _off(design: ConicalDesign) -> tuple[Deviation, ...]:
    """The figures that are too far off."""
    return tuple(row for row in design.fit.deviations if row.deviation_over_tolerance > REFUSED_FROM)


def _forces(design: ConicalDesign) -> Sequence[Deviation]:
    """The wanted forces, longest length first."""
    return [row for row in design.fit.deviations if row.figure == "force"]


def _steepness(design: ConicalDesign) -> float:
    """How much more the force rises between the outer wanted lengths, or from nothing to the only one, than wanted."""
    rise_n, wanted_n = _rises_n(_forces(design))
    return rise_n / wanted_n if wanted_n > 0.0 else 1.0


def _rises_n(rows: Sequence[Deviation]) -> tuple[float, float]:
    """By how much the force would rise, and by how much it should: from nothing where one is wanted alone."""
    got_n, wanted_n = rows[-1].got, _middle(rows[-1])
    if len(rows) == 1:
        return got_n, wanted_n
    return got_n - rows[0].got, wanted_n - _middle(rows[0])


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
