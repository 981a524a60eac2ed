"""How far a stock spring may be from its figures: by its grade of tolerance, or by how its keeper measured it."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from sourcing.fit.model import Spread
from sourcing.springs import extension_tolerances, tolerances
from sourcing.springs.initial_tension import tension_of
from sourcing.springs.jis_tolerances import jis_tolerance
from sourcing.springs.life import Making
from sourcing.springs.model import ConicalSpring, ExtensionSpring, PressedSpring, TorsionSpring
from sourcing.stock.model import StockSpring

BOUGHT_GRADE = 2
"""EN 15800 applies grade 2 where none is agreed."""

RATE_SPREAD_OUTSIDE_TABLES = 0.10
"""Two spring stockists' guides: rate ±10 % of a stock spring."""

CALIPER_ON_WIRE_SD_MM = 0.0115
"""A digital caliper of ±0.02 mm (DIN 862 class, from memory), read as a rectangle."""

CALIPER_ON_COIL_MM = 0.05
"""A caliper on a coil in use, one operator (assumed)."""

RULE_ON_LENGTH_MM = 0.5
"""A steel rule (a school science text)."""

COILS_COUNTED_SD = 0.06
"""Active coils judged to ±0.1 (common practice, no source), read as a rectangle."""

MEASURED_TENSION = 0.10
"""An initial tension read off a scale as the coils just part (assumed)."""

PROTRACTOR_DEG = 3.0
"""A school protractor laid on two legs (assumed)."""

FREE_ANGLE_OUTSIDE_TABLES_DEG = 40.0
"""The coarsest of JIS B 2704-2, for more coils than its table has."""

MEASURED_RATE_SD = 0.03
"""A rate taken from two readings of a kitchen scale 5 mm or more apart: 1 to 3 % (winding model, measurements)."""


def graded(spring: PressedSpring, grade: int, rate_n_per_mm: float) -> Spread:
    """The spread of a spring made to a grade of EN 15800; its tolerances are read as bounds of 95 %.

    Outside the standard's tables the spread of stock springs in general serves. The standard is for cylinders: a cone
    is held to the tolerance of its large end's diameter, and to that of the force of its coil halfway.
    """
    wire, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    widest = spring.mean_diameter_large_mm if isinstance(spring, ConicalSpring) else mean
    diameter_mm = tolerances.coil_diameter_tolerance_mm(widest, widest / wire, grade)
    length_mm = tolerances.free_length_tolerance_mm(rate_n_per_mm, wire, mean, coils, grade)
    at_nothing, at_one_newton = (tolerances.force_tolerance_n(n, wire, mean, coils, grade) for n in (0.0, 1.0))
    if diameter_mm is None or length_mm is None or at_nothing is None or at_one_newton is None:
        diameter_mm = max(CALIPER_ON_COIL_MM, RATE_SPREAD_OUTSIDE_TABLES / 3.0 * widest)
        return Spread(diameter_mm, diameter_mm / 2.0, RULE_ON_LENGTH_MM, RATE_SPREAD_OUTSIDE_TABLES / 2.0)
    return Spread(diameter_mm, diameter_mm / 2.0, length_mm / 2.0, (at_one_newton - at_nothing) / 2.0)


def measured(stock: StockSpring, spring: PressedSpring | ExtensionSpring) -> Spread:
    """The spread of a spring that its keeper measured: calipers on wire and coil, a rule on the length."""
    if stock.stated_rate is not None:
        rate_sd = MEASURED_RATE_SD
    else:
        rate_sd = hypot(
            4.0 * CALIPER_ON_WIRE_SD_MM / spring.wire_diameter_mm,
            3.0 * CALIPER_ON_COIL_MM / 2.0 / spring.mean_diameter_mm,
            COILS_COUNTED_SD / spring.active_coils,
        )
    return Spread(CALIPER_ON_COIL_MM, CALIPER_ON_COIL_MM / 2.0, RULE_ON_LENGTH_MM / 2.0, rate_sd)


def graded_extension(spring: ExtensionSpring, grade: int) -> Spread:
    """The spread of an extension spring made to a grade: diameter, force and length by DIN 2097, tension by JIS.

    The grades of length that DIN 2097's table was not to be had for are JIS B 2704-2's.
    """
    wire, mean, coils = spring.wire_diameter_mm, spring.mean_diameter_mm, spring.active_coils
    diameter_mm = tolerances.coil_diameter_tolerance_mm(mean, spring.spring_index, grade)
    at_nothing, at_one_newton = (
        extension_tolerances.extension_force_tolerance_n(n, wire, mean, coils, grade) for n in (0.0, 1.0)
    )
    if diameter_mm is None or at_nothing is None or at_one_newton is None:
        diameter_mm = max(CALIPER_ON_COIL_MM, RATE_SPREAD_OUTSIDE_TABLES / 3.0 * mean)
        rate_share = RATE_SPREAD_OUTSIDE_TABLES
    else:
        rate_share = at_one_newton - at_nothing
    length_sd_mm, tension_sd_n = _free_length_mm(spring, grade) / 2.0, _graded_tension_n(spring, grade) / 2.0
    return Spread(diameter_mm, diameter_mm / 2.0, length_sd_mm, rate_share / 2.0, initial_tension_sd_n=tension_sd_n)


