"""What one wire can become for a need of an extension spring: coils, hooks and initial tension at each mean diameter.

The forces fix the rate, and so the coils of the body; the coils and the height of the hooks make the free length; what
is left of the force there must be an initial tension that a hand can wind.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace

from sourcing.fit.judge import judge
from sourcing.fit.model import Limit, Spread
from sourcing.fit.score import force_house_tolerance_n
from sourcing.need.model import Need
from sourcing.quantities import show_force, show_length
from sourcing.springs import extension, pulled
from sourcing.springs.compression import active_coils_for_rate
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.stock.model import Bench
from sourcing.winding.doubts import DIAMETER_POWER, diameter_sd_mm, rate_sd
from sourcing.winding.extension.ends import coils_on_plugs, free_length_sd_mm, hook_heights_mm, hook_limit
from sourcing.winding.extension.hand_tension import AIMED_AT, hand_tension_n
from sourcing.winding.heat import making, oven_reaches
from sourcing.winding.line import Aim, aim
from sourcing.winding.model import Band, Refusal, Wire
from sourcing.winding.task import Design
from sourcing.winding.trials import Knowledge

TENSION_SHARES = (0.15, 0.35, 0.55, 0.75)
"""Shares of what a hand can wind at which the initial tension may lie where one wanted force leaves it open."""

FEWEST_COILS = 1.0
"""A body of less is no coil: where more rate is wanted, it is judged with so many and found too soft."""

NO_FORCE_WANTED = Refusal(
    "no-force-wanted",
    "No force is known, so there is no rate to wind for. Measure one at one length: hang the old spring, or a like "
    "one, from a hook, pull it to a working length with a luggage scale, or hang a bottle of water from it, and weigh "
    "that. Write it as working: - {length: .., force: ..}, grams as 950 gf and ounces as 33 ozf.",
)

_Target = tuple[float, Aim]
"""A length, and the force to aim at there."""


def forces_of(need: Need, bench: Bench) -> tuple[_Target, ...]:
    """The wanted forces, the shortest length first."""
    return tuple(
        (point.at_mm, aim(point.force_n, force_house_tolerance_n(point.force_n, bench.tolerances)))
        for point in reversed(need.working)
        if point.force_n is not None
    )


def no_wire_serves(need: Need, bench: Bench) -> Refusal | None:
    """Why no wire whatever could serve."""
    forces = forces_of(need, bench)
    if not forces:
        return NO_FORCE_WANTED
    if len(forces) > 1 and slope_n_per_mm(forces) <= 0.0:
        (short_mm, less), (long_mm, more) = forces[0], forces[-1]
        why = (
            f"{show_force(more.value, bench.units)} at {show_length(long_mm, bench.units)} is no more than "
            f"{show_force(less.value, bench.units)} at {show_length(short_mm, bench.units)}: an extension spring pulls "
            "harder the longer it is"
        )
        return Refusal("no-rising-force", why)
    return None


def slope_n_per_mm(forces: tuple[_Target, ...]) -> float:
    """The rate that two or more forces ask for, by least squares of the misses over their tolerances."""
    weights = [1.0 / target.tolerance**2 for _, target in forces]
    whole = sum(weights)
    at = sum(w * length for w, (length, _) in zip(weights, forces, strict=True)) / whole
    force = sum(w * target.value for w, (_, target) in zip(weights, forces, strict=True)) / whole
    rows = [(w, length - at, target.value - force) for w, (length, target) in zip(weights, forces, strict=True)]
    return sum(w * x * y for w, x, y in rows) / sum(w * x * x for w, x, _ in rows)


@dataclass(frozen=True, slots=True)
class ExtensionTask:
    """One wire for one need of an extension spring."""

    need: Need
    bench: Bench
    wire: Wire
    tensile_strength_mpa: float

    @property
    def heated(self) -> bool:
        """Whether the spring will have its stress relieved."""
        return oven_reaches(self.wire.material, self.bench)

    def best_at(self, mean_diameter_mm: float, spread: Callable[[ExtensionSpring], Spread]) -> Design[ExtensionSpring]:
        """The best spring of a mean diameter."""
        springs = self._springs(mean_diameter_mm)
        return min((self.judged(spring, spread) for spring in springs), key=lambda each: each.order)

    def judged(self, spring: ExtensionSpring, spread: Callable[[ExtensionSpring], Spread]) -> Design[ExtensionSpring]:
        """The spring against the need, and whether its hooks can be bent so."""
        made = replace(spread(spring), making=making(self.wire.material, self.bench))
        fit = judge(spring, self.need, self.bench, made)
        refused = [each for each in (hook_limit(spring, self.bench.units), self._tension_limit(spring)) if each]
        if refused:
            fit = replace(fit, fits="no", chance=0.0, limits=(*fit.limits, *refused))
        rate, longest_mm = pulled.rate_n_per_mm(spring), max(point.at_mm for point in self.need.working)
        force_n = pulled.force_n(spring, longest_mm, rate, spring.initial_tension_n or 0.0)
        first = pulled.breaks_first(spring)
        return Design(spring, fit, force_n * first.mpa_per_n)

    def spread_on(self, known: Knowledge, mandrel_mm: float) -> Callable[[ExtensionSpring], Spread]:
        """How far a spring wound on this mandrel may come from its figures."""
        sd_mm = diameter_sd_mm(self, known, mandrel_mm)
        return lambda spring: self.spread_of(spring, sd_mm)

    def spread_of(self, spring: ExtensionSpring, diameter_sd_mm: float) -> Spread:
        """The hand's initial tension lies about the middle of its band, wherever in it one is planned."""
        band = self.tension_band_n(spring)
        return Spread(
            diameter_sd_mm=diameter_sd_mm,
            free_length_sd_mm=free_length_sd_mm(spring),
            rate_sd=rate_sd(spring),
            rate_on_diameter=DIAMETER_POWER,
            initial_tension_sd_n=(band.high - band.low) / 4.0,
            initial_tension_off_n=(band.low + band.high) / 2.0 - (spring.initial_tension_n or 0.0),
        )

    def tension_band_n(self, spring: ExtensionSpring) -> Band:
        """Between what the initial tension of the finished spring lies, in 95 of 100."""
        return hand_tension_n(spring.wire_diameter_mm, spring.mean_diameter_mm, self.tensile_strength_mpa, self.heated)

    def _tension_limit(self, spring: ExtensionSpring) -> Limit | None:
        """That the forces want more initial tension than a hand winds into this coil."""
        wants_n, units = spring.initial_tension_n or 0.0, self.bench.units
        most_n = self.tension_band_n(spring).high
        if wants_n <= most_n * (1.0 + 1e-9):
            return None
        why = (
            f"the forces want an initial tension of {show_force(wants_n, units)}, and wound by hand it keeps "
            f"{show_force(most_n, units)} at most"
        )
        return Limit("initial tension by hand", False, True, why, wants_n / most_n - 1.0 if most_n > 0.0 else 1.0)

    def _springs(self, mean_diameter_mm: float) -> Iterator[ExtensionSpring]:
        """The candidates of a mean diameter: of each kind of hooks and initial tension that the need leaves open."""
        most_n = hand_tension_n(
            self.wire.wire_diameter_mm, mean_diameter_mm, self.tensile_strength_mpa, self.heated
        ).high
        kinds = (Hooks.FULL_LOOP, Hooks.EXTENDED_HOOK) if self.need.hooks is None else (self.need.hooks,)
        forces = forces_of(self.need, self.bench)
        shortest, rate = forces[0], slope_n_per_mm(forces) if len(forces) > 1 else None
        for hooks in kinds:
            if rate is not None:
                yield self._on_line(mean_diameter_mm, hooks, rate, shortest, most_n)
                continue
            for share in self._shares(most_n):
                yield self._through(mean_diameter_mm, hooks, shortest, share * most_n)

    def _shares(self, most_n: float) -> tuple[float, ...]:
        wish = self.need.initial_tension_n
        if wish is None or most_n <= 0.0:
            return TENSION_SHARES
        wanted_n = aim(wish, force_house_tolerance_n(wish, self.bench.tolerances)).value
        return (min(1.0, wanted_n / most_n),)

    def _on_line(self, mean_mm: float, hooks: Hooks, rate: float, through: _Target, most_n: float) -> ExtensionSpring:
        """The spring whose force runs through a target at this rate; what it holds at rest follows from its length."""
        wire_mm, shear_mpa = self.wire.wire_diameter_mm, self.wire.material.shear_modulus_mpa
        coils = max(FEWEST_COILS, active_coils_for_rate(wire_mm, mean_mm, rate, shear_mpa))
        at_mm, target = through
        body_mm = extension.body_length_mm(coils + coils_on_plugs(hooks), wire_mm)
        free_mm = at_mm - (target.value - AIMED_AT * most_n) / rate
        low_mm, high_mm = hook_heights_mm(hooks, mean_mm - wire_mm)
        free_mm = min(max(self._wished_length_mm() or free_mm, body_mm + 2 * low_mm), body_mm + 2 * high_mm)
        tension_n = target.value - rate * (at_mm - free_mm)
        if 0.0 < tension_n - most_n <= target.tolerance:
            tension_n = most_n
        return self._spring(mean_mm, hooks, coils, free_mm, max(tension_n, 0.0))

    def _through(self, mean_mm: float, hooks: Hooks, through: _Target, tension_n: float) -> ExtensionSpring:
        """The spring of an initial tension whose force runs through the one target.

        With a wished free length, R = (F − F₀)/(L − L₀). Else the length grows with the coils, L₀ = n d + e with the
        wire and the plugs' coils beyond them in e = (n_p + 1) d + 2 L_H, and n (F − F₀) = a (L − L₀) with
        a = G d⁴/(8 D³) gives n = a (L − e)/(F − F₀ + a d).
        """
        wire_mm, shear_mpa = self.wire.wire_diameter_mm, self.wire.material.shear_modulus_mpa
        at_mm, target = through
        over_n = max(target.value - tension_n, 0.05 * target.value)
        low_mm, high_mm = hook_heights_mm(hooks, mean_mm - wire_mm)
        hook_mm = low_mm if hooks is Hooks.EXTENDED_HOOK else (low_mm + high_mm) / 2.0
        a = active_coils_for_rate(wire_mm, mean_mm, 1.0, shear_mpa)
        wished_mm = self._wished_length_mm()
        if wished_mm is not None and wished_mm < at_mm:
            coils = max(FEWEST_COILS, a * (at_mm - wished_mm) / over_n)
            return self._spring(mean_mm, hooks, coils, wished_mm, tension_n)
        idle = coils_on_plugs(hooks)
        beyond_mm = extension.free_length_mm(extension.body_length_mm(idle, wire_mm), hook_mm)
        coils = max(FEWEST_COILS, a * (at_mm - beyond_mm) / (over_n + a * wire_mm))
        free_mm = beyond_mm + coils * wire_mm
        return self._spring(mean_mm, hooks, coils, free_mm, tension_n)

    def _wished_length_mm(self) -> float | None:
        wish = self.need.free_length_mm
        return None if wish is None else aim(wish, self.bench.tolerances.length_mm).value

    def _spring(self, mean_mm: float, hooks: Hooks, coils: float, free_mm: float, tension_n: float) -> ExtensionSpring:
        material = self.wire.material
        return ExtensionSpring(
            wire_diameter_mm=self.wire.wire_diameter_mm,
            mean_diameter_mm=mean_mm,
            free_length_mm=free_mm,
            active_coils=coils,
            total_coils=coils + coils_on_plugs(hooks),
            hooks=hooks,
            material=material,
            shear_modulus_mpa=material.shear_modulus_mpa,
            elastic_modulus_mpa=material.elastic_modulus_mpa,
            tensile_strength_mpa=self.tensile_strength_mpa,
            initial_tension_n=tension_n,
            hand=self.need.hand,
        )
