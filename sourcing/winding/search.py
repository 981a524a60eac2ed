"""Which mean diameters serve a need with one wire: at each, coils and free length follow from the line of force.

The rate fixes the coils, n = G d^4/(8 D^3 k). Each diameter is then judged as any candidate is. A wound spring is
measured before it is accepted, so its own tolerance is in the chance and not in the limits.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import ceil

from sourcing.fit.judge import judge
from sourcing.fit.model import Fit, Spread
from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.springs import compression, geometry
from sourcing.springs.model import CompressionSpring, Ends, Spring
from sourcing.stock.model import Bench
from sourcing.winding.line import Line, OneForce
from sourcing.winding.model import Refusal, Serves, Wire

LEAST_INDEX, GREATEST_INDEX = compression.INDEX_RANGE

EASY_INDEX = 15.0
"""Index up to which hand winding is easy: a spring maker's glossary has 4 to 16, JIS guidance 4 to 15."""

GRINDING_LEAST_WIRE_MM = 0.5
"""Thinner wire isn't ground (DIN 2095)."""

GRINDING_GREATEST_INDEX = 15.0
"""Springs of a larger index stay unground (a spring maker's notes)."""

TRAVEL_SHARES = (0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8)
"""Shares of the travel to solid at which a single wanted force may lie (common practice, no source)."""

POCKET_LIMITS = frozenset({"bore clearance", "rod clearance"})

TOLD_FIRST = ("stress at the shortest length", "solid length", "stress at solid")
"""Which of several reasons that exclude as many diameters is told."""

EASED_BY_SIZE = frozenset({"solid length", "depth", "rod clearance"})
"""Limits that the largest diameter comes nearest to; the others are eased by the smallest."""

_ORDER = {"yes": 0, "near": 1, "no": 2}


@dataclass(frozen=True, slots=True)
class Design:
    """A spring that the wire could become, judged, with its stress at the shortest working length."""

    spring: CompressionSpring
    fit: Fit
    stress_mpa: float

    @property
    def standing(self) -> tuple[int, int, bool]:
        """What comes before chance and stress in the order of designs, best first."""
        score = 100 if self.fit.score is None else self.fit.score
        return _ORDER[self.fit.fits], -score, self.spring.spring_index > EASY_INDEX

    @property
    def order(self) -> tuple[int, int, bool, float, float]:
        """The sort key, best first: fits, score, easy index, chance in whole per cents, the lower stress."""
        return (*self.standing, -round(self.fit.chance, 2), self.stress_mpa)


@dataclass(frozen=True, slots=True)
class Task:
    """One wire for one need."""

    need: Need
    bench: Bench
    wire: Wire
    tensile_strength_mpa: float
    target: Line | OneForce

    def ends(self, mean_diameter_mm: float) -> Ends:
        """The ends of the need, else ground where wire and index allow; thin wire is never ground."""
        can_grind = self.wire.wire_diameter_mm >= GRINDING_LEAST_WIRE_MM
        wish = self.need.ends
        if wish is not None:
            unground = {Ends.CLOSED_GROUND: Ends.CLOSED, Ends.OPEN_GROUND: Ends.OPEN}
            return wish if can_grind else unground.get(wish, wish)
        easy = mean_diameter_mm <= GRINDING_GREATEST_INDEX * self.wire.wire_diameter_mm
        return Ends.CLOSED_GROUND if can_grind and easy else Ends.CLOSED

    def best_at(self, mean_diameter_mm: float, spread: Callable[[CompressionSpring], Spread]) -> Design:
        """The best spring of a mean diameter."""
        designs = (self.judged(self._spring(mean_diameter_mm, line), spread) for line in self._lines(mean_diameter_mm))
        return min(designs, key=lambda each: each.order)

    def judged(self, spring: CompressionSpring, spread: Callable[[CompressionSpring], Spread]) -> Design:
        """The spring against the need."""
        rate = compression.rate_n_per_mm(
            spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils, spring.shear_modulus_mpa
        )
        shortest_mm = min(point.at_mm for point in self.need.working)
        force_n = rate * max(0.0, spring.free_length_mm - shortest_mm)
        stress_mpa = compression.shear_stress_mpa(force_n, spring.wire_diameter_mm, spring.mean_diameter_mm)
        return Design(spring, judge(spring, self.need, self.bench, spread(spring)), stress_mpa)

    def _spring(self, mean_diameter_mm: float, line: Line) -> CompressionSpring:
        material, wire_mm, ends = self.wire.material, self.wire.wire_diameter_mm, self.ends(mean_diameter_mm)
        active = compression.active_coils_for_rate(
            wire_mm, mean_diameter_mm, line.rate_n_per_mm, material.shear_modulus_mpa
        )
        return CompressionSpring(
            wire_diameter_mm=wire_mm,
            mean_diameter_mm=mean_diameter_mm,
            free_length_mm=line.free_length_mm,
            active_coils=active,
            total_coils=active + geometry.dead_coils(ends),
            ends=ends,
            material=material,
            shear_modulus_mpa=material.shear_modulus_mpa,
            elastic_modulus_mpa=material.elastic_modulus_mpa,
            tensile_strength_mpa=self.tensile_strength_mpa,
            hand=self.need.hand,
        )

    def _lines(self, mean_diameter_mm: float) -> Iterable[Line]:
        if isinstance(self.target, Line):
            return (self.target,)
        return (_line_at_share(share, self, self.target, mean_diameter_mm) for share in TRAVEL_SHARES)