def _free_length_mm(spring: ExtensionSpring, grade: int) -> float:
    free_mm, index = spring.free_length_mm, spring.spring_index
    by_din = extension_tolerances.extension_free_length_tolerance_mm(free_mm, index, grade)
    by_jis = jis_tolerance("free length", "extension", index, free_mm, grade)
    return next((each for each in (by_din, by_jis) if each is not None), 2.0 * RULE_ON_LENGTH_MM)


def _graded_tension_n(spring: ExtensionSpring, grade: int) -> float:
    """A stated tension by its tolerance; of one that nobody states, all that is usual."""
    tension = tension_of(spring)
    by_jis = jis_tolerance("initial tension", "extension", spring.active_coils, tension.likely_n, grade)
    return (tension.high_n - tension.low_n) / 2.0 if by_jis is None or not tension.stated else by_jis


def measured_extension(stock: StockSpring, spring: ExtensionSpring) -> Spread:
    """The spread of an extension spring that its keeper measured: as any coil's, and its tension on a scale."""
    tension = tension_of(spring)
    doubt_n = MEASURED_TENSION * tension.likely_n if tension.stated else (tension.high_n - tension.low_n) / 2.0
    return replace(measured(stock, spring), initial_tension_sd_n=doubt_n / 2.0)


def graded_torsion(spring: TorsionSpring, grade: int) -> Spread:
    """The spread of a torsion spring made to a grade of JIS B 2704-2; DIN 2194's tables were not to be had."""
    index, coils, mean = spring.spring_index, spring.active_coils, spring.mean_diameter_mm
    diameter_mm = jis_tolerance("coil diameter", spring.kind, index, spring.outside_diameter_mm, grade)
    angle_deg = jis_tolerance("free angle", spring.kind, coils, spring.free_angle_deg or 0.0, grade)
    rate = jis_tolerance("rate", spring.kind, coils, 1.0, grade)
    if diameter_mm is None:
        diameter_mm = max(CALIPER_ON_COIL_MM, RATE_SPREAD_OUTSIDE_TABLES / 3.0 * mean)
    return Spread(
        diameter_mm,
        diameter_mm / 2.0,
        rate_sd=(RATE_SPREAD_OUTSIDE_TABLES if rate is None else rate) / 2.0,
        free_angle_sd_deg=(FREE_ANGLE_OUTSIDE_TABLES_DEG if angle_deg is None else angle_deg) / 2.0,
    )


def measured_torsion(stock: StockSpring, spring: TorsionSpring) -> Spread:
    """The spread of a torsion spring that its keeper measured: calipers on wire and coil, a protractor on the legs."""
    rate_sd = MEASURED_RATE_SD
    if stock.stated_rate is None:
        rate_sd = hypot(
            4.0 * CALIPER_ON_WIRE_SD_MM / spring.wire_diameter_mm,
            CALIPER_ON_COIL_MM / 2.0 / spring.mean_diameter_mm,
            COILS_COUNTED_SD / spring.active_coils,
        )
    caliper_mm = CALIPER_ON_COIL_MM
    return Spread(caliper_mm, caliper_mm / 2.0, rate_sd=rate_sd, free_angle_sd_deg=PROTRACTOR_DEG / 2.0)


def spread_of(stock: StockSpring, rate: float) -> Spread:
    """The spread of a stock spring: its own grade, grade 2 where a seller made it, else as its keeper measured it.

    A spring maker made what a seller sells; what else lies in a drawer is of unknown making, or has worked before.
    """
    sold = stock.seller is not None
    grade = stock.grade or (BOUGHT_GRADE if sold else None)
    if isinstance(stock.spring, TorsionSpring):
        spread = measured_torsion(stock, stock.spring) if grade is None else graded_torsion(stock.spring, grade)
    elif isinstance(stock.spring, ExtensionSpring):
        spring = stock.spring
        spread = measured_extension(stock, spring) if grade is None else graded_extension(spring, grade)
    else:
        spread = measured(stock, stock.spring) if grade is None else graded(stock.spring, grade, rate)
    return replace(spread, making=Making.SPRING_MAKER if sold else Making.UNKNOWN)
