"""Gauge numbers where none belongs, and gauge numbers that lead to no diameter."""

from __future__ import annotations

import re

from sourcing.quantities.gauges import SYSTEMS, gauge_mm, nearest_gauge, span
from sourcing.quantities.kinds import LENGTH
from sourcing.quantities.mistakes.case import Case
from sourcing.quantities.values import QuantityError, echo

_LETTERS_FIRST = re.compile(r"(MWG|WM|W&M|SWG|AWG)(?![A-Z]) ?#?(.*)", re.IGNORECASE)
_NUMBER_FIRST = re.compile(r"#?(.*?) ?(MWG|WM|W&M|SWG|AWG)", re.IGNORECASE)
_NO_LETTERS = re.compile(r"(?:#|no\.? ?|gauge |ga )([0-9./]+)|([0-9./]+) ?(?:gauge|gage|ga)", re.IGNORECASE)


def gauge(case: Case) -> QuantityError | None:
    """A text with the letters of a gauge in it."""
    first, last = _LETTERS_FIRST.fullmatch(case.part), _NUMBER_FIRST.fullmatch(case.part)
    if first:
        letters, number = first[1], first[2].strip()
    elif last:
        letters, number = last[2], last[1].strip()
    else:
        return None
    system = letters.upper().replace("&", "")
    return _gauge(case, system, number) if case.kind.gauges else _out_of_place(case, f"{system} {number}")


def _gauge(case: Case, system: str, number: str) -> QuantityError:
    meant = f"{system} {number}"
    if not number:
        return QuantityError(f"{echo(case.part)} has no gauge number after it", f"a number after it, as in {system} 20")
    if gauge_mm(meant):
        return QuantityError(
            f"{echo(case.part)} is not how a gauge is written",
            f"{system}, then the gauge number",
            case.instead(meant),
        )
    nearest, (low, high) = nearest_gauge(system, number), span(system)
    suggestions = case.instead(f"{system} {nearest}") if nearest else ()
    return QuantityError(f"there is no {echo(meant)}", f"a gauge from {system} {low} to {system} {high}", suggestions)


def _out_of_place(case: Case, meant: str) -> QuantityError:
    diameter_mm = gauge_mm(meant)
    return QuantityError(
        f"{echo(case.part)} is a gauge number, and a gauge number is a wire diameter",
        case.kind.expected,
        case.instead(f"{diameter_mm:g} mm") if diameter_mm and case.kind is LENGTH else (),
    )


def gauge_without_system(case: Case) -> QuantityError | None:
    """A number that says that it is a gauge, but not of which system."""
    written = _NO_LETTERS.fullmatch(case.part)
    if written is None or not case.kind.gauges:
        return None
    meant = [text for text in (f"{system} {written[1] or written[2]}" for system in SYSTEMS) if gauge_mm(text)]
    expected = f"{', '.join(SYSTEMS[:-1])} or {SYSTEMS[-1]} before the number"
    return QuantityError(f"{echo(case.part)} does not say which gauge", expected, case.instead(*meant))
