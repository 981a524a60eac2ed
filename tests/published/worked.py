"""How the worked examples of the books are put to our functions.

A book designs forwards (which wire, how long), ours answers backwards (this wire has that stress): `solved` turns one
of our functions round. The book's own rules (a clearance of 15 % before solid, a gap a coil) are data of the example.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from scipy.optimize import brentq

from sourcing import materials
from sourcing.springs.compression import (
    curvature_factor,
    direct_shear_factor,
    rate_n_per_mm,
    shear_stress_mpa,
    wahl_factor,
)
from sourcing.springs.describe import describe
from sourcing.springs.fatigue import reversed_mpa, safety
from sourcing.springs.geometry import dead_coils, free_length_from_pitch_mm, pitch_mm, solid_length_mm
from sourcing.springs.model import CompressionSpring, Ends
from sourcing.springs.stability import buckling_length_mm
from sourcing.springs.strength import Place, Presetting, permissible, permissible_stress_mpa

from .checks import KPSI_MPA

STEEL_ELASTIC_MODULUS_MPA = 206_000.0

SHIGLEY_MODULI_MPA = (11_500 * KPSI_MPA, 30_000 * KPSI_MPA)
"""G and E of steel where Shigley has a single constant for buckling (from memory)."""

STEEL_CONSTANT = "the source has 2.63 for steel; with E 30 and G 11.5 million psi (from memory) ours is 2.625"


def solved(function: Callable[[float], float], wanted: float, low: float, high: float) -> float:
    """Where between `low` and `high` one of our functions has the wanted value."""
    return float(brentq(lambda x: function(x) - wanted, low, high, xtol=1e-12, rtol=1e-14))


@dataclass(frozen=True)
class Coil:
    """The data of a book's spring; closed and ground ends unless the book says otherwise."""

    wire_diameter_mm: float
    mean_diameter_mm: float
    active_coils: float
    shear_modulus_mpa: float = 81_500.0
    ends: Ends = Ends.CLOSED_GROUND
    total_coils_stated: float | None = None

    @property
    def total_coils(self) -> float:
        """As the book states them, else the active and the dead ones."""
        return self.total_coils_stated or self.active_coils + dead_coils(self.ends)

    @property
    def rate_n_per_mm(self) -> float:
        """Our rate."""
        return rate_n_per_mm(self.wire_diameter_mm, self.mean_diameter_mm, self.active_coils, self.shear_modulus_mpa)

    @property
    def solid_length_mm(self) -> float:
        """Our solid length."""
        return solid_length_mm(self.wire_diameter_mm, self.total_coils, self.ends)

    def spring(self, free_length_mm: float) -> CompressionSpring:
        """The spring of this coil with a free length."""
        steel = materials.find("music-wire")
        assert steel is not None
        return CompressionSpring(
            wire_diameter_mm=self.wire_diameter_mm,
            mean_diameter_mm=self.mean_diameter_mm,
            free_length_mm=free_length_mm,
            active_coils=self.active_coils,
            total_coils=self.total_coils,
            ends=self.ends,
            material=steel,
            shear_modulus_mpa=self.shear_modulus_mpa,
            elastic_modulus_mpa=STEEL_ELASTIC_MODULUS_MPA,
            tensile_strength_mpa=None,
        )

    def force_at_solid_n(self, free_length_mm: float) -> float:
        """The force that `describe` gives at the solid length."""
        return describe(self.spring(free_length_mm)).force_at_solid_n

    def free_length_closing_at(self, force_n: float) -> float:
        """The free length from which this force closes the spring solid."""
        return solved(self.force_at_solid_n, force_n, self.solid_length_mm * 1.0001, self.solid_length_mm * 20)

    def force_n(self, free_length_mm: float, length_mm: float) -> float:
        """The force that `describe` gives at a length."""
        force = describe(self.spring(free_length_mm), at_mm=[length_mm]).at[0].force_n
        assert force is not None
        return force

    def free_length_carrying(self, force_n: float, length_mm: float) -> float:
        """The free length that gives this force at a length."""
        return solved(lambda free: self.force_n(free, length_mm), force_n, length_mm + 1e-6, length_mm * 20)

    def pitch_over_all_coils(self, free_length_mm: float) -> float:
        """Our pitch, restated as Bhandari and Sadhu Singh define theirs: L0/(nt - 1), the ends shared out as well.

        Ours is the pitch of the active coils, (L0 - 2 d)/n for closed and ground ends: it is the smaller by 2 % or so.
        """
        shape = (self.active_coils, self.total_coils, self.ends)
        ours = pitch_mm(self.wire_diameter_mm, free_length_mm, *shape)
        return free_length_from_pitch_mm(self.wire_diameter_mm, ours, *shape) / (self.total_coils - 1)


