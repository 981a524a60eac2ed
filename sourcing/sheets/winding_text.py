"""The winding sheet as text: cautions first, then what to have, what to do, and what to accept."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sourcing.need.model import Need
from sourcing.quantities import (
    show_angle,
    show_diameter,
    show_force,
    show_length,
    show_mass,
    show_money,
    show_stop,
    show_torque,
    show_wire,
    show_wire_length,
    typed_length,
)
from sourcing.safety import CARRYING_CURRENT, CHOOSING_WIRE, RELEASING
from sourcing.sheets.hands import hand_matters, pair_lines
from sourcing.sheets.made_table import made_table
from sourcing.sheets.text import bullets, heading, numbered, strong, table, wrapped
from sourcing.verdict.verdict import cautions_for
from sourcing.winding.advice import trial_first
from sourcing.winding.mandrel import TURNED_STEP_MM
from sourcing.winding.model import Acceptance, MandrelChoice, Refusal, WindingPlan
from sourcing.winding.saving.coil import Saved
from sourcing.winding.serving_words import but_for, what_is_off, what_serves
from sourcing.winding.torsion.task import HAND_NOT_KNOWN

if TYPE_CHECKING:
    from sourcing.figures.working import Working


NO_SHEET = "No winding sheet"
"""What a refusal is told with."""


def answer_lines(
    answer: WindingPlan | Refusal,
    need: Need,
    workings: Sequence[Working] | None = None,
    of_solid: Sequence[str] = (),
    why_not: str = NO_SHEET,
) -> Iterator[str]:
    """The winding sheet of a need, with its workings where they were asked for; or why there is none.

    `of_solid`: what is said of the mandrel where it was made. `why_not`: what a refusal is told with.
    """
    yield from wrapped(need.job + (f": {need.what}" if need.what else ""))
    yield ""
    if isinstance(answer, Refusal):
        yield from map(strong, wrapped(f"{why_not}: {answer.why} ({answer.rule})"))
        if answer == HAND_NOT_KNOWN:
            yield from _hands()
    else:
        if leading := of_its_wire(answer, need):
            yield from bullets(leading, "!")
            yield ""
        yield from plan_lines(answer)
        if hand_matters(need):
            yield from _hands()
        if of_solid:
            yield from heading("The mandrel as a solid")
            yield from bullets(of_solid)
        if cautions := of_its_place(answer, need):
            yield from heading("Mind, where it goes in")
            yield from bullets(cautions, "!")
        if workings is not None:
            from sourcing.sheets.workings import workings_lines

            yield from workings_lines(workings)


def of_its_wire(plan: WindingPlan, need: Need) -> tuple[str, ...]:
    """The cautions of its place that say which wire it may be of, which lead the sheet, and how to name another."""
    leading = tuple(each for each in cautions_for(need, plan) if each in CHOOSING_WIRE)
    if CARRYING_CURRENT not in leading or need.material is not None:
        return leading
    other = f"This sheet is for {plan.material}: where the old one was of another metal, write it into the need, as in"
    return (*leading, f"{other} `material: phosphor-bronze`.")


def of_its_place(plan: WindingPlan, need: Need) -> tuple[str, ...]:
    """The cautions of fitting the spring that neither the sheet's head nor its steps have said."""
    said = {RELEASING, *CHOOSING_WIRE, *plan.cautions}
    return tuple(each for each in cautions_for(need, plan) if each not in said)


def _hands() -> Iterator[str]:
    """How to see the hand of a spring, drawn and in words."""
    yield from heading("How to see the hand")
    yield from pair_lines()


def saved_lines(saved: Saved, wound: WindingPlan, named: bool) -> Iterator[str]:
    """What to do with a coil that came out otherwise; `named`: its wire and mandrel were said, not taken."""
    first, *rest = saved.said
    yield from wrapped(taken_as(wound, named))
    yield from map(strong, wrapped(first))
    yield from bullets(rest)


def plan_lines(plan: WindingPlan) -> Iterator[str]:
    """The whole sheet of one plan."""
    units = plan.units
    yield strong("Winding sheet: before you begin")
    yield from bullets(plan.cautions, "!")
    yield ""
    yield from wrapped(summary(plan, units))
    for each in plan.taken:
        yield from map(strong, wrapped(each))
    yield from wrapped(what_it_serves(plan))
    yield from wrapped(trial_first(plan).said)
    yield from heading("Wire and mandrel")
    yield from table((), to_have(plan, units), (None, 54))
    if plan.choices:
        yield from heading("Mandrels that would do, and that would not")
        yield from table(("mandrel", "first try", ""), choices(plan), (24, None, 40))
        yield from wrapped(other_mandrel(units))
    yield from heading("What comes out")
    yield from table(*made_table(plan, units), (18, 28, 28))
    yield from heading("At the bench")
    yield from numbered(plan.steps)
    yield from heading("What not to do")
    yield from bullets(plan.never)
    yield from _acceptance(plan)
    yield from heading("How it goes in")
    yield from bullets(plan.goes_in.said)
    if plan.notes:
        yield from heading("Notes")
        yield from bullets(plan.notes)


