"""Shigley's Mechanical Engineering Design, ch. 10: problems 10-26 and 10-27, a spring that is pressed again and again.

Read in a stored copy of the instructors' solutions (7th/8th edition), p. 278: 5 to 20 lbf at 10 lbf/in, music wire,
G 11.75 million psi and 0.284 lbf/in3 from Example 10-5 (from memory); three decimals. The tensile strength is by the
book's power law and data here, as is Zimmerli's pair of 35 and 55 kpsi; amplitude and mean stand as 15 to 25. 10-26
goes by Gerber's parabola, 10-27 by Goodman's line. What follows from the amplitude goes on from the printed one.
"""

from __future__ import annotations

from collections.abc import Callable

import pytest

from sourcing.springs.compression import active_coils_for_rate, curvature_factor
from sourcing.springs.fatigue import (
    amplitude_borne_by_gerber_mpa,
    amplitude_borne_mpa,
    reversed_by_gerber_mpa,
    reversed_mpa,
    ultimate_shear_mpa,
)
from sourcing.springs.stability import natural_frequency_hz

from .checks import INCH_MM, KPSI_MPA, POUND_N, Book, Check, carried, inches, kpsi, one_percent
from .worked import SHIGLEY_MODULI_MPA, STEEL_CONSTANT, Coil, corrected_stress_mpa, greatest_stable_length_mm, solved

BOOK = Book(
    "Budynas and Nisbett, Shigley's Mechanical Engineering Design, ch. 10",
    "a stored copy of the instructors' solutions, 7th/8th edition",
)

AMPLITUDE_ROUNDED = "the allowable amplitude, data here, is printed to three decimals and was carried on with more"
INDEX_AS_PRINTED = "the index is put in with three decimals, as printed"


RATIO = (20 - 5) / (20 + 5)
"""Amplitude over mean of 5 to 20 lbf."""

ZIMMERLI_MPA = (35 * KPSI_MPA, 55 * KPSI_MPA)


def fatigue(
    sut_kpsi: float, reversed_of: Callable[[float, float, float], float], borne: Callable[[float, float, float], float]
) -> dict[str, float]:
    """Ultimate shear stress, endurance and the amplitude borne, by a line or a parabola."""
    ultimate = ultimate_shear_mpa(sut_kpsi * KPSI_MPA)
    endurance = reversed_of(*ZIMMERLI_MPA, ultimate)
    return {"ssu_mpa": ultimate, "sse_mpa": endurance, "ssa_mpa": borne(RATIO, endurance, ultimate)}


def one_and_a_half_times_safe(
    wire_in: float, amplitude_kpsi: float, yield_kpsi: float, printed_index: float
) -> dict[str, float]:
    """The spring whose amplitude has 1.5 times less than the stress allowed for it."""
    wire, modulus, density = wire_in * INCH_MM, 11_750 * KPSI_MPA, 0.284 * POUND_N / (386 * INCH_MM / 1000) / INCH_MM**3
    amplitude_n, greatest_n = 7.5 * POUND_N, 20 * POUND_N
    allowable = amplitude_kpsi * KPSI_MPA / 1.5
    mean = solved(lambda mean: corrected_stress_mpa(amplitude_n, wire, mean), allowable, 3 * wire, 30 * wire)
    coils = active_coils_for_rate(wire, mean, 10 * POUND_N / INCH_MM, modulus)
    coil = Coil(wire, mean, coils, modulus)
    free_length = coil.free_length_closing_at(1.15 * greatest_n)
    spring = coil.spring(free_length)
    solid_stress = corrected_stress_mpa(coil.force_at_solid_n(free_length), wire, mean)
    return {
        "factor_bergstraesser": curvature_factor(spring.spring_index),
        "spring_index": spring.spring_index,
        "mean_diameter_mm": mean,
        "inner_diameter_mm": spring.inside_diameter_mm,
        "outer_diameter_mm": spring.outside_diameter_mm,
        "amplitude_stress_mpa": corrected_stress_mpa(amplitude_n, wire, printed_index * wire),
        "active_coils": coils,
        "solid_length_mm": coil.solid_length_mm,
        "free_length_mm": free_length,
        "critical_free_length_mm": greatest_stable_length_mm(mean, *SHIGLEY_MODULI_MPA),
        "solid_stress_mpa": solid_stress,
        "safety_solid": yield_kpsi * KPSI_MPA / solid_stress,
        "surge_hz": natural_frequency_hz(wire, mean, coils, modulus, density_kg_per_m3=density * 1e9),
    }


