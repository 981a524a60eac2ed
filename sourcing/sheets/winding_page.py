"""The winding sheet as a page to print and take to the bench: its parts in the order in which they are needed."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from sourcing.need.model import Need
from sourcing.quantities import show_diameter
from sourcing.sheets import page, winding_pictures
from sourcing.sheets.cut_list import cut_list
from sourcing.sheets.drawing.on_mandrel import both_hands
from sourcing.sheets.drawing.springs import check_line
from sourcing.sheets.hands import hand_matters
from sourcing.sheets.made_table import made_table
from sourcing.sheets.trial_blanks import as_trial, blanks
from sourcing.sheets.winding_text import (
    FOR_THE_FINISHED,
    Check,
    ask_about_a_coil,
    checks,
    choices,
    of_its_place,
    of_its_wire,
    summary,
    to_have,
    what_it_serves,
)
from sourcing.springs.hands import HOW_TO_SEE, WHICH_IS_WANTED
from sourcing.winding.advice import trial_first
from sourcing.winding.model import WindingPlan
from sourcing.winding.solid.coil import is_double

IN_CUT_LIST = ("wire", "cut", "mandrel")
"""The rows of what to have that the page tells in its cut list."""

PROFILE_COLUMNS = 9

NARROW_MM = 78.0
"""An outline no wider than this stands beside the check line."""

TRIAL_ROWS = 3


def winding_page(plan: WindingPlan, need: Need, of_solid: Sequence[str] = ()) -> str:
    """The whole page of one plan. `of_solid`: what is said of the mandrel where it was made as a solid."""
    parts = (job_heading(need), *winding_parts(plan, need, of_solid))
    return page.page(f"{need.job}: winding sheet", [page.main(parts)])


def job_heading(need: Need) -> str:
    """What a page is about."""
    return page.heading(need.job + (f": {need.what}" if need.what else ""), 1)


def winding_parts(plan: WindingPlan, need: Need, of_solid: Sequence[str] = (), job: str = "") -> Iterator[str]:
    """What stands on the page of a plan below its heading. `job` tells its pictures from those of other jobs."""
    yield page.cautions("Before you begin", (*of_its_wire(plan, need), *plan.cautions))
    yield page.paragraph(" ".join((summary(plan, plan.units), *plan.taken)), lead=True)
    yield page.beside("".join(_to_make(plan)), "".join(_pictures(plan, job)))
    yield from _profile(plan)
    if of_solid:
        yield page.heading("The mandrel as a solid")
        yield page.bullets(of_solid, in_two=True)
    yield page.heading("At the bench")
    if hand_matters(need):
        yield hands(job)
    yield page.steps(plan.steps)
    yield page.heading("What not to do")
    yield page.bullets(plan.never)
    yield from _acceptance(plan)
    yield page.together(_true_size(plan, job))
    yield page.heading("How it goes in")
    yield page.bullets((*plan.goes_in.said, *of_its_place(plan, need)), in_two=True)
    yield from _trials(plan)
    if plan.notes:
        yield page.heading("Notes")
        yield page.bullets(plan.notes, in_two=True)


def _to_make(plan: WindingPlan) -> Iterator[str]:
    """What the wire can do, what to cut, what to set, and what comes out."""
    units = plan.units
    yield page.paragraph(what_it_serves(plan))
    yield page.paragraph(trial_first(plan).said)
    yield page.heading("Cut list")
    yield page.table(("for", "take", "how long"), cut_list(plan), "For one spring.")
    yield page.heading("On the mandrel")
    yield page.table((), [row for row in to_have(plan, units) if row[0] not in IN_CUT_LIST])
    yield page.heading("What comes out")
    headers, rows = made_table(plan, units)
    kept = [(name, *map(page.unbroken, figures)) for name, *figures in rows]
    yield page.table(headers, kept, "In brackets: between these in 95 of 100 coils.")
    yield from _mandrels(plan)


def _mandrels(plan: WindingPlan) -> Iterator[str]:
    """The mandrels to choose among, and what speaks for each or against it."""
    if plan.choices:
        headers = ("mandrel", page.unbroken("first try"), "")
        yield page.table(headers, choices(plan), "Mandrels to choose among; another wants its own sheet (--mandrel).")


def _pictures(plan: WindingPlan, job: str) -> Iterator[str]:
    yield page.figure(winding_pictures.finished(plan), f"{job}spring", "The finished spring.")
    begun = "the loop goes over the pin" if is_double(plan.wanted) else "the held end is below"
    yield page.figure(winding_pictures.mandrel(plan), f"{job}mandrel", f"On the mandrel; {begun}.")
    curve = "Torque over the angle" if plan.wanted.kind == "torsion" else "Force over length"
    yield page.figure(winding_pictures.curve(plan), f"{job}curve", f"{curve}; bars: what is wanted.")


def _profile(plan: WindingPlan) -> Iterator[str]:
    """A cone's mandrel in tables that run across the page."""
    for first in range(0, len(plan.mandrel.profile), PROFILE_COLUMNS):
        points = plan.mandrel.profile[first : first + PROFILE_COLUMNS]
        along = [show_diameter(each.height_mm, plan.units) for each in points]
        across = [show_diameter(each.diameter_mm, plan.units) for each in points]
        headers = ("coil of the spring", *(f"{each.turn:.1f}" for each in points))
        rows = [("along the mandrel", *along), ("its diameter", *across)]
        yield page.table(headers, rows, "The curved taper of the mandrel, from its small end.")


