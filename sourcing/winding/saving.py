"""A coil that came out otherwise than meant: whether it can be saved, how, and what to do at the next one.

Each answer is for a cylindrical compression spring of one plan. A diameter is measured as wound, before any heat; the
spring that would come of it is judged after heat, like any other.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from sourcing.fit.judge import judge
from sourcing.fit.limits.room import BORE, ROD
from sourcing.fit.model import Fit, Spread
from sourcing.need.model import Need
from sourcing.quantities import show_diameter, show_length
from sourcing.springs import compression, geometry
from sourcing.springs.model import CompressionSpring
from sourcing.springs.pressed import rate_n_per_mm
from sourcing.stock.model import Bench, Spool, Trial
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import change_of_diameter, making
from sourcing.winding.model import Refusal, WindingPlan, Wire
from sourcing.winding.plan import plan_winding
from sourcing.winding.pressed_task import free_length_sd_mm
from sourcing.winding.trials import CALIPER_SD_MM
from sourcing.winding.turns import SPARE_TURNS

Answer = Literal["keep", "change", "wind again"]

AS_LONG_MM = 0.25
"""A steel rule tells no smaller difference in a length."""


@dataclass(frozen=True, slots=True)
class Saved:
    """What to do with a coil.

    `keep`: it serves as it is. `change`: it serves with other coils or another length. `wind again`: nothing saves it.
    `spring` is what it becomes, judged in `fit`; `rate_kept` is the rate over the wanted one if nothing is changed.
    """

    answer: Answer
    spring: CompressionSpring
    fit: Fit
    rate_kept: float
    said: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Coil:
    """A coil of a plan, with what is needed to judge it."""

    need: Need
    bench: Bench
    wire: Wire
    plan: WindingPlan

    @property
    def wanted(self) -> CompressionSpring:
        """The spring that was meant, in its final state."""
        assert isinstance(self.plan.wanted, CompressionSpring)
        return self.plan.wanted

    @property
    def wound(self) -> CompressionSpring:
        """The spring that was meant, as wound and before heat."""
        assert isinstance(self.plan.finished.spring, CompressionSpring)
        return self.plan.finished.spring

    def judged(self, spring: CompressionSpring) -> Fit:
        """The spring against the need, measured: what is left of its doubt is the caliper's and the rate's."""
        _, doubt = change_of_diameter(self.wire.material, self.bench)
        spread = Spread(
            diameter_sd_mm=CALIPER_SD_MM + spring.mean_diameter_mm * doubt,
            free_length_sd_mm=free_length_sd_mm(spring),
            rate_sd=rate_sd(spring),
            making=making(self.wire.material, self.bench),
        )
        return judge(spring, self.need, self.bench, spread)


def came_out(coil: Coil, outside_mm: float) -> Saved:
    """A coil whose diameter came out otherwise: cut to the coils that restore the rate, n = G d⁴ / (8 D³ R).

    >>> from sourcing.springs.compression import active_coils_for_rate as coils, rate_n_per_mm as rate
    >>> round(coils(0.8, 9.9, rate(0.8, 9.6, 6.0, 81500.0), 81500.0), 2)
    5.47

    Source: winding model, hand-checked case 3.
    """
    change, _ = change_of_diameter(coil.wire.material, coil.bench)
    mean_mm = (outside_mm - coil.plan.wire_diameter_mm) * (1.0 + change)
    wanted, dead = coil.wanted, coil.wanted.total_coils - coil.wanted.active_coils
    kept = replace(wanted, mean_diameter_mm=mean_mm)
    active = compression.active_coils_for_rate(
        wanted.wire_diameter_mm, mean_mm, rate_n_per_mm(wanted), wanted.shear_modulus_mpa
    )
    cut = replace(kept, active_coils=active, total_coils=active + dead)
    rate_kept = rate_n_per_mm(kept) / rate_n_per_mm(wanted)
    as_it_is, with_others = coil.judged(kept), coil.judged(cut)
    there = _coils_there(coil, mean_mm)
    answer: Answer = "keep" if as_it_is.fits == "yes" else "change"
    if answer == "change" and (with_others.fits == "no" or cut.total_coils > there):
        answer = "wind again"
    spring, fit = (kept, as_it_is) if answer == "keep" else (cut, with_others)
    said = [*_said_of_diameter(coil, outside_mm, cut, rate_kept, answer)]
    if answer == "wind again" and with_others.fits != "no":
        said.append(f"It would want {cut.total_coils:.2f} coils for its rate and has {there:.2f}, spare ones too.")
    said += [*_clearances(fit), *_wrong(fit, coil.bench), *_next_mandrel(coil, outside_mm)]
    return Saved(answer, spring, fit, rate_kept, tuple(said))


def _coils_there(coil: Coil, mean_mm: float) -> float:
    """The coils that the turns wound have become, spare ones too: the wire keeps its length, N_f D_f = N_m D_m."""
    assert coil.plan.mandrel.diameter_mm is not None
    on_mandrel_mm = coil.plan.mandrel.diameter_mm + coil.plan.wire_diameter_mm
    return (coil.plan.turns_to_wind + SPARE_TURNS) * on_mandrel_mm / mean_mm


def _said_of_diameter(
    coil: Coil, outside_mm: float, cut: CompressionSpring, rate_kept: float, answer: Answer
) -> Iterator[str]:
    units, wanted = coil.bench.units, coil.wanted
    came, meant = show_diameter(outside_mm, units), show_diameter(coil.wound.outside_diameter_mm, units)
    instead = f"It came out at {came} outside instead of {meant}"
    if answer == "wind again":
        yield f"{instead}, and other coils do not save it: wind it again."
        return
    change, _ = change_of_diameter(coil.wire.material, coil.bench)
    active, total, meant_coils = (
        f"{coils * (1.0 + change):.2f}" for coils in (cut.active_coils, cut.total_coils, wanted.active_coils)
    )
    counted = ", counted before heat" if change else ""
    other = f"{active} active coils ({total} in all{counted}) give the rate that was meant"
    if answer == "keep":
        yield f"{instead}: keep it as it is. With {meant_coils} active coils its rate is {rate_kept:.3f} of that meant."
        yield f"Just so: {other}."
    else:
        cut_it = "Cut it" if cut.active_coils < wanted.active_coils else "Keep more of the spare turns"
        yield f"{instead}. {cut_it}: {other}. With {meant_coils} the rate would be {rate_kept:.3f} of it."


def _clearances(fit: Fit) -> Iterator[str]:
    """Whether it still goes into its bore and over its rod."""
    for limit in fit.limits:
        if limit.limit.startswith((BORE, ROD)) and limit.holds:
            yield f"{limit.limit}: {limit.why}."


def _wrong(fit: Fit, bench: Bench) -> Iterator[str]:
    """Each limit that does not hold, and each figure that is more than its tolerance off."""
    for limit in fit.limits:
        if not limit.holds:
            yield f"{limit.limit} does not hold: {limit.why}."
    for row in fit.deviations:
        if row.deviation_over_tolerance > 1.0:
            at = f" at {show_length(row.at, bench.units)}" if row.at is not None and row.at_unit == "mm" else ""
            off = f"{row.deviation_over_tolerance:.1f} tolerances off; one is allowed"
            yield f"{row.figure.replace('_', ' ')}{at}: {off}."


def _next_mandrel(coil: Coil, outside_mm: float) -> Iterator[str]:
    """The mandrel to take next, once this coil is counted among the trials."""
    mandrel_mm = coil.plan.mandrel.diameter_mm
    assert mandrel_mm is not None
    spool = coil.wire.spool or Spool("", coil.wire.material, coil.wire.wire_diameter_mm)
    trial = Trial(mandrel_mm, outside_mm, turns=coil.plan.turns_to_wind)
    taught = replace(spool, trials=(*spool.trials, trial), length_left_mm=None)
    then = plan_winding(coil.need, taught, coil.bench)
    if isinstance(then, Refusal) or then.mandrel.diameter_mm is None:
        return
    units = coil.bench.units
    if then.mandrel.diameter_mm == mandrel_mm:
        yield f"The next one: the same mandrel, {show_diameter(mandrel_mm, units)}, and it will come out so again."
    else:
        kind = "rod of" if then.mandrel.kind == "rod" else "mandrel turned to"
        size, chance = show_diameter(then.mandrel.diameter_mm, units), then.tries.first
        yield f"The next one: a {kind} {size} instead of {show_diameter(mandrel_mm, units)}, chance {chance:.2f}."
    if coil.wire.spool is not None:
        bare = f"{mandrel_mm:g} --outside {outside_mm:g}"
        yield f"Write it down: springwright trial {spool.id} --mandrel {bare}"


def came_out_pitch(coil: Coil, pitch_mm: float) -> Saved:
    """A coil whose pitch came out otherwise: its free length follows, and so does what it pushes."""
    wanted = coil.wanted
    free_mm = geometry.free_length_from_pitch_mm(
        wanted.wire_diameter_mm, pitch_mm, wanted.active_coils, wanted.total_coils, wanted.ends
    )
    spring, units = replace(wanted, free_length_mm=free_mm), coil.bench.units
    fit = coil.judged(spring)
    meant_mm = _pitch_mm(wanted, wanted.free_length_mm)
    answer: Answer = "keep" if fit.fits == "yes" else "change"
    pitch, meant, free = (show_length(each, units) for each in (pitch_mm, meant_mm, free_mm))
    said = [f"It came out with a pitch of {pitch} instead of {meant}, so {free} long at rest, not {_free(coil)}."]
    if answer == "keep":
        said.append("Keep it as it is: the forces are within what is wanted.")
    elif free_mm > wanted.free_length_mm:
        said.append(f"Press it solid, then close the coils evenly with a wedge or by hand until it is {_free(coil)}.")
    else:
        said.append(f"Pull it evenly to a little over {_free(coil)}, press it solid once, and measure again.")
    said += _wrong(fit, coil.bench)
    laid_mm = coil.plan.pitch_on_mandrel_mm * meant_mm / pitch_mm
    said.append(f"The next one: {_pitch_next(coil, laid_mm)}.")
    return Saved(answer, spring, fit, 1.0, tuple(said))


def _pitch_mm(spring: CompressionSpring, free_length_mm: float) -> float:
    """The pitch that the spring's coils have at a free length."""
    return geometry.pitch_mm(
        spring.wire_diameter_mm, free_length_mm, spring.active_coils, spring.total_coils, spring.ends
    )


