"""How the verdict on a coil of any kind is worded, its chance, and what holds and what does not."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.judge import ROUNDING
from sourcing.fit.limits.room import BORE, ROD
from sourcing.fit.model import Deviation, Fit
from sourcing.quantities import show_angle, show_length
from sourcing.springs.model import Spring
from sourcing.stock.model import Bench
from sourcing.winding.in_hand import keeps
from sourcing.winding.saving.coil import Coil, Way


def though_unsure(coil: Coil, fit: Fit) -> str:
    """Goes on a verdict that a coil serves, where its chance is less than the bench asks for."""
    return ", though its chance is low" if is_low(coil, fit) else ""


BY_THE_LIST = "go through the sheet's list with the scale, and keep it only if it passes"
"""What settles whether a coil serves whose chance is low."""


def chance_said(coil: Coil, way: Way[Spring], settled: str = BY_THE_LIST) -> Iterator[str]:
    """The chance of a coil that is kept or changed; where that is low, how it is `settled`.

    It is of the clearances and of the figures that are wanted: a limit that does not hold it leaves out.
    """
    if way.answer not in ("keep", "change"):
        return
    chance = of_chance(way.fit)
    done = f"T{chance[1:]}" if way.answer == "keep" else f"Done so, {chance}"
    yield f"{done}{low_chance(coil, way.fit, settled)}."


def of_chance(fit: Fit) -> str:
    """The chance that what is wanted holds, and what it leaves out."""
    broken = [limit.limit for limit in fit.broken]
    but = f", but for {' and '.join(broken)}" if broken else ""
    return f"the chance that all that is wanted holds with it is {fit.chance:.2f}{but}"


def low_chance(coil: Coil, fit: Fit, settled: str = BY_THE_LIST) -> str:
    """Goes on a chance that is less than the bench asks for: how it is `settled`."""
    return f"; this bench asks for {coil.bench.least_chance:.2f}: {settled}" if is_low(coil, fit) else ""


def or_surer(way: Way[Spring]) -> str:
    """Begins what else is done with a coil that is kept, for a better chance."""
    return f"Or change it as follows, for a chance of {way.fit.chance:.2f}."


def so_it_serves(coil: Coil, fit: Fit) -> str:
    """The chance of what a kept coil may become besides; or that it would be worse than it is, and why."""
    if keeps(fit, coil.plan.fit):
        return f"Its chance is {fit.chance:.2f} then."
    return f"It would be a near fit only then: {next(wrong(fit, coil.bench))}"


def is_low(coil: Coil, fit: Fit) -> bool:
    """Whether a coil serves by its figures, and yet with less of a chance than the bench asks for."""
    return fit.fits == "yes" and round(fit.chance, 2) < coil.bench.least_chance


def keep_it(coil: Coil, way: Way[Spring]) -> str:
    """That a coil serves as it is; or only nearly, as was planned or where more was meant."""
    if keeps(way.fit, coil.plan.fit):
        return f"keep it as it is{_planned_so(way)}{though_unsure(coil, way.fit)}"
    return "keep it only where what is off below does not matter, for it is a near fit now"


def save_it(coil: Coil, way: Way[Spring]) -> str:
    """That a coil serves once it is changed; or only nearly, as was planned or where more was meant."""
    if way.fit.fits == "yes" and coil.plan.fit.fits != "yes":
        wholly = f"it serves wholly once it is changed, as told below{though_unsure(coil, way.fit)}"
        if way.kept_too:
            return f"{wholly}; it may also be kept as it is, for a near fit was planned"
        return f"{wholly}, where a near fit was planned"
    if keeps(way.fit, coil.plan.fit):
        return f"it can be saved, as told below{_planned_so(way)}{though_unsure(coil, way.fit)}"
    return "only a near fit can be made of it, as told below, for where what is off then does not matter"


def _planned_so(way: Way[Spring]) -> str:
    """That what serves as its plan does is a near fit, where that is no more."""
    return "" if way.fit.fits == "yes" else ", the near fit that was planned"


def came_out_at(came: str, meant: str, what: str = "outside") -> str:
    """How the sentences begin: what came out, and what was meant where that is shown otherwise."""
    return f"It came out at {came} {what}" + (", as meant" if came == meant else f" instead of {meant}")


def clearances(fit: Fit) -> Iterator[str]:
    """Whether it still goes into its bore and over its rod."""
    for limit in fit.limits:
        if limit.limit.startswith((BORE, ROD)) and limit.holds:
            yield f"{limit.limit}: {limit.why}."


def wrong(fit: Fit, bench: Bench) -> Iterator[str]:
    """Each limit that does not hold, and each figure that is more than its tolerance off."""
    for limit in fit.limits:
        if not limit.holds:
            yield f"{limit.limit} does not hold: {limit.why}."
    for row in fit.deviations:
        times = row.deviation_over_tolerance
        if times > 1.0 + ROUNDING:
            off = f"{times:.1f} tolerances off; one is allowed" if times >= 1.05 else "just over its tolerance off"
            yield f"{row.figure.replace('_', ' ')}{_at(row, bench.units)}: {off}."


def as_it_is_wrong(coil: Coil, as_it_is: Way[Spring], way: Way[Spring]) -> Iterator[str]:
    """What is wrong with a coil as it is now, which is not what it becomes where it is changed."""
    for each in wrong(as_it_is.fit, coil.bench):
        yield each if way.answer == "keep" else f"As it is now: {each}"


def _at(row: Deviation, units: str) -> str:
    """The length or the angle at which a figure is wanted."""
    if row.at is None:
        return ""
    return f" at {show_angle(row.at) if row.at_unit == 'deg' else show_length(row.at, units)}"
