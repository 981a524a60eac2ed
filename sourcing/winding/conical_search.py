"""Which cones serve a need with one wire: pairs of end diameters first, then coils and free length for the forces.

At each pair, active coils and free length bring the progressive curve nearest to the wanted forces (Gauss-Newton on the
misses over their tolerances), once for coils that go inside each other with a step of at least 1.1 wires, and once for
coils that stand on each other. Between the two turns would ride up and jam, so nothing is searched there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Spread
from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import PocketEnd
from sourcing.quantities import Wanted, show_diameter
from sourcing.springs import conical, geometry, pressed
from sourcing.springs.conical_lengths import SURE_STEP
from sourcing.springs.model import ConicalSpring
from sourcing.winding.heat import making
from sourcing.winding.line import Aim, Line, aim
from sourcing.winding.model import Refusal
from sourcing.winding.pressed_task import PressedTask
from sourcing.winding.search import GREATEST_INDEX, LEAST_INDEX
from sourcing.winding.task import unspread

ENDS_TRIED = 7
"""How many diameters of each end are paired."""

STANDING_STEP = 0.85
"""Radius step over wire up to which a turn stands on the next by at least half a wire of height (assumed)."""

LEAST_TAPER = 0.8
"""The small end over the large one, at most: else a cylinder would do (assumed)."""

MOST_COILS = 40.0
"""More are not searched: a cone of so many coils buckles (assumed)."""

ONE_FORCE_SHARES = (0.3, 0.5, 0.7)
"""Shares of the travel to solid at which a single wanted force may lie (common practice, no source)."""

STEPS = 12
_ORDER = {"yes": 0, "near": 1, "no": 2}


@dataclass(frozen=True, slots=True)
class ConicalDesign:
    """A cone that the wire could become, judged, with its stress at the shortest working length."""

    spring: ConicalSpring
    fit: Fit
    stress_mpa: float

    @property
    def standing(self) -> tuple[int, int, int]:
        """What comes before chance and stress in the order of designs, best first."""
        return _ORDER[self.fit.fits], -(100 if self.fit.score is None else self.fit.score), self.fit.soft_broken

    @property
    def order(self) -> tuple[int, int, int, float, float]:
        """The sort key, best first: fits, score, soft limits, chance in whole per cents, the lower stress."""
        return (*self.standing, -round(self.fit.chance, 2), self.stress_mpa)


@dataclass(frozen=True, slots=True)
class EndDiameters:
    """Between what the mean diameter of each end may lie, before growth in compression."""

    small_mm: tuple[float, float]
    large_mm: tuple[float, float]

    def pairs(self, tried: int) -> Iterable[tuple[float, float]]:
        """Pairs of a small and a larger end, evenly over what each may be."""
        for large_mm in _even(self.large_mm, tried):
            for small_mm in _even(self.small_mm, tried):
                if small_mm <= LEAST_TAPER * large_mm:
                    yield small_mm, large_mm


def _even(between: tuple[float, float], tried: int) -> Iterable[float]:
    low, high = between
    return (low + (high - low) * step / (tried - 1) for step in range(tried))


def end_diameters_mm(task: PressedTask) -> EndDiameters | Refusal:
    """The mean diameters that the bores and rods of both ends and a spring index of 4 to 20 leave."""
    pocket, nothing = task.need.pocket, PocketEnd()
    large, small = pocket.large_end or nothing, pocket.small_end or nothing
    large_low, large_high = _between(task, (large.rod_mm, pocket.rod_mm), (large.bore_mm, pocket.bore_mm))
    small_low, small_high = _between(task, (small.rod_mm, pocket.rod_mm), (small.bore_mm, pocket.bore_mm))
    if small_low <= small_high and large_low <= large_high and small_low < large_high:
        return EndDiameters((small_low, min(small_high, large_high)), (max(large_low, small_low), large_high))
    units = task.bench.units
    wire, *sizes = (
        show_diameter(each, units)
        for each in (task.wire.wire_diameter_mm, small_low, small_high, large_low, large_high)
    )
    why = (
        f"with wire of {wire} the mean diameter would have to be {sizes[0]} to {sizes[1]} at the small end and "
        f"{sizes[2]} to {sizes[3]} at the large one (rod or {LEAST_INDEX:g} wires, bore or {GREATEST_INDEX:g} wires)"
    )
    return Refusal("no-room-for-wire", why)


def _between(task: PressedTask, rods: Iterable[Wanted | None], bores: Iterable[Wanted | None]) -> tuple[float, float]:
    wire_mm, clearance = task.wire.wire_diameter_mm, task.bench.clearance
    over = (rod.largest + clearance.rod_mm + wire_mm for rod in rods if rod and rod.largest is not None)
    into = (bore.smallest - clearance.bore_mm - wire_mm for bore in bores if bore and bore.smallest is not None)
    return max((LEAST_INDEX * wire_mm, *over)), min((GREATEST_INDEX * wire_mm, *into))


def scan_cones(task: PressedTask, ends: EndDiameters, tried: int = ENDS_TRIED) -> tuple[ConicalDesign, ...]:
    """The best cones at each pair of end diameters, judged without spread."""
    return tuple(judged(task, spring, unspread) for pair in ends.pairs(tried) for spring in _springs(task, *pair))


def judged(task: PressedTask, spring: ConicalSpring, spread: Callable[[ConicalSpring], Spread]) -> ConicalDesign:
    """The cone against the need."""
    shortest_mm = min(point.at_mm for point in task.need.working)
    stress_mpa = pressed.stress_mpa(spring, shortest_mm, pressed.rate_n_per_mm(spring))
    made = replace(spread(spring), making=making(task.wire.material, task.bench))
    return ConicalDesign(spring, judge(spring, task.need, task.bench, made), stress_mpa)


def _springs(task: PressedTask, small_mm: float, large_mm: float) -> Iterable[ConicalSpring]:
    """For a pair of ends: coils inside each other, and coils on each other, where the pair allows either."""
    wire_mm, reach_mm = task.wire.wire_diameter_mm, (large_mm - small_mm) / 2
    inside = (1.5, reach_mm / (SURE_STEP * wire_mm))
    standing = (max(1.5, reach_mm / (STANDING_STEP * wire_mm)), MOST_COILS)
    shares = (None,) if isinstance(task.target, Line) else ONE_FORCE_SHARES
    for low, high in (inside, standing):
        if low < high:
            yield from (_met(task, _start(task, small_mm, large_mm), (low, high), share) for share in shares)


def _start(task: PressedTask, small_mm: float, large_mm: float) -> ConicalSpring:
    """A cone whose initial rate and free length are the line's."""
    wire_mm, material = task.wire.wire_diameter_mm, task.wire.material
    if isinstance(task.target, Line):
        line = task.target
    else:
        line = Line(2 * task.target.force_n / task.target.length_mm, 1.5 * task.target.length_mm)
    one = conical.rate_n_per_mm(wire_mm, small_mm, large_mm, 1.0, material.shear_modulus_mpa)
    ends, active = task.ends(large_mm), one / line.rate_n_per_mm
    return ConicalSpring(
        wire_diameter_mm=wire_mm,
        mean_diameter_small_mm=small_mm,
        mean_diameter_large_mm=large_mm,
        free_length_mm=line.free_length_mm,
        active_coils=active,
        total_coils=active + geometry.dead_coils(ends),
        ends=ends,
        material=material,
        shear_modulus_mpa=material.shear_modulus_mpa,
        elastic_modulus_mpa=material.elastic_modulus_mpa,
        tensile_strength_mpa=task.tensile_strength_mpa,
        hand=task.need.hand,
    )


