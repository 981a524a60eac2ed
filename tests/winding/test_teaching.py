"""What the last trial coil of a spool taught, in the words of a winder."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.stock.model import Bench, Trial
from sourcing.winding.teaching import said, taught

from .cases import spool


@pytest.mark.parametrize(("share_left", "worth_it"), [(0.5, True), (0.79, True), (0.81, False), (1.0, False)])
def test_another_trial_is_worth_its_wire_where_it_takes_a_fifth_off_the_band(share_left: float, worth_it: bool) -> None:
    once = taught(spool(0.8, Trial(6.0, 8.9)), Bench())
    assert once is not None
    again = replace(once, another_band=share_left * once.spoken_of.band)
    assert again.another_is_worth_it is worth_it
    assert any(each.startswith("Worth its wire") for each in said(again)) is worth_it
