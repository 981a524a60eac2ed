"""What the plan of a spring of any kind says of its wire: what trials taught, what is left, what it costs, cautions."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from sourcing.fit.limits.lasting import LIFE
from sourcing.fit.model import Fit
from sourcing.quantities import Money, show_diameter, show_energy, show_length
from sourcing.safety import winding_cautions
from sourcing.stock.model import Spool
from sourcing.winding.by_hand import USUAL_LIMITS, refused_by_size, wants_caution
from sourcing.winding.heat import oven_reaches
from sourcing.winding.learning import learn
from sourcing.winding.lesson_words import TEACH_NOTHING, WIDE_DOUBT, take_back
from sourcing.winding.model import Refusal
from sourcing.winding.setting_up import Numbers
from sourcing.winding.task import Given, Task
from sourcing.winding.trials import Knowledge, Lesson


def knowledge(given: Given) -> Knowledge:
    """What is known of the wire, its spool's trials taken in."""
    trials = () if given.wire.spool is None else given.wire.spool.trials
    known = learn(given.wire.material, given.wire.wire_diameter_mm, given.tensile_strength_mpa, trials)
    return replace(known, wound_on=given.wound_on)


def too_short(task: Task, cut_mm: float) -> Refusal | None:
    """The refusal where the spool has not wire enough for all the springs wanted."""
    spool = task.wire.spool
    if spool is None or spool.length_left_mm is None:
        return None
    wanted_mm = cut_mm * task.need.quantity
    if wanted_mm <= spool.length_left_mm:
        return None
    wants, has = (show_length(each, task.bench.units) for each in (wanted_mm, spool.length_left_mm))
    each = f" ({task.need.quantity} springs)" if task.need.quantity > 1 else ""
    why = f"it needs {wants} of wire{each}, tails and spare turns included; {spool.id} has {has}"
    return Refusal("wire-too-short", why)


def cautions(task: Task, numbers: Numbers) -> Iterable[str]:
    """A trial that leaves all of the sheet open; those of all winding; what this wire adds."""
    bench = task.bench
    if numbers.known.unsettled:
        yield _unsettled(numbers.known, task)
    elif numbers.known.label_refuted:
        yield _refuted(task)
    turning = not {"lathe", "bench-drill", "hand-drill"}.isdisjoint(bench.tools)
    yield from winding_cautions(heated=oven_reaches(task.wire.material, bench), turning=turning)
    if wants_caution(task.wire, bench.hand_winding):
        yield (
            f"Wire of {show_diameter(task.wire.wire_diameter_mm, bench.units)} is near the end of what is wound by "
            f"hand: let go, this coil throws the crank with {show_energy(numbers.energy_let_go_n_mm, bench.units)}. "
            "Use a long crank with a stop, and a helper at the wire."
        )
    if refused_by_size(task.wire, replace(bench, hand_winding=USUAL_LIMITS)) is not None:
        yield (
            "That is beyond what is wound by hand by common practice; this bench has raised its limits "
            "(`hand_winding` in bench.yaml)."
        )


def cost(spool: Spool | None, wire_mm: float) -> Money | None:
    """The price of the wire that is cut, None where it isn't known."""
    if spool is None or spool.price_per_metre is None:
        return None
    price = spool.price_per_metre
    return Money(round(price.amount * wire_mm / 1000, 2), price.currency)


WORTH_IT = ", and is nearly always worth it here; so does the first spring, measured as one."
"""What is said of a trial coil where the wire's prior is wide."""