def corrected_stress_mpa(force_n: float, wire_diameter_mm: float, mean_diameter_mm: float) -> float:
    """Our stress with EN's factor for curvature, which is Bergsträsser's."""
    factor = curvature_factor(mean_diameter_mm / wire_diameter_mm)
    return factor * shear_stress_mpa(force_n, wire_diameter_mm, mean_diameter_mm)


def pulsating_safety(
    force_min_n: float,
    force_max_n: float,
    wire_diameter_mm: float,
    mean_diameter_mm: float,
    pulsating_mpa: float,
    yield_mpa: float,
) -> float:
    """Bhandari's and Sadhu Singh's factor of safety: our line from a pulsating endurance to the yield stress.

    The mean stress with the factor for direct shear alone, the amplitude with Wahl's.
    """
    index = mean_diameter_mm / wire_diameter_mm
    mean_n, amplitude_n = (force_max_n + force_min_n) / 2, (force_max_n - force_min_n) / 2
    mean = direct_shear_factor(index) * shear_stress_mpa(mean_n, wire_diameter_mm, mean_diameter_mm)
    amplitude = wahl_factor(index) * shear_stress_mpa(amplitude_n, wire_diameter_mm, mean_diameter_mm)
    endurance = reversed_mpa(pulsating_mpa / 2, pulsating_mpa / 2, yield_mpa)
    return safety(amplitude, mean, endurance, yield_mpa)


def yield_mpa(wire: str, tensile_strength_mpa: float) -> float:
    """Our limit of the corrected stress for a spring whose set was not removed, of the strength that the book has."""
    material = materials.find(wire)
    assert material is not None
    share = permissible(Place.SOLID, material, Presetting.NOT_AT_ALL).share
    return permissible_stress_mpa(share, tensile_strength_mpa)


def force_for_stress_n(stress_mpa: float, coil: Coil) -> float:
    """The force at which our corrected stress is the given one."""
    wire, mean = coil.wire_diameter_mm, coil.mean_diameter_mm
    return solved(lambda force: corrected_stress_mpa(force, wire, mean), stress_mpa, 1e-6, 1e6)


def greatest_stable_length_mm(
    mean_diameter_mm: float, shear_modulus_mpa: float, elastic_modulus_mpa: float, seating: float = 0.5
) -> float:
    """The free length up to which ours never buckles."""
    never, sometimes = mean_diameter_mm, 20 * mean_diameter_mm
    while sometimes - never > 1e-9 * sometimes:
        middle = (never + sometimes) / 2
        if buckling_length_mm(middle, mean_diameter_mm, shear_modulus_mpa, elastic_modulus_mpa, seating) is None:
            never = middle
        else:
            sometimes = middle
    return never


def mean_diameter_with(figure: str, wanted: float, wire_diameter_mm: float) -> float:
    """The mean diameter at which a spring of this wire has an index, an inside or an outside diameter."""
    return solved(
        lambda mean: getattr(Coil(wire_diameter_mm, mean, 5.0).spring(1000.0), figure),
        wanted,
        wire_diameter_mm,
        100 * wire_diameter_mm,
    )
