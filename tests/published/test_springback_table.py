"""Springback by wire and index: the winding model's table, each row from the one at index 12.

Derived for this project, not measured. The strengths behind it are not printed, so the flow strain that a wire shows
at index 12 is read off there, and gives the other rows. Stainless and bronze have one flow stress for every index;
that of music wire goes with the tenth root of the index on the mandrel.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sourcing.winding.springback import flow_strain_shown, released_index

from .checks import Check, Source, carried, check
from .worked import solved

READ = "derived for this project, not measured"
INDEX_READ_OFF = 12.0
INDICES = (5.0, 8.0, 16.0, 20.0)
THREE_FIGURES = "the flow strain is read off the row at index 12, which has three decimals"

# Material, wire in mm: final mean diameter over that on the mandrel at index 12, then at INDICES; then mandrel over
# final inside diameter at INDICES.
TABLE = {
    ("music wire", 0.5): ("1.254", "1.099 1.164 1.344 1.435", "0.888 0.839 0.727 0.681"),
    ("music wire", 1.0): ("1.229", "1.089 1.148 1.311 1.394", "0.898 0.852 0.747 0.703"),
    ("music wire", 2.0): ("1.204", "1.079 1.132 1.278 1.352", "0.908 0.867 0.768 0.726"),
    ("302", 0.5): ("1.226", "1.095 1.151 1.300 1.374", "0.892 0.850 0.754 0.713"),
    ("302", 1.0): ("1.205", "1.086 1.137 1.272 1.339", "0.901 0.863 0.772 0.734"),
    ("302", 2.0): ("1.185", "1.077 1.124 1.246 1.307", "0.910 0.874 0.789 0.753"),
    ("phosphor bronze", 0.5): ("1.184", "1.077 1.123 1.245 1.306", "0.911 0.875 0.790 0.754"),
    ("phosphor bronze", 1.0): ("1.168", "1.070 1.113 1.224 1.279", "0.918 0.884 0.805 0.770"),
    ("phosphor bronze", 2.0): ("1.165", "1.069 1.110 1.220 1.274", "0.919 0.886 0.808 0.774"),
}


def wound_index(material: str, ratio_read_off: float, final_index: float) -> float:
    """The index on the mandrel from which a wire springs back to this one."""
    wound = INDEX_READ_OFF / ratio_read_off
    strain = flow_strain_shown(wound, INDEX_READ_OFF)
    power = 0.1 if material == "music wire" else 0.0
    return solved(lambda index: released_index(index, strain * (index / wound) ** power), final_index, 2.0, final_index)


def checks_of(material: str, wire_mm: float, read_off: str, ratios: str, mandrels: str) -> list[Check]:
    source = Source("Springback of round wire, bent elastic and plastic", f"table: {material}, {wire_mm:g} mm", READ)

    def row(figure: str, printed: str, index: float, of_wound: Callable[[float], float]) -> Check:
        return check(
            f"{figure} at index {index:g}",
            carried(printed, 0.1, THREE_FIGURES),
            source,
            lambda: of_wound(wound_index(material, float(read_off), index)),
        )

    found = []
    for index, ratio, mandrel in zip(INDICES, ratios.split(), mandrels.split(), strict=True):
        found.append(row("D_f/D_m", ratio, index, lambda wound, index=index: index / wound))
        found.append(row("mandrel/inside", mandrel, index, lambda wound, index=index: (wound - 1) / (index - 1)))
    return found


CHECKS = [check for (material, wire_mm), printed in TABLE.items() for check in checks_of(material, wire_mm, *printed)]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_row_follows_from_the_one_at_index_12(check: Check) -> None:
    check.must_agree()
