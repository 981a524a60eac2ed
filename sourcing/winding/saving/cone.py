"""A cone that came out otherwise: each end judged in its place, the rate by what lies between them.

The initial rate goes as 1/(n (D₁ + D₂) (D₁² + D₂²)), and the wire between the ends keeps its length. Coils that are cut
off an end take that end's diameter with them: the step from turn to turn stays.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from itertools import permutations
from math import hypot
from typing import Literal

from sourcing.figures import formula
from sourcing.fit.model import Fit, Spread
from sourcing.quantities import show_diameter, show_length
from sourcing.springs import pressed
from sourcing.springs.conical_lengths import SURE_STEP, pitch_mm, pitch_of, solid_length_of, step_of, telescopes
from sourcing.springs.model import ConicalSpring
from sourcing.stock.model import Trial
from sourcing.winding import in_hand
from sourcing.winding.conical.in_hand import as_it_came
from sourcing.winding.conical.mandrel import as_turned, laid_cone
from sourcing.winding.doubts import rate_sd
from sourcing.winding.heat import change_of_diameter, making
from sourcing.winding.measuring import MANDREL_SD_MM
from sourcing.winding.model import Mandrel
from sourcing.winding.presetting import as_laid
from sourcing.winding.pressed_task import brought_length_sd_mm
from sourcing.winding.saving.coil import (
    AS_LONG_MM,
    TOLD_FROM,
    Coil,
    Saved,
    SenselessError,
    Way,
    best_way,
    came_out_at,
    clearances,
    joined_said,
    keep_it,
    refuse_senseless,
    surprise,
    write_down,
    wrong,
)
from sourcing.winding.saving.lengths import of_set, to_length
from sourcing.winding.saving.next_coil import next_one
from sourcing.winding.saving.pitch import Opened, of_pitch
from sourcing.winding.trials import Knowledge

End = Literal["large", "small"]

ENDS: tuple[End, End] = ("large", "small")

ANY_WIRE_SD = 0.5
"""Of a flow stress of which nothing is believed before: one end alone then tells it, and the other must agree."""


@dataclass(frozen=True, slots=True)
class _Ends:
    """Both ends as they came out: outside as measured, and the mean diameter in the end; `told` were measured."""

    outside_mm: Mapping[End, float]
    mean_mm: Mapping[End, float]
    told: tuple[End, ...]
    known: Knowledge
    trial: Trial
    agree: bool


def wanted_of(coil: Coil) -> ConicalSpring:
    """The cone that was meant, in its final state."""
    assert isinstance(coil.plan.wanted, ConicalSpring)
    return coil.plan.wanted


def judged(coil: Coil, spring: ConicalSpring) -> Fit:
    """The cone against the need, measured: what is left of its doubt is the caliper's and the rate's."""
    spread = Spread(
        diameter_sd_mm=coil.diameter_sd_mm(spring.mean_diameter_large_mm),
        free_length_sd_mm=brought_length_sd_mm(spring),
        rate_sd=rate_sd(spring),
        making=making(coil.wire.material, coil.bench),
    )
    return in_hand.judged(spring, coil.need, coil.bench, spread)


def large_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose large end came out otherwise; the small one follows by the same wire."""
    return _came_out(coil, {"large": outside_mm})


def small_came_out(coil: Coil, outside_mm: float) -> Saved:
    """A cone whose small end came out otherwise; the large one follows by the same wire."""
    return _came_out(coil, {"small": outside_mm})


def both_came_out(coil: Coil, large_mm: float, small_mm: float) -> Saved:
    """A cone of which both ends were measured."""
    if large_mm <= small_mm:
        large, small = (show_diameter(mm, coil.units) for mm in (large_mm, small_mm))
        raise SenselessError("outside", f"a large end of {large} beside a small one of {small}", "the larger one first")
    return _came_out(coil, {"large": large_mm, "small": small_mm})


