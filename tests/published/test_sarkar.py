"""B. K. Sarkar, Strength of Materials, ch. 8 Springs: the compression springs among its problems.

Read in a worked copy of the solutions. Stress without any factor, 8 F D/(pi d^3); every coil acts, so that the
solid length is n d. Some constants are rounded to 3 or 4 digits by hand on the way.
"""

from __future__ import annotations

import pytest

from sourcing.springs.compression import rate_n_per_mm, shear_stress_mpa
from sourcing.springs.geometry import mass_g, turn_length_mm
from sourcing.springs.model import Ends
from sourcing.springs.systems import series_rate_n_per_mm

from .checks import Book, Check, carried
from .worked import Coil, solved

BOOK = Book("B. K. Sarkar, Strength of Materials, ch. 8 Springs", "a worked copy of the solution")


def force_for_stress_n(stress_mpa: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    return solved(lambda force: shear_stress_mpa(force, wire_diameter_mm, mean_diameter_mm), stress_mpa, 1, 1e6)


@BOOK.example("sarkar 8.2", "problem 8.2, p. 207", energy_at_solid_j="50", free_length_mm="150")
def problem_8_2() -> dict[str, float]:
    coil = Coil(24.135, 100, 5.679, 80_000, Ends.OPEN_GROUND, total_coils_stated=5.679)
    free_length = coil.free_length_closing_at(force_for_stress_n(140, 24.135, 100))
    travel = free_length - coil.solid_length_mm
    forces = (coil.force_n(free_length, free_length), coil.force_at_solid_n(free_length))
    return {"energy_at_solid_j": sum(forces) / 2 * travel / 1000, "free_length_mm": free_length}


@BOOK.example(
    "sarkar 8.4",
    "problem 8.4, p. 209",
    deflection_mm="100",
    shear_stress_mpa="350",
    weight_n=carried("10.188", 0.01, "constants are rounded by hand on the way"),
)
def problem_8_4() -> dict[str, float]:
    gravity = 9.80665
    wire_length = 8.5297 * turn_length_mm(85.3, pitch_mm=0)  # the book's coils lie flat
    return {
        "deflection_mm": 1000 / rate_n_per_mm(8.53, 85.3, 8.5297, 80_000),
        "shear_stress_mpa": shear_stress_mpa(1000, 8.53, 85.3),
        "weight_n": mass_g(8.53, wire_length, density_kg_per_m3=78_000 / gravity) / 1000 * gravity,
    }


@BOOK.example("sarkar 8.6", "problem 8.6, p. 211 (impact)", deflection_mm="135.2", force_n="2412.743")
def problem_8_6() -> dict[str, float]:
    force = force_for_stress_n(600, 8, 50)
    return {"deflection_mm": force / rate_n_per_mm(8, 50, 18.36, 80_000), "force_n": force}


@BOOK.example(
    "sarkar 8.7",
    "problem 8.7, p. 211 (two springs in series)",
    limiting_force_n=carried("34.0", 0.1, "the source rounds the wire of the second spring on the way"),
    total_extension_mm="47.3",
)
def problem_8_7() -> dict[str, float]:
    first = Coil(3, 30, 12, 80_000).rate_n_per_mm

    def together(second_wire_mm: float) -> float:
        return series_rate_n_per_mm([first, Coil(second_wire_mm, 30, 12, 80_000).rate_n_per_mm])

    second_wire = solved(together, 0.72, 1, 3)
    force = force_for_stress_n(190, second_wire, 30)
    return {"limiting_force_n": force, "total_extension_mm": force / together(second_wire)}


@BOOK.example("sarkar 8.9", "problem 8.9, p. 212", shear_stress_mpa="328.13")
def problem_8_9() -> dict[str, float]:
    return {"shear_stress_mpa": shear_stress_mpa(34361.17, 40, 240)}


@BOOK.example(
    "sarkar 8.19", "problem 8.19, p. 219 (a coil closes by its pitch less the wire)", force_to_close_n="424.72"
)
def problem_8_19() -> dict[str, float]:
    return {"force_to_close_n": rate_n_per_mm(6, 65, 1, 80_000) * (15 - 6)}


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_sarkars_figure(check: Check) -> None:
    check.must_agree()