OPEN = "open"
"""Stands for a chance that a trial coil leaves open."""

FOR_CHOOSING = "That is for choosing a mandrel; the finished spring has a list of its own."
FOR_THE_FINISHED = "For the finished spring, with the coils of this sheet."
"""Two ranges of diameters stand on a sheet: what each is for."""


def what_it_serves(plan: WindingPlan) -> str:
    """What the wire can do for the need, and that its diameters are not those of the finished spring."""
    return f"{what_serves(plan)} {FOR_CHOOSING}" if plan.serves else what_serves(plan)


def summary(plan: WindingPlan, units: str) -> str:
    """The sheet in one sentence; what is off leads where it is of a near fit, and wire left open has no chance."""
    tries, off = plan.tries, what_is_off(plan)
    wind = f"Only a near fit (off: {', '.join(off)}): wind" if off else "Wind"
    right = f"{but}, right" if (but := but_for(plan)) else "right"
    cost = f", {show_money(plan.cost)} of wire" if plan.cost is not None else ""
    deed = (
        f"{plan.turns_to_wind:.2f} turns of {show_wire(plan.wire_diameter_mm, units)} {plan.material} on "
        f"{mandrel_words(plan, units)}"
    )
    if plan.unsettled:
        as_of_now = f"a near fit at that (off: {', '.join(off)}), " if off else ""
        return f"Not to be wound yet: as its last trial coil has it, {as_of_now}{deed}; another trial coil decides."
    second = (
        f"by the second try {tries.by_second:.2f}; about {tries.expected:.1f} tries"
        if plan.holds_second_try
        else "with wire for one try only"
    )
    return (
        f"{wind} {deed}: {right} first time with a chance of {tries.first:.2f}, {second}, {tries.hours:.1f} h "
        f"(assumed){cost}."
    )


def mandrel_words(plan: WindingPlan, units: str) -> str:
    """What it is wound on, with its size."""
    if plan.mandrel.diameter_mm is None:
        return plan.on_mandrel
    mandrel, size = plan.mandrel, show_diameter(plan.mandrel.diameter_mm, units)
    on_rod = "" if mandrel.rod_mm is None else f" for a rod of {show_diameter(mandrel.rod_mm, units)}"
    return f"{mandrel.named} {'of' if mandrel.kind == 'rod' else 'to'} {size}{on_rod}"


def to_have(plan: WindingPlan, units: str) -> list[tuple[str, str]]:
    """What to have at hand, by name."""

    def length(value_mm: float) -> str:
        return show_length(value_mm, units)

    left = "" if plan.wire_left_mm is None else f"; {show_wire_length(plan.wire_left_mm, units)} stay on it"
    spool = f"spool {plan.wire}{left}" if plan.wire is not None else "to be bought"
    return [
        ("wire", f"{show_wire(plan.wire_diameter_mm, units)} {plan.material}, {spool}"),
        ("cut", f"{length(plan.cut_length_mm)}, tails{' and spare turns' if plan.turns_to_spare else ''} included"),
        ("becomes the spring", length(plan.coil_length_mm)),
        ("mandrel", mandrel_words(plan, units).removeprefix("a mandrel ")),
        ("turns", f"{plan.turns_to_wind:.2f} to wind" + _spare(plan)),
        ("pitch on the mandrel", length(plan.pitch_on_mandrel_mm)),
        ("pull on the wire", f"about {show_force(plan.pull_n, units)}, kept even"),
        ("it runs back", f"{plan.turns_run_back:.1f} turns when eased"),
    ]


def other_mandrel(units: str) -> str:
    """What goes with the choice of another mandrel."""
    return (
        "Another mandrel wants other turns and another pitch: ask for its own sheet with --mandrel. Print and turn to "
        f"{show_diameter(TURNED_STEP_MM, units)} and no finer: springback is not known better (assumed)."
    )


_KINDS = {"rod": "rod", "turned": "turned", "printed": "printed", "sleeve": "printed sleeve"}


