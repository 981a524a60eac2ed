"""V. B. Bhandari, Design of Machine Elements, ch. 10 Springs: the compression springs among its worked examples.

Read in a worked copy of the solutions, which prints unrounded arithmetic to six decimals; the book shows fewer.
G is 81 370 MPa throughout. Stress with Wahl's factor, held against half or three tenths of the tensile strength; ends
closed and ground; free length = solid length + greatest deflection + a gap between the coils (or 15 % of the
deflection); wire, coils and sometimes the length rounded up and carried on. The book's pitch is L0/(nt - 1): see
`Coil.pitch_over_all_coils`.
"""

from __future__ import annotations

from math import pi

import pytest

from sourcing.springs import systems
from sourcing.springs.compression import active_coils_for_rate, shear_stress_mpa, wahl_factor
from sourcing.springs.geometry import dead_coils
from sourcing.springs.model import Ends
from sourcing.springs.systems import Parallel, Single

from .checks import Book, Check, carried, rounded_up
from .worked import Coil, mean_diameter_with, pulsating_safety, solved

BOOK = Book("V. B. Bhandari, Design of Machine Elements, ch. 10 Springs", "a worked copy of the solution")

G_MPA = 81_370.0
COILS_UP = "the book rounds the coils up to whole ones"
WIRE_UP = "the book rounds the wire up to a stock size"
LENGTH_UP = "the book rounds the free length up"
FORCE_ROUNDED = "the force is printed to three decimals and was carried on with more"


def wahl_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    factor = wahl_factor(mean_diameter_mm / wire_diameter_mm)
    return factor * shear_stress_mpa(force_n, wire_diameter_mm, mean_diameter_mm)


def required_wire_mm(force_n: float, spring_index: float, allowable_mpa: float) -> float:
    """The wire at which our stress, with Wahl's factor, is the allowable one."""
    return solved(lambda wire: wahl_stress_mpa(force_n, wire, spring_index * wire), allowable_mpa, 0.1, 100.0)


def free_length_mm(coil: Coil, force_n: float, gap_mm: float) -> float:
    """The free length that carries the force with this gap left between neighbouring coils."""
    return coil.free_length_carrying(force_n, coil.solid_length_mm + gap_mm * (coil.total_coils - 1))


@BOOK.example(
    "bhandari 10.1",
    "Example 10.1",
    required_wire_mm="6.625083",
    free_length_mm="109.337611",
    pitch_mm="12.148623",
)
def example_10_1() -> dict[str, float]:
    coil = Coil(7, 42, 8, G_MPA)
    free_length = free_length_mm(coil, 1250, gap_mm=1)
    return {
        "required_wire_mm": required_wire_mm(1250, 6, 0.5 * 1090),
        "free_length_mm": free_length,
        "pitch_mm": coil.pitch_over_all_coils(free_length),
    }


@BOOK.example(
    "bhandari 10.2",
    "Example 10.2",
    required_wire_mm="10.546976",
    rate_n_per_mm="179.014",
    free_length_mm="99.551543",
)
def example_10_2() -> dict[str, float]:
    coil = Coil(11, 55, 5, G_MPA)
    return {
        "required_wire_mm": required_wire_mm(3500, 5, 0.5 * 1050),
        "rate_n_per_mm": coil.rate_n_per_mm,
        "free_length_mm": free_length_mm(coil, 3500, gap_mm=0.5),
    }


@BOOK.example("bhandari 10.3", "Example 10.3", active_coils="7.814775")
def example_10_3() -> dict[str, float]:
    return {"active_coils": active_coils_for_rate(21, 150, 75, G_MPA)}


@BOOK.example(
    "bhandari 10.4",
    "Example 10.4 (two loads, two lengths)",
    mean_diameter_mm="24",
    active_coils_unrounded="6.27855",
    active_coils=rounded_up("7", 1, COILS_UP),
    total_coils="9",
    free_length_mm="48.8214",
    pitch_mm="6.125",
)
def example_10_4() -> dict[str, float]:
    wanted_rate = (300 - 150) / (35 - 30)
    mean = mean_diameter_with("inside_diameter_mm", 20, 4)
    coils = active_coils_for_rate(4, mean, wanted_rate, G_MPA)
    coil = Coil(4, mean, 7, G_MPA)
    return {
        "mean_diameter_mm": mean,
        "active_coils_unrounded": coils,
        "active_coils": coils,
        "total_coils": coil.total_coils,
        "free_length_mm": coil.free_length_closing_at(1.15 * 300),
        "pitch_mm": coil.pitch_over_all_coils(49),
    }


