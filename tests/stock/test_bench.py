"""bench.yaml: every key, the defaults of those that are absent, and every mistake with its whole message."""

from pathlib import Path

import pytest

from sourcing.quantities import Money
from sourcing.stock.model import Bench, Clearance, HandWinding, HouseTolerances, Seller, SpringMaker
from sourcing.stock.reading import read_catalogue
from tests.files.told import mistakes_of, told, written


def bench(folder: Path, text: str) -> Bench:
    written(folder, text, "bench.yaml")
    return read_catalogue(folder).bench


def mistakes(folder: Path, text: str) -> list[str]:
    written(folder, text, "bench.yaml")
    return told(mistakes_of(read_catalogue, folder))


def test_all_keys_of_a_bench(tmp_path: Path) -> None:
    found = bench(
        tmp_path,
        """
        currency: CHF
        units: inch
        hour_value: 12
        rods: [6, 3, 1/4 in, 6.0]
        tools: [vice, lathe, vice]
        printer_bed: [200 mm, 20 cm, 180 mm]
        oven: 482 degF
        sellers: {Alder Row stock list: {postage: 3.90 EUR, lead_days: 4}, Kettle Lane: {postage: 2}}
        spring_maker: {name: a spring maker, price: 45 EUR, lead_days: 15}
        tolerances: {force: 10 %, length: 0.5 mm, diameter: 0.2 mm, angle: 4 deg, rate: 12 %}
        clearance: {bore: 0.3 mm, rod: 0}
        hand_winding: {caution: 1.2 mm, stop: 2 mm, stop_moment: 1 N*m, vice_and_crank_moment: 500, crank: 12 cm}
        prefer: {least_chance: 90 %}
        """,
    )
    assert (found.currency, found.units, found.hour_value) == ("CHF", "inch", Money(12, "CHF"))
    assert found.rods_mm == (3, 6, 6.35)
    assert (found.tools, found.printer_bed_mm) == (("vice", "lathe"), (200, 200, 180))
    assert found.oven_c == pytest.approx(250)
    assert found.sellers == {
        "Alder Row stock list": Seller(Money(3.9, "EUR"), 4),
        "Kettle Lane": Seller(Money(2, "CHF")),
    }
    assert found.spring_maker == SpringMaker("a spring maker", Money(45, "EUR"), 15)
    assert found.tolerances == HouseTolerances(0.1, 0.5, 0.2, 4, 0.12)
    assert (found.clearance, found.hand_winding) == (Clearance(0.3, 0), HandWinding(1.2, 2, 1.2, 1000, 1000, 500, 120))
    assert found.least_chance == 0.9
    assert {"currency", "tolerances", "tolerances.force", "prefer.least_chance"} <= found.stated


def test_a_limit_that_is_not_stated_gives_way_to_a_lowered_stop(tmp_path: Path) -> None:
    limits = bench(tmp_path, "hand_winding: {stop: 1 mm, stop_moment: 0.5 N*m}").hand_winding
    assert (limits.caution_mm, limits.vice_and_crank_mm) == (1, 1)
    assert (limits.caution_n_mm, limits.vice_and_crank_n_mm) == (500, 500)


def test_a_limit_of_winding_by_hand_above_the_usual_one_and_an_odd_crank_are_doubted(tmp_path: Path) -> None:
    found = bench(tmp_path, "hand_winding: {stop: 4 mm, stop_moment: 20 N*m, caution: 1 mm, crank: 0.1}")
    assert [finding.found for finding in found.doubts] == [
        "stop from 4.00 mm",
        "stop_moment from 20000 N·mm",
        "a crank of 0.10 mm",
    ]
    assert "2.50 mm or less" in found.doubts[0].expected
    assert not bench(tmp_path, "hand_winding: {stop: 2 mm, stop_moment: 2 N*m, crank: 150 mm}").doubts


@pytest.mark.parametrize("text", ["# nothing but comments\n", "{}\n"])
def test_a_bench_that_says_nothing_is_the_default(tmp_path: Path, text: str) -> None:
    assert bench(tmp_path, text) == Bench()


def test_what_is_absent_within_a_key_has_its_default(tmp_path: Path) -> None:
    found = bench(tmp_path, "tolerances: {length: 2 mm}\nclearance: {rod: 0.5}\n")
    assert found.tolerances == HouseTolerances(length_mm=2)
    assert found.clearance == Clearance(rod_mm=0.5)
    assert found.stated == {"tolerances", "tolerances.length", "clearance", "clearance.rod"}


def test_a_bench_may_have_no_oven_no_rods_and_no_tools(tmp_path: Path) -> None:
    found = bench(tmp_path, "oven: none\nrods: []\ntools: []\n")
    assert (found.oven_c, found.rods_mm, found.tools) == (None, (), ())


