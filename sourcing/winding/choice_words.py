"""What is said of a mandrel beside the one of the sheet: whether it serves wholly, and whether it is surer."""

from __future__ import annotations

from sourcing.winding.mandrel import CLEARLY_SURER
from sourcing.winding.model import WindingPlan
from sourcing.winding.serving_words import left_out, near_only


def how_well(made: WindingPlan, shown: WindingPlan) -> str:
    """That a mandrel gives a near fit only, or serves wholly where that of the plan shown does not."""
    if made.fit.fits != "yes":
        return near_only(made)
    return "" if shown.fit.fits == "yes" else "serves wholly"


def how_sure(made: WindingPlan, shown: WindingPlan) -> str:
    """The chance of a mandrel beside that of the plan shown, in words that go with the figures on the sheet.

    Empty where the two chances are not of the same, of a near fit and a whole one or with other limits left out, and
    where a trial coil leaves them open.
    """
    if shown.unsettled or (made.fit.fits, left_out(made)) != (shown.fit.fits, left_out(shown)):
        return ""
    both, better_by = f"({made.tries.first:.2f} against {shown.tries.first:.2f})", _better_by(made, shown)
    if better_by > 0.0:
        return f"{'hardly surer' if better_by < CLEARLY_SURER else 'surer'} {both}"
    return "no surer" if better_by == 0.0 else f"less sure {both}"


def for_or_against(made: WindingPlan, shown: WindingPlan) -> str:
    """How sure a mandrel is beside that of the plan shown, and whether it pays for that with what is wanted."""
    sure, further = how_sure(made, shown), (made.fit.score or 0) < (shown.fit.score or 0)
    return f"{sure}, but further from what is wanted" if sure and further and _better_by(made, shown) > 0.0 else sure


def _better_by(made: WindingPlan, shown: WindingPlan) -> float:
    """By how much a chance is better than that of the plan shown, as both stand on the sheet."""
    return round(round(made.tries.first, 2) - round(shown.tries.first, 2), 2)


def joined(*parts: str) -> str:
    """What speaks for or against a mandrel, one after the other; what is not said is left out."""
    return "; ".join(filter(None, parts))
