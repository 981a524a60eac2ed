"""Laws that the tables of materials obey, line for line."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from math import exp

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.materials import find, names
from sourcing.materials.model import Material
from sourcing.materials.strength import nominal_wire_diameters_mm, tensile_strength_mpa
from sourcing.tables import rows

SURROUNDINGS = {"indoor-dry", "damp", "wet", "salt", "food"}


def material(name: str) -> Material:
    found = find(name)
    assert found is not None
    return found


def strengths(grade: str) -> dict[float, tuple[int, int]]:
    return {
        float(row["wire_diameter_mm"]): (int(row["tensile_min_mpa"]), int(row["tensile_max_mpa"]))
        for row in rows("wire_strength")
        if row["grade"] == grade
    }


class TestNames:
    @pytest.mark.parametrize("name", names())
    def test_every_name_is_found_in_any_case_and_with_doubled_spaces(self, name: str) -> None:
        assert material(name).name == name
        assert find(f"  {name.upper().replace(' ', '  ')} ") == material(name)

    @pytest.mark.parametrize(
        "name", ["music wire", "EN10270-1 SH", "EN 10270-1", "SH", "stainless", "A228", "unknown", "CuSn6", ""]
    )
    def test_nothing_else_is_guessed(self, name: str) -> None:
        assert find(name) is None

    def test_music_wire_is_the_standards_grade_sh(self) -> None:
        """EN 10270-1 SH unless a grade is named."""
        word, grade = material("music-wire"), material("EN 10270-1 SH")
        assert (word.standard, word.grade) == (grade.standard, grade.grade) == ("EN 10270-1", "SH")

    @pytest.mark.parametrize(
        ("word", "standards_name"),
        [
            ("hard-drawn", "ASTM A227 class I"),
            ("ASTM A227", "ASTM A227 class I"),
            ("oil-tempered", "ASTM A229 class I"),
            ("ASTM A229", "ASTM A229 class I"),
            ("stainless-1.4568", "EN 10270-3 1.4568 as drawn"),
            ("EN 10270-3 1.4568", "EN 10270-3 1.4568 as drawn"),
            ("phosphor-bronze", "EN 12166 CuSn6"),
            ("brass", "EN 12166 CuZn37"),
            ("beryllium-copper", "EN 12166 CuBe2"),
            ("ASTM A313-302", "ASTM A313 302"),
            ("ASTM B159 C51000", "ASTM B159"),
        ],
    )
    def test_a_word_is_the_material_of_a_standard(self, word: str, standards_name: str) -> None:
        assert replace(material(word), name=standards_name) == material(standards_name)

    @pytest.mark.parametrize("name", names())
    def test_every_material_is_whole_and_in_order(self, name: str) -> None:
        wire = material(name)
        assert set(wire.corrosion) == SURROUNDINGS
        assert set(wire.corrosion.values()) <= {0, 1, 2, 3}
        assert wire.shear_modulus_mpa < wire.elastic_modulus_mpa / 2.0
        assert wire.service_low_c is not None
        assert wire.service_high_c is not None
        assert wire.stress_relief_low_c is not None
        assert wire.stress_relief_high_c is not None
        assert wire.service_low_c < wire.service_high_c
        assert wire.service_low_c < wire.stress_relief_low_c <= wire.stress_relief_high_c
        assert wire.stress_relief_minutes
        assert wire.heat_change_low < wire.heat_change_high


GRADES = [name for name in names() if name != "unknown-steel"]
"""Unknown steel is of one grade up to 10 mm and of a stronger one above, where the weaker is not made."""
INTERPOLATED = ("hard-drawn", "oil-tempered", "ASTM A227", "ASTM A228", "ASTM A229", "ASTM A231", "ASTM A401")
BY_STEPS = [name for name in GRADES if not name.startswith(INTERPOLATED)]


class TestStrength:
    @given(st.sampled_from(GRADES), st.floats(0.001, 30.0), st.floats(1.0, 5.0))
    def test_thicker_wire_is_never_stronger(self, name: str, wire_mm: float, factor: float) -> None:
        thin, thick = (tensile_strength_mpa(material(name), mm) for mm in (wire_mm, factor * wire_mm))
        assert thin is None or thick is None or thick <= thin

    @given(st.sampled_from(BY_STEPS), st.floats(0.001, 30.0))
    def test_the_next_larger_listed_diameter_governs(self, name: str, wire_mm: float) -> None:
        wire = material(name)
        larger = [listed for listed in nominal_wire_diameters_mm(wire) if listed >= wire_mm]
        strength = tensile_strength_mpa(wire, wire_mm)
        assert strength is None or strength == tensile_strength_mpa(wire, larger[0])

    @given(st.sampled_from(INTERPOLATED), st.floats(0.1, 16.0))
    def test_an_interpolated_strength_lies_between_those_of_its_neighbours(self, name: str, wire_mm: float) -> None:
        wire = material(name)
        strength = tensile_strength_mpa(wire, wire_mm)
        listed = nominal_wire_diameters_mm(wire)
        assert (strength is not None) == (listed[0] <= wire_mm <= listed[-1])
        if strength is None:
            return
        thinner = max(mm for mm in listed if mm <= wire_mm)
        thicker = min(mm for mm in listed if mm >= wire_mm)
        least, most = (tensile_strength_mpa(wire, mm) for mm in (thicker, thinner))
        assert least is not None
        assert most is not None
        assert least - 1e-6 <= strength <= most + 1e-6

    @given(st.floats(0.01, 30.0))
    def test_steel_of_an_unknown_grade_is_as_strong_as_the_weakest_that_comes_so_thick(self, wire_mm: float) -> None:
        slight, middle = (tensile_strength_mpa(material(f"EN 10270-1 {grade}"), wire_mm) for grade in ("SL", "SM"))
        assert tensile_strength_mpa(material("unknown-steel"), wire_mm) == (middle if slight is None else slight)

    def test_the_springback_of_an_unknown_grade_spans_that_of_every_grade(self) -> None:
        """Two standard deviations reach from the weakest grade to the strongest, up to 6 mm, which no hand winds."""
        unknown, known = material("unknown-steel"), material("music-wire")
        low, high = (unknown.flow_ratio * exp(sign * 2 * unknown.flow_ratio_sd) for sign in (-1, 1))
        for wire_mm in (mm for mm in nominal_wire_diameters_mm(known) if mm <= 6.0):
            weakest = tensile_strength_mpa(unknown, wire_mm)
            strongest = tensile_strength_mpa(known, wire_mm)
            if weakest is not None and strongest is not None:
                assert low < known.flow_ratio * exp(-2 * known.flow_ratio_sd), wire_mm
                assert high > known.flow_ratio * exp(2 * known.flow_ratio_sd) * strongest / weakest, wire_mm

    @pytest.mark.parametrize("name", ["beryllium-copper", "EN 12166 CuBe2"])
    def test_beryllium_copper_has_no_listed_strength_and_says_why(self, name: str) -> None:
        wire = material(name)
        assert tensile_strength_mpa(wire, 1.0) is None
        assert nominal_wire_diameters_mm(wire) == ()
        assert wire.remark is not None
        assert "not listed" in wire.remark

    @pytest.mark.parametrize("name", names())
    def test_a_listed_diameter_with_other_last_digits_is_that_diameter(self, name: str) -> None:
        wire = material(name)
        for listed in nominal_wire_diameters_mm(wire):
            assert tensile_strength_mpa(wire, listed * (1 + 1e-9)) == tensile_strength_mpa(wire, listed)
            assert tensile_strength_mpa(wire, listed * (1 - 1e-9)) == tensile_strength_mpa(wire, listed)

    @pytest.mark.parametrize(
        ("name", "wire_mm"),
        [("EN 10270-1 SL", 0.9), ("music-wire", 0.29), ("music-wire", 13.1), ("stainless-1.4310", 11)],
    )
    def test_outside_the_listed_diameters_nothing_is_known(self, name: str, wire_mm: float) -> None:
        assert tensile_strength_mpa(material(name), wire_mm) is None

    def test_the_first_band_of_stainless_wire_reaches_down_to_nothing(self) -> None:
        """EN 10270-3: up to and including 0.20 mm."""
        wire = material("stainless-1.4310")
        assert tensile_strength_mpa(wire, 0.05) == tensile_strength_mpa(wire, 0.2)


def shared(first: str, second: str) -> Iterator[tuple[float, tuple[int, int], tuple[int, int]]]:
    ours, theirs = strengths(first), strengths(second)
    common = sorted(ours.keys() & theirs.keys())
    assert common
    return ((wire, ours[wire], theirs[wire]) for wire in common)


class TestTheGradesOfEn10270Part1:
    """Its step rule: each grade begins 10 MPa above the end of the one below, SL, SM, SH; DM is as strong as SM."""

    @pytest.mark.parametrize("grade", ["SH", "DH"])
    def test_the_strongest_grades_begin_above_the_middle_ones(self, grade: str) -> None:
        for wire, (least, _), (_, greatest) in shared(grade, "SM"):
            assert least == greatest + 10, wire

    def test_the_weakest_grade_ends_below_the_middle_ones(self) -> None:
        for wire, (_, greatest), (least, _) in shared("SL", "SM"):
            assert greatest == least - 10, wire

    def test_dm_and_sm_are_equally_strong(self) -> None:
        for wire, dm, sm in shared("DM", "SM"):
            assert dm == sm, wire


def test_the_greatest_strength_of_stainless_wire_is_the_least_and_15_percent() -> None:
    """EN 10270-3, note to the table of tensile strength."""
    for grade in ("1.4310 NS", "1.4310 HS"):
        for least, greatest in strengths(grade).values():
            assert greatest == pytest.approx(1.15 * least, abs=1.0)


@pytest.mark.parametrize(
    "table", ["wire_strength", "materials", "coil_diameter_tolerance", "permissible", "fatigue", "disagreements"]
)
def test_every_row_names_its_source_and_how_it_was_read(table: str) -> None:
    for row in rows(table):
        assert None not in row, "a comma that is not in quotes"
        assert row["source"].strip()
        assert row["via"] in {"read", "memory"}
