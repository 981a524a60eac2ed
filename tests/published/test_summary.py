"""How much is checked and how near ours comes. `pytest -s tests/published/test_summary.py` prints it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable

from .checks import Check, files_of_checks
from .not_checked import NOT_CHECKED
from .not_yet import NOT_YET

WORKED: list[Check] = [check for module in files_of_checks() if hasattr(module, "BOOK") for check in module.CHECKS]
OTHERS: list[Check] = [check for module in files_of_checks() if not hasattr(module, "BOOK") for check in module.CHECKS]
EVERY_CHECK = [*WORKED, *OTHERS]


def counted(what: Callable[[Check], bool]) -> int:
    return sum(map(what, EVERY_CHECK))


def is_derived(check: Check) -> bool:
    """Worked out for this project (the winding model), not published."""
    return check.published.source.read.startswith("derived")


def is_recalled(check: Check) -> bool:
    return check.published.source.read == "memory"


def distinct(checks: list[Check]) -> set[tuple[str, str, str]]:
    """Published values that are not derived here, by source, place and figure."""
    published = [check.published for check in checks if not is_derived(check)]
    return {(each.source.name, each.source.where, each.figure) for each in published}


WORKS = (
    "Shigley",
    "Machinery's Handbook",
    "EN 13906",
    "EN 10270",
    "EN 12166",
    "EN 15800",
    "DIN 2097",
    "JIS B 2704",
    "Bhandari",
)
"""Works that stand under several names: editions, parts, tables and copies of them."""


def work(source: str) -> str:
    return next((name for name in WORKS if name in source), source)


def by_source() -> Counter[str]:
    return Counter(work(source) for source, _, _ in distinct(EVERY_CHECK))


def comparable(check: Check) -> bool:
    """Whether a difference in per cent means something: not of 0, not of a figure rounded up to a stock size."""
    return check.published.value != 0 and check.published.rounded_up_to is None


def beyond_rounding_percent(check: Check) -> float:
    """How far ours lies outside half a unit in the source's last digit."""
    published = check.published
    return max(0.0, abs(check.difference_percent) - 100 * published.half_a_unit / abs(published.value))


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
    lines.append(
        f"{len(distinct(WORKED)):5} distinct published values of worked examples, {len(distinct(OTHERS))} of tables and"
        f" formulas, from {len(by_source())} sources:"
    )
    lines += [f"{count:5} {source}" for source, count in by_source().most_common()]
    lines.append("largest differences:")
    lines += map(told, sorted(held, key=lambda check: -abs(check.difference_percent))[:5])
    lines.append("largest differences beyond the source's own rounding:")
    lines += map(told, sorted(held, key=beyond_rounding_percent, reverse=True)[:5])
    lines.append(f"{len(NOT_YET):5} published figures of the worked examples not checked yet:")
    lines += [f"{count:5} {reason}" for reason, count in Counter(NOT_YET.values()).most_common()]
    lines.append("rows of formulas and tables not checked:")
    lines += [f"{rows:5} {what}: {reason}" for what, (rows, reason) in NOT_CHECKED.items()]
    return lines


def test_260_values_of_worked_examples_and_1500_of_tables_and_formulas_are_checked_from_40_sources() -> None:
    assert len(distinct(WORKED)) >= 260
    assert len(distinct(OTHERS)) >= 1500
    assert len(by_source()) >= 40


def test_no_figure_lies_further_beyond_its_sources_rounding_than_one_per_cent() -> None:
    print("\n" + "\n".join(summary()))
    assert [str(check) for check in EVERY_CHECK if comparable(check) and beyond_rounding_percent(check) > 1] == []
