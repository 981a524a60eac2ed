"""The winding sheets on a phone and on a desk: nothing is wider than the screen but what is meant to move under it."""

from __future__ import annotations

import json
import re
from html import unescape

import pytest

from tests.browser.chromium import chromium
from tests.browser.sheets import on_screens, sheets

pytestmark = pytest.mark.browser

PHONE_PX, DESK_PX = 390, 1200


def test_no_page_is_wider_than_its_screen(tmp_path):
    file = tmp_path / "screens.html"
    file.write_text(on_screens((sheet.page for sheet in sheets("mm")), (PHONE_PX, DESK_PX)), "utf-8")
    shown = chromium("--dump-dom", "--virtual-time-budget=5000", file.as_uri())
    measured = json.loads(unescape(re.findall("<pre>(.*?)</pre>", shown, re.DOTALL)[-1]))
    assert len(measured) == 2 * len(sheets("mm"))
    for room_px, wide_px, high_px, too_wide in measured:
        assert high_px > 1000
        assert wide_px <= room_px
        assert too_wide == []