def _came_out(coil: Coil, measured_mm: Mapping[End, float]) -> Saved:
    ends, wanted = _ends(coil, measured_mm), wanted_of(coil)
    kept = as_it_came(wanted, ends.mean_mm["small"], ends.mean_mm["large"])
    rate = pressed.rate_n_per_mm(wanted)
    cuts = filter(None, (cut_for_rate(kept, end, rate) for end in ENDS))
    as_it_is = Way("keep", kept, judged(coil, kept))
    way = best_way(coil, as_it_is, *(Way("change", cut, judged(coil, cut)) for cut in cuts))
    rate_kept = pressed.rate_n_per_mm(kept) / rate
    mandrel = _next_mandrel(coil, ends.known)
    begins = next_one(ends.known.unsettled)
    said = joined_said(
        _said(coil, ends, kept, way, rate_kept),
        clearances(way.fit),
        _solid(coil, way.spring),
        wrong(way.fit, coil.bench),
        (*surprise(coil, ends.trial), *_said_of_next(coil, mandrel, begins), *write_down(coil, ends.trial))
        if ends.agree
        else (),
    )
    return Saved(way.answer, way.spring, way.fit, rate_kept, said, mandrel)


def _ends(coil: Coil, measured_mm: Mapping[End, float]) -> _Ends:
    """Both ends, one that was not measured by what the other taught of the wire."""
    profile = coil.plan.mandrel.profile
    on_mm: Mapping[End, float] = {"large": profile[-1].diameter_mm, "small": profile[0].diameter_mm}
    for end, outside_mm in measured_mm.items():
        refuse_senseless(coil, "outside" if end == "large" else "outside_small", outside_mm, on_mm[end])
    trials: dict[End, Trial] = {end: coil.trial(on_mm[end], outside_mm) for end, outside_mm in measured_mm.items()}
    first = next(iter(trials.values()))
    known = coil.known_then(first)
    agree = all(_agree(coil, one, other) for one, other in permutations(trials.values(), 2))
    outside = dict(measured_mm)
    mean: dict[End, float] = {end: coil.final_mean_mm(mm) for end, mm in measured_mm.items()}
    change, _ = change_of_diameter(coil.wire.material, coil.bench)
    for end in ENDS:
        if end not in outside:
            mean[end] = known.finished_mean_mm(on_mm[end]) * (1.0 + change)
            outside[end] = mean[end] / (1.0 + coil.change_to_come) + coil.wire_mm
    return _Ends(outside, mean, tuple(trials), known, first, agree)


def _agree(coil: Coil, one: Trial, other: Trial) -> bool:
    """Whether one end alone, of a wire of which nothing is believed, lets the other be as it is."""
    taught = replace(coil.known_then(), flow_ratio_sd=ANY_WIRE_SD, trend=None).after(one, coil.wire.material)
    return not taught.after(other, coil.wire.material).lessons[-1].surprising


@formula(
    "D₂'⁴ = D₁⁴ + q G d⁴ / (2 R), n' = (D₂' − D₁) / q, q = (D₂ − D₁) / n at the large end; at the small end "
    "D₁'⁴ = D₂⁴ − q G d⁴ / (2 R)",
    where={"R": "rate_n_per_mm"},
    closed=False,
    source="Wahl, Mechanical Springs (from memory), solved for an end: n (D₁ + D₂)(D₁² + D₂²) = (D₂⁴ − D₁⁴) / q",
)
def cut_for_rate(cone: ConicalSpring, end: End, rate_n_per_mm: float) -> ConicalSpring | None:
    """The cone with so much cut off an end that its initial rate is the wanted one; None where it is stiff enough."""
    small, large, coils = cone.mean_diameter_small_mm, cone.mean_diameter_large_mm, cone.active_coils
    if pressed.rate_n_per_mm(cone) >= rate_n_per_mm:
        return None
    taper = (large - small) / coils
    fourths = taper * cone.shear_modulus_mpa * cone.wire_diameter_mm**4 / (2.0 * rate_n_per_mm)
    if end == "large":
        large = (small**4 + fourths) ** 0.25
    else:
        small = (large**4 - fourths) ** 0.25
    active = (large - small) / taper
    return replace(
        cone,
        mean_diameter_small_mm=small,
        mean_diameter_large_mm=large,
        active_coils=active,
        total_coils=active + cone.total_coils - coils,
    )