@BOOK.example(
    "bhandari 10.6",
    "Example 10.6 (a wagon of 1500 kg at 1.5 m/s, stopped by two springs in 150 mm)",
    required_rate_n_per_mm="75",
    required_wire_mm="18.5597",
    wire_diameter_mm=rounded_up("20", 5, WIRE_UP),
    mean_diameter_mm="120",
    active_coils_unrounded="12.5571",
    total_coils=rounded_up("15", 1, COILS_UP),
    rate_n_per_mm="72.4448",
    free_length_mm="483.291",
    pitch_mm="34.5714",
)
def example_10_6() -> dict[str, float]:
    travel = 150
    energy_n_mm = 1500 * 1.5**2 / 2 * 1000
    both = solved(lambda rate: rate * travel**2 / 2, energy_n_mm, 1, 1000)
    wanted_rate = solved(lambda each: systems.parallel_rate_n_per_mm([each, each]), both, 1, 1000)
    force = wanted_rate * travel
    wire = required_wire_mm(force, 6, 0.5 * 1250)
    mean = mean_diameter_with("spring_index", 6, 20)
    coils = active_coils_for_rate(20, mean, wanted_rate, G_MPA)
    coil = Coil(20, mean, 13, G_MPA)
    return {
        "required_rate_n_per_mm": wanted_rate,
        "required_wire_mm": wire,
        "wire_diameter_mm": wire,
        "mean_diameter_mm": mean,
        "active_coils_unrounded": coils,
        "total_coils": coils + dead_coils(Ends.CLOSED_GROUND),
        "rate_n_per_mm": coil.rate_n_per_mm,
        "free_length_mm": free_length_mm(coil, force, gap_mm=2),
        "pitch_mm": coil.pitch_over_all_coils(484),
    }


@BOOK.example(
    "bhandari 10.7",
    "Example 10.7 (eight springs of a clutch share 2400 N)",
    required_wire_mm="4.16569",
    wire_diameter_mm=rounded_up("5", 1, WIRE_UP),
    mean_diameter_mm="40",
    active_coils_unrounded="4.96643",
    total_coils=rounded_up("7", 1, COILS_UP),
    free_length_mm="56.1014",
    pitch_mm="9.5",
    rate_n_per_mm="19.8657",
)
def example_10_7() -> dict[str, float]:
    force = 2400 / 8
    wire = required_wire_mm(force, 8, 0.3 * 1390)
    mean = mean_diameter_with("spring_index", 8, 5)
    coils = active_coils_for_rate(5, mean, force / 15, G_MPA)
    coil = Coil(5, mean, 5, G_MPA)
    return {
        "required_wire_mm": wire,
        "wire_diameter_mm": wire,
        "mean_diameter_mm": mean,
        "active_coils_unrounded": coils,
        "total_coils": coils + dead_coils(Ends.CLOSED_GROUND),
        "free_length_mm": free_length_mm(coil, force, gap_mm=1),
        "pitch_mm": coil.pitch_over_all_coils(57),
        "rate_n_per_mm": coil.rate_n_per_mm,
    }


@BOOK.example(
    "bhandari 10.9",
    "Example 10.9 (safety valve)",
    required_wire_mm=carried("13.241979", 0.0001, FORCE_ROUNDED),
    active_coils_unrounded="5.595868",
    solid_length_mm="112",
    free_length_mm=carried("163.527689", 0.0001, FORCE_ROUNDED),
    pitch_mm="23.571429",
)
def example_10_9() -> dict[str, float]:
    # The coils are carried on as 6, and the pitch is that of a length of 165 mm.
    wanted_rate = 2945.243 / 25
    force = wanted_rate * (25 + 10)
    coil = Coil(14, 84, 6, G_MPA)
    return {
        "required_wire_mm": required_wire_mm(force, 6, 0.3 * 1500),
        "active_coils_unrounded": active_coils_for_rate(14, 84, wanted_rate, G_MPA),
        "solid_length_mm": coil.solid_length_mm,
        "free_length_mm": free_length_mm(coil, force, gap_mm=2),
        "pitch_mm": coil.pitch_over_all_coils(165),
    }


@BOOK.example(
    "bhandari 10.11",
    "Example 10.11 (nine springs of a clutch)",
    mean_diameter_mm="22.5",
    total_coils="8",
    solid_length_mm="36",
    free_length_mm=rounded_up("51", 1, LENGTH_UP),
)
def example_10_11() -> dict[str, float]:
    coil = Coil(4.5, mean_diameter_with("spring_index", 5, 4.5), 6, G_MPA)
    force = 4 * 300_000 / (0.35 * (270 + 170)) / 2 / 9
    return {
        "mean_diameter_mm": coil.mean_diameter_mm,
        "total_coils": coil.total_coils,
        "solid_length_mm": coil.solid_length_mm,
        "free_length_mm": free_length_mm(coil, force, gap_mm=1),
    }


