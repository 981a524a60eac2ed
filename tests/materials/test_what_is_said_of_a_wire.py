"""What is not known of a wire is said wherever its figures are used, and never taken for good."""

from dataclasses import replace

import pytest

from sourcing.fit.judge import judge
from sourcing.fit.model import Spread
from sourcing.materials import find
from sourcing.materials.model import Material
from sourcing.materials.strength import tensile_strength_mpa
from sourcing.need.model import Need
from sourcing.springs.describe import describe
from sourcing.stock.model import Bench, Catalogue, Spool, StockSpring
from sourcing.verdict.options import judge_stock
from sourcing.verdict.verdict import cautions_for, decide
from sourcing.winding.heat import oven_reaches, stress_relief
from sourcing.winding.presetting import PRESS_INSTEAD
from sourcing.winding.trials import Knowledge, untried
from tests.fit.cases import make_need, make_spring
from tests.winding.cases import need, plan, planned, spool


def material(name: str) -> Material:
    found = find(name)
    assert found is not None
    return found


UNTOLD = replace(
    material("brass"),
    name="Telegraph bronze",
    standard="",
    grade="telegraph bronze",
    service_low_c=None,
    service_high_c=None,
    corrosion={"damp": 2},
    stress_relief_low_c=None,
    stress_relief_high_c=None,
    stress_relief_minutes=None,
    remark=None,
    own_strengths=((2.0, 1600.0),),
)
"""A keeper's own material of which little is known."""


class TestWhatAKeeperDidNotSay:
    @pytest.mark.parametrize(
        ("changes", "words"),
        [
            ({"temperature_c": 80.0}, "80 °C; what temperatures Telegraph bronze serves at is not known"),
            ({"surroundings": ("wet",)}, "Telegraph bronze in wet surroundings: how it stands them is not known"),
        ],
    )
    def test_it_makes_a_spring_near_and_is_no_refusal(self, changes: dict[str, object], words: str) -> None:
        spring = replace(make_spring(), material=UNTOLD)
        fit = judge(spring, make_need(**changes), Bench(), Spread())
        assert [(each.why, each.hard) for each in fit.broken] == [(words, False)]
        assert fit.fits == "near"

    def test_what_is_rated_is_judged(self) -> None:
        assert (
            judge(replace(make_spring(), material=UNTOLD), make_need(surroundings=("damp",)), Bench(), Spread()).fits
            == "yes"
        )

    def test_wire_whose_stress_relief_is_not_known_is_not_heated_and_it_is_said(self) -> None:
        assert not oven_reaches(UNTOLD, Bench(oven_c=1000.0))
        heat = stress_relief(UNTOLD, Bench(oven_c=1000.0), PRESS_INSTEAD)
        assert heat.temperature_c is None
        assert heat.said.startswith("At what heat Telegraph bronze loses the stress of winding is not known. Press")

    def test_it_can_be_wound(self) -> None:
        made = planned(plan(Spool("W", UNTOLD, 0.9)))
        assert made.material == "Telegraph bronze"
        assert made.after_heat is None


class TestSteelOfAnUnknownGrade:
    def test_its_spring_is_described_with_the_weakest_strength_and_the_words(self) -> None:
        described = describe(make_spring("unknown-steel"))
        assert described.tensile_strength_mpa == 2010
        assert any(note.startswith("unknown-steel: Nobody knows the grade") for note in described.notes)

    def test_its_spring_in_the_drawer_is_judged_as_of_the_weakest_grade_by_name(self) -> None:
        stock = StockSpring("B", make_spring("unknown-steel"), on_hand=1)
        (doubt,) = (each for each in judge_stock(stock, make_need(), Bench()).limits if each.limit == "unknown grade")
        assert doubt.holds
        assert "were it EN 10270-1 SM, the weakest" in doubt.why

    @pytest.mark.parametrize("wire_mm", [0.9, 1.0])
    def test_a_spool_of_it_springs_back_between_the_weakest_and_the_strongest_grade(self, wire_mm: float) -> None:
        """Its mandrel for one diameter lies between those of SL (SM below 1 mm) and SH, and its band holds both."""

        def known(name: str) -> Knowledge:
            strength = tensile_strength_mpa(material(name), wire_mm)
            assert strength is not None
            return untried(material(name), wire_mm, strength)

        unknown = known("unknown-steel")
        weak = known("EN 10270-1 SM" if wire_mm < 1.0 else "EN 10270-1 SL")
        strong = known("EN 10270-1 SH")
        mandrel_mm = unknown.mandrel_mm(10.0)
        least, most = (each.finished_mean_mm(mandrel_mm) for each in (weak, strong))
        doubt_mm = 2 * unknown.finished_mean_sd_mm(mandrel_mm)
        assert 10.0 - doubt_mm < least < most < 10.0 + doubt_mm

    def test_the_winding_sheet_says_so_and_asks_for_a_trial_coil(self) -> None:
        made = planned(plan(spool(0.9, name="unknown-steel")))
        assert made.notes[0].startswith("unknown-steel: Nobody knows the grade of this steel")
        assert "known to 15 %" in made.notes[1]
        assert "nearly always worth it" in made.notes[1]


class TestBerylliumCopper:
    """It has its caution whether the need wishes it, the spring in the drawer is of it, or the wire is."""

    CAUTION = "Beryllium copper: no grinding"

    def told(self, wanted: Need, stock: StockSpring | None = None) -> bool:
        return any(each.startswith(self.CAUTION) for each in cautions_for(wanted, None, stock))

    @pytest.mark.parametrize("name", ["beryllium-copper", "EN 12166 CuBe2"])
    def test_by_the_wish_of_the_need(self, name: str) -> None:
        assert self.told(make_need(material=material(name)))

    def test_by_the_spring_that_is_taken(self) -> None:
        spring = replace(make_spring("beryllium-copper"), tensile_strength_mpa=1200.0)
        stock = StockSpring("B", spring, on_hand=1, seller=None)
        wanted = make_need(working=(), free_length_mm=None)
        assert not self.told(wanted)
        assert self.told(wanted, stock)
        verdict = decide(wanted, Catalogue((stock,)))
        assert verdict.option == "drawer"
        assert any(each.startswith(self.CAUTION) for each in verdict.cautions)

    def test_by_what_is_noted_of_a_material_of_ones_own(self) -> None:
        assert not self.told(make_need(material=UNTOLD))
        assert self.told(make_need(material=replace(UNTOLD, remark="C17200 rod, drawn down")))

    def test_by_the_wire_that_is_wound(self) -> None:
        wire = replace(UNTOLD, remark="beryllium copper, hardened")
        made = planned(plan(Spool("W", wire, 0.9)))
        assert any(each.startswith(self.CAUTION) for each in cautions_for(need(), made))

    def test_its_strength_is_not_listed_and_the_sheet_says_what_to_do(self) -> None:
        notes = describe(make_spring("beryllium-copper")).notes
        assert any("state the spring's tensile_strength" in note for note in notes)


def test_a_material_of_which_all_is_known_has_no_remark() -> None:
    for name in ("music-wire", "hard-drawn", "oil-tempered", "phosphor-bronze", "brass", "stainless-1.4310"):
        assert material(name).remark is None
