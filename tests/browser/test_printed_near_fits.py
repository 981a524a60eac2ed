"""The longest sheets of near fits, which say more at their head, as a browser prints them."""

from __future__ import annotations

import pytest

from tests.browser.chromium import not_printed, printed
from tests.browser.sheets import printed_on, sheet_of

pytestmark = pytest.mark.browser


@pytest.mark.parametrize(
    ("example", "wire", "mandrel_mm"),
    [("torch-tail", "W08", None), ("punch-return", "W09", 5.65), ("cupboard-handle", "W12", 9.7)],
)
def test_the_sheet_of_a_near_fit_takes_three_pages_at_most(tmp_path, example, wire, mandrel_mm):
    sheet = sheet_of(example, wire, mandrel_mm, solid=True)
    assert sheet.plan.fit.fits == "near"
    html = tmp_path / "near.html"
    html.write_text(printed_on("Letter", [sheet]), "utf-8")
    pages = printed(html)
    assert len(pages) <= 3
    assert not_printed(sheet.body, pages) == []
