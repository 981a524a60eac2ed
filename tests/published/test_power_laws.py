"""Three books' power laws of tensile strength, A/d^m, against the standards' tables that the program uses instead.

How far each law lies above or below the least strength of its standard, over the diameters that both cover, was worked
out by another hand from the same tables: it proves that ours are the tables that it means, and tells what a strength
taken from the book's law does to its examples. Constants in kpsi and inches.
"""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from sourcing import materials
from sourcing.materials.strength import nominal_wire_diameters_mm, tensile_strength_mpa

from .checks import INCH_MM, KPSI_MPA, Check, Source, carried, check

SHIGLEY = "Budynas and Nisbett, Shigley's Mechanical Engineering Design, table 10-4, 7th ed. and later"
FIFTH = "Shigley and Mischke, Mechanical Engineering Design, 5th ed.; an engineering examination handbook"
NORTON = "Norton, Machine Design, table 14-4"
EDGE = 1e-6


@dataclass(frozen=True)
class Law:
    """A/d^m between two diameters in inches, and how many times the table it is at the least and at the most."""

    book: str
    wire: str
    from_in: float
    to_in: float
    constant_kpsi: float
    power: float
    least: str
    most: str

    def over_table(self) -> list[float]:
        """How many times our least strength it is, at each diameter that both cover."""
        material = materials.find(self.wire)
        assert material is not None
        found = []
        for diameter_mm in nominal_wire_diameters_mm(material):
            inches, ours = diameter_mm / INCH_MM, tensile_strength_mpa(material, diameter_mm)
            if ours is not None and self.from_in - EDGE <= inches <= self.to_in + EDGE:
                found.append(self.constant_kpsi / inches**self.power * KPSI_MPA / ours)
        return found


ALL = 0.0, 1.0
WHOLE_MPA = "the program's table is rounded to whole MPa"

LAWS = [
    Law(SHIGLEY, "ASTM A228", 0.004, 0.256, 201, 0.145, "1.011", "1.068"),
    Law(SHIGLEY, "ASTM A229", 0.020, 0.500, 147, 0.187, "0.980", "1.043"),
    Law(SHIGLEY, "ASTM A227", 0.028, 0.500, 140, 0.190, "0.989", "1.024"),
    Law(SHIGLEY, "ASTM A401", 0.063, 0.375, 202, 0.108, "0.924", "0.945"),
    Law(SHIGLEY, "ASTM A313 302", 0.013, 0.100, 169, 0.146, "0.977", "1.015"),
    Law(SHIGLEY, "ASTM A313 302", 0.100, 0.200, 128, 0.263, "0.996", "1.019"),
    Law(SHIGLEY, "ASTM A313 302", 0.200, 0.400, 90, 0.478, "0.956", "1.016"),
    Law(FIFTH, "ASTM A228", *ALL, 186, 0.163, "0.995", "1.042"),
    Law(FIFTH, "ASTM A229", *ALL, 146, 0.193, "0.969", "1.060"),
    Law(FIFTH, "ASTM A227", *ALL, 137, 0.201, "0.980", "1.063"),
    Law(FIFTH, "ASTM A401", *ALL, 218, 0.091, "0.961", "1.000"),
    Law(NORTON, "ASTM A228", 0.004, 0.250, 184.649, 0.1625, "0.986", "1.032"),
    Law(NORTON, "ASTM A227", 0.028, 0.500, 141.04, 0.1822, "0.982", "1.026"),
    Law(NORTON, "ASTM A229", 0.020, 0.625, 146.78, 0.1833, "0.970", "1.031"),
    Law(NORTON, "ASTM A401", 0.031, 0.500, 220.779, 0.0934, "0.979", "1.015"),
]


def checks_of(law: Law) -> list[Check]:
    source = Source(law.book, f"{law.wire}, {law.constant_kpsi:g}/d^{law.power:g}", "derived from the book's constants")
    return [
        check("least over the table", carried(law.least, 0.05, WHOLE_MPA), source, lambda: min(law.over_table())),
        check("most over the table", carried(law.most, 0.05, WHOLE_MPA), source, lambda: max(law.over_table())),
    ]


CHECKS = [check for law in LAWS for check in checks_of(law)]


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_a_books_power_law_lies_as_far_from_our_table_as_it_should(check: Check) -> None:
    check.must_agree()
