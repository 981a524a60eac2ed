"""What `wind` says of a coil that came out otherwise than meant."""

from __future__ import annotations

from collections.abc import Generator
from contextlib import contextmanager
from dataclasses import replace
from typing import TYPE_CHECKING

from sourcing.cli import door
from sourcing.cli.misses import MEASURES, Asked
from sourcing.cli.planned import plan, wire_of_plan
from sourcing.cli.words import wrong_word
from sourcing.files.findings import Finding, Place, WrongWords

if TYPE_CHECKING:
    from sourcing.need.model import Need
    from sourcing.stock.model import Catalogue, Trial
    from sourcing.winding.model import Refusal, WindingPlan
    from sourcing.winding.saving.coil import Coil, Saved


SAME_MM = 0.005
"""Two readings that are written alike."""

NO_VERDICT = "No verdict on this coil"
"""What is said first of a coil that no sheet tells of."""


def judge(
    asked: Asked, need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None, as_json: bool
) -> None:
    """Print what to do with a coil, or why it is not judged; that ends with status 3.

    Raises WrongWords where its kind is not asked so, or no coil can measure so.
    """
    from sourcing.winding.model import WindingPlan
    from sourcing.winding.saving.kinds import measures_of

    if not set(asked.measured) <= set(measures_of(need.kind)):
        raise _unasked(need.kind, asked.options)
    before = before_its_trial(catalogue, asked, mandrel_mm)

    def coil_of(plan: WindingPlan) -> Coil:
        from sourcing.winding.saving.coil import Coil

        made_of = wire_of_plan(plan, before)
        written = made_of != wire_of_plan(plan, catalogue)
        return Coil(need, before.bench, made_of, plan, asked.heated, written, asked.wound_on)

    answer = wound_by(need, before, wire, mandrel_mm, asked.wound_on)
    if isinstance(answer, WindingPlan):
        named = wire is not None and (mandrel_mm is not None or need.kind == "conical")
        _print_saved(saved(coil_of(answer), asked), answer, named, as_json)
        return
    if mandrel_mm is not None:
        serving = wound_by(need, before, wire, None, asked.wound_on)
        if isinstance(serving, WindingPlan):
            answer = unjudged(coil_of(serving), asked, mandrel_mm, answer, wire is not None)
    _print_refusal(answer, need, as_json)
    door.finish(False)


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


def wound_by(
    need: Need, catalogue: Catalogue, wire: str | None, mandrel_mm: float | None, on: str | None
) -> WindingPlan | Refusal:
    """The plan by which a coil was wound, on steel or on what was printed.

    What its spool holds by now is not asked: the coil has its wire. Raises WrongWords where there is no such spool.
    """
    from sourcing.winding.model import Refusal
    from sourcing.winding.saving.printed import plan_on_printed

    if wire is not None:
        spools = tuple(replace(spool, length_left_mm=None) for spool in catalogue.spools)
        catalogue = replace(catalogue, spools=spools)
    answer = plan(need, catalogue, wire, mandrel_mm)
    if on != "printed" or isinstance(answer, Refusal):
        return answer
    return plan_on_printed(need, wire_of_plan(answer, catalogue), catalogue.bench, answer.mandrel.diameter_mm)


def saved(coil: Coil, asked: Asked) -> Saved:
    """What to do with a coil of a plan that measures otherwise than meant.

    Raises WrongWords where its kind is not asked so, or no coil can measure so.
    """
    from sourcing.winding.saving import kinds

    with _senseless_told():
        answer = kinds.saved(coil, asked.measured)
    if answer is None:
        raise _unasked(coil.need.kind, asked.options)
    return answer


def unjudged(coil: Coil, asked: Asked, mandrel_mm: float, why: Refusal, wire_named: bool) -> Refusal:
    """Why a coil on a mandrel without a sheet is not judged. Raises WrongWords where no coil on it can measure so."""
    from sourcing.winding.saving.not_judged import not_judged

    with _senseless_told():
        return not_judged(coil, mandrel_mm, asked.measured.get("outside"), why, wire_named)


@contextmanager
def _senseless_told() -> Generator[None]:
    """A figure that no coil can have is told with the option that gave it."""
    from sourcing.winding.saving.coil import SenselessError

    try:
        yield
    except SenselessError as error:
        option = next(each.option for each in MEASURES if each.name == error.measure)
        raise wrong_word(option, error.found, error.expected) from error


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


def _print_saved(answer: Saved, wound: WindingPlan, named: bool, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.winding_data import saved_document

        door.print_json(saved_document(answer, wound))
    else:
        from sourcing.sheets.winding_text import saved_lines

        door.print_text(saved_lines(answer, wound, named))


def _print_refusal(refusal: Refusal, need: Need, as_json: bool) -> None:
    if as_json:
        from sourcing.sheets.winding_data import answer_document

        door.print_json(answer_document(refusal, need))
    else:
        from sourcing.sheets.winding_text import answer_lines

        door.print_text(answer_lines(refusal, need, why_not=NO_VERDICT))
