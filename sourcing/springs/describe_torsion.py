"""All that follows from the dimensions of a torsion spring; the fields are the keys of `describe --json`."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from sourcing.springs import torsion, turned
from sourcing.springs.compression import INDEX_RANGE, LEAST_ACTIVE_COILS, index_is_covered
from sourcing.springs.endurance import TurnedEndurance, of_turned
from sourcing.springs.geometry import mass_g
from sourcing.springs.life import Making
from sourcing.springs.model import Hand, LegShape, TorsionSpring
from sourcing.springs.notes import counted, material_note, mm
from sourcing.springs.turned import AtAngle


@dataclass(frozen=True, slots=True)
class TorsionDescription:
    """What a torsion spring is and does, wound up from free. The rate is worked out from the dimensions.

    `active_coils`, all of which act, are those of each body; `coils_of_legs` are what the legs' bending counts for
    beside them. `body_length_mm` is that of all bodies at rest. The permissible figures are those of static duty that
    winds up. `notes` are whole sentences.
    """

    kind: str
    material: str
    wire_diameter_mm: float
    mean_diameter_mm: float
    outside_diameter_mm: float
    inside_diameter_mm: float
    spring_index: float
    active_coils: float
    total_coils: float
    bodies: int
    hand: Hand | None
    leg_1_mm: float | None
    leg_1_shape: LegShape | None
    leg_2_mm: float | None
    leg_2_shape: LegShape | None
    coils_of_legs: float
    free_angle_deg: float | None
    body_length_mm: float
    rate_n_mm_per_deg: float
    rate_with_friction_n_mm_per_deg: float
    tensile_strength_mpa: float | None
    permissible_stress_mpa: float | None
    permissible_angle_deg: float | None
    permissible_torque_n_mm: float | None
    wire_length_mm: float
    mass_g: float
    natural_frequency_hz: float
    endurance: TurnedEndurance
    at: tuple[AtAngle, ...]
    notes: tuple[str, ...]


def describe_torsion(
    spring: TorsionSpring, at_deg: Sequence[float] = (), making: Making = Making.UNKNOWN
) -> TorsionDescription:
    """All figures of a torsion spring, and what it does at each of the angles `at_deg`, wound up from free.

    >>> from sourcing.materials import find
    >>> wire = find("music-wire")
    >>> spring = TorsionSpring(1.5, 12.0, 5.0, wire, wire.elastic_modulus_mpa, 2080.0)
    >>> described = describe_torsion(spring, at_deg=[60.0])
    >>> round(described.rate_n_mm_per_deg, 2), round(described.at[0].torque_n_mm)
    (4.74, 284)

    Source of each figure: the function that it is worked out with.
    """
    d, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    tensile, rate = spring.tensile_strength_mpa, turned.rate_n_mm_per_deg(spring)
    one, two, angle = spring.leg_1, spring.leg_2, turned.permissible_angle_deg(spring, rate)
    wire_length, density = turned.wire_length_mm(spring), spring.material.density_kg_per_m3
    figures = TorsionDescription(
        kind=spring.kind,
        material=spring.material.name,
        wire_diameter_mm=d,
        mean_diameter_mm=mean,
        outside_diameter_mm=spring.outside_diameter_mm,
        inside_diameter_mm=spring.inside_diameter_mm,
        spring_index=spring.spring_index,
        active_coils=coils,
        total_coils=spring.total_coils,
        bodies=spring.bodies,
        hand=spring.hand,
        leg_1_mm=one and one.length_mm,
        leg_1_shape=one and one.shape,
        leg_2_mm=two and two.length_mm,
        leg_2_shape=two and two.shape,
        coils_of_legs=turned.coils_of_legs(spring),
        free_angle_deg=spring.free_angle_deg,
        body_length_mm=turned.body_length_mm(spring),
        rate_n_mm_per_deg=rate,
        rate_with_friction_n_mm_per_deg=turned.rate_with_friction_n_mm_per_deg(spring),
        tensile_strength_mpa=tensile,
        permissible_stress_mpa=turned.permissible_stress_mpa(spring),
        permissible_angle_deg=angle,
        permissible_torque_n_mm=None if angle is None else rate * angle,
        wire_length_mm=wire_length,
        mass_g=mass_g(d, wire_length, density),
        natural_frequency_hz=torsion.natural_frequency_hz(d, mean, coils, spring.elastic_modulus_mpa, density),
        endurance=of_turned(spring, at_deg, making),
        at=tuple(turned.at_angle(spring, angle) for angle in at_deg),
        notes=(),
    )
    return replace(figures, notes=tuple(_notes(spring, figures)))


def _notes(spring: TorsionSpring, figures: TorsionDescription) -> Iterator[str]:
    yield from _outside_the_standard(figures)
    yield from _unknown(figures)
    yield from _legs(spring)
    if spring.bodies > 1:
        yield (
            "Two bodies of opposite hand share the torque; the loop between them takes room of its own beside the "
            "length of the bodies."
        )
    yield (
        "The rate is the theory's, without friction. Coils that rub on each other and on a rod take up to 6 % of it "
        "(US practice: 10.8 for the theory's 10.19 a turn)."
    )
    yield from material_note(spring.material)
    for at in figures.at:
        yield from _at_notes(spring, figures, at)


def _outside_the_standard(figures: TorsionDescription) -> Iterator[str]:
    if not index_is_covered(figures.spring_index):
        yield (
            f"The spring index {figures.spring_index:.3g} is outside the {INDEX_RANGE[0]:g} to {INDEX_RANGE[1]:g} of "
            "EN 13906-3: rate and stress are less sure."
        )
    if figures.active_coils < LEAST_ACTIVE_COILS:
        yield (
            f"{counted(figures.active_coils, 'coil')} fewer than the {LEAST_ACTIVE_COILS:g} of DIN 2194: "
            "rate and stress are less sure."
        )


def _unknown(figures: TorsionDescription) -> Iterator[str]:
    if figures.tensile_strength_mpa is None:
        yield (
            f"The strength of {figures.material} is not listed for a wire of {mm(figures.wire_diameter_mm)}: how far "
            "it may be wound up is not known."
        )
    if figures.hand is None and figures.bodies == 1:
        yield (
            "Its hand is not known, so that it is matched to nothing. To see it, hold the spring upright: the front "
            "wires of a right-hand spring climb to the right, those of a left-hand one to the left."
        )
    if figures.free_angle_deg is None:
        yield "The angle between its legs at rest is not known."
    if figures.leg_1_mm is None or figures.leg_2_mm is None:
        lacking = "No legs are" if figures.leg_1_mm is None and figures.leg_2_mm is None else "One leg is not"
        yield f"{lacking} given: what is not there bends nothing, and the spring is that much stiffer."


def _legs(spring: TorsionSpring) -> Iterator[str]:
    if any(leg.shape is LegShape.OFFSET for leg in spring.legs):
        factor = torsion.curvature_factor(2.0 * torsion.BEND_INSIDE_RADIUS + 1.0)
        yield (
            "The whole torque goes through the bend of an offset leg at the coil: bent round its own wire diameter, "
            f"the stress there is {factor:.2f} times the plain one, and it breaks there first."
        )


def _at_notes(spring: TorsionSpring, figures: TorsionDescription, at: AtAngle) -> Iterator[str]:
    if at.bending_stress_mpa is None or at.corrected_stress_mpa is None:
        closed = "its inside is closed before" if at.angle_deg > 0.0 else "its coils are straight before"
        yield f"It cannot be turned to {at.angle_deg:g} deg: {closed}."
        return
    tensile = figures.tensile_strength_mpa
    if at.angle_deg < 0.0:
        wound = "Turned round, it" if spring.bodies > 1 else "A spring of the other hand"
        yield (
            f"At {at.angle_deg:g} deg it is loaded against its hand: that opens the coils, where it stands less. "
            f"{wound} would be wound up."
        )
    wound_up, bears = figures.permissible_stress_mpa, turned.bears_wound_up(spring)
    if tensile is None or wound_up is None:
        return
    if at.angle_deg < 0.0:
        limit, stress = torsion.permissible_unwinding_stress_mpa(wound_up), at.corrected_stress_mpa
        allowed = f"unwound it is given {limit:.0f} MPa, corrected (three quarters of {bears.book}'s, assumed)"
    else:
        limit, stress = wound_up, at.bending_stress_mpa
        allowed = f"{bears.book} allows {limit:.0f} MPa ({bears.share:.2f} of the wire's least strength)"
    if stress > limit:
        does = "break or bend for good" if stress > tensile else "take a set"
        yield f"At {at.angle_deg:g} deg it will {does}: the stress is {stress:.0f} MPa, and {allowed}."