def _free(coil: Coil) -> str:
    return show_length(coil.wanted.free_length_mm, coil.bench.units)


def _pitch_next(coil: Coil, laid_mm: float) -> str:
    units, wire_mm = coil.bench.units, coil.plan.wire_diameter_mm
    if laid_mm <= wire_mm:
        return "lay it wire against wire, and pull it out to its length afterwards"
    gap, pitch, was = (show_length(mm, units) for mm in (laid_mm - wire_mm, laid_mm, coil.plan.pitch_on_mandrel_mm))
    return f"a pitch of {pitch} on the mandrel, a gap of {gap}, instead of {was}"


def pressed_to(coil: Coil, free_length_mm: float) -> Saved:
    """A spring that was shorter after it was first pressed solid: it has set, and the next one is wound longer.

    L₀' = L₀ + (L₀ − L): wound longer by what it lost, it ends at the length that is wanted (presetting).
    """
    wanted, units = coil.wanted, coil.bench.units
    lost_mm = wanted.free_length_mm - free_length_mm
    spring = replace(wanted, free_length_mm=free_length_mm)
    fit = coil.judged(spring)
    answer: Answer = "keep" if fit.fits == "yes" else "change"
    now, lost = show_length(free_length_mm, units), show_length(abs(lost_mm), units)
    if abs(lost_mm) < AS_LONG_MM and answer == "keep":
        said = [f"Pressed solid it is {now} long, as it should be: leave it."]
    elif lost_mm <= 0.0:
        said = [f"Pressed solid it is {now} long, {lost} more than wanted: press it again, or take an end coil closer."]
    else:
        said = [f"Pressed solid it has set by {lost}, to {now}."]
        said.append(
            "Keep it: the forces are still within what is wanted, and it will not set again by as much."
            if answer == "keep"
            else "It is too short for what is wanted. Pull it evenly a little beyond its length and press it solid "
            "again; if it is as short as this once more, wind another."
        )
        longer_mm = wanted.free_length_mm + lost_mm
        wider = _pitch_mm(wanted, longer_mm) / _pitch_mm(wanted, wanted.free_length_mm)
        laid_mm = coil.plan.pitch_on_mandrel_mm * wider
        said.append(
            f"The next one: wind it {show_length(longer_mm, units)} long, {_pitch_next(coil, laid_mm)}, and press it "
            f"solid three times: it ends near {_free(coil)}."
        )
    said += _wrong(fit, coil.bench)
    return Saved(answer, spring, fit, 1.0, tuple(said))
