"""The winding sheets of all examples that are wound, and documents that hold them together."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass, replace
from functools import cache
from html import escape, unescape
from pathlib import Path
from tempfile import TemporaryDirectory

from sourcing.cli.planned import on_printed, plan, with_mandrels
from sourcing.cli.reading import read_all
from sourcing.cli.solids import AskedSolids, write_solids
from sourcing.need.model import Need
from sourcing.sheets.page import STYLE
from sourcing.sheets.winding_page import winding_page
from sourcing.stock.model import Catalogue
from sourcing.winding.model import WindingPlan

EXAMPLES = Path(__file__).parents[2] / "examples"


@dataclass(frozen=True)
class Sheet:
    """A job, its plan, and the page of it."""

    job: str
    plan: WindingPlan
    page: str

    @property
    def body(self) -> str:
        return self.page.partition("<body>")[2].rpartition("</body>")[0]


@cache
def sheets(units: str, solid: bool = False) -> tuple[Sheet, ...]:
    """Those of the examples for which there is a plan, on a bench of mm or inch; `solid`: each with its mandrel."""
    found = []
    for file in sorted(EXAMPLES.glob("*/need.yaml")):
        ((need, catalogue),) = read_all([str(file)], None)
        catalogue = replace(catalogue, bench=replace(catalogue.bench, units=units))
        if isinstance(answer := plan(need, catalogue, None, None), WindingPlan):
            found.append(_sheet(answer, need, catalogue, solid))
    return tuple(found)


def sheet_of(example: str, wire: str, mandrel_mm: float | None, solid: bool) -> Sheet:
    """That of one example with this wire, on this mandrel or the best; `solid`: with its mandrel."""
    ((need, catalogue),) = read_all([str(EXAMPLES / example / "need.yaml")], None)
    answer = plan(need, catalogue, wire, mandrel_mm)
    assert isinstance(answer, WindingPlan)
    return _sheet(answer, need, catalogue, solid)


def _sheet(answer: WindingPlan, need: Need, catalogue: Catalogue, solid: bool) -> Sheet:
    made, said = _on_solid(answer, need, catalogue) if solid else (answer, ())
    whole = with_mandrels(made, need, catalogue)
    return Sheet(need.job, whole, winding_page(whole, need, said))


def _on_solid(plan: WindingPlan, need: Need, catalogue: Catalogue) -> tuple[WindingPlan, tuple[str, ...]]:
    """The plan on a mandrel that is printed, or turned where none can be, and what the sheet says of that."""
    for file in ("mandrel.stl", "mandrel.svg"):
        with TemporaryDirectory() as folder:
            asked = AskedSolids((f"{folder}/{file}",), None)
            on_it = on_printed(plan, need, catalogue) if asked.printed else plan
            written = write_solids(asked, on_it, need, catalogue.bench)
        if isinstance(written.answer, WindingPlan):
            return written.answer, written.said
    raise AssertionError(f"no mandrel for {need.job}")


def together(units: str, paper: str, solid: bool = False) -> str:
    """One document of all of them, each beginning on a page of its own: the browser is started once for all."""
    return printed_on(paper, sheets(units, solid))


def printed_on(paper: str, of: Iterable[Sheet]) -> str:
    """One document of sheets on a paper."""
    own = f"@page {{ size: {paper} }} main {{ break-before: page }} main:first-of-type {{ break-before: auto }}"
    bodies = "\n".join(sheet.body for sheet in of)
    head = f'<!DOCTYPE html>\n<html lang="en"><meta charset="utf-8"><style>{STYLE}{own}</style>'
    return f"{head}<body>{bodies}</body></html>"


def on_screens(pages: Iterable[str], widths_px: Iterable[int]) -> str:
    """A document that shows every page at every width, and writes into itself what is wider than its room.

    The script is the document's own; the pages have none.
    """
    frames = "".join(
        f'<iframe style="width: {width}px; height: 900px; border: 0" srcdoc="{escape(page)}"></iframe>'
        for page in pages
        for width in widths_px
    )
    return f"<!DOCTYPE html><meta charset='utf-8'><body>{frames}<pre></pre><script>{_MEASURE}</script></body>"


_MEASURE = """
onload = () => {
  const found = [...document.querySelectorAll('iframe')].map(frame => {
    const inner = frame.contentDocument, root = inner.documentElement
    const wide = [...inner.querySelectorAll('main *')].filter(each =>
      each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0 && !each.closest('svg, .scroll, .true'))
    return [frame.clientWidth, root.scrollWidth, root.scrollHeight, wide.map(each => each.outerHTML.slice(0, 90))]
  })
  document.querySelector('pre').textContent = JSON.stringify(found)
}
"""


def words_of(page: str) -> list[str]:
    """The words that somebody reads on a page."""
    seen = re.sub(
        r"<(head|title|desc)\b.*?</\1>", " ", page.replace("<code>", "").replace("</code>", ""), flags=re.DOTALL
    )
    return split_words(unescape(re.sub("<[^>]+>", " ", seen)))


def split_words(words: str) -> list[str]:
    """Words, parted where a line may break: after a hyphen or a slash too."""
    return re.findall(r"[^\s/-]+", words)
