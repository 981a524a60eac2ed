"""The winding sheets of all examples as a browser prints them: two papers, mm and inch, with a solid and without."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise, product
from math import hypot

import pytest

from sourcing.springs.model import ConicalSpring, ExtensionSpring, TorsionSpring
from tests.browser.chromium import MARGIN_DOWN_MM, Box, Page, in_the_margins, not_printed, on_each_other, printed
from tests.browser.sheets import Sheet, sheets, together

pytestmark = pytest.mark.browser

TRUE_WITHIN_MM = 0.3
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}


def _named(case: tuple[str, str, bool]) -> str:
    paper, units, solid = case
    return f"{paper}-{units}{'-solid' if solid else ''}"


@pytest.fixture(scope="module", params=product(PAPERS, ("mm", "inch"), (False, True)), ids=_named)
def jobs(request, tmp_path_factory) -> dict[str, tuple[Sheet, list[Page]]]:
    """The sheet and the printed pages of each job."""
    paper, units, solid = request.param
    wide, high = PAPERS[paper]
    html = tmp_path_factory.mktemp("printed") / f"{paper}.html"
    html.write_text(together(units, paper, solid), "utf-8")
    found: dict[str, tuple[Sheet, list[Page]]] = {}
    waiting = list(sheets(units, solid))
    for page in printed(html):
        assert (page.width, page.height) == pytest.approx((wide, high), abs=0.2)
        if waiting and any(line.words.startswith(f"{waiting[0].job}:") for line in page.lines):
            found[waiting[0].job] = (waiting[0], [])
            waiting.pop(0)
        list(found.values())[-1][1].append(page)
    assert not waiting
    return found


def test_every_sheet_takes_one_to_three_pages(jobs):
    assert len(jobs) >= 11
    assert {job: len(pages) for job, (_, pages) in jobs.items() if not 1 <= len(pages) <= 3} == {}


def test_every_word_of_a_sheet_is_printed(jobs):
    assert {job: missed for job, (sheet, pages) in jobs.items() if (missed := not_printed(sheet.body, pages))} == {}


def test_no_letter_stands_in_a_margin(jobs):
    for job, (_, pages) in jobs.items():
        assert [letter for page in pages for letter in in_the_margins(page)] == [], job


def test_no_letter_lies_on_another(jobs):
    for job, (_, pages) in jobs.items():
        assert [pair for page in pages for pair in on_each_other(page)] == [], job


def test_the_check_line_measures_100_mm(jobs):
    for job, (_, pages) in jobs.items():
        assert _check_line(pages)[1].width == pytest.approx(100.0, abs=TRUE_WITHIN_MM), job


def _check_line(pages: list[Page]) -> tuple[Page, Box]:
    """The check line: the longest level line right above its words."""
    for page in pages:
        for words in page.lines:
            if words.words.startswith("this line is 100 mm long"):
                above = [each for each in page.drawn if each.height < 0.5 and 0.0 < each.low - words.low < 8.0]
                return page, max(above, key=lambda each: each.width)
    raise AssertionError("no check line")


def _outline(pages: list[Page]) -> list[Box]:
    """What is drawn between the words about the outline and the next heading, less the check line and its ticks."""
    page, line = _check_line(pages)
    (top,) = (each.low for each in page.lines if each.words.startswith("Lay the finished spring on the outline"))
    foot = max((each.high for each in page.lines if each.words.startswith("How it goes in")), default=MARGIN_DOWN_MM)
    return [
        each
        for each in page.drawn
        if foot <= each.low and each.high <= top and not (each.right <= line.right + 0.5 and each.low > line.low - 1.0)
    ]


def _size(boxes: list[Box]) -> tuple[float, float]:
    """Width and height of all, the larger last."""
    wide = max(each.right for each in boxes) - min(each.left for each in boxes)
    high = max(each.high for each in boxes) - min(each.low for each in boxes)
    return min(wide, high), max(wide, high)


def test_the_outline_is_as_large_as_the_spring(jobs):
    """A wire is drawn along its middle, so that what is drawn is a wire smaller than the spring each way."""
    kinds = set()
    for job, (sheet, pages) in jobs.items():
        spring, drawn = sheet.plan.wanted, _outline(pages)
        kinds.add(spring.kind)
        if isinstance(spring, TorsionSpring):
            assert any(_across(each) == pytest.approx(spring.outside_diameter_mm, abs=TRUE_WITHIN_MM) for each in drawn)
            legs = [hypot(each.width, each.height) for each in drawn]
            for leg in spring.legs:
                assert any(each == pytest.approx(leg.length_mm, abs=TRUE_WITHIN_MM) for each in legs), job
            continue
        mean_mm = spring.mean_diameter_large_mm if isinstance(spring, ConicalSpring) else spring.mean_diameter_mm
        wire_mm = spring.wire_diameter_mm * (1 if isinstance(spring, ExtensionSpring) else -1)
        wanted = sorted((mean_mm, spring.free_length_mm + wire_mm))
        assert _size(drawn) == pytest.approx(tuple(wanted), abs=TRUE_WITHIN_MM), job
    assert kinds == {"compression", "conical", "extension", "torsion"}


def _across(box: Box) -> float:
    """The diameter of what is as high as it is wide; nothing of all else."""
    return box.width if abs(box.width - box.height) < 0.1 else 0.0


def test_no_heading_is_the_last_on_its_page(jobs):
    headings = ("Cut list", "On the mandrel", "What comes out", "At the bench", "Accept it when", "In its true size",
                "How it goes in", "Write down each coil", "Notes")  # fmt: skip
    for job, (_, pages) in jobs.items():
        for page in pages:
            for heading, low in _lows(page):
                if heading in headings:
                    assert any(each.high < low for each in page.lines), (job, heading)


def _lows(page: Page) -> Iterator[tuple[str, float]]:
    yield from ((each.words.strip(), each.low) for each in page.lines)


def test_the_parts_are_printed_in_their_order(jobs):
    for job, (sheet, pages) in jobs.items():
        places = [
            next(at for at, page in enumerate(pages) if heading in page.words)
            for heading in ("Before you begin", "Cut list", "At the bench", "Accept it when", "In its true size")
        ]
        assert all(first <= second for first, second in pairwise(places)), job
        assert places[0] == 0, sheet.job
