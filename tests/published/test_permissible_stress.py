"""What share of its strength a wire may be stressed to, steadily and time after time, as books and makers print it.

Rows in permissible_stress.csv and fatigue_stress.csv, the source beside each. In steady duty the sources disagree, and
the program takes one of them: a row that prints another says so, and ours is held to lie within the spread it tells.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from pathlib import Path

import pytest

from sourcing import materials
from sourcing.materials.model import Group, Material
from sourcing.springs.fatigue import MOST_CYCLES, cycles_borne
from sourcing.springs.strength import Place, Presetting, permissible
from sourcing.tables import rows

from .checks import Check, Source, check
from .not_yet import OTHERWISE
from .worked import solved

Row = Mapping[str, str]

WIRE = {
    "drawn": "EN 10270-1 SH",
    "tempered": "EN 10270-2 FDC",
    "stainless": "EN 10270-3 1.4310 NS",
    "copper": "EN 12166 CuSn6",
}
"""A wire of each group."""

STRENGTH_MPA = 2000.0


def read_rows(name: str) -> list[Row]:
    with (Path(__file__).parent / f"{name}.csv").open(encoding="utf-8", newline="") as lines:
        return list(csv.DictReader(line for line in lines if not line.startswith("#")))


def wire(name: str) -> Material:
    found = materials.find(name)
    assert found is not None, name
    return found


def allowed_percent(row: Row) -> float:
    """Ours for the row's groups of wire, which must be one and the same."""
    place, presetting = Place(row["place"]), Presetting(row["set"])
    (share,) = {permissible(place, wire(WIRE[group]), presetting).share for group in row["group"].split()}
    return 100 * share


def borne_percent(row: Row) -> float:
    """The stress that comes and goes so many times, as our lines have it.

    At their end, where they go down steeply to nothing known, it is sought from above.
    """
    material, place, cycles = wire(row["wire"]), Place(row["place"]), float(row["cycles"])

    def over(share: float) -> float:
        borne = cycles_borne(place, material, STRENGTH_MPA, 0.0, share * STRENGTH_MPA)
        return min(borne, MOST_CYCLES * 10) / cycles - 1.0 + (1e-9 if borne < cycles else -1e-9)

    if cycles < MOST_CYCLES:
        return 100 * solved(over, 0.0, 0.28, 0.55)
    low, high = 0.2, 0.6
    while high - low > 1e-9:
        middle = (low + high) / 2
        low, high = (middle, high) if over(middle) >= -1e-6 else (low, middle)
    return 100 * low


def checked(row: Row, figure: str) -> Check:
    source = Source(row["source"], row["where"], row["read"])
    printed = row["printed_percent"]
    return check(figure, printed, source, lambda: allowed_percent(row) if "set" in row else borne_percent(row))


STEADY, CYCLED = read_rows("permissible_stress"), read_rows("fatigue_stress")
CHECKS = [
    *(checked(row, "permissible_stress_percent") for row in STEADY if not row["otherwise"]),
    *(checked(row, "stress_borne_percent") for row in CYCLED),
]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_share_of_the_strength_is_the_printed_one(check: Check) -> None:
    check.must_agree()


@pytest.mark.parametrize("row", [row for row in STEADY if row["otherwise"]], ids=lambda row: row["where"])
def test_a_share_that_is_not_ours_lies_within_the_spread_that_the_program_tells(row: Row) -> None:
    assert row["otherwise"] in OTHERWISE
    for ours in rows("permissible"):
        if (ours["place"], ours["set"]) == (row["place"], row["set"]) and ours["group"] in row["group"].split():
            assert float(ours["low"]) <= float(row["printed_percent"]) / 100 <= float(ours["high"])
            assert ours["reason"]


def test_every_group_of_wire_has_its_share_at_every_place() -> None:
    for place in Place:
        for group in Group:
            assert 0.3 <= permissible(place, wire(WIRE[group])).share <= 0.75
