"""A catalogue that lists springs of another build is told so, one line a spring, and nothing more is asked of them."""

from __future__ import annotations

from pathlib import Path

from sourcing.stock.reading import read_springs
from tests.files.told import mistakes_of, told, written

SPRINGS = """
springs:
  - {id: push, kind: compression, wire_diameter: 0.9, outside_diameter: 9.6, free_length: 31, total_coils: 9.75,
     ends: closed-ground, material: music-wire}
  - {id: washers, kind: Belleville, outside_diameter: 20, inside_diameter: 10.2, thickness: 1.1}
  - {id: seal, kind: garter spring, wire_diameter: 0.4}
"""


def test_each_is_told_in_one_line_and_its_keys_are_not_read(tmp_path: Path) -> None:
    lines = told(mistakes_of(read_springs, written(tmp_path, SPRINGS)))
    expected = "a compression, conical, extension or torsion spring: this program works out coil springs of round wire"
    assert lines == [
        f"4:25: “Belleville” is a disc spring, a coned washer; expected {expected}",
        f"5:22: “garter spring” is a garter spring, a long coil joined into a ring; expected {expected}",
    ]
