"""The bands of a grade of tolerance beside what `describe` says, as JSON and as text."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict

from sourcing.figures.symbols import unit_of, words_of_name
from sourcing.quantities import (
    show_angle,
    show_angular_rate,
    show_diameter,
    show_force,
    show_length,
    show_rate,
    show_torque,
    show_wire,
)
from sourcing.sheets.text import bullets, table
from sourcing.springs.bands import Band, bands_of, load_band
from sourcing.springs.describe import AnyDescription
from sourcing.springs.model import Spring
from sourcing.springs.rates import rate_of
from sourcing.springs.turned import AtAngle

_SHOW: Mapping[str, Callable[[float, str], str]] = {
    "N": show_force,
    "N/mm": show_rate,
    "N·mm": show_torque,
    "N·mm/deg": show_angular_rate,
    "deg": lambda angle_deg, _: show_angle(angle_deg),
}


_LENGTHS = (("wire_diameter", show_wire), ("diameter", show_diameter))


def band_keys(spring: Spring, one: AnyDescription, grade: int) -> dict[str, object]:
    """What a grade adds to the JSON of a spring: each bounded figure with `_low` and `_high`, and the sources."""
    bands, loads = bands_of(spring, rate_of(spring), grade), _loads(spring, one, grade)
    of_load = [band for _, band in loads if band is not None][:1]
    return {
        **_bounds(bands),
        "at": [
            {**asdict(point), **_bounds([band] if band else [])} for point, (_, band) in zip(one.at, loads, strict=True)
        ],
        "grade": grade,
        "tolerance_sources": {band.figure: band.source for band in (*bands, *of_load)},
    }


def band_lines(spring: Spring, one: AnyDescription, grade: int, units: str) -> list[str]:
    """A table of each bounded figure with its least and its greatest, and what bounds it; and what that rests on."""
    rows = [_row(words_of_name(band.figure), band, units) for band in bands_of(spring, rate_of(spring), grade)]
    rows += [
        _row(f"{words_of_name(band.figure)} at {where}", band, units)
        for where, band in _loads(spring, one, grade, units)
        if band is not None
    ]
    return [*table((f"made to grade {grade}", "least", "greatest", "by"), rows), *bullets([_RESTS_ON[spring.kind]])]


_RESTS_ON: Mapping[str, str] = {
    "compression": "95 in 100 are taken to lie between. EN 15800 says nothing of the rate: JIS B 2704-2 stands in.",
    "conical": "95 in 100 are taken to lie between. EN 15800 is for cylinders: each end is taken by its own diameter, "
    "its length by the coil halfway, its forces by what length and rate make of its curve. It says nothing of the "
    "rate: JIS B 2704-2 stands in.",
    "extension": "95 in 100 are taken to lie between. JIS B 2704-2 stands in for what was not to be had of DIN 2097.",
    "torsion": "95 in 100 are taken to lie between. The tables of DIN 2194 were not to be had: those of JIS B 2704-2 "
    "stand in, and a handbook's 10 % of the torque where they end.",
}


def _loads(spring: Spring, one: AnyDescription, grade: int, units: str = "mm") -> list[tuple[str, Band | None]]:
    """Each length or angle asked for, and the band of the force or torque there; None where it cannot go so far."""
    return [
        (show_angle(point.angle_deg), load_band(spring, point.angle_deg, point.torque_n_mm, grade))
        if isinstance(point, AtAngle)
        else (show_length(point.length_mm, units), load_band(spring, point.length_mm, point.force_n, grade))
        for point in one.at
    ]


def _bounds(bands: Iterable[Band]) -> dict[str, float | None]:
    return {f"{band.figure}_{end}": getattr(band, end) for band in bands for end in ("low", "high")}


def _row(name: str, band: Band, units: str) -> tuple[str, str, str, str]:
    of_length = next((show for word, show in _LENGTHS if word in band.figure), show_length)
    show = _SHOW.get(unit_of(band.figure), of_length)
    if band.low is None or band.high is None:
        return name, "", "", band.source
    return name, show(band.low, units), show(band.high, units), band.source
