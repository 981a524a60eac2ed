"""The table of what comes out of a winding sheet: as wound, and after heat."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping

from sourcing.quantities import show_angle, show_angular_rate, show_diameter, show_force, show_length, show_rate
from sourcing.springs.model import CompressionSpring, ConicalSpring, ExtensionSpring, Hooks
from sourcing.winding.model import Made, WindingPlan
from sourcing.winding.presetting import pressed_off_mm
from sourcing.winding.spacing import ground_off_mm

Row = tuple[str, str, Callable[[float, str], str]]

_ENDS: tuple[Row, ...] = (
    ("outside diameter, small end", "outside_diameter_small_mm", show_diameter),
    ("outside diameter, large end", "outside_diameter_large_mm", show_diameter),
    ("inside diameter, small end", "inside_diameter_small_mm", show_diameter),
    ("inside diameter, large end", "inside_diameter_large_mm", show_diameter),
)
_DIAMETERS: tuple[Row, ...] = (
    ("outside diameter", "outside_diameter_mm", show_diameter),
    ("inside diameter", "inside_diameter_mm", show_diameter),
)
_COILS: tuple[Row, ...] = (
    ("active coils", "active_coils", lambda coils, _: f"{coils:.2f}"),
    ("total coils", "total_coils", lambda coils, _: f"{coils:.2f}"),
)
_LENGTH_AND_RATE: tuple[Row, ...] = (
    ("free length", "free_length_mm", show_length),
    ("rate", "rate_n_per_mm", show_rate),
)
_PRESSED: tuple[Row, ...] = (
    *_LENGTH_AND_RATE,
    ("solid length", "solid_length_mm", show_length),
    ("pitch", "pitch_mm", show_length),
    *_COILS,
)
_PULLED: tuple[Row, ...] = (
    ("free length inside the hooks", "free_length_mm", show_length),
    ("body", "body_length_mm", show_length),
    ("rate", "rate_n_per_mm", show_rate),
    ("initial tension", "initial_tension_n", show_force),
)
_ROWS_OF_KIND: Mapping[str, tuple[Row, ...]] = {
    "compression": (*_DIAMETERS, *_PRESSED),
    "conical": (*_ENDS, *_PRESSED),
    "torsion": (
        *_DIAMETERS,
        ("angle between the legs", "free_angle_deg", lambda angle, _: show_angle(angle)),
        ("rate", "rate_n_mm_per_deg", show_angular_rate),
        ("body length", "body_length_mm", show_length),
        ("coils", "active_coils", lambda coils, _: f"{coils:.2f}"),
    ),
    "extension": (*_DIAMETERS, *_PULLED, *_COILS[1:]),
}


_OF_PLUGS: Mapping[str, str] = {
    "free_length_mm": "free length between the eyes",
    "active_coils": "coils between plugs",
}
"""What a spring has only once its plugs are in, after heat, and how that is called."""


def _plugged(plan: WindingPlan) -> bool:
    return isinstance(plan.wanted, ExtensionSpring) and plan.wanted.hooks is Hooks.THREADED_PLUG


def _rows_of(plan: WindingPlan) -> Iterator[Row]:
    """The figures of its kind; where grinding and the first pressing shorten it, with the length before them."""
    spring = plan.wanted
    if _plugged(plan):
        for name, key, show in (*_ROWS_OF_KIND[spring.kind], _COILS[0]):
            yield _OF_PLUGS.get(key, name), key, show
        return
    if not isinstance(spring, CompressionSpring | ConicalSpring):
        yield from _ROWS_OF_KIND[spring.kind]
        return
    ground_mm, pressed_mm = ground_off_mm(spring), pressed_off_mm(spring)
    more_mm, wider_mm = ground_mm + pressed_mm, pressed_mm / spring.active_coils
    taken = " and ".join(what for what, mm in (("grinding", ground_mm), ("pressing", pressed_mm)) if mm)
    for name, key, show in _ROWS_OF_KIND[spring.kind]:
        if taken and key == "free_length_mm":
            yield f"free length before {taken}", key, lambda free_mm, units: show_length(free_mm + more_mm, units)
            yield "free length in the end", key, show
        elif ground_mm and key == "solid_length_mm":
            yield "solid length, ground", key, show
        elif pressed_mm and key == "pitch_mm":
            yield "pitch before pressing", key, lambda pitch_mm, units: show_length(pitch_mm + wider_mm, units)
        else:
            yield name, key, show


def made_table(plan: WindingPlan, units: str) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """What comes out, as wound and after heat: headers and rows."""
    stages = [plan.finished] if plan.after_heat is None else [plan.finished, plan.after_heat]
    headers = ("", "as wound", "after heat")[: len(stages) + 1]
    wanted = [row for row in _rows_of(plan) if getattr(plan.finished.figures, row[1]) is not None]
    to_come = frozenset(_OF_PLUGS if _plugged(plan) and plan.after_heat is not None else ())
    rows = [
        (
            name,
            *("-" if key in to_come and made is plan.finished else _banded(made, key, show, units) for made in stages),
        )
        for name, key, show in wanted
    ]
    return headers, rows


def _banded(made: Made, key: str, show: Callable[[float, str], str], units: str) -> str:
    band = made.bands.get(key)
    text = show(getattr(made.figures, key), units)
    if band is None:
        return text
    low, high = (show(bound, units).split(" ")[0] for bound in (band.low, band.high))
    return f"{text} ({low} to {high})"
