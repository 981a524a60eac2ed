"""An extension spring as a whole, pulled to a length: its force, the stress of each of its parts, what breaks first."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from sourcing.figures import formula
from sourcing.springs import extension, hooks
from sourcing.springs.compression import curvature_factor
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.model import ExtensionSpring, Hooks
from sourcing.springs.strength import Place, permissible

PARTS: Mapping[Place, str] = {
    Place.BODY: "the body, by torsion of its coils",
    Place.HOOK_BENDING: "the hook, by bending of its loop",
    Place.HOOK_TORSION: "the hook, by torsion where it leaves the body",
}
"""The parts that may break, in words."""


@dataclass(frozen=True, slots=True)
class Part:
    """A part of a spring under load: the stress in it for each newton, and what share of the strength it may bear.

    Of the body that is the stress without the factor for the curvature of the wire, `corrected` by which it is more.
    """

    place: Place
    mpa_per_n: float
    share: float
    corrected: float = 1.0

    @property
    def words(self) -> str:
        """Where and how it breaks."""
        return PARTS[self.place]

    @property
    def weakness(self) -> float:
        """Stress for each newton over what it may bear of the strength: the part with the most breaks first."""
        return self.mpa_per_n / self.share


@dataclass(frozen=True, slots=True)
class AtPull:
    """A spring pulled to a length. Shorter than free it is loose, with no force and no stress.

    `shear_stress_mpa` is the body's, not corrected for the curvature of the wire; `corrected_stress_mpa` is, by EN's
    factor. The hook's stresses are None where there is no bent hook.
    """

    length_mm: float
    force_n: float
    shear_stress_mpa: float
    corrected_stress_mpa: float
    hook_bending_stress_mpa: float | None
    hook_torsion_stress_mpa: float | None


def rate_n_per_mm(spring: ExtensionSpring) -> float:
    """The rate that the dimensions give."""
    return extension.rate_n_per_mm(
        spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils, spring.shear_modulus_mpa
    )


def force_n(spring: ExtensionSpring, length_mm: float, rate_n_per_mm: float, initial_tension_n: float) -> float:
    """The force at a length; none where it is no longer than free."""
    extension_mm = length_mm - spring.free_length_mm
    return extension.force_n(initial_tension_n, rate_n_per_mm, extension_mm) if extension_mm > 0.0 else 0.0


def body_length_mm(spring: ExtensionSpring) -> float:
    """The length of the body at rest."""
    return extension.body_length_mm(spring.total_coils, spring.wire_diameter_mm)


def hook_length_mm(spring: ExtensionSpring) -> float:
    """How far the inside of each hook stands from the body."""
    return extension.hook_length_mm(spring.free_length_mm, body_length_mm(spring))


def parts(spring: ExtensionSpring) -> tuple[Part, ...]:
    """Its body, and of a bent hook the loop and the bend. The bend's radius is assumed, see `hooks`."""
    return tuple(_parts(spring))


def _parts(spring: ExtensionSpring) -> Iterator[Part]:
    d, mean = spring.wire_diameter_mm, spring.mean_diameter_mm
    body_mpa = hooks.body_stress_mpa(1.0, d, mean, spring.hooks)
    yield _part(spring, Place.BODY, body_mpa, curvature_factor(spring.spring_index))
    if spring.hooks is Hooks.THREADED_PLUG:
        return
    loop = hooks.loop_factor(spring.spring_index)
    bend = hooks.bend_factor(2.0 * hooks.BEND_RADIUS_WIRES)
    yield _part(spring, Place.HOOK_BENDING, hooks.bending_stress_mpa(1.0, d, mean, loop))
    yield _part(spring, Place.HOOK_TORSION, hooks.torsion_stress_mpa(1.0, d, mean, bend))


def _part(spring: ExtensionSpring, place: Place, mpa_per_n: float, corrected: float = 1.0) -> Part:
    return Part(place, mpa_per_n, permissible(place, spring.material).share, corrected)


def breaks_first(spring: ExtensionSpring) -> Part:
    """The part that comes to its limit first, whatever the strength of the wire."""
    return max(parts(spring), key=lambda part: part.weakness)


def weakest_share(spring: ExtensionSpring) -> float:
    """The share of the strength that the part which breaks first may bear."""
    return breaks_first(spring).share


def weakest_stress_under_one_newton_mpa(spring: ExtensionSpring) -> float:
    """The stress for each newton in the part that breaks first."""
    return breaks_first(spring).mpa_per_n


@formula(
    "F = s R_m / τ_N",
    where={"s": weakest_share, "R_m": "spring.tensile_strength_mpa", "τ_N": weakest_stress_under_one_newton_mpa},
    source="statics: each stress grows with the force; the share is its row of the table of permissible stresses",
)
def largest_safe_force_n(spring: ExtensionSpring) -> float | None:
    """The force at which the first part comes to its static limit; None where the wire's strength is not known."""
    tensile_mpa = spring.tensile_strength_mpa
    return None if tensile_mpa is None else tensile_mpa / breaks_first(spring).weakness


@formula(
    "s = max(0, (F − F₀) / R)",
    where={"F": "largest_safe_force_n"},
    source="EN 13906-2:2013, turned round",
    from_memory=True,
)
def largest_safe_extension_mm(largest_safe_force_n: float, initial_tension_n: float, rate_n_per_mm: float) -> float:
    """How far the largest safe force pulls a spring; not at all where its initial tension is more.

    >>> round(largest_safe_extension_mm(18.22, 6.0, 0.611), 1)
    20.0
    """
    return max(0.0, extension.extension_mm(largest_safe_force_n, initial_tension_n, rate_n_per_mm))


def largest_safe_length_mm(spring: ExtensionSpring, rate_n_per_mm: float, initial_tension_n: float) -> float | None:
    """The length at which the first part comes to its limit, free where it is past it at rest; None: not known."""
    force = largest_safe_force_n(spring)
    if force is None:
        return None
    return extension.pulled_length_mm(
        spring.free_length_mm, largest_safe_extension_mm(force, initial_tension_n, rate_n_per_mm)
    )


def at_length(spring: ExtensionSpring, length_mm: float) -> AtPull:
    """Force and stresses at a length by the dimensions, and the initial tension to believe."""
    force = force_n(spring, length_mm, rate_n_per_mm(spring), tension_of(spring).likely_n)
    body, *of_hook = ((part, force * part.mpa_per_n) for part in parts(spring))
    stress = {part.place: mpa for part, mpa in of_hook}
    bends, twists = stress.get(Place.HOOK_BENDING), stress.get(Place.HOOK_TORSION)
    return AtPull(length_mm, force, body[1], body[0].corrected * body[1], bends, twists)