def test_a_bare_price_anywhere_is_in_the_currency_of_the_bench(tmp_path: Path) -> None:
    spools = "spools:\n  - {id: W, material: music-wire, wire_diameter: 1, price_per_metre: 0.5}\n"
    written(tmp_path, "currency: USD\n", "bench.yaml")
    written(tmp_path, spools, "spools/w.yaml")
    catalogue = read_catalogue(tmp_path)
    assert catalogue.bench.hour_value == Money(0, "USD")
    assert catalogue.spools[0].price_per_metre == Money(0.5, "USD")


MISTAKES = {
    "a currency in small letters": (
        "currency: eur",
        "1:11: “eur” is no currency; expected three capital letters, as in EUR; did you mean EUR?",
    ),
    "a sign of a currency": ("currency: €", "1:11: “€” is no currency; expected three capital letters, as in EUR"),
    "other units": ("units: inches", "1:8: “inches” is no unit to print in; expected mm or inch; did you mean inch?"),
    "a negative hour": ("hour_value: -1", "1:13: -1 is negative; expected an amount of zero or above"),
    "one rod": ("rods: 6", "1:7: “6” stands here; expected a list of diameters, as in [3, 3.5, 4]"),
    "a rod of zero": ("rods: [3, 0]", "1:11: 0 is zero; expected a length above zero"),
    "a list in the rods": (
        "rods: [3, [4]]",
        "1:11: a list stands here; expected a list of diameters, as in [3, 3.5, 4]",
    ),
    "another tool": (
        "tools: [vise]",
        "1:9: “vise” is no tool; expected vice, hand-drill, bench-drill, lathe or printer; did you mean vice?",
    ),
    "a flat bed": (
        "printer_bed: [200, 200]",
        "1:14: 2 lengths; expected three lengths, as in [200 mm, 200 mm, 180 mm]",
    ),
    "a cold oven": ("oven: 0", "1:7: 0 is zero; expected a temperature above zero"),
    "sellers in a list": (
        "sellers: [Alder Row]",
        "1:10: a list stands here; expected sellers by name, each with {postage: 3.90 EUR, lead_days: 4}",
    ),
    "a seller without keys": (
        "sellers: {Alder Row: 3.90 EUR}",
        "1:22: “3.90 EUR” stands here; expected the keys of a seller with their values: postage, lead_days",
    ),
    "a seller's key": (
        "sellers: {Alder Row: {postge: 1}}",
        "1:23: “postge” is no key of a seller; expected one of its keys; did you mean postage?",
    ),
    "a maker without a name": (
        "spring_maker: {price: 45}",
        "1:15: no name; expected the key name with a text",
    ),
    "a bare tolerance": (
        "tolerances: {force: 0.15}",
        "1:21: 0.15 has no unit; expected a percentage such as 15 %; did you mean 15 %?",
    ),
    "a tolerance of zero": ("tolerances: {length: 0 mm}", "1:22: 0 mm is zero; expected a length above zero"),
    "a negative clearance": ("clearance: {bore: -1}", "1:19: -1 is negative; expected a length of zero or above"),
    "caution after the stop": (
        "hand_winding: {caution: 3 mm}",
        "1:25: caution from 3.00 mm, where 2.50 mm stops already; expected a limit below the stop",
    ),
    "a stop before the caution": (
        "hand_winding: {stop: 1 mm, caution: 1.5 mm}",
        "1:37: caution from 1.50 mm, where 1.00 mm stops already; expected a limit below the stop",
    ),
    "a moment of caution after the stop": (
        "hand_winding: {stop_moment: 1 N*m, caution_moment: 1.2 N*m}",
        "1:52: caution_moment from 1200 N·mm, where 1000 N·mm stops already; expected a limit below the stop",
    ),
    "a vice after the stop": (
        "hand_winding: {vice_and_crank: 3 mm}",
        "1:32: vice_and_crank from 3.00 mm, where 2.50 mm stops already; expected a limit below the stop",
    ),
    "a moment in newtons": (
        "hand_winding: {stop_moment: 5 N}",
        "1:29: 5 N is a force; expected a torque (N*mm, N*m, lbf*in)",
    ),
    "a crank of nothing": ("hand_winding: {crank: 0 mm}", "1:23: 0 mm is zero; expected a length above zero"),
    "a crank backwards": ("hand_winding: {crank: -80}", "1:23: -80 is negative; expected a length above zero"),
    "more than certain": (
        "prefer: {least_chance: 80}",
        "1:24: 80 is no chance; expected a chance from 0 to 1, or from 0 % to 100 %",
    ),
    "a key nobody knows": ("rod: [3]", "1:1: “rod” is no key of a bench; expected one of its keys; did you mean rods?"),
    "a list": ("- vice", None),
    "an empty file": ("", "an empty file; expected keys and values"),
}  # fmt: skip


@pytest.mark.parametrize(("text", "message"), MISTAKES.values(), ids=MISTAKES)
def test_a_mistake_is_told_at_its_place(tmp_path: Path, text: str, message: str | None) -> None:
    said = mistakes(tmp_path, text)
    assert len(said) == 1
    assert message is None or said == [message]
