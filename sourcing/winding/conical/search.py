"""Which cones serve a need with one wire: pairs of end diameters first, then coils and free length for the forces.

The ends are drawn towards their pocket (conical_room.py). At each pair, active coils and free length bring the
progressive curve nearest to the wanted forces (Gauss-Newton on the misses over their tolerances), once for coils that
go inside each other with a step of at least 1.1 wires, and once for coils that stand on each other. Between the two
turns would ride up and jam, so nothing is searched there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace
from math import isclose

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Spread
from sourcing.springs import conical, geometry, pressed
from sourcing.springs.conical_lengths import SURE_STEP
from sourcing.springs.model import ConicalSpring
from sourcing.winding.conical.misses import at_length, dot, misses, slopes, step_of_length
from sourcing.winding.conical.room import EndDiameters
from sourcing.winding.heat import making
from sourcing.winding.line import Aims, Line, aims
from sourcing.winding.pressed_task import PressedTask
from sourcing.winding.task import unspread

STANDING_STEP = 0.85
"""Radius step over wire up to which a turn stands on the next by at least half a wire of height (assumed)."""

MOST_COILS = 40.0
"""More are not searched: a cone of so many coils buckles (assumed)."""

ONE_FORCE_SHARES = (0.3, 0.5, 0.7)
"""Shares of the travel to solid at which a single wanted force may lie (common practice, no source)."""

STEPS = 12
"""At most, of the fit of coils and length."""

SCORE_STEP = 10
"""Scores that lie nearer together are no reason for a looser cone (assumed)."""

LOOSE_STEP = 0.02
"""Ends whose looseness is nearer together than this lie alike (assumed)."""

_LAST_DIGITS = 1e-7
_ORDER = {"yes": 0, "near": 1, "no": 2}


@dataclass(frozen=True, slots=True)
class ConicalDesign:
    """A cone that the wire could become, judged, with its stress at the shortest working length.

    `looseness`: of its ends in their pocket. `sure`: with the least chance that the bench wants.
    """

    spring: ConicalSpring
    fit: Fit
    stress_mpa: float
    looseness: float
    sure: bool

    @property
    def standing(self) -> tuple[int, int, int]:
        """What comes before the pocket in the order of designs, best first: fits, the score in steps, soft limits."""
        score = 100 if self.fit.score is None else self.fit.score
        return _ORDER[self.fit.fits], -round(score / SCORE_STEP), self.fit.soft_broken

    @property
    def order(self) -> tuple[int, int, int, bool, int, float, float]:
        """The sort key, best first.

        Fits, score, soft limits, a sure chance, snug in the pocket, chance in whole per cents, the lower stress.
        """
        snug, chance = round(self.looseness / LOOSE_STEP), round(self.fit.chance, 2)
        return (*self.standing, not self.sure, snug, -chance, self.stress_mpa)


def scan_cones(task: PressedTask, ends: EndDiameters) -> tuple[ConicalDesign, ...]:
    """The best cones at each pair of end diameters, judged without spread.

    Where none of them serves and one comes near, pairs between are tried round that one.
    """
    designs = tuple(each for pair in ends.pairs() for each in designs_at(task, ends, *pair))
    best = min(designs, key=lambda each: each.order, default=None)
    if best is None or best.fit.fits != "near":
        return designs
    return designs + tuple(each for pair in ends.pairs_near(best.spring) for each in designs_at(task, ends, *pair))


def designs_at(task: PressedTask, ends: EndDiameters, small_mm: float, large_mm: float) -> Iterable[ConicalDesign]:
    """The best cones of a pair of end diameters, judged without spread."""
    return (judged(task, ends, spring, unspread) for spring in springs_at(task, small_mm, large_mm))


def judged(
    task: PressedTask, ends: EndDiameters, spring: ConicalSpring, spread: Callable[[ConicalSpring], Spread]
) -> ConicalDesign:
    """The cone against the need."""
    shortest_mm = min(point.at_mm for point in task.need.working)
    stress_mpa = pressed.stress_mpa(spring, shortest_mm, pressed.rate_n_per_mm(spring))
    made = replace(spread(spring), making=making(task.wire.material, task.bench))
    fit = judge(spring, task.need, task.bench, made)
    return ConicalDesign(spring, fit, stress_mpa, ends.looseness(spring), fit.chance >= task.bench.least_chance)


def springs_at(task: PressedTask, small_mm: float, large_mm: float) -> Iterable[ConicalSpring]:
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
        end_1=task.need.end_1 and task.need.end_1.piece,
        end_2=task.need.end_2 and task.need.end_2.piece,
    )


def _met(task: PressedTask, spring: ConicalSpring, coils: tuple[float, float], share: float | None) -> ConicalSpring:
    """The coils between these bounds, and the free length, that bring the curve nearest to what is wanted."""
    spring, wanted = _changed(spring, coils, 0.0, 0.0), aims(task.need, task.bench)
    for _ in range(STEPS):
        rows = _misses(wanted, spring, share)
        by_coils = slopes(rows, _misses(wanted, _with_coils(spring, 1.001 * spring.active_coils), share), 0.001)
        longer = replace(spring, free_length_mm=spring.free_length_mm + 0.01)
        by_length = slopes(rows, _misses(wanted, longer, share), 0.01)
        before, spring = spring, _changed(spring, coils, *_step(rows, by_coils, by_length))
        if before.active_coils in coils and spring.active_coils == before.active_coils:
            spring = _changed(before, coils, 0.0, step_of_length(rows, by_length))
        if _alike(before, spring):
            break
    return spring


def _alike(one: ConicalSpring, other: ConicalSpring) -> bool:
    """Whether a step changed nothing that could be seen."""
    return isclose(one.active_coils, other.active_coils, rel_tol=_LAST_DIGITS) and isclose(
        one.free_length_mm, other.free_length_mm, rel_tol=_LAST_DIGITS
    )


def _misses(wanted: Aims, spring: ConicalSpring, share: float | None) -> tuple[float, ...]:
    """Each miss over its tolerance; where one force is wanted alone, the share of the travel that it should take."""
    rows, (forces, _) = misses(spring, wanted), wanted
    if share is None:
        return rows
    at_mm, _ = forces[0]
    travel_mm = spring.free_length_mm - pressed.solid_length_mm(spring)
    return (*rows, spring.free_length_mm - at_mm - share * travel_mm)


def _step(rows: Sequence[float], by_coils: Sequence[float], by_length: Sequence[float]) -> tuple[float, float]:
    """Gauss-Newton, a little damped where the rows do not tell coils and length apart."""
    aa, ab, bb = dot(by_coils, by_coils) + 1e-6, dot(by_coils, by_length), dot(by_length, by_length) + 1e-6
    ar, br = dot(by_coils, rows), dot(by_length, rows)
    determinant = aa * bb - ab * ab
    return (-(ar * bb - br * ab) / determinant, -(br * aa - ar * ab) / determinant) if determinant > 0 else (0.0, 0.0)


def _changed(spring: ConicalSpring, coils: tuple[float, float], log_coils: float, longer_mm: float) -> ConicalSpring:
    """So much more of coils (as a share, no more than a third at a time) and length, the coils kept within bounds."""
    active = spring.active_coils * (1 + min(max(log_coils, -0.33), 0.33))
    bounded = _with_coils(spring, min(max(active, coils[0]), coils[1]))
    return at_length(bounded, longer_mm)


def _with_coils(spring: ConicalSpring, active: float) -> ConicalSpring:
    dead = spring.total_coils - spring.active_coils
    return replace(spring, active_coils=active, total_coils=active + dead)
