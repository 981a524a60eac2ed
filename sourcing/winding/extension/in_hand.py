"""An extension spring in hand: its hooks are bent to its length, as near as they reach."""

from __future__ import annotations

from dataclasses import replace

from sourcing.springs import extension, pulled
from sourcing.springs.model import ExtensionSpring
from sourcing.winding.extension.task import hook_heights_mm


def as_it_came(wanted: ExtensionSpring, mean_mm: float) -> ExtensionSpring:
    """The spring with another diameter and the coils that were meant."""
    return hooked(replace(wanted, mean_diameter_mm=mean_mm), wanted.free_length_mm)


def hooked(spring: ExtensionSpring, free_length_mm: float, body_mm: float | None = None) -> ExtensionSpring:
    """The spring with its hooks bent as near to a free length as hooks of their kind reach.

    `body_mm`: how long its body is where its coils do not touch.
    """
    low_mm, high_mm = hook_heights_mm(spring.hooks, spring.inside_diameter_mm)
    body_mm = pulled.body_length_mm(spring) if body_mm is None else body_mm
    least_mm, most_mm = (extension.free_length_mm(body_mm, height_mm) for height_mm in (low_mm, high_mm))
    return replace(spring, free_length_mm=min(max(free_length_mm, least_mm), most_mm))