def unspread(spring: Spring) -> Spread:
    """No spread: limits, deviations and score alone."""
    del spring
    return Spread()


def _line_at_share(share: float, task: Task, wanted: OneForce, mean_diameter_mm: float) -> Line:
    """The line through one force that leaves it at this share of the travel to solid.

    With the travel t to the force F, n = a t/F coils of a = G d^4/(8 D^3), so the solid length grows with t too:
    share (L + t - e d - a d t/F) = t, where e d is the solid length of no active coil.
    """
    wire_mm, ends = task.wire.wire_diameter_mm, task.ends(mean_diameter_mm)
    coils_by_travel = compression.active_coils_for_rate(
        wire_mm, mean_diameter_mm, wanted.force_n, task.wire.material.shear_modulus_mpa
    )
    ends_mm = geometry.solid_length_mm(wire_mm, geometry.dead_coils(ends), ends)
    room_mm = max(wanted.length_mm - ends_mm, 0.05 * wanted.length_mm)
    travel_mm = share * room_mm / (1 - share + share * wire_mm * coils_by_travel)
    return Line(wanted.force_n / travel_mm, wanted.length_mm + travel_mm)


def diameters_mm(need: Need, bench: Bench, wire_diameter_mm: float) -> tuple[float, float] | Refusal:
    """The mean diameters that bore, rod and a spring index of 4 to 20 leave, before growth in compression."""
    bore, rod = need.pocket.bore_mm, need.pocket.rod_mm
    low, high = LEAST_INDEX * wire_diameter_mm, GREATEST_INDEX * wire_diameter_mm
    if rod is not None and rod.largest is not None:
        low = max(low, rod.largest + bench.clearance.rod_mm + wire_diameter_mm)
    if bore is not None and bore.smallest is not None:
        high = min(high, bore.smallest - bench.clearance.bore_mm - wire_diameter_mm)
    if low <= high:
        return low, high
    wire, least, most = (show_diameter(each, bench.units) for each in (wire_diameter_mm, low, high))
    why = (
        f"with wire of {wire} the mean diameter would have to be at least {least} (rod, clearance and wire, or "
        f"{LEAST_INDEX:g} wires) and at most {most} (bore, clearance and wire, or {GREATEST_INDEX:g} wires)"
    )
    return Refusal("no-room-for-wire", why)


def scan(task: Task, low_mm: float, high_mm: float, most_steps: int = 80) -> tuple[Design, ...]:
    """The best spring at each of a row of mean diameters, 0.1 mm apart or finer, coarser over a wide range."""
    steps = min(max(ceil((high_mm - low_mm) / 0.1), 16), most_steps)
    return tuple(task.best_at(low_mm + (high_mm - low_mm) * step / steps, unspread) for step in range(steps + 1))


