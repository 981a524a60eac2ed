"""Words of the command line made into numbers and records; a wrong one is a wrong command line (status 2)."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sourcing.files.findings import Finding, Place, WrongWords, quoted
from sourcing.quantities import (
    QuantityError,
    above_zero,
    angle_deg,
    at_least_zero,
    force_n,
    leg_angle_deg,
    length_mm,
    wire_diameter_mm,
)

if TYPE_CHECKING:
    from sourcing.stock.model import Spool


WORKINGS_HELP = "each figure with its formula, the numbers put in, its source, and whether its range is kept"


def wrong_word(option: str, found: str, expected: str, suggestions: tuple[str, ...] = ()) -> WrongWords:
    """What is wrong with an option or an argument: the same words as text and as JSON."""
    return WrongWords((Finding(Place(None), f"{option}: {found}", expected, suggestions),))


def length_option(option: str, text: str) -> float:
    """The length that an option names, in mm. Raises WrongWords."""
    return _read(option, lambda: above_zero(length_mm(text), text, "a length"))


def force_option(option: str, text: str) -> float:
    """The force that an option names, in N, zero or above. Raises WrongWords."""
    return _read(option, lambda: at_least_zero(force_n(text), text, "a force"))


def leg_angle_option(option: str, text: str) -> float:
    """The angle between two legs that an option names, 0 to 360 deg. Raises WrongWords."""
    return _read(option, lambda: leg_angle_deg(text))


def _read(option: str, read: Callable[[], float]) -> float:
    try:
        return read()
    except QuantityError as error:
        raise wrong_word(option, error.found, error.expected, error.suggestions) from error


@dataclass(frozen=True, slots=True)
class LengthOrAngle:
    """What somebody asks a spring at: a length in mm, an angle in deg, or a figure without a unit, which is either."""

    text: str
    length_mm: float | None
    angle_deg: float | None


def length_or_angle_option(option: str, text: str) -> LengthOrAngle:
    """The length or the angle that an option names; an angle may be negative. Raises WrongWords."""
    length = angle = None
    try:
        angle = angle_deg(text)
    except QuantityError:
        length = _length_or_refused(option, text)
    else:
        with suppress(QuantityError):
            length = above_zero(length_mm(text), text, "a length")
    return LengthOrAngle(text, length, angle)


def _length_or_refused(option: str, text: str) -> float:
    try:
        return above_zero(length_mm(text), text, "a length")
    except QuantityError as error:
        expected = f"{error.expected}, or an angle (deg, rad, turns)"
        raise wrong_word(option, error.found, expected, error.suggestions) from error


def page_option(option: str, file: str) -> None:
    """See that a page is to be written to a name that ends as a page's does, and can be. Raises WrongWords.

    Raises Mistakes where the file cannot be written.
    """
    from sourcing.files.writing import refuse_unwritable

    if not file.lower().endswith((".html", ".htm")):
        raise wrong_word(option, f"{quoted(file)} does not end in .html", "a page's name")
    refuse_unwritable(file)


def wire_size_option(text: str) -> float | None:
    """The diameter of wire to buy that an option names with its unit or gauge, in mm; None where it is no such figure.

    A bare figure is none: it may be a spool's id.
    """
    try:
        float(text)
    except ValueError:
        with suppress(QuantityError):
            return above_zero(wire_diameter_mm(text), text, "a wire")
    return None


def spool_option(option: str, spool_id: str, spools: Sequence[Spool], or_else: str = "") -> Spool:
    """The spool of that id. Raises WrongWords, with the nearest ids and what else the option takes."""
    for spool in spools:
        if spool.id == spool_id:
            return spool
    from sourcing.files.nearest import nearest

    ids = [spool.id for spool in spools]
    expected = f"the id of a spool{or_else}" if ids else f"a spool, but the catalogue holds none{or_else}"
    near = nearest(spool_id, ids, limit=2) or tuple(ids[:2])
    raise wrong_word(option, f"there is no spool {quoted(spool_id)}", expected, near)
