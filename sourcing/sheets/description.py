"""The answer of `describe`, as JSON and as text."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict

from sourcing.quantities import show_force, show_length, show_rate, show_stress
from sourcing.sheets.text import bullets, heading, table
from sourcing.springs.describe import Description
from sourcing.springs.describe_conical import ConicalDescription
from sourcing.springs.rates import rate_of
from sourcing.stock.model import StockSpring
from sourcing.stock.rates import disagree, show_rate_of

AnyDescription = Description | ConicalDescription
Entry = tuple[StockSpring, AnyDescription]
Row = tuple[str, str]


def description_document(entries: Iterable[Entry]) -> dict[str, object]:
    """The JSON document: field names are the keys."""
    return {
        "springs": [
            {"id": stock.id, **asdict(description), "notes": notes(stock, description)}
            for stock, description in entries
        ]
    }


def notes(stock: StockSpring, description: AnyDescription) -> list[str]:
    """The description's notes, and one more where the stated rate does not go with the dimensions."""
    stated, spring = stock.stated_rate, stock.spring
    if stated is None or not disagree(stated, spring):
        return list(description.notes)
    doubt = (
        f"The stated rate of {show_rate_of(spring, stated)} and the {show_rate_of(spring, rate_of(spring))} of the "
        "dimensions cannot both be right: the seller's figure may be right and a dimension wrong."
    )
    return [*description.notes, doubt]


def description_lines(entries: Iterable[Entry], units: str = "mm") -> Iterable[str]:
    """Each spring under its id, its forces at the lengths asked for, and its notes."""
    for stock, one in entries:
        yield from heading(stock.id)
        yield from table(("figure", "value"), _figures(one, units))
        if isinstance(one, ConicalDescription):
            yield ""
            yield from _closing(one, units)
        if one.at:
            yield ""
            yield from _at(one, units)
        yield from bullets(notes(stock, one))


def _optional(value: float | None, text: str) -> str:
    return "unknown" if value is None else text


def _figures(one: AnyDescription, units: str) -> list[Row]:
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
        ("least tensile strength", _optional(tensile, show_stress(tensile or 0.0))),
        ("buckles below", "does not" if one.buckling_length_mm is None else length(one.buckling_length_mm)),
        ("natural frequency", f"{one.natural_frequency_hz:.0f} Hz"),
        ("wire length", length(one.wire_length_mm)),
        ("mass", f"{one.mass_g:.2f} g"),
    ]


def _diameters(one: AnyDescription, units: str) -> list[Row]:
    """Outside, mean and inside diameter, a row for each end of a cone."""

    def row(what: str, *diameters_mm: float) -> Row:
        return what, " / ".join(show_length(each, units) for each in diameters_mm)

    if isinstance(one, Description):
        return [row("outside, mean, inside", one.outside_diameter_mm, one.mean_diameter_mm, one.inside_diameter_mm)]
    small = (one.outside_diameter_small_mm, one.mean_diameter_small_mm, one.inside_diameter_small_mm)
    large = (one.outside_diameter_large_mm, one.mean_diameter_large_mm, one.inside_diameter_large_mm)
    return [row("small end: outside, mean, inside", *small), row("large end: outside, mean, inside", *large)]


def _gaps_and_growth(one: AnyDescription, units: str) -> list[Row]:
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
    rows = [(str(each.coil), show_force(each.force_n), show_length(each.length_mm, units)) for each in one.closing]
    return table(("coil from large end", "closed at", "at length"), rows)


def _at(one: AnyDescription, units: str) -> list[str]:
    rows = [
        (
            show_length(point.length_mm, units),
            _optional(point.force_n, show_force(point.force_n or 0.0)),
            _optional(point.shear_stress_mpa, show_stress(point.shear_stress_mpa or 0.0)),
            _optional(point.corrected_stress_mpa, show_stress(point.corrected_stress_mpa or 0.0)),
        )
        for point in one.at
    ]
    return table(("at", "force", "stress", "corrected"), rows)
