"""Every figure of a spring that a grade of tolerance bounds, between its bounds: what `describe --tolerances` shows.

A tolerance is read as a bound of 95 %. A figure that no table at hand reaches has no bounds, and says so.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import hypot

from sourcing.springs import extension_tolerances, jis_tolerances, pressed, tolerances
from sourcing.springs.jis_tolerances import jis_covers, jis_tolerance
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, PressedSpring, TorsionSpring
from sourcing.springs.wire_tolerances import wire_diameter_tolerance_mm

GRADES = (1, 2, 3)

EN_15800, DIN_2097, JIS = "EN 15800", "DIN 2097", "JIS B 2704-2"
HANDBOOK = "Machinery's Handbook"
RECALLED = " (from memory)"
NOT_KNOWN = "not known"
RECALLED_ABOVE_MM = 63.0
"""Of the coil diameter's table, grades 1 and 3 above this are from memory."""

Toleranced = PressedSpring | ExtensionSpring | TorsionSpring


@dataclass(frozen=True, slots=True)
class Band:
    """A figure of a description, by its name there, and what bounds it; without bounds it has no source."""

    figure: str
    nominal: float
    low: float | None
    high: float | None
    source: str


def bands_of(spring: Toleranced, rate: float, grade: int) -> tuple[Band, ...]:
    """The bands of all figures that do not depend on where a spring is loaded.

    The rate is handed in: N/mm, of a torsion spring N·mm/deg.

    >>> from sourcing.materials import find
    >>> from sourcing.springs.model import Ends
    >>> wire = find("music-wire")
    >>> spring = CompressionSpring(0.9, 8.7, 32.0, 7.75, 9.75, Ends.CLOSED_GROUND, wire,
    ...     wire.shear_modulus_mpa, wire.elastic_modulus_mpa, 2270.0)
    >>> outside = bands_of(spring, 1.31, grade=2)[1]
    >>> outside.figure, round(outside.low, 2), round(outside.high, 2)
    ('outside_diameter_mm', 9.3, 9.9)
    """
    wire = spring.wire_diameter_mm
    standard = spring.material.standard
    wire_band = _band("wire_diameter_mm", wire, wire_diameter_tolerance_mm(standard, wire), standard)
    match spring:
        case CompressionSpring():
            return (wire_band, *_diameters(spring, grade), *_solid_length(spring), *_pressed(spring, rate, grade))
        case ConicalSpring():
            return (wire_band, *_ends_of_cone(spring, grade), *_pressed(spring, rate, grade))
        case ExtensionSpring():
            return (wire_band, *_diameters(spring, grade), *_extension(spring, rate, grade))
        case TorsionSpring():
            return (wire_band, *_torsion(spring, rate, grade))


def load_band(spring: Toleranced, where: float, load: float | None, grade: int) -> Band | None:
    """The band of the force at a length, or of the torque at an angle; None where it cannot go so far."""
    match spring:
        case _ if load is None:
            return None
        case TorsionSpring():
            return torque_band(spring, where, load, grade)
        case ConicalSpring():
            return _force_of_cone(spring, where, load, grade)
        case _:
            return _force(spring, load, grade)


def _force(spring: CompressionSpring | ExtensionSpring, force_n: float, grade: int) -> Band:
    d, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    if isinstance(spring, ExtensionSpring):
        tolerance = extension_tolerances.extension_force_tolerance_n(force_n, d, mean, coils, grade)
        return _band("force_n", force_n, tolerance, DIN_2097 + RECALLED)
    tolerance = tolerances.force_tolerance_n(force_n, d, mean, coils, grade)
    return _band("force_n", force_n, tolerance, EN_15800 + RECALLED)


def _force_of_cone(spring: ConicalSpring, length_mm: float, force_n: float, grade: int) -> Band:
    """What the bands of its free length and of its rate make of the force: its curve is not straight."""
    rate = pressed.rate_n_per_mm(spring)
    length, by_rate = (_pressed_length(spring, rate, grade), _jis("", 1.0, "rate", spring, spring.active_coils, grade))
    if length.low is None or length.high is None or by_rate.high is None:
        return _band("force_n", force_n, None, NOT_KNOWN)
    shorter_n, longer_n = (pressed.force_from_n(spring, free, length_mm, rate) for free in (length.low, length.high))
    share = by_rate.high - 1.0
    tolerance = hypot((longer_n - shorter_n) / 2.0, share * force_n)
    return _band("force_n", force_n, tolerance, "length and rate")


def torque_band(spring: TorsionSpring, angle_deg: float, torque_n_mm: float, grade: int) -> Band:
    """The band of a torque at an angle wound up from free."""
    if angle_deg == 0.0:
        return _band("torque_n_mm", torque_n_mm, None, NOT_KNOWN)
    coils, rate = spring.active_coils, torque_n_mm / angle_deg
    if jis_covers(spring.kind, spring.spring_index, coils):
        tolerance = jis_tolerances.torsion_torque_tolerance_n_mm(angle_deg, rate, coils, grade)
        if tolerance is not None:
            return _band("torque_n_mm", torque_n_mm, tolerance, JIS)
    return _band("torque_n_mm", torque_n_mm, jis_tolerances.HANDBOOK_TORQUE * abs(torque_n_mm), HANDBOOK)


