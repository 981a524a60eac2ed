"""Every figure of a wire can be asked for its source, and where sources disagree, for the choice and its reason."""

from dataclasses import replace

import pytest

from sourcing.materials import disagreements, facts, find, names, stress_facts
from sourcing.materials.facts import Fact
from sourcing.materials.model import Group, Magnet, Material
from sourcing.materials.plating import better_plated, cracks_by_hydrogen


def material(name: str) -> Material:
    found = find(name)
    assert found is not None
    return found


def fact(of: tuple[Fact, ...], figure: str) -> Fact:
    return next(each for each in of if each.figure == figure)


@pytest.mark.parametrize("name", names())
def test_the_facts_of_a_material_are_the_figures_that_the_program_uses(name: str) -> None:
    wire, told = material(name), facts(material(name))
    assert float(fact(told, "shear modulus").value) == wire.shear_modulus_mpa
    assert float(fact(told, "elastic modulus").value) == wire.elastic_modulus_mpa
    assert float(fact(told, "service high").value) == wire.service_high_c
    assert fact(told, "group").value == wire.group


def test_every_fact_names_its_source() -> None:
    assert [each for each in facts() if not each.source] == []


@pytest.mark.parametrize("each", disagreements(), ids=lambda each: f"{each.wire} {each.figure}")
def test_where_sources_disagree_the_choice_lies_between_them_and_has_its_reason(each: Fact) -> None:
    assert each.reason
    if each.low is not None and each.high is not None:
        assert each.low < each.high
        if each.unit and each.figure != "fall of the modulus with heat":
            assert each.low <= float(each.value) <= each.high


def test_every_disagreement_of_the_reference_figures_is_told() -> None:
    """Moduli, the fall of the modulus, temperatures, stress relief, densities, power laws and misprints."""
    told = {each.figure for each in disagreements()}
    assert told >= {
        "shear modulus",
        "elastic modulus",
        "modulus fall",
        "service high",
        "stress relief high",
        "density",
        "tensile strength",
        "least strength",
        "greatest strength",
        "greatest temperature",
    }


def test_what_a_wire_bears_is_told_by_place_and_by_cycles_with_its_source() -> None:
    told = stress_facts()
    assert {each.wire for each in told} == {f"{group} wire" for group in (*Group, "any", "valve")}
    assert all(0.0 < float(each.value) < 1.0 and each.source for each in told)
    assert [each for each in told if each.reason and each not in disagreements()] == []


def test_a_keepers_own_material_has_no_facts_of_ours() -> None:
    own = replace(material("brass"), standard="", grade="telegraph bronze")
    assert facts(own) == ()
    assert disagreements(own) == ()


@pytest.mark.parametrize(
    ("name", "group", "magnet"),
    [
        ("music-wire", Group.DRAWN, Magnet.HOLDS),
        ("oil-tempered", Group.TEMPERED, Magnet.HOLDS),
        ("EN 10270-2 FDC", Group.TEMPERED, Magnet.HOLDS),
        ("EN 10270-2 VDSiCr", Group.TEMPERED, Magnet.HOLDS),
        ("EN 10270-3 1.4310 HS", Group.STAINLESS, Magnet.WEAKLY),
        ("EN 10270-3 1.4401", Group.STAINLESS, Magnet.WEAKLY),
        ("stainless-1.4568", Group.STAINLESS, Magnet.HOLDS),
        ("phosphor-bronze", Group.COPPER, Magnet.NOT),
        ("beryllium-copper", Group.COPPER, Magnet.NOT),
    ],
)
def test_a_wire_is_of_a_group_and_a_magnet_holds_it_or_not(name: str, group: Group, magnet: Magnet) -> None:
    assert (material(name).group, material(name).magnet) == (group, magnet)


class TestPlating:
    def test_zinc_helps_carbon_steel_in_the_damp_and_nowhere_else(self) -> None:
        where = ("indoor-dry", "damp", "wet", "salt", "food")
        assert [each for each in where if better_plated(material("music-wire"), each)] == ["damp"]

    @pytest.mark.parametrize("name", ["EN 10270-2 VDSiCr", "stainless-1.4310", "brass"])
    def test_nobody_plates_high_strength_alloy_wire_stainless_or_brass(self, name: str) -> None:
        assert material(name).zinc_plated == {}
        assert not better_plated(material(name), "damp")

    @pytest.mark.parametrize(
        ("name", "cracks"), [("hard-drawn", True), ("ASTM A401", True), ("ASTM A313 302", False), ("brass", False)]
    )
    def test_hard_carbon_and_low_alloy_steel_cracks_by_hydrogen(self, name: str, *, cracks: bool) -> None:
        assert cracks_by_hydrogen(material(name)) == cracks
