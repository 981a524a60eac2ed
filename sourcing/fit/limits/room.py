"""Limits of room on the diameter, for a spring of any kind that sits in a bore or over a rod."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.fit.case import AnyCase
from sourcing.fit.model import Limit

BORE, ROD = "bore clearance", "rod clearance"
"""How the limits of room on the diameter begin; a cone's go on with the end they are about."""

_LAST_DIGITS_MM = 1e-9


def bore(case: AnyCase) -> Iterator[Limit]:
    """Outside diameter with its tolerance, growth and clearance must go into the bore."""
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.bore_mm
    for seat in case.seats:
        if seat.bore_mm is None or seat.bore_mm.smallest is None:
            continue
        wants_mm = seat.outside_mm + seat.growth_mm + tolerance_mm + clearance_mm
        why = (
            f"outside {case.size(seat.outside_mm)}"
            + (f" + growth {case.size(seat.growth_mm)}" if seat.growth_mm else "")
            + (f" + tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
            + f" + clearance {case.size(clearance_mm)} = {case.size(wants_mm)}; "
            + f"the bore is {case.size(seat.bore_mm.smallest)}"
        )
        yield within(BORE + seat.where, wants_mm, seat.bore_mm.smallest, why)


def rod(case: AnyCase) -> Iterator[Limit]:
    """Inside diameter less its tolerance and clearance must pass over the rod."""
    tolerance_mm, clearance_mm = case.spread.diameter_tolerance_mm, case.bench.clearance.rod_mm
    for seat in case.seats:
        if seat.rod_mm is None or seat.rod_mm.largest is None:
            continue
        leaves_mm = seat.inside_mm - tolerance_mm - clearance_mm
        why = (
            f"inside {case.size(seat.inside_mm)}"
            + (f" - tolerance {case.size(tolerance_mm)}" if tolerance_mm else "")
            + f" - clearance {case.size(clearance_mm)} = {case.size(leaves_mm)}; "
            + f"the rod is {case.size(seat.rod_mm.largest)}"
        )
        yield within(ROD + seat.where, seat.rod_mm.largest, leaves_mm, why)


def within(name: str, wants: float, has: float, why: str) -> Limit:
    """A hard limit of size: what is wanted must not be more than there is."""
    return Limit(name, wants <= has + _LAST_DIGITS_MM, True, why, max(0.0, wants - has) / wants)