def cycled(
    wire_diameter_mm: float, spring_index: float, rate: float, forces_n: tuple[float, float], sut_mpa: float, coils: int
) -> dict[str, float]:
    """Examples 10.14 to 10.16: 0.5 mm between the coils at the greatest force.

    The endurance from nothing to a stress is 0.22 of the tensile strength, the yield stress in shear 0.45.
    """
    least_n, greatest_n = forces_n
    mean = mean_diameter_with("spring_index", spring_index, wire_diameter_mm)
    active = active_coils_for_rate(wire_diameter_mm, mean, rate, G_MPA)
    coil = Coil(wire_diameter_mm, mean, coils, G_MPA)
    limits = (0.22 * sut_mpa, 0.45 * sut_mpa)
    return {
        "safety_factor": pulsating_safety(least_n, greatest_n, wire_diameter_mm, mean, *limits),
        "mean_diameter_mm": mean,
        "total_coils": active + dead_coils(Ends.CLOSED_GROUND),
        "free_length_mm": free_length_mm(coil, greatest_n, gap_mm=0.5),
    }


@BOOK.example(
    "bhandari 10.14",
    "Example 10.14 (cam follower)",
    safety_factor="1.46",
    mean_diameter_mm="30",
    total_coils=rounded_up("21", 1, COILS_UP),
    free_length_mm=rounded_up("145", 5, LENGTH_UP),
)
def example_10_14() -> dict[str, float]:
    return cycled(5, 6, rate=(350 - 100) / 20, forces_n=(100, 350), sut_mpa=1440, coils=19)


@BOOK.example(
    "bhandari 10.15",
    "Example 10.15 (suction valve)",
    safety_factor="1.85",
    mean_diameter_mm="32",
    total_coils=rounded_up("10", 1, COILS_UP),
    free_length_mm=rounded_up("60", 5, LENGTH_UP),
)
def example_10_15() -> dict[str, float]:
    return cycled(4, 8, rate=10, forces_n=(30, 130), sut_mpa=1400, coils=8)


@BOOK.example(
    "bhandari 10.16",
    "Example 10.16 (plunger)",
    safety_factor="1.48",
    mean_diameter_mm="18",
    total_coils=rounded_up("26", 1, COILS_UP),
    free_length_mm=rounded_up("125", 5, LENGTH_UP),
)
def example_10_16() -> dict[str, float]:
    rise = 0.1 * pi / 4 * 40**2
    return cycled(3.6, 5, rate=rise / 10, forces_n=(100, 100 + rise), sut_mpa=1400, coils=24)


@BOOK.example(
    "bhandari 10.20",
    "Example 10.20 (outside diameter 42 mm)",
    wire_diameter_mm=rounded_up("5", 1, WIRE_UP),
    mean_diameter_mm="37",
)
def example_10_20() -> dict[str, float]:
    return {
        "wire_diameter_mm": solved(lambda wire: wahl_stress_mpa(750, wire, 42 - wire), 750, 3, 10),
        "mean_diameter_mm": mean_diameter_with("outside_diameter_mm", 42, 5),
    }


@BOOK.example(
    "bhandari 10.18",
    "Example 10.18 (concentric springs of equal length)",
    outer_force_n="1304.347826",
    inner_force_n="695.652174",
    deflection_mm="52.526569",
    outer_shear_stress_mpa="314.616701",
    inner_shear_stress_mpa="262.180584",
)
def example_10_18() -> dict[str, float]:
    return nested(Coil(10, 80, 8, G_MPA), Coil(8, 64, 12, G_MPA), 0, 2000)


@BOOK.example(
    "bhandari 10.19",
    "Example 10.19 (concentric springs, the outer one 15 mm longer)",
    outer_force_n="706.021471",
    inner_force_n="293.978529",
    outer_deflection_mm="24.988839",
    inner_deflection_mm="9.988839",
    outer_shear_stress_mpa="375.305136",
    inner_shear_stress_mpa="225.032219",
)
def example_10_19() -> dict[str, float]:
    found = nested(Coil(6, 36, 10, G_MPA), Coil(5, 30, 8, G_MPA), 15, 1000)
    deflection = found.pop("deflection_mm")
    return found | {"outer_deflection_mm": deflection, "inner_deflection_mm": deflection - 15}


def nested(outer: Coil, inner: Coil, longer_mm: float, force_n: float) -> dict[str, float]:
    """Two of our springs between the same plates, long enough not to go solid, under a force."""
    free = 300.0
    parts = Single(outer.spring(free)), Single(inner.spring(free - longer_mm))
    length = systems.length_mm(Parallel(parts), force_n)
    forces = [systems.force_n(part, length) for part in parts]
    stresses = [
        wahl_stress_mpa(force, coil.wire_diameter_mm, coil.mean_diameter_mm)
        for force, coil in zip(forces, (outer, inner), strict=True)
    ]
    names = ("outer_force_n", "inner_force_n", "outer_shear_stress_mpa", "inner_shear_stress_mpa")
    return dict(zip(names, (*forces, *stresses), strict=True)) | {"deflection_mm": free - length}


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_bhandaris_figure(check: Check) -> None:
    check.must_agree()
