"""Rules that a published check must keep before it is worth anything, and the count of what is checked."""

from __future__ import annotations

from dataclasses import replace

import pytest

from .checks import Book, Check, Published, Source, WorkedExample, carried, check, faults, files_of_checks, one_percent
from .not_checked import NOT_CHECKED
from .not_yet import NOT_YET

EVERY_CHECK = [(module.__name__, check) for module in files_of_checks() for check in module.CHECKS]
EXAMPLES: list[WorkedExample] = [
    example
    for module in files_of_checks()
    if isinstance(book := getattr(module, "BOOK", None), Book)
    for example in book.examples
]

PAGE = Source("A handbook", "p. 12", "read")


def test_every_check_has_its_source_and_no_tolerance_is_wide_without_a_reason() -> None:
    assert [(file, str(check), faults(check.published)) for file, check in EVERY_CHECK if faults(check.published)] == []


def test_no_figure_is_checked_twice() -> None:
    named = [(file, check.published.source, check.published.figure) for file, check in EVERY_CHECK]
    assert len(named) == len(set(named))


@pytest.mark.parametrize("source", [None, replace(PAGE, where=""), replace(PAGE, name=""), replace(PAGE, read="")])
def test_a_check_without_its_source_and_page_fails_by_itself(source: Source | None) -> None:
    unsourced = Check(Published("length_mm", "2.0", source=source), lambda: 2.0)
    assert faults(unsourced.published) == ["no source with its page, clause or example, and how it was read"]
    with pytest.raises(AssertionError):
        unsourced.must_agree()


@pytest.mark.parametrize("wide", [carried("2.0", 0.5, ""), Published("", "2.0", rounded_up_to=1.0)])
def test_a_tolerance_wider_than_the_rounding_without_a_reason_fails_by_itself(wide: Published) -> None:
    unreasoned = check("length_mm", wide, PAGE, lambda: 2.0)
    assert faults(unreasoned.published) == ["a tolerance wider than the source's rounding, and no reason"]
    with pytest.raises(AssertionError):
        unreasoned.must_agree()


def test_a_tolerance_above_one_per_cent_fails_whatever_its_reason() -> None:
    assert faults(replace(carried("2.0", 1.1, "a reason"), source=PAGE)) == ["a tolerance of 1.1 %: more than 1 %"]


@pytest.mark.parametrize(
    ("printed", "inside", "outside"),
    [
        ("1.184", 1.18449, 1.18451),
        ("14", 13.51, 13.49),
        ("123.0", 123.04, 123.06),
        (Published("", "26.67", "lbf/in"), 26.6749 * 0.1751268, 26.6752 * 0.1751268),
        (Published("", "8", rounded_up_to=1, reason="whole coils"), 7.01, 8.01),
        (carried("66.61", 0.05, "carried"), 66.647, 66.649),
        (one_percent("100", "another factor"), 101.4, 101.6),
    ],
)
def test_ours_must_lie_within_the_sources_rounding(printed: str | Published, inside: float, outside: float) -> None:
    check("figure", printed, PAGE, lambda: inside).must_agree()
    with pytest.raises(AssertionError, match="tolerance: "):
        check("figure", printed, PAGE, lambda: outside).must_agree()


def test_every_published_value_of_the_examples_is_either_checked_or_listed_as_not_yet() -> None:
    for example in EXAMPLES:
        published = {figure.figure for figure in example.published}
        not_yet = {figure for name, figure in NOT_YET if name == example.name}
        assert set(example.ours) | not_yet == published, example.name
        assert set(example.ours) & not_yet == set(), example.name


def test_what_is_listed_as_not_yet_is_a_published_value_and_has_its_reason() -> None:
    published = {(example.name, figure.figure) for example in EXAMPLES for figure in example.published}
    assert set(NOT_YET) <= published
    assert all(NOT_YET.values())


def test_no_worked_example_stands_twice_and_none_has_gone() -> None:
    published = sum(len(example.published) for example in EXAMPLES)
    assert len({example.name for example in EXAMPLES}) == len(EXAMPLES) >= 46
    assert published >= 257
    assert sum(len(example.ours) for example in EXAMPLES) == published - len(NOT_YET)


def test_what_is_not_checked_has_its_count_and_its_reason() -> None:
    assert all(rows > 0 and reason for rows, reason in NOT_CHECKED.values())