def _said(coil: Coil, ends: _Ends, kept: ConicalSpring, way: Way[ConicalSpring], rate_kept: float) -> Iterator[str]:
    meant = coil.meant
    assert isinstance(meant, ConicalSpring)
    meant_mm = {"large": meant.outside_diameter_large_mm, "small": meant.outside_diameter_small_mm}
    now, was = ({end: show_diameter(mm[end], coil.units) for end in ENDS} for mm in (ends.outside_mm, meant_mm))
    if not ends.agree:
        large, small = (now[end] for end in ENDS)
        yield (
            f"A large end of {large} and a small one of {small} cannot be of one wire on this mandrel: measure both "
            "ends again, and the mandrel, before anything is cut or written down. As they are measured:"
        )
    came = " and ".join(came_out_at(now[end], was[end], f"at its {end} end") for end in ends.told)
    came = came.replace(", as meant and", ", as meant, and").replace(" and It came out", " and")
    coils = f"{coil.shown(kept.active_coils)} coils between its ends{coil.counted}"
    rate = f"its rate is {rate_kept:.3f} of that meant ({coils})"
    if way.answer == "keep":
        yield f"{came}: {keep_it(coil, way)}; {rate}."
        just = cut_for_rate(kept, "large", pressed.rate_n_per_mm(wanted_of(coil)))
        if just is not None and rate_kept < 1.0 - TOLD_FROM:
            yield f"Just so: c{_cut(coil, kept, just)[1:]}."
    elif way.answer == "change":
        yield f"{came}. {_cut(coil, kept, way.spring)}; as it is, {rate}."
        stands_mm = kept.free_length_mm - pitch_of(kept) * (kept.active_coils - way.spring.active_coils)
        if kept.free_length_mm - stands_mm >= AS_LONG_MM:
            length = show_length(stands_mm, coil.units)
            yield f"It is {length} long then, if its pitch is the one meant. {to_length(coil, stands_mm)}"
    else:
        stiff = "and a cone that is too stiff gets no more coils"
        yield f"{came}, {stiff if rate_kept > 1.0 else 'and cutting does not save it'}: wind it again."
    for end in ENDS:
        if end not in ends.told:
            yield f"By the same wire its {end} end is {now[end]} outside ({was[end]} meant): measure it too."


def _cut(coil: Coil, kept: ConicalSpring, cut: ConicalSpring) -> str:
    """What is cut off, and how the cone then measures before heat."""
    end: End = "large" if cut.mean_diameter_small_mm == kept.mean_diameter_small_mm else "small"
    off = coil.shown(kept.active_coils - cut.active_coils)
    mean_mm = cut.mean_diameter_large_mm if end == "large" else cut.mean_diameter_small_mm
    left = show_diameter(mean_mm / (1.0 + coil.change_to_come) + coil.wire_mm, coil.units)
    closed = " and close it anew" if cut.total_coils > cut.active_coils else ""
    coils = coil.shown(cut.active_coils)
    return (
        f"Cut {off} coils off its {end} end{closed}: {left} outside there, it has the rate that was meant with {coils} "
        f"active coils{coil.counted}"
    )


def _solid(coil: Coil, cone: ConicalSpring) -> Iterator[str]:
    """How its turns lie when it is pressed solid."""
    step_mm, solid = step_of(cone), show_length(solid_length_of(cone), coil.units)
    step, sure = (show_diameter(mm, coil.units) for mm in (step_mm, SURE_STEP * coil.wire_mm))
    if not telescopes(coil.wire_mm, step_mm):
        yield f"Pressed solid its turns stand on each other, {solid} high."
    elif step_mm >= SURE_STEP * coil.wire_mm * (1.0 - 1e-9):
        yield f"Pressed solid its turns go inside each other, each {step} smaller in radius ({sure} wanted)."


