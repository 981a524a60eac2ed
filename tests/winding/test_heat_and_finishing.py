"""Heat with the oven owned, ends, presetting, rust and what not to do, as the sheets of all kinds say it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sourcing.materials.model import Group
from sourcing.springs.model import ConicalSpring, Ends, Hooks
from sourcing.winding.finishing import holds_beryllium, never
from sourcing.winding.heat import stress_relief
from sourcing.winding.model import Mandrel, WindingPlan
from sourcing.winding.plan import plan_winding
from sourcing.winding.presetting import PRESS_INSTEAD, longer_band_mm, longer_mm, lost_share
from sourcing.winding.steps import PressedNumbers

from .cases import BENCH, material, need, plan, planned, pocket, point, spool
from .test_conical import cone_plan

NO_OVEN = replace(BENCH, oven_c=None)
ROD = Mandrel("rod", 6.0)


def steps(made: WindingPlan) -> str:
    return "\n".join(made.steps)


def heat(name: str, oven_c: float | None, units: str = "mm") -> str:
    return stress_relief(material(name), replace(BENCH, oven_c=oven_c, units=units), PRESS_INSTEAD).said


def extension_plan(oven_c: float | None = 250.0) -> WindingPlan:
    working = (point(48, 4.2), point(70, 17.0))
    wanted = need(kind="extension", hooks=Hooks.FULL_LOOP, pocket=pocket(11, None), working=working)
    return planned(plan_winding(wanted, spool(0.8), replace(BENCH, oven_c=oven_c)))


# Heat


def test_a_kitchen_oven_is_enough_for_music_wire_and_its_dial_is_not_believed() -> None:
    said = heat("music-wire", 250.0)
    assert said.startswith("225 °C for 30 minutes (range 200 °C to 250 °C)")
    assert "thermometer" in said
    assert "oven dials err by 20 °C" in said
    assert "-2.0 to -0.5 % (both common practice, no source)" in said


def test_a_difference_of_temperature_is_not_shown_as_a_temperature_in_fahrenheit() -> None:
    assert "oven dials err by 36 °F" in heat("music-wire", 250.0, "inch")


def test_stainless_needs_more_than_an_oven_of_230_degrees_and_by_how_much() -> None:
    said = heat("stainless-1.4310", 230.0)
    assert "the oven ends at 230 °C, 10 °C short" in said
    assert PRESS_INSTEAD in said


def test_an_oven_in_the_lower_half_of_the_range_leaves_a_part_of_the_stress() -> None:
    assert "part of the stress stays" in heat("stainless-1.4310", 250.0)
    assert "part of the stress stays" not in heat("music-wire", 250.0)


# Without an oven


def test_without_an_oven_a_compression_spring_is_pressed_three_to_five_times_and_keeps_half_its_strength() -> None:
    """EN 13906-1: 0.50 of Rm; 2310 MPa for music wire of 0.8 mm, so 1155 MPa."""
    said = steps(plan(bench=NO_OVEN))
    assert "Press it solid three to five times" in said
    assert "keeps 0.50 of its least strength, 1155 MPa" in said
    assert "a tenth of the cycles" in said


def test_without_an_oven_an_extension_spring_keeps_its_tension_and_is_pulled_once_to_its_greatest_length() -> None:
    said = steps(extension_plan(oven_c=None))
    assert "keeps all of its initial tension" in said
    assert "greatest length of 70.0 mm" in said
    assert "three times" in steps(extension_plan())


def test_a_cone_without_an_oven_is_told_what_it_keeps_too() -> None:
    from .test_conical import cone_need

    made = planned(plan_winding(cone_need(), spool(0.9), NO_OVEN))
    assert isinstance(made.wanted, ConicalSpring)
    assert "of its least strength" in steps(made)


# Presetting


@pytest.mark.parametrize(("share", "lost"), [(0.3, 0.0), (0.449, 0.0), (0.45, 0.02), (0.5, 0.0633), (0.6, 0.15)])
def test_the_first_pressing_takes_2_to_15_per_cent_between_45_and_60_hundredths_of_the_strength(
    share: float, lost: float
) -> None:
    """Common practice, no source."""
    assert lost_share(share) == pytest.approx(lost, abs=5e-5)


def test_a_spring_is_wound_so_much_longer_that_it_ends_at_its_length() -> None:
    """30 mm wanted, a tenth lost: wound 33.33 mm; half as much and half as much again lie to either side."""
    more = longer_mm(30.0, 0.1)
    assert (30.0 + more) * 0.9 == pytest.approx(30.0)
    band = longer_band_mm(30.0, 0.1)
    assert band.low == pytest.approx(longer_mm(30.0, 0.05))
    assert band.high == pytest.approx(longer_mm(30.0, 0.15))


def test_the_sheet_says_how_much_longer_to_wind_only_where_the_wire_is_stressed_so_far() -> None:
    calm = plan(spool(1.0))
    assert "Wind it longer" not in steps(calm)
    hard = plan(spool(0.8), working=(point(24, 9), point(14, 22)))
    assert "Wind it longer" in steps(hard)


@pytest.mark.parametrize("share", [0.30, 0.44, 0.46, 0.55, 0.70])
def test_without_an_oven_the_sheet_says_how_much_longer_to_wind_or_why_no_longer(share: float) -> None:
    numbers = plan(bench=NO_OVEN).numbers
    assert isinstance(numbers, PressedNumbers)
    told = " ".join(replace(numbers, stress_at_solid_share=share).steps(need(), NO_OVEN))
    assert (f"It was wound no longer for that: at solid the wire bears {share:.2f}" in told) == (share < 0.45)
    assert ("Wind it longer" in told or "Wind one to find out" in told) == (share > 0.45)


# Ends


def test_how_much_is_ground_off_is_said_and_that_the_need_did_not_ask_for_it() -> None:
    """A quarter of 0.8 mm is left, 0.60 mm goes."""
    said = steps(plan())
    assert "(0.20 mm) thick, so 0.60 mm off it" in said
    assert "closed and ground is assumed" in said
    assert "ground is assumed" not in steps(plan(ends=Ends.CLOSED_GROUND))


def test_wire_thinner_than_half_a_millimetre_is_left_unground_with_the_reason() -> None:
    thin = need(pocket=pocket(6, 2), working=(point(24, 0.5), point(14, 1.2)))
    said = steps(planned(plan_winding(thin, spool(0.4), BENCH)))
    assert "Grind" not in said
    assert "wire thinner than 0.50 mm is not ground (DIN 2095)" in said


# Rust, and what not to do


def test_wire_that_rusts_is_oiled_and_stainless_and_bronze_are_not() -> None:
    assert "Bare music-wire rusts" in steps(plan())
    assert "rusts" not in steps(plan(spool(0.9, name="stainless-1.4310")))


@pytest.mark.parametrize("name", ["music-wire", "hard-drawn", "oil-tempered", "stainless-1.4310", "phosphor-bronze"])
def test_no_wire_is_heated_in_a_flame_and_only_steel_that_rusts_is_kept_from_plating(name: str) -> None:
    told = never(material(name), ROD, True, BENCH)
    assert told[0].startswith("No flame")
    plated = any("plating" in each for each in told)
    assert plated == (material(name).group in (Group.DRAWN, Group.TEMPERED))


def test_beryllium_copper_is_never_ground() -> None:
    told = never(material("beryllium-copper"), ROD, True, BENCH)
    assert holds_beryllium(material("beryllium-copper"))
    assert any("No grinding" in each for each in told)


def test_nobody_without_a_printer_is_told_about_printed_mandrels() -> None:
    assert not any("printed" in each for each in never(material("music-wire"), ROD, True, BENCH))
    printer = replace(BENCH, tools=("vice", "printer"))
    assert any("printed" in each for each in never(material("music-wire"), ROD, True, printer))


def test_what_not_to_do_stands_on_the_sheet_of_every_kind() -> None:
    for made in (plan(), cone_plan(), extension_plan()):
        assert made.never


@pytest.mark.parametrize("oven_c", [None, 180.0, 250.0, 320.0])
@pytest.mark.parametrize("name", ["music-wire", "stainless-1.4310", "phosphor-bronze", "unknown-steel"])
def test_no_sentence_of_any_bench_tells_a_figure_that_is_none(name: str, oven_c: float | None) -> None:
    result = plan_winding(need(), spool(0.9, name=name), replace(BENCH, oven_c=oven_c))
    for sentence in (*getattr(result, "steps", ()), *getattr(result, "never", ())):
        assert "None" not in sentence
        assert "nan" not in sentence.split()
