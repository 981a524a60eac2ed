"""How much is checked and how near ours comes. `pytest -s tests/published/test_summary.py` prints it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from .checks import Check, files_of_checks
from .not_yet import NOT_YET

EVERY_CHECK: list[Check] = [check for module in files_of_checks() for check in module.CHECKS]


def counted(what: Callable[[Check], bool]) -> int:
    return sum(map(what, EVERY_CHECK))


def is_derived(check: Check) -> bool:
    """Worked out for this project (the winding model), not published."""
    return check.published.source.read.startswith("derived")


def is_recalled(check: Check) -> bool:
    return check.published.source.read == "memory"


def comparable(check: Check) -> bool:
    """Whether a difference in per cent means something: not of 0, not of a figure rounded up to a stock size."""
    return check.published.value != 0 and check.published.rounded_up_to is None


def beyond_rounding_percent(check: Check) -> float:
    """How far ours lies outside half a unit in the source's last digit."""
    published = check.published
    return max(0.0, abs(check.difference_percent) - 100 * published.half_a_unit / published.value)


def told(check: Check) -> str:
    published = check.published
    figures = f"{published.value:g}, ours {check.ours():.6g} ({check.difference_percent:+.3f} %)"
    return f"  {check}: {figures}; {published.reason or published.tolerance}"


def summary() -> list[str]:
    """The counts, the largest differences, and what is not checked yet."""
    held = [check for check in EVERY_CHECK if comparable(check)]
    lines = [f"{len(module.CHECKS):5} {module.__name__.rsplit('.', 1)[-1]}" for module in files_of_checks()]
    lines.append(
        f"{len(EVERY_CHECK):5} figures checked, {counted(is_derived)} of them derived for this project,"
        f" {counted(is_recalled)} published but recalled from memory"
    )
    lines.append("largest differences:")
    lines += map(told, sorted(held, key=lambda check: -abs(check.difference_percent))[:5])
    lines.append("largest differences beyond the source's own rounding:")
    lines += map(told, sorted(held, key=beyond_rounding_percent, reverse=True)[:5])
    lines.append(f"{len(NOT_YET):5} published figures of the worked examples not checked yet:")
    lines += [f"{count:5} {reason}" for reason, count in Counter(NOT_YET.values()).most_common()]
    return lines


def test_no_figure_lies_further_beyond_its_sources_rounding_than_one_per_cent() -> None:
    print("\n" + "\n".join(summary()))
    assert [str(check) for check in EVERY_CHECK if comparable(check) and beyond_rounding_percent(check) > 1] == []
