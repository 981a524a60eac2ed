"""Wire whose material does not stand the place is refused for that, before any diameter is searched."""

from __future__ import annotations

import pytest

from sourcing.need.model import TurnedPoint
from sourcing.springs.model import Hand
from sourcing.winding.best import best_plan
from sourcing.winding.plan import plan_winding
from tests.winding.cases import BENCH, need, point, refused, spool, wanted

ANY_KIND = {"working": (point(14, 22),), "turned": (TurnedPoint(wanted(60), wanted(257, 38)),), "hand": Hand.RIGHT}


@pytest.mark.parametrize(
    ("changes", "rule", "why"),
    [
        ({"temperature_c": 400.0}, "too-hot-for-wire", "400 °C; music-wire serves from -30 °C to 100 °C"),
        ({"temperature_c": -60.0}, "too-cold-for-wire", "-60 °C; music-wire serves from -30 °C to 100 °C"),
        ({"surroundings": ("salt",)}, "wrong-surroundings-for-wire", "music-wire in salt surroundings: unsuitable"),
    ],
)
@pytest.mark.parametrize("kind", ["compression", "conical", "extension", "torsion"])
def test_the_place_refuses_wire_of_any_kind_of_spring(
    kind: str, changes: dict[str, object], rule: str, why: str
) -> None:
    refusal = refused(plan_winding(need(kind=kind, **ANY_KIND, **changes), spool(0.8), BENCH))
    assert (refusal.rule, refusal.why) == (rule, why)


def test_a_need_that_no_wire_could_serve_is_refused_for_that_in_a_hot_place_too() -> None:
    hot = need(kind="torsion", temperature_c=150.0)
    spools = [spool(0.8), spool(0.9, name="stainless-1.4310")]
    refusal = best_plan(hot, spools, BENCH).refusal
    assert refusal is not None
    assert refusal.rule == "hand-not-known"
