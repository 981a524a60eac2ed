"""The description of a compression spring of any shape as rows."""

from __future__ import annotations

from collections.abc import Iterator

from sourcing.quantities import show_force, show_length, show_rate, show_stress, show_temperature
from sourcing.sheets.text import table
from sourcing.springs.describe import Description
from sourcing.springs.describe_conical import ConicalDescription
from sourcing.springs.end_pieces import said
from sourcing.springs.endurance import Service
from sourcing.springs.life import Word

PressedDescription = Description | ConicalDescription
Row = tuple[str, str]


def optional(value: float | None, text: str) -> str:
    """A text for a figure that may not be known."""
    return "unknown" if value is None else text


def _figures(one: PressedDescription, units: str) -> list[Row]:
    """Every figure with its name."""

    def length(value_mm: float) -> str:
        return show_length(value_mm, units)

    tensile, stress = one.tensile_strength_mpa, one.shear_stress_at_solid_mpa
    cone = isinstance(one, ConicalDescription)
    return [
        ("material", one.material),
        ("wire", length(one.wire_diameter_mm)),
        *_diameters(one, units),
        ("spring index, halfway" if cone else "spring index", f"{one.spring_index:.2f}"),
        ("coils, active of total", f"{one.active_coils:g} of {one.total_coils:g}"),
        ("free length", length(one.free_length_mm)),
        ("solid length", length(one.solid_length_mm) + (", telescoped" if cone and one.telescopes else "")),
        ("pitch", length(one.pitch_mm)),
        *_gaps_and_growth(one, units),
        ("initial rate" if cone else "rate", show_rate(one.rate_n_per_mm, units)),
        ("force at solid", show_force(one.force_at_solid_n)),
        ("stress at solid, uncorrected", show_stress(stress)),
        ("least tensile strength", optional(tensile, show_stress(tensile or 0.0))),
        *_endured(one, units),
        ("buckles below", "does not" if one.buckling_length_mm is None else length(one.buckling_length_mm)),
        ("natural frequency", f"{one.natural_frequency_hz:.0f} Hz"),
        *_end_pieces(one, units),
        ("wire length", length(one.wire_length_mm)),
        ("mass", f"{one.mass_g:.2f} g"),
    ]


def _end_pieces(one: PressedDescription, units: str) -> list[Row]:
    """What hooks into a part at each end; no row for a plain end."""
    ends = (("end 1", one.end_1), ("end 2", one.end_2))
    return [(name, said(piece, show_length(piece.length_mm, units))) for name, piece in ends if piece is not None]


def _endured(one: PressedDescription, units: str) -> list[Row]:
    """What becomes of it pressed solid, worked again and again, and where it is warm."""
    bears = one.endurance
    between = lengths_between(bears.lasts_from_mm, bears.lasts_to_mm, units)
    solid = ("pressed solid", bears.pressed_solid or "unknown")
    return [solid, *lasting(bears.lasts, between), *serving(bears.service, units)]


def lengths_between(from_mm: float | None, to_mm: float | None, units: str) -> str:
    """Between which lengths a spring is worked, to go after a word; empty where that is not known."""
    if from_mm is None or to_mm is None:
        return ""
    return f", {show_length(from_mm, units).split(' ')[0]} to {show_length(to_mm, units)}"


def lasting(word: Word | None, between: str) -> list[Row]:
    """How long it lasts, worked so far, and how far that may be off."""
    rows = [(f"lasts{between}", str(word or "unknown"))]
    if word not in (None, Word.WILL_SET, Word.WILL_BREAK, Word.FEW):
        rows.append(("off by a factor of", "3 from a spring maker, else 10"))
    return rows


def serving(service: Service, units: str) -> list[Row]:
    """The temperatures that the wire serves at, and what is left of the force at the greatest."""
    if service.low_c is None or service.high_c is None:
        return [("serves at", "unknown")]
    rows = [("serves at", f"{show_temperature(service.low_c, units)} to {show_temperature(service.high_c, units)}")]
    if service.force_left_low is not None and service.force_left_high is not None:
        left = f"{100 * service.force_left_low:.0f} to {100 * service.force_left_high:.0f} %"
        rows.append(("force left at its warmest", left))
    return rows


def _diameters(one: PressedDescription, units: str) -> list[Row]:
    """Outside, mean and inside diameter, a row for each end of a cone."""

    def row(what: str, *diameters_mm: float) -> Row:
        return what, " / ".join(show_length(each, units) for each in diameters_mm)

    if isinstance(one, Description):
        return [row("outside, mean, inside", one.outside_diameter_mm, one.mean_diameter_mm, one.inside_diameter_mm)]
    small = (one.outside_diameter_small_mm, one.mean_diameter_small_mm, one.inside_diameter_small_mm)
    large = (one.outside_diameter_large_mm, one.mean_diameter_large_mm, one.inside_diameter_large_mm)
    return [row("small end: outside, mean, inside", *small), row("large end: outside, mean, inside", *large)]


def _gaps_and_growth(one: PressedDescription, units: str) -> list[Row]:
    """The gaps that a cylinder should keep, or where a cone's coils begin to close; and how much the ends grow."""
    if isinstance(one, Description):
        return [
            ("least sum of gaps, Sa", show_length(one.minimum_gaps_mm, units)),
            ("growth of diameter to solid", show_length(one.diameter_growth_mm, units)),
        ]
    growth = (show_length(each, units) for each in (one.diameter_growth_small_mm, one.diameter_growth_large_mm))
    return [
        ("coils close below", show_length(one.even_down_to_mm, units)),
        ("growth to solid, small and large end", " / ".join(growth)),
    ]


def _closing(one: ConicalDescription, units: str) -> list[str]:
    """At what force and length each coil of a cone closes."""
    rows = [(str(each.coil), show_force(each.force_n), show_length(each.length_mm, units)) for each in one.closing]
    return table(("coil from large end", "closed at", "at length"), rows)


def _at_lengths(one: PressedDescription, units: str) -> list[str]:
    """What it does at the lengths asked for."""
    rows = [
        (
            show_length(point.length_mm, units),
            optional(point.force_n, show_force(point.force_n or 0.0)),
            optional(point.shear_stress_mpa, show_stress(point.shear_stress_mpa or 0.0)),
            optional(point.corrected_stress_mpa, show_stress(point.corrected_stress_mpa or 0.0)),
        )
        for point in one.at
    ]
    return table(("at", "force", "stress", "corrected"), rows)


def tables(one: PressedDescription, units: str) -> Iterator[list[str]]:
    """The figures, and what there is beside them."""
    yield table(("figure", "value"), _figures(one, units))
    if isinstance(one, ConicalDescription):
        yield _closing(one, units)
    if one.at:
        yield _at_lengths(one, units)
