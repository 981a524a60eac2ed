"""The limits of a spring in its place, each one function from a case to the sentences that it gives cause for.

A limit that the need says nothing about is left out: what is unknown is neither judged nor assumed. What every kind
shares stands in any_kind.py, lasting.py and room.py, what compression springs of any shape share in pressed.py; a
kind's own file adds its own limits and lists all of them in the order in which the sheet tells them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from sourcing.fit.case import AnyCase
from sourcing.fit.limits import any_kind, compression, conical, extension, lasting, pressed, torsion
from sourcing.fit.model import Limit

Check = Callable[[Any], Iterator[Limit]]

OF_KIND: Mapping[str, tuple[Check, ...]] = {
    "compression": compression.LIMITS,
    "conical": conical.LIMITS,
    "extension": extension.LIMITS,
    "torsion": torsion.LIMITS,
}

STRESS_OF_KIND: Mapping[str, tuple[Check, ...]] = {
    "compression": pressed.STRESS,
    "conical": pressed.STRESS,
    "extension": extension.STRESS,
    "torsion": torsion.STRESS,
}
"""Of each kind, the limits that hang on the strength of its wire."""


def limits(case: AnyCase) -> tuple[Limit, ...]:
    """All limits that the need and the spring give cause to judge."""
    checks = (*OF_KIND[case.spring.kind], lasting.life, any_kind.surroundings, lasting.warm)
    return tuple(limit for check in checks for limit in check(case))


def stress_limits(case: AnyCase) -> tuple[Limit, ...]:
    """Those of the limits that would change were the wire of another grade."""
    return tuple(limit for check in (*STRESS_OF_KIND[case.spring.kind], lasting.life) for limit in check(case))
