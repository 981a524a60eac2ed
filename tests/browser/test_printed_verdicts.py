"""The verdicts of all examples as a browser prints them, in one document as `source NEED... --sheet` writes it."""

from __future__ import annotations

import pytest

from sourcing.cli.source import source
from sourcing.sheets.verdict_page import verdict_page
from tests.browser.chromium import in_the_margins, not_printed, on_each_other, printed
from tests.browser.sheets import EXAMPLES

pytestmark = pytest.mark.browser


def test_verdicts_are_printed_whole_and_each_begins_on_paper_of_its_own(tmp_path):
    verdicts = source([str(file) for file in sorted(EXAMPLES.glob("*/need.yaml"))], None)
    html = tmp_path / "verdicts.html"
    html.write_text(verdict_page(verdicts), "utf-8")
    pages = printed(html)
    assert not_printed(html.read_text("utf-8"), pages) == []
    assert [letter for page in pages for letter in in_the_margins(page)] == []
    assert [pair for page in pages for pair in on_each_other(page)] == []
    for verdict in verdicts:
        title = f"{verdict.need.job}: {verdict.need.what}"[:30]
        (first,) = (page for page in pages if any(line.words.startswith(title) for line in page.lines))
        assert verdict.sentence[:30] in first.words