def _band(figure: str, nominal: float, tolerance: float | None, source: str) -> Band:
    """A band of plus or minus a tolerance; no figure but a torque or an angle can be below 0."""
    if tolerance is None:
        return Band(figure, nominal, None, None, NOT_KNOWN)
    low = nominal - tolerance
    return Band(figure, nominal, max(0.0, low) if nominal >= 0.0 else low, nominal + tolerance, source)


def _diameters(spring: CompressionSpring | ExtensionSpring, grade: int) -> Iterator[Band]:
    standard = EN_15800 if isinstance(spring, CompressionSpring) else DIN_2097
    for side in ("outside", "mean", "inside"):
        name = f"{side}_diameter_mm"
        yield _coil(name, getattr(spring, name), spring.mean_diameter_mm, spring.wire_diameter_mm, grade, standard)


def _ends_of_cone(spring: ConicalSpring, grade: int) -> Iterator[Band]:
    for end in ("small", "large"):
        mean: float = getattr(spring, f"mean_diameter_{end}_mm")
        for side in ("outside", "mean", "inside"):
            name = f"{side}_diameter_{end}_mm"
            yield _coil(name, getattr(spring, name), mean, spring.wire_diameter_mm, grade, EN_15800)


def _coil(name: str, diameter_mm: float, mean_mm: float, wire_mm: float, grade: int, standard: str) -> Band:
    tolerance = tolerances.coil_diameter_tolerance_mm(mean_mm, mean_mm / wire_mm, grade)
    recalled = grade != 2 and mean_mm > RECALLED_ABOVE_MM
    return _band(name, diameter_mm, tolerance, standard + (RECALLED if recalled else ""))


def _pressed(spring: PressedSpring, rate: float, grade: int) -> Iterator[Band]:
    yield _pressed_length(spring, rate, grade)
    yield _jis("rate_n_per_mm", rate, "rate", spring, spring.active_coils, grade)
    solid_mm = pressed.solid_length_mm(spring)
    at_solid = load_band(spring, solid_mm, pressed.force_n(spring, solid_mm, rate), grade)
    if at_solid is not None:
        yield replace(at_solid, figure="force_at_solid_n")


def _pressed_length(spring: PressedSpring, rate: float, grade: int) -> Band:
    d, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    length = tolerances.free_length_tolerance_mm(rate, d, mean, coils, grade)
    return _band("free_length_mm", spring.free_length_mm, length, EN_15800 + RECALLED)


def _solid_length(spring: CompressionSpring) -> Iterator[Band]:
    """The wire's own tolerance in every coil, and a quarter of a coil more or less."""
    solid_mm, wire_mm = pressed.solid_length_mm(spring), spring.wire_diameter_mm
    of_wire = wire_diameter_tolerance_mm(spring.material.standard, wire_mm)
    of_both = None if of_wire is None else hypot(solid_mm / wire_mm * of_wire, jis_tolerances.COILS_COUNTED * wire_mm)
    yield _band("solid_length_mm", solid_mm, of_both, f"{spring.material.standard}, {JIS}")


def _extension(spring: ExtensionSpring, rate: float, grade: int) -> Iterator[Band]:
    free_mm, index, coils, tension_n = (
        spring.free_length_mm,
        spring.spring_index,
        spring.active_coils,
        spring.initial_tension_n,
    )
    length = extension_tolerances.extension_free_length_tolerance_mm(free_mm, index, grade)
    if length is None:
        yield _jis("free_length_mm", free_mm, "free length", spring, index, grade)
    else:
        yield _band("free_length_mm", free_mm, length, DIN_2097 + ("" if grade == 2 else RECALLED))
    yield _jis("rate_n_per_mm", rate, "rate", spring, coils, grade)
    if tension_n is not None:
        yield _jis("initial_tension_n", tension_n, "initial tension", spring, coils, grade)


def _torsion(spring: TorsionSpring, rate: float, grade: int) -> Iterator[Band]:
    wire, index, coils = spring.wire_diameter_mm, spring.spring_index, spring.active_coils
    outside = spring.outside_diameter_mm
    of_coil = _jis("outside_diameter_mm", outside, "coil diameter", spring, index, grade)
    tolerance = None if of_coil.high is None else of_coil.high - outside
    for name in ("outside_diameter_mm", "mean_diameter_mm", "inside_diameter_mm"):
        yield _band(name, getattr(spring, name), tolerance, of_coil.source)
    if spring.free_angle_deg is not None:
        yield _jis("free_angle_deg", spring.free_angle_deg, "free angle", spring, coils, grade)
    if spring.body_length_mm is not None:
        yield _jis("body_length_mm", spring.body_length_mm, "body length", spring, index, grade)
    for name, leg in (("leg_1_mm", spring.leg_1), ("leg_2_mm", spring.leg_2)):
        if leg is not None:
            yield _jis(name, leg.length_mm, "leg length", spring, wire, grade)
    yield _jis("rate_n_mm_per_deg", rate, "rate", spring, coils, grade)


def _jis(figure: str, nominal: float, row: str, spring: Toleranced, by: float, grade: int) -> Band:
    """The band by a row of JIS B 2704-2, in its scope."""
    covered = jis_covers(spring.kind, spring.spring_index, spring.active_coils)
    kind = "compression" if isinstance(spring, ConicalSpring) else spring.kind
    tolerance = jis_tolerance(row, kind, by, nominal, grade) if covered else None
    return _band(figure, nominal, tolerance, JIS)