def _next_mandrel(coil: Coil, known: Knowledge) -> Mandrel:
    """The mandrel that gives the cone that was meant, as this coil shows the wire to spring back."""
    meant = coil.plan.finished.spring
    assert isinstance(meant, ConicalSpring)
    laid = laid_cone(as_laid(meant, wanted_of(coil)), known.mandrel_mm, known.pitch.share)
    return replace(coil.plan.mandrel, profile=as_turned(laid))


def _said_of_next(coil: Coil, then: Mandrel, begins: str) -> Iterator[str]:
    now, was = (
        ", ".join(show_diameter(point.diameter_mm, coil.units).split(" ")[0] for point in mandrel.profile)
        for mandrel in (then, coil.plan.mandrel)
    )
    if now == was:
        yield f"{begins}: the same mandrel, and it will come out so again."
        return
    unit = show_diameter(then.profile[0].diameter_mm, coil.units).split(" ")[1]
    along = ", ".join(show_length(point.height_mm, coil.units).split(" ")[0] for point in then.profile)
    at = f"at {along} {unit} along it from the small end"
    yield f"{begins}: a mandrel turned to {now} {unit}, {at}; this one had {was}."


def came_out_pitch(coil: Coil, measured_mm: float) -> Saved:
    """A cone whose pitch came out otherwise, measured along the axis: its free length follows."""
    wanted, meant = wanted_of(coil), coil.meant
    assert isinstance(meant, ConicalSpring)
    meant_mm = pitch_of(as_laid(meant, wanted))
    final_mm = measured_mm * pitch_of(wanted) / meant_mm
    came = replace(wanted, free_length_mm=wanted.free_length_mm + _pitches(wanted) * (final_mm - pitch_of(wanted)))
    return of_pitch(coil, Way("keep", came, judged(coil, came)), measured_mm, meant_mm, _opened(coil))


def _opened(coil: Coil) -> Opened:
    """How it opens by its plan, before heat, halfway between both ends."""
    before, known = coil.plan.finished.spring, coil.known_then()
    assert isinstance(before, ConicalSpring)
    mandrel_mm = (coil.plan.mandrel.thinnest_mm + coil.plan.mandrel.thickest_mm) / 2.0
    mean_mm = (before.mean_diameter_small_mm + before.mean_diameter_large_mm) / 2.0
    opening_sd = hypot(known.finished_mean_sd_mm(mandrel_mm) / mean_mm, MANDREL_SD_MM / (mandrel_mm + coil.wire_mm))
    return Opened(mean_mm / (mandrel_mm + coil.wire_mm), opening_sd, pitch_of(as_laid(before, wanted_of(coil))))


def _pitches(cone: ConicalSpring) -> float:
    """How many pitches its free length holds: by how much it grows as the pitch does by one."""
    longer_mm = pitch_mm(
        cone.wire_diameter_mm,
        step_of(cone),
        cone.free_length_mm + 1.0,
        cone.active_coils,
        cone.total_coils,
        cone.ends,
    )
    return 1.0 / (longer_mm - pitch_of(cone))


def pressed_to(coil: Coil, free_length_mm: float) -> Saved:
    """A cone that was shorter after it was first pressed solid: it has set, and the next one is wound longer."""
    wanted = wanted_of(coil)
    spring = replace(wanted, free_length_mm=free_length_mm)

    def wider(length_mm: float) -> float:
        return pitch_of(replace(wanted, free_length_mm=length_mm)) / pitch_of(as_laid(wanted, wanted))

    return of_set(coil, Way("keep", spring, judged(coil, spring)), wider)