def _met(task: PressedTask, spring: ConicalSpring, coils: tuple[float, float], share: float | None) -> ConicalSpring:
    """The coils between these bounds, and the free length, that bring the curve nearest to what is wanted."""
    wanted = _aims(task)
    spring = _changed(spring, coils, 0.0, 0.0)
    for _ in range(STEPS):
        rows = _misses(task, spring, wanted, share)
        by_coils = _slopes(rows, _misses(task, _with_coils(spring, 1.001 * spring.active_coils), wanted, share), 0.001)
        longer = replace(spring, free_length_mm=spring.free_length_mm + 0.01)
        by_length = _slopes(rows, _misses(task, longer, wanted, share), 0.01)
        before, spring = spring, _changed(spring, coils, *_step(rows, by_coils, by_length))
        if before.active_coils in coils and spring.active_coils == before.active_coils:
            spring = _changed(before, coils, 0.0, _step_of_length(rows, by_length))
    return spring


def _aims(task: PressedTask) -> tuple[tuple[float, Aim], ...]:
    return tuple(
        (point.at_mm, aim(point.force_n, force_house_tolerance_n(point.force_n, task.bench.tolerances)))
        for point in task.need.working
        if point.force_n is not None
    )


def _misses(
    task: PressedTask, spring: ConicalSpring, wanted: Sequence[tuple[float, Aim]], share: float | None
) -> tuple[float, ...]:
    """Each miss over its tolerance; where one force is wanted alone, the share of the travel that it should take."""
    rate = pressed.rate_n_per_mm(spring)
    rows = [(pressed.force_n(spring, at, rate) - each.value) / each.tolerance for at, each in wanted]
    if task.need.free_length_mm is not None:
        free = aim(task.need.free_length_mm, task.bench.tolerances.length_mm)
        rows.append((spring.free_length_mm - free.value) / free.tolerance)
    if share is not None:
        travel_mm = spring.free_length_mm - pressed.solid_length_mm(spring)
        rows.append(spring.free_length_mm - wanted[0][0] - share * travel_mm)
    return tuple(rows)


