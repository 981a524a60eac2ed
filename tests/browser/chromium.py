"""Debian's chromium, started without a window, and what is read from the PDF that it prints."""

from __future__ import annotations

import subprocess
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from pdfminer.high_level import extract_pages
from pdfminer.layout import LAParams, LTChar, LTCurve, LTItem, LTPage, LTTextLine

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