def hands(job: str) -> str:
    """A spring of either hand, and how to see which one it is."""
    words = page.paragraph(HOW_TO_SEE) + page.paragraph(WHICH_IS_WANTED)
    return page.beside(page.figure(both_hands(), f"{job}hands"), words)


def _acceptance(plan: WindingPlan) -> Iterator[str]:
    """The checks, each with room for what is measured and with what to do where it fails."""
    groups = [
        ([(check.name, page.unbroken(check.least), page.unbroken(check.most)) for check in rows], advice)
        for advice, rows in groupby(_weighed(checks(plan)), key=lambda check: check.if_not)
    ]
    yield page.heading("Accept it when")
    headers = ("check", "least", "most", "measured", "if it does not")
    yield page.table_with_words(headers, groups, f"{FOR_THE_FINISHED} Check in this order; keep it where all hold.")
    yield page.paragraph(ask_about_a_coil(plan))


def _weighed(rows: Sequence[Check]) -> Iterator[Check]:
    """The checks, each force or torque in the row of the scale that it is weighed with."""
    scale: Check | None = None
    for row in rows:
        at = row.name.partition(" at ")[2]
        if scale is not None and at and scale.name.startswith(f"scale at {at}"):
            yield replace(scale, least=_both(scale.least, row.least), most=_both(scale.most, row.most))
            scale = None
            continue
        if scale is not None:
            yield scale
        scale = row if row.name.startswith("scale at ") else None
        if scale is None:
            yield row
    if scale is not None:
        yield scale


def _both(grams: str, force: str) -> str:
    return f"{grams} ({force})" if grams and force else grams


def _true_size(plan: WindingPlan, job: str) -> Iterator[str]:
    """The outline to lay the finished spring on, and the line that proves the page's size."""
    yield page.heading("In its true size")
    yield page.paragraph("Print at 100 %, not fitted to the page: the line must measure 100 mm.")
    line, outline = page.figure(check_line(), f"{job}check-line"), winding_pictures.outline(plan)
    if outline is None:
        yield page.paragraph("There is no outline of it in its true size here: measure it instead.")
        yield page.true_size(line)
        return
    words = "Lay the finished spring on the outline: it judges pitch, ends and angle. The diameter is the caliper's."
    if plan.wanted.kind == "torsion":
        words += " It is seen from the end of leg 1: laid the other way up it is its mirror image."
    yield page.paragraph(words)
    drawn = page.figure(outline, f"{job}outline")
    yield page.true_size(page.beside(line, drawn) if outline.width_mm <= NARROW_MM else line + drawn)


def _trials(plan: WindingPlan) -> Iterator[str]:
    """Blanks for what is measured, and the command that takes it."""
    yield page.heading("Write down each coil")
    columns = ("trial", *(blank.words for blank in blanks(plan.wanted.kind)))
    yield page.table(columns, [(str(row + 1),) for row in range(TRIAL_ROWS)], blank=len(columns) - 1)
    if plan.wire is not None:
        yield page.paragraph(as_trial(plan))