def choices(plan: WindingPlan) -> list[tuple[str, str, str]]:
    """The mandrels to choose among: what, the chance that the first try comes out right, what speaks for or against."""
    return [
        (
            _KINDS[each.kind]
            + ("" if each.diameter_mm is None else f", {show_diameter(each.diameter_mm, plan.units)}"),
            _chance_of(plan, each),
            each.said,
        )
        for each in plan.choices
    ]


def _chance_of(plan: WindingPlan, choice: MandrelChoice) -> str:
    """That of a mandrel, as it is told; open while a trial coil leaves it so."""
    if choice.chance is None or choice.fits == "no":
        return ""
    return OPEN if plan.unsettled else f"{choice.chance:.2f}"


def _spare(plan: WindingPlan) -> str:
    return f" and {plan.turns_to_spare:g} to spare" if plan.turns_to_spare else ""


AT_ANGLE = re.compile(r"(scale|torque)_at_(.+)_deg_(?:(.+)_mm_arm_g|n_mm)")
AT_LENGTH = re.compile(r"(scale|force)_at_(.+)_mm_[gn]")


@dataclass(frozen=True, slots=True)
class Check:
    """A check of the finished spring in words: its bounds (empty: open), and what to do where it fails."""

    name: str
    least: str
    most: str
    if_not: str


def checks(plan: WindingPlan) -> list[Check]:
    """The checks of the finished spring, in the order in which they are done."""
    shown = ((_check(row, plan.units), row) for row in plan.accept)
    return [Check(name, show(row.low), show(row.high), row.if_not) for (name, show), row in shown]


def advice(plan: WindingPlan) -> list[str]:
    """What to do where a check fails, said once for the checks that share it."""
    by_advice: dict[str, list[str]] = {}
    for check in checks(plan):
        by_advice.setdefault(check.if_not, []).append(check.name)
    return [f"{', '.join(names)}: {advice}" for advice, names in by_advice.items()]


def taken_as(wound: WindingPlan, named: bool) -> str:
    """What a coil is taken to have been wound of, and how to say otherwise."""
    taken = f"Taken as {wound.turns_to_wind:.2f} turns wound {wound.summary}."
    options = "--wire and --on" if wound.mandrel.diameter_mm is None else "--wire, --mandrel and --on"
    return taken if named else f"{taken} If you wound it otherwise, say so with {options}."


def ask_about_a_coil(plan: WindingPlan) -> str:
    """How to ask about a coil of this sheet: by name, for once it is written down as a trial another may be best."""
    words = [f"--wire {plan.wire or typed_length(plan.wire_diameter_mm, plan.units)}"]
    if plan.mandrel.diameter_mm is not None:
        words.append(f"--mandrel {typed_length(plan.mandrel.diameter_mm, plan.units)}")
    if plan.mandrel.kind == "printed":
        words.append("--on printed")
    return f"Ask about a coil of this sheet as: springwright wind NEED {' '.join(words)}, with the option named."


def _acceptance(plan: WindingPlan) -> Iterator[str]:
    yield from heading("Accept it when")
    yield from wrapped(FOR_THE_FINISHED)
    rows = [(check.name, check.least, check.most) for check in checks(plan)]
    yield from table(("check", "least", "most"), rows)
    yield from heading("If it does not")
    yield from bullets(advice(plan))
    yield from wrapped(ask_about_a_coil(plan))


def _check(row: Acceptance, units: str) -> tuple[str, Callable[[float | None], str]]:
    """The name of a check, and what shows its bounds."""

    def known(show: Callable[[float], str]) -> Callable[[float | None], str]:
        return lambda bound: "" if bound is None else show(bound)

    if (at := AT_LENGTH.fullmatch(row.figure)) is not None:
        length = show_stop(float(at[2]), units)
        if at[1] == "scale":
            return f"scale at {length}", known(lambda grams: show_mass(grams, units))
        return f"force at {length}", known(lambda force_n: show_force(force_n, units))
    if (at := AT_ANGLE.fullmatch(row.figure)) is not None:
        angle = show_angle(float(at[2]))
        if at[1] == "scale":
            arm = show_length(float(at[3]), units)
            return f"scale at {angle}, {arm} arm", known(lambda grams: show_mass(grams, units))
        return f"torque at {angle}", known(lambda torque: show_torque(torque, units))
    if row.figure.endswith("_deg"):
        return row.figure[:-4].replace("_", " "), known(show_angle)
    if row.figure.endswith("_n"):
        return row.figure[:-2].replace("_", " "), known(lambda force_n: show_force(force_n, units))
    if row.figure.endswith("_mm"):
        return row.figure[:-3].replace("_", " "), known(lambda mm: show_diameter(mm, units))
    return row.figure.replace("_", " "), known(lambda number: f"{number:.2f}")
