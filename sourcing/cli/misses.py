"""The options of `wind` that ask what to do with a coil that came out otherwise than meant."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING, Annotated

import typer

from sourcing.cli.words import force_option, leg_angle_option, length_option, wrong_word
from sourcing.files.findings import Finding, Place, WrongWords, quoted

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue, Trial
    from sourcing.winding.model import WindingPlan, Wire
    from sourcing.winding.saving.coil import Saved


SAME_MM = 0.005
"""Two readings that are written alike."""


@dataclass(frozen=True, slots=True)
class Measure:
    """An option, the name of what it measures, and what reads it."""

    option: str
    name: str
    read: Callable[[str, str], float]


MEASURES = (
    Measure("--came-out", "outside", length_option),
    Measure("--came-out-small-end", "outside_small", length_option),
    Measure("--came-out-pitch", "pitch", length_option),
    Measure("--came-out-angle", "angle", leg_angle_option),
    Measure("--came-out-tension", "tension", force_option),
    Measure("--pressed-to", "pressed_to", length_option),
    Measure("--pulled-to", "pulled_to", length_option),
)

CameOut = Annotated[
    str | None,
    typer.Option(
        "--came-out",
        metavar="DIAMETER",
        help="what to do with a coil that measures this outside, as wound (a cone: at its large end)",
    ),
]
CameOutSmallEnd = Annotated[
    str | None, typer.Option("--came-out-small-end", metavar="DIAMETER", help="the same at a cone's small end")
]
CameOutPitch = Annotated[
    str | None,
    typer.Option("--came-out-pitch", metavar="PITCH", help="what to do with one whose pitch came out so"),
]
CameOutAngle = Annotated[
    str | None,
    typer.Option("--came-out-angle", metavar="ANGLE", help="... with a torsion spring whose legs stand so, as wound"),
]
CameOutTension = Annotated[
    str | None,
    typer.Option(
        "--came-out-tension", metavar="FORCE", help="... with an extension spring that opens from this pull on"
    ),
]
PressedTo = Annotated[
    str | None,
    typer.Option("--pressed-to", metavar="LENGTH", help="what to do with one that is so long once pressed solid"),
]
PulledTo = Annotated[
    str | None,
    typer.Option(
        "--pulled-to", metavar="LENGTH", help="... so long inside its hooks at rest, once it was pulled to its longest"
    ),
]
Heated = Annotated[
    str | None,
    typer.Option("--heated", metavar="yes|no", help="whether the coil was measured after heat; no if not said"),
]


@dataclass(frozen=True, slots=True)
class Asked:
    """What was measured, by name, the options it was given by, and whether after heat."""

    measured: Mapping[str, float]
    options: tuple[str, ...]
    heated: bool


def asked(texts: Mapping[str, str | None], heated: str | None) -> Asked:
    """What is asked of a coil, from the texts of the options. Raises WrongWords."""
    given = [(each, text) for each in MEASURES if (text := texts.get(each.option)) is not None]
    if heated not in (None, "yes", "no"):
        raise wrong_word("--heated", quoted(heated or ""), "yes or no")
    if heated is not None and not given:
        raise wrong_word("--heated", "no coil was measured", "it beside --came-out")
    measured = {each.name: each.read(each.option, text) for each, text in given}
    return Asked(measured, tuple(each.option for each, _ in given), heated == "yes")


def before_its_trial(catalogue: Catalogue, asked: Asked, mandrel_mm: float | None) -> Catalogue:
    """The catalogue without a spool's last trial that reads as the coil does.

    A coil that is asked about once more, after it was written down, is judged as before: it does not confirm itself.
    """
    outsides = [asked.measured[name] for name in ("outside", "outside_small") if name in asked.measured]

    def its_own(trial: Trial) -> bool:
        same = trial.heated is asked.heated and (mandrel_mm is None or abs(trial.mandrel_mm - mandrel_mm) < SAME_MM)
        return same and any(abs(trial.outside_diameter_mm - each) < SAME_MM for each in outsides)

    spools = tuple(
        replace(spool, trials=spool.trials[:-1]) if spool.trials and its_own(spool.trials[-1]) else spool
        for spool in catalogue.spools
    )
    return replace(catalogue, spools=spools)


def saved(need: Need, catalogue: Catalogue, made: WindingPlan, asked: Asked, written: bool) -> Saved:
    """What to do with a coil of a plan that measures otherwise than meant; `written`: it is among the trials already.

    Raises WrongWords where its kind is not asked so, or no coil can measure so.
    """
    from sourcing.winding.saving import kinds
    from sourcing.winding.saving.coil import Coil, SenselessError

    try:
        answer = kinds.saved(
            Coil(need, catalogue.bench, wire_of_plan(made, catalogue), made, asked.heated, written), asked.measured
        )
    except SenselessError as error:
        option = next(each.option for each in MEASURES if each.name == error.measure)
        raise wrong_word(option, error.found, error.expected) from error
    if answer is None:
        raise _unasked(need.kind, asked.options)
    return answer


def wire_of_plan(made: WindingPlan, catalogue: Catalogue) -> Wire:
    """The wire of a plan, with its spool where it has one."""
    from sourcing.winding.model import Wire

    spool = next((spool for spool in catalogue.spools if spool.id == made.wire), None)
    return Wire(made.wanted.material, made.wire_diameter_mm, spool)


def _unasked(kind: str, options: tuple[str, ...]) -> WrongWords:
    """What a kind of spring is asked by instead."""
    from sourcing.winding.saving.kinds import OF_KIND, measures_of

    option_of = {each.name: each.option for each in MEASURES}
    serve = [option_of[name] for name in measures_of(kind)]
    if set(options) <= set(serve):
        pairs = [" with ".join(option_of[name] for name in each.measures) for each in OF_KIND[kind][1:]]
        pairs = [pair for pair in pairs if " with " in pair]
        together = f", or {' or '.join(pairs)}" if pairs else ""
        return WrongWords((Finding(Place(None), " and ".join(options), f"one of them{together}"),))
    wrong = " and ".join(option for option in options if option not in serve)
    found = f"{wrong} of a spring of kind {kind}"
    return WrongWords((Finding(Place(None), found, f"{', '.join(serve[:-1])} or {serve[-1]}"),))