def wire_notes(task: Task, known: Knowledge, cut_mm: float) -> Iterable[str]:
    """What the trials of the wire taught, or that there are none; whether enough is left for a second try."""
    spool = task.wire.spool
    told = known.lessons[:-1] if known.unsettled else known.lessons
    yield from (_taught(lesson, task.bench.units) for lesson in told)
    if known.trend is not None:
        yield (
            "Its coils of different spring indices disagree about one flow stress: it is taken to go with the "
            f"{known.trend.slope:.2f}th power of the index on the mandrel, give or take {known.trend.slope_sd:.2f}."
        )
    if not known.lessons:
        yield (
            f"No trial coil of this wire yet: its flow stress is taken as {known.flow_ratio:.2f} of the least "
            f"tensile strength, known to {100 * known.flow_ratio_sd:.0f} %. A trial coil of four turns makes sure"
            + (WORTH_IT if known.flow_ratio_sd >= WIDE_DOUBT else ".")
        )
    if spool is not None and spool.length_left_mm is not None:
        left_mm = spool.length_left_mm - task.need.quantity * cut_mm
        if left_mm < cut_mm:
            yield f"{show_length(left_mm, task.bench.units)} will be left on {spool.id}: not enough for one more try."


def life_note(fit: Fit) -> Iterable[str]:
    """How long the spring lasts, where that was asked for."""
    yield from (f"How long it lasts: {limit.why}." for limit in fit.limits if limit.limit == LIFE and limit.holds)


def hours_said(task: Task) -> str:
    """The hours at the bench that all plans assume."""
    heat = ", 0.7 hours for the heat" if oven_reaches(task.wire.material, task.bench) else ""
    return f"half an hour to set up, 0.3 hours a try{heat}."


def fit_notes(fit: Fit, task: Task, known: Knowledge) -> Iterable[str]:
    """How long the spring lasts, and what all plans of compression springs assume."""
    yield from life_note(fit)
    pitch = known.pitch
    opens = f"the pitch opens by {pitch.share:.2f} of what the diameter opens, give or take {pitch.sd:.2f}"
    if pitch.coils:
        coils = "coil that was" if pitch.coils == 1 else f"{pitch.coils} coils that were"
        yield f"By the {coils} measured {opens}."
    yield (
        f"Assumed: coils of one wire repeat to 0.4 % of the diameter, {'' if pitch.coils else f'{opens}, '}a free "
        "length that is off is pulled or pressed to within 2 % of the travel, the rate comes out to 3 %; "
        f"{hours_said(task)}"
    )


def assumed_of_torsion(task: Task) -> str:
    """What all plans of torsion springs assume."""
    return (
        "Assumed: coils of one wire repeat to 0.4 % of the diameter and the rate to 3 %, legs are bent to within 3 deg "
        f"of their angle, by 45 deg at most; {hours_said(task)}"
    )


def _refuted(task: Task) -> str:
    """That the label is mended before anything is wound by it."""
    spool = "" if task.wire.spool is None else task.wire.spool.id
    return (
        f"Measure the wire of {spool} before this spring, and mend its material or diameter in the catalogue: its "
        "trial coils agree that it is another than its label says. Mandrel and turns below go by those coils; "
        "strength, rate and every limit are still the label's."
    )


def _unsettled(known: Knowledge, task: Task) -> str:
    """That a trial coil must not be wound by, nor those after it that did not decide."""
    lesson = next(each for each in reversed(known.lessons) if each.surprising)
    came, spool = lesson.came_otherwise(task.bench.units), "" if task.wire.spool is None else task.wire.spool.id
    which, decides, slipped = "the last one", "a second", f"; if it slipped, take it back: {take_back(spool)}"
    if known.undecided > 1:
        which, decides, slipped = "one", "one more", ", for none since has borne it out or set it aside"
    return (
        f"Wind {decides} trial coil before this spring: {which} of {spool} {came}, too far off to be chance. "
        f"Mandrel, turns and sizes below are open until {decides} decides{slipped}. Moment, energy and turns run back "
        "are no smaller than the wire of the label gives."
    )


def _taught(lesson: Lesson, units: str) -> str:
    """What a trial coil showed, and what follows."""
    told = lesson.said if lesson.said in TEACH_NOTHING else f"{lesson.beside_expected(units)}: {lesson.said}"
    return f"Trial on {show_diameter(lesson.trial.mandrel_mm, units)}: {told}"
