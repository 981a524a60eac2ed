"""Why a text is no figure of its kind, and what comes nearest. Imported only after reading has failed.

Each check is a small function from a `Case` to an error or None; the first in `_CHECKS` with something to say wins.

    case.py      the text at fault, and where it stands
    numbers.py   words, commas, leading zeros, other bases, sizes; ranges and tolerances written another way
    gauges.py    gauge numbers out of place, out of order, or not in the table
    units.py     units of another kind, units nobody knows, and what stands after a figure
"""

from __future__ import annotations

from collections.abc import Callable

from sourcing.quantities.mistakes import gauges, numbers, units
from sourcing.quantities.mistakes.case import Case
from sourcing.quantities.values import QuantityError, quoted

_CHECKS: tuple[Callable[[Case], QuantityError | None], ...] = (
    numbers.missing,
    numbers.too_long,
    numbers.invisible,
    numbers.word,
    numbers.comma,
    numbers.other_base,
    gauges.gauge,
    gauges.gauge_without_system,
    numbers.divided_digits,
    numbers.colon,
    numbers.leading_zero,
    numbers.zero_divisor,
    numbers.nothing_divided,
    numbers.minus_first,
    numbers.several_figures,
    units.unit_first,
    units.no_unit,
    units.other_kind,
    units.trailing,
    units.unknown_unit,
    numbers.out_of_proportion,
)


def explain(case: Case) -> QuantityError:
    """The error for a text that could not be read.

    >>> from sourcing.quantities.kinds import LENGTH
    >>> explain(Case("5 N", "5 N", LENGTH))
    QuantityError('5 N is a force; expected a length (mm, cm, m, in, ft, thou)')
    """
    error = next((error for check in _CHECKS if (error := check(case))), None)
    return error or QuantityError(f"{quoted(case.part)} is no number", case.kind.expected)
