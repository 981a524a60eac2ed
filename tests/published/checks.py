"""The form of a published check.

A figure is copied as its source prints it, as text, so that the last digit tells how far the source's rounding
reaches: half a unit either way is the tolerance. Wider only with a reason: the source rounds up to a stock size,
carries rounded figures on, or uses another factor, and then by 1 % at most. `faults` finds what lacks its source or
its reason; each test file lists its checks as CHECKS, and test_the_checks_themselves.py looks at all of them.
"""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from decimal import Decimal
from functools import cached_property, partial
from types import ModuleType

from .not_yet import NOT_YET

INCH_MM = 25.4
POUND_N = 4.4482216152605
KPSI_MPA = 6.894757293168
POUND_KG = 0.45359237
UNITS = {
    "": 1.0,
    "in": INCH_MM,
    "lbf": POUND_N,
    "lbf/in": POUND_N / INCH_MM,
    "lbf*in": POUND_N * INCH_MM,
    "kpsi": KPSI_MPA,
    "Mpsi": 1000.0 * KPSI_MPA,
    "GPa": 1000.0,
    "lb/in3": POUND_KG / (INCH_MM / 1000.0) ** 3,
}
"""Units of the sources in ours (mm, N, N/mm, N·mm, MPa, kg/m³)."""

ONE_PERCENT = 1.0
"""The widest allowance, in per cent."""

LAST_BIT = 1e-9
"""A figure on the very edge of its rounding is inside it, whatever its last binary digit."""


@dataclass(frozen=True)
class Source:
    """A book, standard or table; the page, clause, example or row; and how it was read ("memory" where recalled)."""

    name: str
    where: str
    read: str


@dataclass(frozen=True)
class Published:
    """One published figure as it is printed, and how near ours must come to it."""

    figure: str
    printed: str
    unit: str = ""
    rounded_up_to: float | None = None
    allowance_percent: float = 0.0
    reason: str = ""
    source: Source | None = None

    @property
    def value(self) -> float:
        """The printed figure in our units."""
        return float(self.printed) * UNITS[self.unit]

    @property
    def half_a_unit(self) -> float:
        """Half a unit in the last printed digit, in our units."""
        exponent = Decimal(self.printed).as_tuple().exponent
        return 0.5 * 10.0 ** int(exponent) * UNITS[self.unit]

    @property
    def tolerance(self) -> str:
        """The tolerance by its name."""
        if self.rounded_up_to is not None:
            return f"rounded up to a multiple of {self.rounded_up_to:g}"
        if self.allowance_percent:
            return f"half a unit in the last digit and {self.allowance_percent:g} %"
        return "half a unit in the last digit"

    @property
    def band(self) -> tuple[float, float]:
        """Between which figures ours must lie."""
        slack = LAST_BIT * abs(self.value)
        if self.rounded_up_to is not None:
            return self.value - self.rounded_up_to * UNITS[self.unit] - slack, self.value + slack
        reach = self.half_a_unit + self.allowance_percent / 100 * abs(self.value) + slack
        return self.value - reach, self.value + reach


def carried(printed: str, percent: float, reason: str, unit: str = "") -> Published:
    """A figure that its source works out from figures rounded before, which moves it by so many per cent."""
    return Published("", printed, unit, allowance_percent=percent, reason=reason)


def one_percent(printed: str, reason: str, unit: str = "") -> Published:
    """A figure by another factor or constant than ours."""
    return Published("", printed, unit, allowance_percent=ONE_PERCENT, reason=reason)


def rounded_up(printed: str, step: float, reason: str) -> Published:
    """A figure that its source rounds up to a whole coil or a stock size."""
    return Published("", printed, rounded_up_to=step, reason=reason)


def inches(printed: str) -> Published:
    """A length printed in inches."""
    return Published("", printed, "in")


def pounds(printed: str) -> Published:
    """A force printed in pounds."""
    return Published("", printed, "lbf")


