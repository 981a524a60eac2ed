"""What a trial coil taught, as JSON."""

from __future__ import annotations

from dataclasses import asdict
from math import isfinite

from sourcing.stock.trying import TakenBack, Tried
from sourcing.winding.taught_words import said
from sourcing.winding.teaching import Taught

Document = dict[str, object]


def trial_document(tried: Tried, taught: Taught | None) -> Document:
    """Where the trial was written, and what it taught; null where nothing can be worked out."""
    return {
        "id": tried.spool.id,
        "file": tried.file,
        "line": tried.line,
        "changed": list(tried.changed),
        "trial": asdict(tried.spool.trials[-1]),
        "taught": None if taught is None else _taught(taught),
    }


def taken_back_document(taken: TakenBack) -> Document:
    """The trial that was taken back, the lines that are gone, and how many are left."""
    return {
        "id": taken.spool.id,
        "file": taken.file,
        "line": taken.line,
        "taken_back": list(taken.changed),
        "trial": asdict(taken.trial),
        "trials_left": len(taken.spool.trials),
    }


def _taught(taught: Taught) -> Document:
    lesson = taught.lesson
    return {
        "said": list(said(taught)),
        "outside_diameter_mm": _finite(lesson.outside_diameter_mm),
        "expected_outside_diameter_mm": _finite(lesson.expected_outside_diameter_mm),
        "outside_by_legs_mm": lesson.outside_by_legs_mm and _finite(lesson.outside_by_legs_mm),
        "diameter_and_legs_agree": lesson.agree,
        "deviations": lesson.deviations,
        "surprising": lesson.surprising,
        "agrees_with_surprise": taught.agrees_with_surprise,
        "flow_ratio_alone": lesson.flow_ratio_alone,
        "pitch_share": taught.pitch.share,
        "pitch_share_sd": taught.pitch.sd,
        "sizes": [asdict(size) for size in taught.told_sizes],
        "used_wire_mm": taught.used_wire_mm,
        "turns_assumed": taught.lesson.trial.turns is None,
        "another_band": taught.another_band,
        "another_wire_mm": taught.another_wire_mm,
        "another_is_worth_it": taught.another_is_worth_it,
    }


def _finite(value: float) -> float | None:
    return value if isfinite(value) else None
