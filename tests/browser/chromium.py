"""Debian's chromium, started without a window, and what is read from the PDF that it prints."""

from __future__ import annotations

import subprocess
import tempfile
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from pdfminer.high_level import extract_pages
from pdfminer.layout import LAParams, LTChar, LTCurve, LTItem, LTPage, LTTextLine

from tests.browser.sheets import split_words, words_of

FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-pdf-header-footer",
)  # fmt: skip

MM_PER_POINT = 25.4 / 72.0


def chromium(*words: str) -> str:
    """Start it once, with a profile of its own that is thrown away; returns what it prints."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as profile:
        command = ["chromium", *FLAGS, f"--user-data-dir={profile}", *words]
        ran = subprocess.run(command, capture_output=True, text=True, timeout=180, check=True)
    return ran.stdout


@dataclass(frozen=True)
class Box:
    """Something on a page, in mm from its lower left corner."""

    left: float
    low: float
    right: float
    high: float
    words: str = ""

    @property
    def width(self) -> float:
        return self.right - self.left

    @property
    def height(self) -> float:
        return self.high - self.low


@dataclass(frozen=True)
class Page:
    """A printed page: its size in mm, its letters, its lines of words, and its drawn lines.

    `sideways`: the letters of the words that are read from the right, each word from its foot up.
    """

    width: float
    height: float
    letters: tuple[Box, ...]
    lines: tuple[Box, ...]
    drawn: tuple[Box, ...]
    sideways: str

    @property
    def words(self) -> str:
        return " ".join(line.words for line in self.lines)


MARGIN_ACROSS_MM, MARGIN_DOWN_MM = 10.0, 8.0
SLACK_MM = 0.3
"""How far a letter's box, which has room above and below, may stand in a margin."""


def in_the_margins(page: Page) -> list[Box]:
    """The letters that stand in a margin, or beyond the paper."""
    across, down = MARGIN_ACROSS_MM - SLACK_MM, MARGIN_DOWN_MM - SLACK_MM
    return [
        each
        for each in page.letters
        if each.left < across or each.right > page.width - across or each.low < down or each.high > page.height - down
    ]


def on_each_other(page: Page) -> list[tuple[Box, Box]]:
    """The pairs of letters of which the middles of the boxes overlap: two thirds of the width, half of the height."""
    cores = sorted((_core(each) for each in page.letters), key=lambda box: box.left)
    found: list[tuple[Box, Box]] = []
    for at, one in enumerate(cores):
        for other in cores[at + 1 :]:
            if other.left >= one.right:
                break
            if other.low < one.high and one.low < other.high:
                found.append((one, other))
    return found


def _core(box: Box) -> Box:
    aside, off = box.width / 6.0, box.height / 4.0
    return Box(box.left + aside, box.low + off, box.right - aside, box.high - off, box.words)


def not_printed(page: str, pages: Sequence[Page]) -> list[str]:
    """The words of a page that are not on its printed pages."""
    upright, sideways = (" ".join(getattr(each, name) for each in pages) for name in ("words", "sideways"))
    found = set(split_words(upright))
    return [word for word in words_of(page) if word not in found and word not in sideways]


def printed(html: Path) -> list[Page]:
    """The pages of a document as the browser prints it."""
    pdf = html.with_suffix(".pdf")
    chromium(f"--print-to-pdf={pdf}", html.as_uri())
    return [_page(each) for each in extract_pages(pdf, laparams=LAParams(boxes_flow=None))]


def _page(page: LTPage) -> Page:
    items = list(_all(page))
    turned = [_box(each, each.get_text()) for each in items if isinstance(each, LTChar) and not each.upright]
    turned.sort(key=lambda box: (round(box.right), box.low))
    return Page(
        page.width * MM_PER_POINT,
        page.height * MM_PER_POINT,
        tuple(_box(each, each.get_text()) for each in items if isinstance(each, LTChar) and each.get_text().strip()),
        tuple(_box(each, each.get_text()) for each in items if isinstance(each, LTTextLine)),
        tuple(_box(each) for each in items if isinstance(each, LTCurve)),
        "".join(each.words for each in turned),
    )


def _all(item: LTItem) -> Iterator[LTItem]:
    yield item
    if hasattr(item, "__iter__"):
        for each in item:
            yield from _all(each)


def _box(item: LTItem, words: str = "") -> Box:
    left, low, right, high = (each * MM_PER_POINT for each in item.bbox)
    return Box(left, low, right, high, words)