@BOOK.example(
    "shigley 10-26, 0.105 in",
    "problem 10-26, p. 278, column 0.105 in",
    sut_mpa=kpsi("278.691"),
    ssu_mpa=kpsi("186.723"),
    sse_mpa=kpsi("38.325"),
    ssa_mpa=kpsi("34.658"),
    factor_bergstraesser="1.111",
    spring_index=carried("12.004", 0.01, AMPLITUDE_ROUNDED),
    mean_diameter_mm=inches("1.260"),
    inner_diameter_mm=inches("1.155"),
    outer_diameter_mm=inches("1.365"),
    amplitude_stress_mpa=carried("23.105", 0.01, INDEX_AS_PRINTED, "kpsi"),
    active_coils=carried("8.915", 0.01, AMPLITUDE_ROUNDED),
    solid_length_mm=inches("1.146"),
    free_length_mm=inches("3.446"),
    critical_free_length_mm=one_percent("6.630", STEEL_CONSTANT, "in"),
    solid_stress_mpa=carried("70.855", 0.01, AMPLITUDE_ROUNDED, "kpsi"),
    safety_solid="1.770",
    surge_hz=carried("105.433", 0.01, AMPLITUDE_ROUNDED),
)
def problem_10_26_wire_105() -> dict[str, float]:
    spring = one_and_a_half_times_safe(0.105, amplitude_kpsi=34.658, yield_kpsi=0.45 * 278.691, printed_index=12.004)
    return {**spring, **fatigue(278.691, reversed_by_gerber_mpa, amplitude_borne_by_gerber_mpa)}


@BOOK.example(
    "shigley 10-27, 0.105 in",
    "problem 10-27, p. 278, column 0.105 in",
    sut_mpa=kpsi("278.691"),
    ssu_mpa=kpsi("186.723"),
    sse_mpa=kpsi("49.614"),
    ssa_mpa=kpsi("34.386"),
    factor_bergstraesser="1.112",
    spring_index="11.899",
    mean_diameter_mm=inches("1.249"),
    inner_diameter_mm=inches("1.144"),
    outer_diameter_mm=inches("1.354"),
    amplitude_stress_mpa=carried("22.924", 0.01, INDEX_AS_PRINTED, "kpsi"),
    active_coils="9.153",
    solid_length_mm=inches("1.171"),
    free_length_mm=inches("3.471"),
    critical_free_length_mm=one_percent("6.572", STEEL_CONSTANT, "in"),
    solid_stress_mpa=carried("70.301", 0.01, AMPLITUDE_ROUNDED, "kpsi"),
    safety_solid="1.784",
    surge_hz=carried("104.509", 0.01, AMPLITUDE_ROUNDED),
)
def problem_10_27_wire_105() -> dict[str, float]:
    spring = one_and_a_half_times_safe(0.105, amplitude_kpsi=34.386, yield_kpsi=0.45 * 278.691, printed_index=11.899)
    return {**spring, **fatigue(278.691, reversed_mpa, amplitude_borne_mpa)}


@BOOK.example(
    "shigley 10-27, 0.112 in",
    "problem 10-27, p. 278, column 0.112 in",
    sut_mpa=kpsi("276.096"),
    ssu_mpa=kpsi("184.984"),
    sse_mpa=carried("49.810", 0.001, "the strength is put in with three decimals, as printed", "kpsi"),
    ssa_mpa=kpsi("34.380"),
    factor_bergstraesser="1.096",
    spring_index="13.732",
    mean_diameter_mm=inches("1.538"),
    inner_diameter_mm=inches("1.426"),
    outer_diameter_mm=inches("1.650"),
    amplitude_stress_mpa=carried("22.920", 0.01, INDEX_AS_PRINTED, "kpsi"),
    active_coils="6.353",
    solid_length_mm=inches("0.936"),
    free_length_mm=inches("3.236"),
    critical_free_length_mm=one_percent("8.090", STEEL_CONSTANT, "in"),
    solid_stress_mpa=carried("70.289", 0.01, AMPLITUDE_ROUNDED, "kpsi"),
    safety_solid="1.768",
    surge_hz=carried("106.000", 0.01, AMPLITUDE_ROUNDED),
)
def problem_10_27_wire_112() -> dict[str, float]:
    spring = one_and_a_half_times_safe(0.112, amplitude_kpsi=34.380, yield_kpsi=0.45 * 276.096, printed_index=13.732)
    return {**spring, **fatigue(276.096, reversed_mpa, amplitude_borne_mpa)}


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_shigleys_figure(check: Check) -> None:
    check.must_agree()