def pounds_per_inch(printed: str) -> Published:
    """A rate printed in pounds an inch."""
    return Published("", printed, "lbf/in")


def kpsi(printed: str) -> Published:
    """A stress printed in thousands of pounds a square inch."""
    return Published("", printed, "kpsi")


@dataclass(frozen=True)
class Check:
    """A published figure and the call of ours that must come to it."""

    published: Published
    ours: Callable[[], float]

    def __str__(self) -> str:
        """The place and the figure, as the test is named."""
        source = self.published.source
        return f"{source.where if source else 'no source'}: {self.published.figure}"

    @property
    def difference_percent(self) -> float:
        """How far ours is above the published figure."""
        return 100 * (self.ours() / self.published.value - 1)

    def must_agree(self) -> None:
        """Fail where ours is outside the tolerance, or where the check itself has a fault."""
        assert not faults(self.published)
        ours, (low, high) = self.ours(), self.published.band
        assert low <= ours <= high, (
            f"{self}: published {self.published.value:g}, ours {ours:.7g} ({self.difference_percent:+.3f} %), "
            f"tolerance: {self.published.tolerance}"
        )


def faults(published: Published) -> list[str]:
    """What is wrong with a check before anything is compared."""
    found = []
    source = published.source
    if source is None or not (source.name and source.where and source.read):
        found.append("no source with its page, clause or example, and how it was read")
    widened = published.allowance_percent > 0 or published.rounded_up_to is not None
    if widened and not published.reason:
        found.append("a tolerance wider than the source's rounding, and no reason")
    if published.allowance_percent > ONE_PERCENT:
        found.append(f"a tolerance of {published.allowance_percent:g} %: more than 1 %")
    return found


@dataclass(frozen=True)
class WorkedExample:
    """A worked example of a book: what it prints, and what our functions make of its data."""

    name: str
    published: tuple[Published, ...]
    work: Callable[[], dict[str, float]]

    @cached_property
    def ours(self) -> dict[str, float]:
        """Our figures, by the names of the published ones."""
        return self.work()

    def checks(self) -> list[Check]:
        """The published figures that ours can be held against: all but those in NOT_YET."""
        held = [published for published in self.published if (self.name, published.figure) not in NOT_YET]
        return [Check(published, partial(self._ours, published.figure)) for published in held]

    def _ours(self, figure: str) -> float:
        return self.ours[figure]


@dataclass(frozen=True)
class Book:
    """A book and its worked examples, in the order in which they are written down."""

    title: str
    read: str
    examples: list[WorkedExample] = field(default_factory=list)

    def example(
        self, name: str, where: str, read: str = "", **published: str | Published
    ) -> Callable[[Callable[[], dict[str, float]]], Callable[[], dict[str, float]]]:
        """Write a worked example down above the function that works it out with ours."""
        source = Source(self.title, where, read or self.read)
        figures = tuple(
            replace(_as_published(printed), figure=figure, source=source) for figure, printed in published.items()
        )

        def written_down(work: Callable[[], dict[str, float]]) -> Callable[[], dict[str, float]]:
            self.examples.append(WorkedExample(name, figures, work))
            return work

        return written_down

    def checks(self) -> list[Check]:
        """The checks of all its examples."""
        return [check for example in self.examples for check in example.checks()]


def _as_published(printed: str | Published) -> Published:
    return printed if isinstance(printed, Published) else Published("", printed)


def check(figure: str, printed: str | Published, source: Source, ours: Callable[[], float]) -> Check:
    """A single published figure, outside any worked example."""
    return Check(replace(_as_published(printed), figure=figure, source=source), ours)


def files_of_checks() -> list[ModuleType]:
    """The test files of this room that hold published checks."""
    package = importlib.import_module(__package__)
    names = [module.name for module in pkgutil.iter_modules(package.__path__) if module.name.startswith("test_")]
    modules = [importlib.import_module(f"{__package__}.{name}") for name in names]
    return [module for module in modules if hasattr(module, "CHECKS")]
