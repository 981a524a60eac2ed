"""B. K. Sarkar, Strength of Materials, ch. 8 Springs: its problems of compression and extension springs.

Read in a worked copy of the solutions. Stress without any factor, 8 F D/(pi d^3); every coil acts, so that the
solid length is n d. Some constants are rounded to 3 or 4 digits by hand on the way.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import cos, radians, sin

import pytest

from sourcing.springs import extension, torsion
from sourcing.springs.compression import rate_n_per_mm, shear_stress_mpa
from sourcing.springs.geometry import mass_g, turn_length_mm
from sourcing.springs.model import Ends
from sourcing.springs.systems import series_rate_n_per_mm

from .checks import Book, Check, carried
from .worked import Coil, solved

THREE_FIGURES = "the source carries three figures on"

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


@BOOK.example(
    "sarkar 8.5",
    "problem 8.5, p. 210 (150 N fall 50 mm onto a spring that is pulled)",
    extension_mm=carried("183.9", 0.03, "the book rounds the rate on the way"),
    shear_stress_mpa=carried("224.797752", 0.05, "the extension is carried on as 183.9 mm"),
)
def problem_8_5() -> dict[str, float]:
    rate = extension.rate_n_per_mm(6, 50, 50, 80_000)

    def energy_n_mm(pulled_mm: float) -> float:
        """What the spring takes up less what the weight gives: half its force times the way."""
        return extension.force_n(0, rate, pulled_mm) * pulled_mm / 2 - 150 * (50 + pulled_mm)

    pulled = solved(energy_n_mm, 0, 50, 500)
    return {
        "extension_mm": pulled,
        "shear_stress_mpa": shear_stress_mpa(extension.force_n(0, rate, pulled), 6, 50),
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


@dataclass(frozen=True)
class Climbing:
    """An open coil that climbs steeply: the book adds up its twist and its bending, each of which is ours.

    The wire is longer by 1/cos a, the force's moment twists it by its cosine and bends it by its sine.
    """

    wire_mm: float
    mean_mm: float
    coils: float
    climb: float
    shear_modulus_mpa: float
    elastic_modulus_mpa: float

    @property
    def twisting_mm_per_n(self) -> float:
        """The way of a coil that lies flat, for each newton."""
        return 1 / rate_n_per_mm(self.wire_mm, self.mean_mm, self.coils, self.shear_modulus_mpa)

    @property
    def bending_rad_per_n_mm(self) -> float:
        """The turn of a coil that lies flat, for each newton millimetre."""
        rate = torsion.rate_n_mm_per_deg(self.wire_mm, self.mean_mm, self.coils, self.elastic_modulus_mpa)
        return radians(1 / rate)

    def deflection_mm(self, force_n: float) -> float:
        arm = self.mean_mm / 2
        bending = self.bending_rad_per_n_mm * (arm * sin(self.climb)) ** 2 / cos(self.climb)
        return force_n * (self.twisting_mm_per_n * cos(self.climb) + bending)

    def end_rotation_rad(self, force_n: float) -> float:
        arm = self.mean_mm / 2
        return force_n * arm * sin(self.climb) * (self.twisting_mm_per_n / arm**2 - self.bending_rad_per_n_mm)


@BOOK.example(
    "sarkar 8.15",
    "problem 8.15, p. 216 (a climb of 30 degrees: 23 mm and 0.02 rad under 40 N)",
    r3n_mm3=carried("849000", 0.06, THREE_FIGURES),
    r2n_mm2=carried("8100", 0.01, THREE_FIGURES),
    mean_radius_mm=carried("104.8", 0.01, THREE_FIGURES),
)
def problem_8_15() -> dict[str, float]:
    one = Climbing(6, 2, 1, radians(30), 80_000, 200_000)
    r3n, r2n = 23 / one.deflection_mm(40), 0.02 / one.end_rotation_rad(40)
    return {"r3n_mm3": r3n, "r2n_mm2": r2n, "mean_radius_mm": r3n / r2n}


@BOOK.example(
    "sarkar 8.16",
    "problem 8.16, p. 217 (a climb of 24.443 degrees)",
    deflection_mm="18",
    bending_stress_mpa="100",
    torsion_stress_mpa="110",
)
def problem_8_16() -> dict[str, float]:
    coil = Climbing(5.587, 8 * 5.587, 10, radians(24.443), 80_000, 200_000)
    return {
        "deflection_mm": coil.deflection_mm(185.17),
        "bending_stress_mpa": torsion.bending_stress_mpa(185.17 * coil.mean_mm / 2 * sin(coil.climb), coil.wire_mm),
        "torsion_stress_mpa": shear_stress_mpa(185.17 * cos(coil.climb), coil.wire_mm, coil.mean_mm),
    }


CHECKS = BOOK.checks()


@pytest.mark.parametrize("check", CHECKS, ids=str)
def test_ours_comes_to_sarkars_figure(check: Check) -> None:
    check.must_agree()