def serving(task: Task, designs: Sequence[Design]) -> tuple[tuple[Serves, ...], bool]:
    """The intervals of mean diameters that serve, and whether anything but the pocket and the index bounds them."""
    runs: list[list[int]] = []
    for at, design in enumerate(designs):
        if design.fit.fits == "yes":
            if runs and runs[-1][-1] == at - 1:
                runs[-1].append(at)
            else:
                runs.append([at])
    intervals: list[Serves] = []
    inner = False
    for run in runs:
        low, below = _edge(task, designs, run[0], -1)
        high, above = _edge(task, designs, run[-1], +1)
        inner = inner or not {name for name, _ in (*below, *above)} <= POCKET_LIMITS
        intervals.append(Serves(low, high, _words(below), _words(above)))
    return tuple(intervals), inner


def _edge(task: Task, designs: Sequence[Design], at: int, way: int) -> tuple[float, tuple[tuple[str, str], ...]]:
    """Where a serving interval ends, by bisection, and what stops it there; nothing at the end of the range."""
    good = designs[at].spring.mean_diameter_mm
    if not 0 <= at + way < len(designs):
        return good, ()
    bad = designs[at + way].spring.mean_diameter_mm
    while abs(good - bad) > 0.005:
        middle = (good + bad) / 2
        if task.best_at(middle, unspread).fit.fits == "yes":
            good = middle
        else:
            bad = middle
    return good, tuple(_stops(designs[at + way]))


def _stops(design: Design) -> Iterable[tuple[str, str]]:
    """What keeps a design from a yes: limits that do not hold, then figures outside their tolerance."""
    for limit in design.fit.broken:
        yield limit.limit, limit.why
    for row in design.fit.deviations:
        if row.deviation_over_tolerance > 1:
            yield row.figure, f"{row.figure} {row.got:.2f} {row.unit}, outside its tolerance"


def _words(stops: Sequence[tuple[str, str]]) -> str:
    return stops[0][1] if stops else ""


def why_none(designs: Sequence[Design], units: str) -> Refusal:
    """The refusal where no diameter serves, in the words of what excluded most of them, at the best of those."""
    if len(designs) == 1:
        at = show_diameter(designs[0].spring.mean_diameter_mm, units)
        why = refusal_of(designs[0].fit)
        return Refusal("no-diameter-serves", f"at the mean diameter of {at} that comes out: {why}")
    counted = Counter(name for design in designs for name, _ in _refusing(design.fit))
    told = sorted(counted, key=lambda name: (-counted[name], name not in TOLD_FIRST))[0]
    excluded = [design for design in designs if told in dict(_refusing(design.fit))]
    fewest = min(len(tuple(_refusing(design.fit))) for design in excluded)
    nearest = [design for design in excluded if len(tuple(_refusing(design.fit))) == fewest]
    design = nearest[-1 if told in EASED_BY_SIZE else 0]
    low, high, at = (show_diameter(each.spring.mean_diameter_mm, units) for each in (designs[0], designs[-1], design))
    why = dict(_refusing(design.fit))[told]
    if all(dict(_refusing(each.fit)).get(told) == why for each in designs):
        return Refusal("no-diameter-serves", why)
    return Refusal("no-diameter-serves", f"no mean diameter between {low} and {high} serves: at {at}, {why}")


def refusal_of(fit: Fit) -> str:
    """All that makes a fit a no, in words."""
    return "; ".join(why for _, why in _refusing(fit))


def _refusing(fit: Fit) -> Iterable[tuple[str, str]]:
    """What makes a fit a no: hard limits that do not hold, figures beyond two tolerances."""
    for limit in fit.broken:
        if limit.hard:
            yield limit.limit, limit.why
    for row in fit.deviations:
        if row.deviation_over_tolerance > 2:
            yield row.figure, f"{row.figure} would be {row.got:.2f} {row.unit}, more than two tolerances off"