def _slopes(here: Sequence[float], there: Sequence[float], step: float) -> tuple[float, ...]:
    return tuple((after - before) / step for before, after in zip(here, there, strict=True))


def _step(rows: Sequence[float], by_coils: Sequence[float], by_length: Sequence[float]) -> tuple[float, float]:
    """Gauss-Newton, a little damped where the rows do not tell coils and length apart."""
    aa, ab, bb = _dot(by_coils, by_coils) + 1e-6, _dot(by_coils, by_length), _dot(by_length, by_length) + 1e-6
    ar, br = _dot(by_coils, rows), _dot(by_length, rows)
    determinant = aa * bb - ab * ab
    return (-(ar * bb - br * ab) / determinant, -(br * aa - ar * ab) / determinant) if determinant > 0 else (0.0, 0.0)


def _step_of_length(rows: Sequence[float], by_length: Sequence[float]) -> float:
    return -_dot(by_length, rows) / (_dot(by_length, by_length) + 1e-6)


def _dot(one: Sequence[float], other: Sequence[float]) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def _changed(spring: ConicalSpring, coils: tuple[float, float], log_coils: float, longer_mm: float) -> ConicalSpring:
    """So much more of coils (as a share, no more than a third at a time) and length, the coils kept within bounds."""
    active = spring.active_coils * (1 + min(max(log_coils, -0.33), 0.33))
    bounded = _with_coils(spring, min(max(active, coils[0]), coils[1]))
    furthest_mm = 0.3 * spring.free_length_mm
    longer_mm = min(max(longer_mm, -furthest_mm), furthest_mm)
    return replace(bounded, free_length_mm=spring.free_length_mm + longer_mm)


def _with_coils(spring: ConicalSpring, active: float) -> ConicalSpring:
    dead = spring.total_coils - spring.active_coils
    return replace(spring, active_coils=active, total_coils=active + dead)
