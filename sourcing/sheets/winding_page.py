"""The winding sheet as a page to print and take to the bench, with its drawings."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.need.model import Need
from sourcing.sheets import page
from sourcing.sheets.drawing import plots, springs
from sourcing.sheets.drawing.end_view import end_view
from sourcing.sheets.drawing.hooked import hooked_one_to_one
from sourcing.sheets.drawing.svg import Picture
from sourcing.sheets.hands import hand_matters, pair_lines
from sourcing.sheets.winding_text import AT_ANGLE, AT_LENGTH, advice, checks, made_table, summary, to_have
from sourcing.springs import pressed, pulled, turned
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, TorsionSpring
from sourcing.verdict.verdict import cautions_for
from sourcing.winding.advice import trial_first
from sourcing.winding.model import WindingPlan

TRUE_SIZE_MM = (176.0, 220.0)
"""The room for the outline one to one on the narrower of A4 and Letter, between their margins."""

NARROW_MM = 60.0
"""An outline no wider than this stands beside the checks."""

PLOT_MM = (66.0, 50.0)
TRIAL_COLUMNS = ("trial", "mandrel", "turns", "outside", "pitch wound", "pitch", "heated", "pull")
TRIAL_ROWS = 3


def winding_page(plan: WindingPlan, need: Need) -> str:
    """The whole page of one plan."""
    return page.page(f"{need.job}: winding sheet", _parts(plan, need))


def _parts(plan: WindingPlan, need: Need) -> Iterator[str]:
    units = plan.units
    yield page.heading(need.job + (f": {need.what}" if need.what else ""), 1)
    yield page.paragraph(summary(plan, units), lead=True)
    yield page.cautions("Before you begin", plan.cautions)
    yield page.paragraph(plan.as_sentence)
    yield page.paragraph(trial_first(plan).said)
    spring, force = _drawings(plan)
    yield page.beside(page.heading("Wire and mandrel") + page.table((), to_have(plan, units)), spring)
    yield page.beside(page.heading("What comes out") + page.table(*made_table(plan, units)), force)
    if hand_matters(need):
        yield page.as_typed(pair_lines())
    yield page.heading("At the bench")
    yield page.steps(plan.steps)
    rows = [(check.name, check.least, check.most) for check in checks(plan)]
    accept = page.heading("Accept it when") + page.table(("check", "least", "most", "measured"), rows, blank=1)
    yield from _beside_true_size(plan, accept)
    yield page.heading("If it does not")
    yield page.bullets(advice(plan))
    yield page.heading("How it goes in")
    yield page.bullets((*plan.goes_in.said, *cautions_for(need, plan)))
    yield from _trials(plan)
    if plan.notes:
        yield page.heading("Notes")
        yield page.bullets(plan.notes)


def _drawings(plan: WindingPlan) -> tuple[str, str]:
    """The finished spring, and its force over length or its torque over angle; empty where that is not drawn."""
    match plan.wanted:
        case CompressionSpring() | ConicalSpring() as spring:
            drawn = page.figure(springs.dimensioned(spring, plan.units), "spring", "The finished spring.")
            return drawn, page.figure(_force(plan, spring), "force", "Force over length; the bars are what is wanted.")
        case ExtensionSpring() as spring:
            words = "Force over the length between the hooks; the bars are what is wanted."
            return "", page.figure(_pull(plan, spring), "force", words)
        case TorsionSpring() as spring:
            words = "Torque over the angle wound up; the bars are what is wanted."
            return "", page.figure(_torque(plan, spring), "torque", words)


def _torque(plan: WindingPlan, spring: TorsionSpring) -> Picture:
    rate = turned.rate_n_mm_per_deg(spring)
    wishes = [
        plots.Wish(float(at[2]), row.low, row.high)
        for row in plan.accept
        if (at := AT_ANGLE.fullmatch(row.figure)) is not None and at[1] == "torque"
    ]
    most_deg = 1.15 * max((wish.at for wish in wishes), default=90.0)
    torques = [rate * most_deg, *(wish.high for wish in wishes if wish.high is not None)]
    across, up = plots.Axis("wound up, deg", 0.0, most_deg), plots.Axis("torque, N·mm", 0.0, 1.08 * max(torques))
    return plots.curve(lambda deg: rate * deg, across, up, wishes, PLOT_MM)


def _wanted_forces(plan: WindingPlan) -> list[plots.Wish]:
    return [
        plots.Wish(float(at[2]), row.low, row.high)
        for row in plan.accept
        if (at := AT_LENGTH.fullmatch(row.figure)) is not None and at[1] == "force"
    ]


def _pull(plan: WindingPlan, spring: ExtensionSpring) -> Picture:
    rate, tension_n, wishes = pulled.rate_n_per_mm(spring), spring.initial_tension_n or 0.0, _wanted_forces(plan)
    free_mm = spring.free_length_mm
    longest_mm = free_mm + 1.15 * (max((wish.at for wish in wishes), default=1.5 * free_mm) - free_mm)

    def force_n(length_mm: float) -> float:
        return max(tension_n, pulled.force_n(spring, length_mm, rate, tension_n))

    forces = [force_n(longest_mm), *(wish.high for wish in wishes if wish.high is not None)]
    across, up = plots.Axis("length, mm", free_mm, longest_mm), plots.Axis("force, N", 0.0, 1.08 * max(forces))
    return plots.curve(force_n, across, up, wishes, PLOT_MM)


def _force(plan: WindingPlan, spring: CompressionSpring | ConicalSpring) -> Picture:
    rate, wishes = pressed.rate_n_per_mm(spring), _wanted_forces(plan)
    shortest_mm = min((wish.at for wish in wishes), default=spring.free_length_mm * 0.7)
    solid_mm = pressed.solid_length_mm(spring)
    low_mm = max(solid_mm, shortest_mm - 0.15 * (spring.free_length_mm - shortest_mm))
    forces = [pressed.force_n(spring, low_mm, rate), *(wish.high for wish in wishes if wish.high is not None)]
    across = plots.Axis("length, mm", low_mm, spring.free_length_mm)
    up = plots.Axis("force, N", 0.0, 1.08 * max(forces))
    return plots.curve(lambda mm: pressed.force_n(spring, mm, rate), across, up, wishes, PLOT_MM)


def _beside_true_size(plan: WindingPlan, checks: str) -> Iterator[str]:
    """The checks, the outline to lay the finished spring on, and the line that proves the page's size."""
    outline = _outline(plan)
    if outline is None:
        yield checks
        yield page.paragraph("There is no outline of it in its true size here: measure it instead.")
        return
    words = "Lay the finished spring on this: it judges pitch, ends and angle. The diameter is the caliper's."
    drawn = f'<div class="true">{page.figure(outline, "outline", words)}</div>'
    yield page.beside(checks, drawn) if outline.width_mm <= NARROW_MM else checks + drawn
    line = page.figure(springs.check_line(), "check-line", "Print at 100 %, not fitted to the page.")
    yield f'<div class="true">{line}</div>'


def _outline(plan: WindingPlan) -> Picture | None:
    match plan.wanted:
        case CompressionSpring() | ConicalSpring() as spring:
            return springs.one_to_one(spring, TRUE_SIZE_MM)
        case ExtensionSpring() as spring:
            return hooked_one_to_one(spring, TRUE_SIZE_MM)
        case TorsionSpring() as spring:
            return end_view(spring, TRUE_SIZE_MM)


def _trials(plan: WindingPlan) -> Iterator[str]:
    """Blanks for what is measured, and the command that takes it."""
    yield page.heading("Write down each coil")
    yield page.table(TRIAL_COLUMNS, [(str(row + 1),) for row in range(TRIAL_ROWS)], blank=len(TRIAL_COLUMNS) - 1)
    if plan.wire is not None and plan.mandrel.diameter_mm is not None:
        command = f"springwright trial {plan.wire} --mandrel {plan.mandrel.diameter_mm:g} --outside ..."
        yield page.paragraph(f"Then: {command}")
